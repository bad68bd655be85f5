import { degrees, radians } from '$lib/geometry/angle.ts';
import { along, dot, subtract, type Vec3 } from '$lib/geometry/point.ts';
import type { Cabinet, Stood } from './standing.ts';
import type { Taken } from './taken.ts';

/** What readings are taken against, beside the cabinet. */
export interface Surroundings {
  readonly head: Vec3;
  /** Thickness of the pad between stand and cabinet, mm. */
  readonly pad: number;
}

/** A reading as numbers: one, or two for a place. mm and radians. */
export interface Numbers {
  readonly read: readonly number[];
  /** Standard deviation of each. */
  readonly deviation: number;
}

/** Standard deviations in half of a span that holds 95 of 100 normal errors. */
export const HALF_SPAN = 1.959964;

export function numbersOf(reading: Taken): Numbers {
  const deviation = reading.sure / HALF_SPAN;
  switch (reading.what) {
    case 'slope':
    case 'lean':
    case 'toe':
      return { read: [radians(reading.value)], deviation: radians(deviation) };
    case 'mark':
    case 'corner':
      return { read: [reading.x, reading.y], deviation };
    case 'spot':
      return { read: [reading.x, reading.z], deviation };
    default:
      return { read: [reading.value], deviation };
  }
}

/**
 * What a reading would be of a cabinet that stands so. Heights count from the surface that the stand is on; those of the stand's
 * top lie a pad under the cabinet's bottom. Of a place or a spot two numbers, in the order of `numbersOf`.
 */
export function expectedOf(reading: Taken, cabinet: Cabinet, at: Stood, around: Surroundings): readonly number[] {
  const { depth, width } = cabinet;
  const underneath = (rearwards: number, inwards: number): readonly number[] => [
    at.onBottom(rearwards, inwards).z - cabinet.base - around.pad / at.normal.z,
  ];
  switch (reading.what) {
    case 'front-height':
      return underneath(0, 0);
    case 'rear-height':
      return underneath(depth, 0);
    case 'inboard-height':
      return underneath(depth / 2, width / 2);
    case 'outboard-height':
      return underneath(depth / 2, -width / 2);
    case 'slope':
      return [slopeOf(at)];
    case 'rise':
      return [reading.run * Math.tan(slopeOf(at))];
    case 'lean':
      return [Math.atan2(at.forward.z, Math.hypot(at.forward.x, at.forward.y))];
    case 'toe':
      return [Math.atan2(cabinet.side === 'left' ? -at.rear.x : at.rear.x, at.rear.y)];
    case 'mark':
      return [at.front.x, at.front.y];
    case 'corner': {
      const { x, y } = at.onBottom(
        reading.which.startsWith('front') ? 0 : depth,
        reading.which.endsWith('inboard') ? width / 2 : -width / 2,
      );
      return [x, y];
    }
    case 'driver-height': {
      const driver = cabinet.drivers.find(({ name }) => name === reading.driver);
      return driver ? [at.onBaffle(driver).z - cabinet.base] : [NaN];
    }
    case 'spot': {
      const { x, z } = spotOf(at, cabinet, reading.on, around.head);
      return [x, z - cabinet.base];
    }
  }
}

/** The reading as somebody without any error takes it of a cabinet that stands so; null where it cannot be reckoned with. */
export function readAt(kind: Taken, cabinet: Cabinet, at: Stood, around: Surroundings): Taken | null {
  const [first = NaN, second = NaN] = expectedOf(kind, cabinet, at, around);
  if (!Number.isFinite(first)) return null;
  switch (kind.what) {
    case 'slope':
    case 'lean':
    case 'toe':
      return { ...kind, value: degrees(first) };
    case 'mark':
    case 'corner':
      return { ...kind, x: first, y: second };
    case 'spot':
      return { ...kind, x: first, z: second };
    default:
      return { ...kind, value: first };
  }
}

/** How steep the bottom is along the cabinet's depth, front high positive. */
const slopeOf = ({ rear }: Stood): number => Math.atan2(-rear.z, Math.hypot(rear.x, rear.y));

/** Where a light meets the plumb plane through the head that is square to y. */
function spotOf(at: Stood, cabinet: Cabinet, on: 'top' | 'baffle', head: Vec3): Vec3 {
  const [from, way] =
    on === 'top'
      ? [at.onBaffle({ height: cabinet.baffle, offset: 0 }), along(at.front, at.rear, -1)]
      : [at.onBaffle(cabinet.aimed), along(at.front, at.forward, 1)];
  const direction = subtract(way, at.front);
  return along(from, direction, dot(subtract(head, from), ACROSS) / dot(direction, ACROSS));
}

const ACROSS: Vec3 = { x: 0, y: 1, z: 0 };
