import { degrees } from '$lib/geometry/angle.ts';
import { subtract, type Point } from '$lib/geometry/point.ts';
import { spreadEllipse, type Ellipse } from '$lib/geometry/spreadEllipse.ts';
import { crossoverSums } from '$lib/acoustics/crossover.ts';
import { aimSpread } from '$lib/layout/aimSpread.ts';
import { headOf } from '$lib/layout/ears.ts';
import { cutNudges, missShifts } from '$lib/layout/missSpread.ts';
import type { Scene } from '$lib/layout/nudges.ts';
import { asCut, onCard } from '$lib/layout/passing.ts';
import { placeSide } from '$lib/layout/place.ts';
import { angleAtHead } from '$lib/layout/triangle.ts';
import { sideNames, type Layout, type Project, type SideName } from '$lib/project/project.ts';
import type { SureKey } from '$lib/project/sure.ts';
import type { SidePlan } from './document.ts';

/** What one measured value leaves open at the head. */
export interface SureShare {
  readonly value: SureKey;
  /** How far it may be off, to both sides: mm, degrees for the rake. */
  readonly span: number;
  /** By how far the axis then passes the head from where it is planned, on a card square to the axis: to the right, and up, mm. */
  readonly shift: Point;
  /** Its part of all that is open, 0…1: of the sum of squares. */
  readonly share: number;
}

/** What the tape leaves open of one side. */
export interface SideSure {
  /** Degrees, and mm of the lift: to both sides, as `MeasuredSpread.all`. */
  readonly aim: { readonly toe: number; readonly tilt: number; readonly lift: number };
  /** Where the axis is planned to pass the head, on a card square to it: to the right, and up, mm. */
  readonly passes: Point;
  /** Where it passes in 95 % of cases, round that point; mm, and degrees from level. */
  readonly ellipse: Ellipse;
  /** Each value, the one that does the most first. */
  readonly by: readonly SureShare[];
  /** To both sides, degrees at the frequency of each crossover. */
  readonly crossovers: readonly { readonly between: readonly [string, string]; readonly phase: number }[];
}

/** How sure the plan is: what the doubts of the measured values do at the head, to the first order. */
export interface SurePlan {
  readonly sides: Readonly<Record<SideName, SideSure>>;
  /** Of the triangle's angle at the head, to both sides, degrees. */
  readonly triangle: number;
}

/**
 * What the project's `sure` leaves open of stands that are cut by the layout's numbers: each value by itself, off by all of
 * its span either way, half the difference of the two; together as the root of the sum of squares (GUM 5.1.2, of values
 * that know nothing of each other). Null where the aim has no answer.
 */
export function howSure(
  { speaker, sure }: Project,
  layout: Layout,
  { sides, speedOfSound }: { readonly sides: Record<SideName, SidePlan>; readonly speedOfSound: number },
): SurePlan | null {
  const poses = { left: placeSide(speaker, layout, 'left'), right: placeSide(speaker, layout, 'right') };
  if (!poses.left.ok || !poses.right.ok) return null;
  const cut = {
    left: { speaker, layout: asCut(layout, poses.left.value) },
    right: { speaker, layout: asCut(layout, poses.right.value) },
  };
  const atHead = (scenes: Readonly<Record<SideName, Scene>>) => heardAt(scenes, speedOfSound);
  const ends = cutNudges.flatMap(([key, nudge]) =>
    movedBy(key).map((moved) => {
      const off = (side: SideName, by: number): Scene => (moved.includes(side) ? nudge(cut[side], by) : cut[side]);
      const both = (by: number) => atHead({ left: off('left', by), right: off('right', by) });
      return [both(-sure[key]), both(sure[key])] as const;
    }),
  );
  const spread = (of: (heard: Heard) => number): number =>
    degrees(Math.hypot(...ends.map(([less, more]) => (less && more ? (of(more) - of(less)) / 2 : 0))));
  const sideSure = (side: SideName): SideSure => {
    const aim = aimSpread(speaker, layout, side, sure)?.all ?? { toe: 0, tilt: 0, lift: 0 };
    const { axis, nearest, crossovers } = sides[side];
    const card = onCard(axis);
    const head = headOf(layout.listener, layout.desk);
    const shifts = [...(missShifts(speaker, layout, side, sure) ?? [])].map(([value, by]) => ({
      value,
      shift: card(by),
    }));
    const { major, minor, turn } = spreadEllipse(shifts.map(({ shift }) => shift));
    const whole = shifts.reduce((sum, { shift }) => sum + square(shift), 0);
    return {
      aim: { toe: degrees(aim.toe), tilt: degrees(aim.tilt), lift: aim.lift },
      passes: card(subtract(nearest, head)),
      ellipse: { major, minor, turn: degrees(turn) },
      by: shifts
        .map(({ value, shift }) => ({ value, span: sure[value], shift, share: whole > 0 ? square(shift) / whole : 0 }))
        .sort((a, b) => b.share - a.share),
      crossovers: crossovers.map(({ between }, index) => ({
        between,
        phase: spread((heard) => heard.phases[side][index] ?? 0),
      })),
    };
  };
  return { sides: { left: sideSure('left'), right: sideSure('right') }, triangle: spread(({ angle }) => angle) };
}

/** Which sides one error moves at once: each mark is taped by itself, all else is measured once for both. */
const movedBy = (key: SureKey): readonly (readonly SideName[])[] =>
  key === 'markX' || key === 'markY' ? [['left'], ['right']] : [sideNames];

/** What a scene comes to at the head, radians. */
interface Heard {
  readonly angle: number;
  readonly phases: Readonly<Record<SideName, readonly number[]>>;
}

/** Each side in a scene of its own, for each is cut by its own aim; the head is the same in both. Null where one has no answer. */
function heardAt(scenes: Readonly<Record<SideName, Scene>>, speed: number): Heard | null {
  const { speaker, layout } = scenes.left;
  const head = headOf(layout.listener, layout.desk);
  const [left, right] = sideNames.map((side) => placeSide(scenes[side].speaker, scenes[side].layout, side));
  if (!left?.ok || !right?.ok) return null;
  const phases = (drivers: typeof left.value.drivers): readonly number[] =>
    crossoverSums(speaker.crossovers, drivers, null, head, speed).map(({ phase }) => phase);
  return {
    angle: angleAtHead(left.value.aimedPoint, right.value.aimedPoint, head),
    phases: { left: phases(left.value.drivers), right: phases(right.value.drivers) },
  };
}

const square = ([x, y]: Point): number => x * x + y * y;
