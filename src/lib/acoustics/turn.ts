import { frequencies, type Places } from './grid.ts';

/** Entries round a turn. */
const PARTS = 1024;
const cosines = Float64Array.from({ length: PARTS }, (_, i) => Math.cos((2 * Math.PI * i) / PARTS));
const sines = Float64Array.from({ length: PARTS }, (_, i) => Math.sin((2 * Math.PI * i) / PARTS));

const nearest = (angle: number): number => Math.floor((angle * PARTS) / (2 * Math.PI) + 0.5);
const past = (angle: number, place: number): number => angle - (place * 2 * Math.PI) / PARTS;

/**
 * Cosine and sine several times as fast as the language's own, for sums over thousands of frequencies and paths: by the
 * angle's own digits as exact, within 1e-15 for each radian of it. From the nearest of 1024 parts of a turn the addition
 * theorem leads on, with the series of the at most 0.0031 rad that are left; its next term is under 1e-18. The angle is
 * in radians, a million turns at most.
 */
export function cosineNear(angle: number): number {
  const place = nearest(angle);
  const rest = past(angle, place);
  const square = rest * rest;
  const i = place & (PARTS - 1);
  return (cosines[i] ?? 0) * (1 - (square / 2) * (1 - square / 12)) - (sines[i] ?? 0) * rest * (1 - (square / 6) * (1 - square / 20)); // prettier-ignore
}

/** See `cosineNear`. */
export function sineNear(angle: number): number {
  const place = nearest(angle);
  const rest = past(angle, place);
  const square = rest * rest;
  const i = place & (PARTS - 1);
  return (sines[i] ?? 0) * (1 - (square / 2) * (1 - square / 12)) + (cosines[i] ?? 0) * rest * (1 - (square / 6) * (1 - square / 20)); // prettier-ignore
}

/** Both at so many radians for each Hz, at some places of the grid. */
export function turnAlong(perHertz: number, { first, end }: Places, cosine: Float64Array, sine: Float64Array): void {
  for (let at = first; at < end; at++) {
    const angle = perHertz * (frequencies[at] ?? 0);
    const place = nearest(angle);
    const rest = past(angle, place);
    const square = rest * rest;
    const i = place & (PARTS - 1);
    const [c, s] = [cosines[i] ?? 0, sines[i] ?? 0];
    const onward = 1 - (square / 2) * (1 - square / 12);
    const aside = rest * (1 - (square / 6) * (1 - square / 20));
    cosine[at] = c * onward - s * aside;
    sine[at] = s * onward + c * aside;
  }
}
