import { radians } from '$lib/geometry/angle.ts';
import { clipConvex } from '$lib/geometry/clipConvex.ts';
import { apart } from '$lib/geometry/plane.ts';
import { distance, type Point } from '$lib/geometry/point.ts';
import { sideNames, type SideName, type StandSettings, type Stock } from '$lib/project/project.ts';
import { baffleGauge, edgeGauge, type BaffleFace, type StandEdge } from '$lib/workshop/gauge.ts';
import type { Part } from '$lib/workshop/part.ts';
import type { Plan } from './document.ts';
import { standTop, type StandTop } from './standTop.ts';

/** Corners of two gauges nearer to each other than this, mm: one gauge. A tenth of what a beam or a saw can do. */
const ALIKE = 0.02;

/** A gauge that a side needs; both sides may need the same. */
interface Wanted {
  readonly name: string;
  readonly side: SideName;
  readonly make: (name: string, board: Pick<Stock, 'name' | 'thickness'>) => Part | null;
}

/**
 * Gauges to check the finished stands by: one for each upper edge along the sides and, where that slopes, along the front;
 * one for the baffle. Both stands share a gauge where theirs agree: turned over, it fits a mirror image too.
 */
export function planGauges(plan: Pick<Plan, 'sides' | 'stand'>, settings: Pick<StandSettings, 'pad'>): readonly Part[] {
  const wanted = (['right', 'left'] as const).flatMap((side) => wantedFor(plan, side, settings));
  const parts: Part[] = [];
  for (const name of new Set(wanted.map((one) => one.name))) {
    const made = wanted.flatMap(({ name: own, side, make }) => {
      const { stock, thickness } = plan.stand[side];
      const part = (of: string): Part | null => make(of, { name: stock, thickness });
      return own === name ? [{ shared: part(name), own: () => part(`${name}-${side}`) }] : [];
    });
    const [one, other] = made;
    if (made.length === sideNames.length && one?.shared && other?.shared && alike(one.shared, other.shared)) {
      parts.push(one.shared);
    } else parts.push(...made.flatMap(({ own }) => own() ?? []));
  }
  return parts;
}

const alike = (a: Part, b: Part): boolean =>
  a.stock === b.stock &&
  a.outside.vertices.length === b.outside.vertices.length &&
  a.outside.vertices.every(({ x, y }, i) => {
    const other = b.outside.vertices[i];
    return other !== undefined && apart([x, y], [other.x, other.y]) <= ALIKE;
  });

function wantedFor(
  plan: Pick<Plan, 'sides' | 'stand'>,
  side: SideName,
  settings: Pick<StandSettings, 'pad'>,
): readonly Wanted[] {
  const top = standTop(plan, side, settings);
  if (!top) return [];
  const { frontInboard, rearInboard, frontOutboard, rearOutboard } = top.corners;
  const edge = (from: Point, to: Point): StandEdge => ({
    length: apart(from, to),
    start: top.height(from),
    end: top.height(to),
  });
  const [inboard, outboard, front] = [
    edge(frontInboard, rearInboard),
    edge(frontOutboard, rearOutboard),
    edge(frontInboard, frontOutboard),
  ];
  const along = (name: string, start: string, of: StandEdge): Wanted => ({
    name,
    side,
    make: (shown, board) => edgeGauge(shown, start, of, board),
  });
  const level = Math.abs(front.start - front.end) <= ALIKE;
  const baffle = baffleOf(plan, side, top);
  return [
    ...(level
      ? [along('wedge-gauge', 'front', inboard)]
      : [
          along('wedge-gauge-inboard', 'front', inboard),
          along('wedge-gauge-outboard', 'front', outboard),
          along('front-gauge', 'inboard', front),
        ]),
    ...(baffle
      ? [{ name: 'baffle-gauge', side, make: (name, board) => baffleGauge(name, baffle, board) } satisfies Wanted]
      : []),
  ];
}

/** The baffle with what stands before it, wherever along its width the gauge is held; null where a plan has no cabinet. */
function baffleOf({ sides, stand }: Pick<Plan, 'sides' | 'stand'>, side: SideName, top: StandTop): BaffleFace | null {
  const { axisElevation, frontEdgeHeight, mark, toe, cabinet } = sides[side];
  const [outboard, inboard, , , above] = cabinet;
  if (!outboard || !inboard || !above) return null;
  const mirror = side === 'right' ? 1 : -1;
  const back: Point = [mirror * Math.sin(radians(toe)), Math.cos(radians(toe))];
  const { base, profile, footprint } = stand[side];
  const before =
    base === 'turned'
      ? profile.flatMap(([u, z]) => (u <= 0 ? [{ out: -u, wood: z }] : []))
      : beforeBaffle(footprint, mark, back, distance(outboard, inboard) / 2).map((at) => ({
          out: (mark.x - at[0]) * back[0] + (mark.y - at[1]) * back[1],
          wood: top.height(at),
        }));
  const front = Math.min(outboard.y, inboard.y);
  return {
    elevation: radians(axisElevation),
    foot: frontEdgeHeight,
    height: above.z - outboard.z,
    before: Math.max(0, ...before.map(({ out }) => out)),
    wood: Math.max(0, ...before.map(({ wood }) => wood)),
    // The desk ends at y = 0; a gauge held at the end of the baffle that is nearer to its edge has the least room.
    room: front / back[1],
  };
}

/** What of a base lies before the baffle, no further aside than its ends. */
function beforeBaffle(
  footprint: readonly Point[],
  { x, y }: { readonly x: number; readonly y: number },
  back: Point,
  half: number,
): readonly Point[] {
  const at = (u: number, across: number): Point => [
    x + u * back[0] + across * back[1],
    y + u * back[1] - across * back[0],
  ];
  const ahead = clipConvex(footprint, at(0, 1), at(0, 0));
  return clipConvex(clipConvex(ahead, at(0, half), at(1, half)), at(0, -half), at(-1, -half));
}
