import type { SideName } from '$lib/project/project.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Plan, SidePlan } from '$lib/solution/document.ts';
import { angleText, lengthText, quantityText } from './formatNumber.ts';

export interface TitleCell {
  readonly name: string;
  readonly text: string;
  /** Whether a narrow sheet goes without it. */
  readonly minor: boolean;
}

/** The cells of the title block: whose drawing it is, and the numbers that one aims for, of both sides where they are alike. */
export function titleCells(solution: Plan, side: SideName): readonly TitleCell[] {
  const { project, layout, triangle, sides } = solution;
  const unit = project.display;
  const plain = (name: string, text: string, minor = false): TitleCell => ({ name, text, minor });
  const ofSide = (name: string, write: (of: SidePlan) => string, minor = false): TitleCell => {
    const alike = write(sides.left) === write(sides.right);
    return { name: `${name}, ${alike ? 'each' : side}`, text: write(sides[side]), minor };
  };
  return [
    plain('Project', project.title, true),
    plain('Layout', layout.name, true),
    ofSide('Toe', ({ toe }) => angleText(toe)),
    ofSide('Tilt', ({ tilt }) => angleText(tilt)),
    ofSide('Lift', ({ lift }) => shortLength(lift, unit)),
    plain('Triangle', angleText(triangle.angle)),
    ofSide('Axis passes the head by', ({ miss }) => shortLength(miss, unit), true),
  ];
}

/** A tape carries no finer digit than a millimetre, or a fraction of an inch. */
const shortLength = (mm: number, lengths: LengthDisplay): string =>
  lengths.length === 'mm' ? quantityText(mm, 0, 'mm') : lengthText(mm, lengths);
