import { along, between, dot, length, subtract, type Vec3 } from '$lib/geometry/point.ts';
import { rootBetween } from '$lib/geometry/root.ts';
import { relativeDifference, sumLevelAt, type Meeting } from './driversMeet.ts';

/** Where the sum of two drivers is loud and where it is not, up and down past the ear. Angles in radians, lengths in mm. */
export interface Lobe {
  /** Middle between the two acoustic centres: where the angles are taken. */
  readonly centre: Vec3;
  /** Unit vectors of the plane: along the axis, and square to it towards the upper driver. */
  readonly forward: Vec3;
  readonly upward: Vec3;
  /** Distance from `centre` to the head: the circle that the lobe is taken on. */
  readonly radius: number;
  /** Of the head, seen from `centre`, its sideways part left out: positive towards the upper driver. */
  readonly ear: number;
  /** The half-power points next above and next below the ear, and the nulls; null where there is none in front. */
  readonly halfPower: Bounds;
  readonly nulls: Bounds;
  /** The curve for drawing: angles evenly from −90° to 90°, levels in dB re the drivers lined up, −60 at the least. */
  readonly angles: Float64Array;
  readonly levels: Float64Array;
}

export interface Bounds {
  readonly below: number | null;
  readonly above: number | null;
}

/** One point a degree. */
const POINTS = 181;
/** A drawing shows no deeper null than this, dB. */
const DRAWN_FLOOR = -60;
/** A search for an angle ends when the phase is this near, radians: what rounding leaves of a path of a metre in waves of a few centimetres. */
const SETTLED = 1e-11;
/** Acoustic centres nearer to one line along the axis than this have no up and down, mm. */
const IN_LINE = 1e-6;

/**
 * The lobe of a crossover at its frequency: the level over the elevation angle, in the plane of the two acoustic centres
 * and the axis, on the circle through the head, so near by as the head really is. Two equally strong branches, no
 * directivity. Null for drivers that lie on one line along the axis (coaxial): their sum has no lobe.
 */
export function lobeOf(meeting: Meeting, axis: Vec3, head: Vec3): Lobe | null {
  const { lower, upper } = meeting;
  const span = subtract(upper.acousticCentre, lower.acousticCentre);
  const depth = dot(span, axis);
  const aside = along(span, axis, -depth);
  const height = length(aside);
  if (height < IN_LINE) return null;
  const centre = between(lower.acousticCentre, upper.acousticCentre, 0.5);
  const upward = along({ x: 0, y: 0, z: 0 }, aside, 1 / height);
  const toHead = subtract(head, centre);
  const radius = length(toHead);
  const ear = Math.atan2(dot(toHead, upward), dot(toHead, axis));
  const phaseAt = (angle: number): number => {
    const point = along(along(centre, axis, radius * Math.cos(angle)), upward, radius * Math.sin(angle));
    return relativeDifference(meeting, point) * meeting.perMillimetre;
  };
  // From straight past the lower driver to straight past the upper one the path difference only grows; beyond, it shrinks.
  const top = Math.atan2(height, depth);
  const bends = [top - Math.PI, top];
  const bounds = (lags: readonly number[]): Bounds => nearest(meeting, phaseAt, bends, ear, lags);
  const half = 2 * Math.acos(Math.SQRT1_2 * Math.cos(meeting.filterLag / 2));
  const angles = Float64Array.from({ length: POINTS }, (_, i) => (i / (POINTS - 1) - 0.5) * Math.PI);
  return {
    centre,
    forward: axis,
    upward,
    radius,
    ear,
    halfPower: bounds([half, -half]),
    nulls: bounds([Math.PI]),
    angles,
    levels: angles.map((angle) => Math.max(sumLevelAt(meeting, phaseAt(angle)) ?? DRAWN_FLOOR, DRAWN_FLOOR)),
  };
}

/**
 * The angles nearest the ear on both sides at which the whole lag, filter and path, is one of `lags` but for full turns.
 * `bends` are the angles at which the phase turns from shrinking to growing or back.
 */
function nearest(
  { filterLag }: Meeting,
  phaseAt: (angle: number) => number,
  bends: readonly number[],
  ear: number,
  lags: readonly number[],
): Bounds {
  const from = Math.min(Math.max(ear, -Math.PI / 2), Math.PI / 2);
  const next = (way: 1 | -1): number | null => {
    const end = (way * Math.PI) / 2;
    const stops = bends.filter((bend) => way * (bend - from) > 0 && way * (end - bend) > 0);
    const ends = [...stops.sort((a, b) => way * (a - b)), end];
    for (const [i, stop] of ends.entries()) {
      const met = firstOn(phaseAt, filterLag, i === 0 ? from : (ends[i - 1] ?? from), stop, lags);
      if (met !== null) return met;
    }
    return null;
  };
  return { below: next(-1), above: next(1) };
}

/** The first angle on the way from `start` to `stop`, between which the phase only grows or only shrinks. */
function firstOn(
  phaseAt: (angle: number) => number,
  filterLag: number,
  start: number,
  stop: number,
  lags: readonly number[],
): number | null {
  const turn = 2 * Math.PI;
  const here = phaseAt(start) + filterLag;
  const growth = phaseAt(stop) + filterLag - here;
  const sense = growth < 0 ? -1 : 1;
  const steps = lags.map((lag) => (((sense * (lag - here)) % turn) + turn) % turn);
  const step = Math.min(...steps);
  if (step > Math.abs(growth)) return null;
  const target = here + sense * step - filterLag;
  return rootBetween(
    (angle) => {
      const miss = phaseAt(angle) - target;
      return Math.abs(miss) < SETTLED ? 0 : miss;
    },
    start,
    stop,
  );
}
