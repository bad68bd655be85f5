import { dot, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Transfer } from './branches.ts';
import { addBeyond } from './fresnel.ts';
import { EVERYWHERE, FREQUENCIES, type Places } from './grid.ts';
import type { Screen } from './screens.ts';

/** What a body near a straight way does to the sound on it: everything that does not change with frequency. */
export interface Shade {
  /** How much of it counts, 0…1. */
  readonly weight: number;
  /** Fresnel's v of its four edges for each √Hz, two that face each other at a time; positive right of the way or over it. */
  readonly across: readonly [number, number];
  readonly up: readonly [number, number];
}

/** A way shorter than this has no direction, mm. */
const NO_WAY = 1e-6;

/**
 * The bodies that take something off what goes straight from one point to another, or add to it. A body counts as a black
 * screen square to the way, the rectangle round its outline as seen along it: v = ±2√(δ/λ) at each edge, δ the detour by
 * it (Kirchhoff and Fresnel; for one edge the loss of ITU-R P.526). Its weight is the share of its depth that lies
 * between the two points, and falls from 1 where the way goes through it or grazes it to 0 where sound would have to turn
 * by 60° to touch it, so that nothing jumps as anything moves; rules of thumb. `speed` is the speed of sound, m/s.
 */
export function shadesOn(from: Vec3, to: Vec3, screens: readonly Screen[], speed: number): Shade[] {
  const way = subtract(to, from);
  const reach = Math.sqrt(dot(way, way));
  if (reach < NO_WAY) return [];
  const ahead = scale(way, 1 / reach);
  const level = Math.hypot(ahead.x, ahead.y);
  const right = level < NO_WAY ? vec3(1, 0, 0) : vec3(ahead.y / level, -ahead.x / level, 0);
  const above = vec3(
    right.y * ahead.z - right.z * ahead.y,
    right.z * ahead.x - right.x * ahead.z,
    right.x * ahead.y - right.y * ahead.x,
  );
  return screens.flatMap(({ body }): Shade[] => {
    const spanAlong = (axis: Vec3): readonly [number, number] => {
      let [least, most] = [Infinity, -Infinity];
      for (const corner of body.vertices) {
        const at = dot(subtract(corner, from), axis);
        if (at < least) least = at;
        if (at > most) most = at;
      }
      return [least, most];
    };
    const depth = spanAlong(ahead);
    const [first, last] = [Math.max(depth[0], 0), Math.min(depth[1], reach)];
    if (last <= first) return [];
    const [before, after] = [(first + last) / 2, reach - (first + last) / 2];
    const [across, up] = [spanAlong(right), spanAlong(above)];
    const beside = Math.hypot(outside(across), outside(up));
    const turned = (before * after - beside ** 2) / (Math.hypot(before, beside) * Math.hypot(after, beside));
    const weight = ((last - first) / (depth[1] - depth[0])) * Math.max(0, 2 * turned - 1);
    if (weight === 0) return [];
    const edge = (off: number): number => {
      const square = off * off;
      // Without the difference of two nearly equal numbers.
      const detour = square / (Math.hypot(before, off) + before) + square / (Math.hypot(after, off) + after);
      return Math.sign(off) * 2 * Math.sqrt(detour / (1000 * speed));
    };
    return [{ weight, across: [edge(across[0]), edge(across[1])], up: [edge(up[0]), edge(up[1])] }];
  });
}

/** How far 0 is outside a span; 0 within it. */
const outside = ([least, most]: readonly [number, number]): number => Math.max(0, least, -most);

/** Written over by each body. */
const lane = (): Transfer => ({ re: new Float64Array(FREQUENCIES), im: new Float64Array(FREQUENCIES) });
const [across, up] = [lane(), lane()];

/**
 * Multiplies a sum at some places of the grid by what bodies leave of it: 1 − weight · ½j · ∫e^(−jπt²/2)dt across ·
 * ∫e^(−jπt²/2)dt up, for each of them, each integral from edge to edge.
 */
export function shade({ re, im }: Transfer, shades: readonly Shade[], places = EVERYWHERE): void {
  for (const one of shades) {
    between(one.across, across, places);
    between(one.up, up, places);
    for (let i = places.first; i < places.end; i++) {
      const a = across.re[i] ?? 0;
      const b = across.im[i] ?? 0;
      const c = up.re[i] ?? 0;
      const d = up.im[i] ?? 0;
      const left = 1 + (one.weight / 2) * (a * d + b * c);
      const turned = (-one.weight / 2) * (a * c - b * d);
      const x = re[i] ?? 0;
      const y = im[i] ?? 0;
      re[i] = x * left - y * turned;
      im[i] = x * turned + y * left;
    }
  }
}

/** ∫e^(−jπt²/2)dt from edge to edge at each frequency. */
function between([low, high]: readonly [number, number], into: Transfer, places: Places): void {
  into.re.fill(0, places.first, places.end);
  into.im.fill(0, places.first, places.end);
  addBeyond(low, 1, places, into);
  addBeyond(high, -1, places, into);
}
