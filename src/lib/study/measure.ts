import type { Vec3 } from '$lib/geometry/point.ts';
import { headOf } from '$lib/layout/ears.ts';
import type { Layout, SideName } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import type { SidePlan } from '$lib/solution/document.ts';
import { seatsOf } from '$lib/solution/headVoices.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { standingOf, type Standing } from '$lib/solution/sound/heard.ts';

/** One number that a layout is judged by. */
export type Measure = MeasureText & Worked;

export interface MeasureText {
  /** As commands and files name it. */
  readonly name: string;
  readonly label: string;
  /** Empty for a number of things. */
  readonly unit: '°' | 'mm' | 'µs' | 'dB' | 'kg' | '%' | '';
  readonly better: 'less' | 'more';
  /** What it says of a layout, one sentence. */
  readonly says: string;
  /** How it is worked out. */
  readonly working: string;
  /** Where it passes from good to bad by the checks, and what says so. */
  readonly limit?: { readonly value: number; readonly source: string };
  /** What it means that it is null, for a layout that has a plan: nothing can be better, or nothing is known. Absent where it never is. */
  readonly missing?: { readonly means: string; readonly is: 'best' | 'unknown' };
}

/**
 * What it is worked out from: `aim` and `bodies` from the pair, `heard` from what reaches the head of it, the rest from the
 * whole solution: its stands, its sound and findings, its sheets.
 */
type Worked =
  | { readonly needs: 'aim'; readonly of: (aimed: Aimed) => number | null }
  | { readonly needs: 'bodies'; readonly of: (bodies: Bodies) => number | null }
  | { readonly needs: 'heard'; readonly of: (standing: Standing) => number | null }
  | { readonly needs: 'stands' | 'sound' | 'sheets'; readonly of: (solution: Solution) => number | null };

/** A pair that is aimed: mm, angles in degrees. */
export interface Aimed {
  /** Of every way of sitting, the planned one first. */
  readonly heads: readonly [Vec3, ...Vec3[]];
  /** m/s. */
  readonly speedOfSound: number;
  readonly sides: Readonly<Record<SideName, AimedSide>>;
  /** Where head and marks were before: what a move is counted from. Null where there is no before. */
  readonly before: Places | null;
}

export type AimedSide = Pick<
  SidePlan,
  'toe' | 'tilt' | 'lift' | 'frontEdgeHeight' | 'rearEdgeHeight' | 'mark' | 'aimedPoint' | 'axis' | 'miss'
>;

/** Where everything is that can be moved. */
export interface Places {
  readonly head: Vec3;
  readonly marks: Readonly<Record<SideName, { readonly x: number; readonly y: number }>>;
}

/** The two cabinets, eight corners each as a plan has them, and what is around them. */
export interface Bodies {
  readonly layout: Layout;
  readonly head: Vec3;
  readonly sides: Readonly<Record<SideName, Pick<SidePlan, 'cabinet'>>>;
}

export const placesOf = ({ listener, desk, placement }: Layout): Places => ({
  head: headOf(listener, desk),
  marks: placement,
});

/** How far head and marks have moved, all three added up, mm. */
export const moved = ({ head: was, marks }: Places, head: Vec3, { left, right }: Aimed['sides']): number =>
  away(head.x - was.x, head.y - was.y, head.z - was.z) +
  away(left.mark.x - marks.left.x, left.mark.y - marks.left.y, 0) +
  away(right.mark.x - marks.right.x, right.mark.y - marks.right.y, 0);

/** `Math.hypot` takes several times as long, which a search notices. */
const away = (x: number, y: number, z: number): number => Math.sqrt(x * x + y * y + z * z);

/** A measure of a solution. @param before The layout that a move is counted from. */
export function measureOf(measure: Measure, solution: Solution, before: Layout | null): number | null {
  switch (measure.needs) {
    case 'aim':
      return measure.of(aimedOf(solution, before));
    case 'heard':
      return measure.of(standingOf(asStood(solution.project.speaker), solution.layout, solution));
    case 'bodies':
    case 'stands':
    case 'sound':
    case 'sheets':
      return measure.of(solution);
  }
}

function aimedOf(solution: Solution, before: Layout | null): Aimed {
  const [planned, ...others] = seatsOf(solution.layout, solution);
  return {
    heads: [planned.head, ...others.map(({ head }) => head)],
    speedOfSound: solution.speedOfSound,
    sides: solution.sides,
    before: before && placesOf(before),
  };
}
