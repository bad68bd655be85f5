import { apart, minus, outer, shifted, unit } from '$lib/geometry/plane.ts';
import type { Point, Vec3 } from '$lib/geometry/point.ts';
import type { SideName, StandSettings } from '$lib/project/project.ts';
import type { Plan } from './document.ts';
import { standTop, type StandTop } from './standTop.ts';

/** Where one end of the line of the cabinet's front bottom edge leaves the top of the stand's wood. mm. */
export interface SeatEnd {
  readonly end: 'inboard' | 'outboard';
  /** The edge of the top that the line meets: the side at this end, or the front edge. */
  readonly edge: 'side' | 'front';
  /** Along that edge from the front corner at this end. */
  readonly fromCorner: number;
  /** Along the line, how far the cabinet's corner lies beyond the edge; negative inside it. */
  readonly beyond: number;
}

/** Nearer to a corner than this, mm, the line meets the corner. */
const DUST = 1e-6;

/**
 * Where the cabinet's front edge goes on the finished wood, so that its front bottom edge stands over the mark: both ends of
 * its line. Empty where the line misses the top, lies against a stop, or the plan holds no cabinet.
 */
export function cabinetSeat(
  plan: Pick<Plan, 'sides' | 'stand'>,
  side: SideName,
  settings: Pick<StandSettings, 'pad' | 'stop'>,
): readonly SeatEnd[] {
  const top = standTop(plan, side, settings);
  if (!top || liesOnStop(plan, side, settings)) return [];
  const { frontInboard, rearInboard, frontOutboard, rearOutboard } = top.corners;
  const lead = leadOf(plan, side);
  const { inboard, outboard } = top.frontEdge;
  const place = (end: SeatEnd['end']): SeatEnd | null => {
    const inner = end === 'inboard';
    const [own, other] = inner ? [inboard, outboard] : [outboard, inboard];
    const [front, rear] = inner ? [frontInboard, rearInboard] : [frontOutboard, rearOutboard];
    const across = inner ? frontOutboard : frontInboard;
    const start = shifted(front, unit(minus(rear, front)), lead);
    return (
      met(top, end, 'side', start, rear, own, other) ??
      met(top, end, 'front', start, shifted(across, minus(start, front)), own, other)
    );
  };
  const ends = (['inboard', 'outboard'] as const).flatMap((end) => place(end) ?? []);
  return ends.length === 2 ? ends : [];
}

/** Whether the cabinet's front edge lies against a stop: that stands at the low end. */
export const liesOnStop = (
  { sides }: Pick<Plan, 'sides'>,
  side: SideName,
  { stop }: Pick<StandSettings, 'stop'>,
): boolean => stop !== null && sides[side].tilt < 0;

/** How far behind the base's front corner the top's lies, in plan: ends that are square to the slope lean. */
function leadOf({ stand }: Pick<Plan, 'stand'>, side: SideName): number {
  const { base, profile } = stand[side];
  const [foot, top] = [profile[0], profile.at(-1)];
  return base === 'turned' && foot && top ? top[0] - foot[0] : 0;
}

/** The line through both ends of the cabinet's front edge and an edge of the top; null where they do not meet on it. */
function met(
  top: StandTop,
  end: SeatEnd['end'],
  edge: SeatEnd['edge'],
  corner: Point,
  far: Point,
  own: Vec3,
  other: Vec3,
): SeatEnd | null {
  const run = minus(far, corner);
  const line: Point = [own.x - other.x, own.y - other.y];
  const across = outer(run, line);
  if (Math.abs(across) < DUST) return null;
  const share = outer([own.x - corner[0], own.y - corner[1]], line) / across;
  const length = apart(corner, far);
  if (share * length < -DUST || share * length > length + DUST) return null;
  const at = shifted(corner, run, share);
  const onTop = (from: Point, to: Point): number => Math.hypot(apart(from, to), top.height(to) - top.height(from));
  const outwards = (own.x - at[0]) * line[0] + (own.y - at[1]) * line[1] < 0 ? -1 : 1;
  return { end, edge, fromCorner: onTop(corner, at), beyond: outwards * onTop(at, [own.x, own.y]) };
}
