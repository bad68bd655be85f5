import { fineLength, fineText, lengthText, lengthWithUnit } from '$lib/project/lengthText.ts';
import type { Plan, StandPlan } from '$lib/solution/document.ts';
import { sideNames, type Project, type SideName } from '$lib/project/project.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import type { Block } from './block.ts';

/** What a build sheet is made from. */
export interface Subject {
  readonly plan: Plan;
  /** How the parts lie; empty where that is not known. */
  readonly sheets: readonly Sheet[];
  /** Address that opens the project. Left out where there is none: among files that hold the project itself. */
  readonly link?: string | null;
}

/** Stands that are made alike are told of once. */
export interface Told {
  readonly side: SideName;
  /** `Each stand`, `Left stand`: counts under it are for that one stand. */
  readonly who: string;
  readonly stand: StandPlan;
}

export function toldStands({ stand }: Pick<Plan, 'stand'>): readonly Told[] {
  const said = (one: StandPlan): string =>
    JSON.stringify([one.steps, one.widths, one.blocks, one.printed, one.pieces, one.notes]);
  if (said(stand.left) === said(stand.right)) return [{ side: 'right', who: 'Each stand', stand: stand.right }];
  return sideNames.map((side) => ({
    side,
    who: side === 'left' ? 'Left stand' : 'Right stand',
    stand: stand[side],
  }));
}

/** What is said of stands that differ elsewhere: told once where it is the same of both. */
export function alikeOnce<T>(
  told: readonly { readonly who: string; readonly of: T }[],
  say: (one: { readonly who: string; readonly of: T }) => readonly Block[],
): readonly Block[] {
  const [one, other] = told;
  const alike = one && other && JSON.stringify(one.of) === JSON.stringify(other.of);
  return alike ? say({ ...one, who: 'Each stand' }) : told.flatMap(say);
}

/**
 * Words for lengths in the project’s unit: bare for a table, to a hundredth of a millimetre for thicknesses, with the unit
 * for a sentence, and the unit alone.
 */
export const lengthsOf = ({ display }: Project) => ({
  fine: (mm: number): string => fineText(mm, display),
  fineFull: (mm: number): string => fineLength(mm, display),
  bare: (mm: number): string => lengthText(mm, display),
  /** Of what is cut: a sixteenth of an inch is too coarse for it. */
  cut: (mm: number): string => (display.length === 'mm' ? lengthText(mm, display) : fineText(mm, display)),
  full: (mm: number): string => lengthWithUnit(mm, display),
  unit: display.length === 'mm' ? 'mm' : 'inches',
});
