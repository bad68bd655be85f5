import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Body } from '$lib/workshop/body.ts';
import { triangulated } from './caps.ts';
import { flawOf, type Mesh, type Triangle } from './mesh.ts';
import { isWithin, raisedTo, ringOf, STEPS, touches, type Ring } from './ring.ts';

/**
 * The surface of a body as one closed mesh, triangles counter-clockwise seen from outside; where it leans its walls do. Lengths lie on a grid of a
 * micrometre, arcs are chords (see `CHORD_ERROR`): a level's volume is off by at most two thirds of the chord error times
 * the length of its arcs, and by a micrometre times the length of its outlines, both times its height.
 *
 * @throws RangeError naming the body where a height is not over 0, contours touch, a number is not finite, or levels meet
 * along an edge only: no closed surface tells such a body.
 */
export function bodyMesh(body: Body): Mesh {
  const levels = body.levels.map(({ contours }) =>
    distinct(
      contours.map((contour, i) => ringOf(contour, body.name, i === 0 ? body.roof : undefined)),
      body,
    ),
  );
  const heights = heightsOf(body);
  const corners = new Corners(heights);
  const triangles: Triangle[] = [];
  for (let floor = 0; floor <= levels.length; floor += 1) {
    const [below, above] = [levels[floor - 1] ?? [], levels[floor] ?? []];
    const share = corners.shareAt(floor);
    refuseTouching(
      [...below, ...above.filter((ring) => !holds(below, ring))].map((ring) => raisedTo(ring, share)),
      body,
    );
    triangles.push(...capsBetween(below, above, floor, corners, body), ...wallsFrom(levels, floor, corners));
  }
  const mesh = { vertices: corners.vertices, triangles };
  const flaw = flawOf(mesh);
  if (flaw !== null) throw new RangeError(`${body.name}: expected a closed body, got ${flaw}`);
  return mesh;
}

const holds = (rings: readonly Ring[], ring: Ring): boolean => rings.some(({ key }) => key === ring.key);

/** How many of the rings a ring lies in, itself left out. None of them touch, so one of its corners tells. */
function depthIn(rings: readonly Ring[], ring: Ring): number {
  const [corner] = ring.points;
  return corner ? rings.filter((other) => other.key !== ring.key && isWithin(corner, other)).length : 0;
}

/** The heights at which levels begin and end, from 0, in mm on the grid. */
function heightsOf(body: Body): number[] {
  const heights = [0];
  let sum = 0;
  for (const { height } of body.levels) {
    sum += height;
    const top = Math.round(sum * STEPS) / STEPS;
    if (!(top > (heights.at(-1) ?? 0) && Number.isFinite(top))) {
      throw new RangeError(`${body.name}: expected a height over ${1 / STEPS} mm, got ${height}`);
    }
    heights.push(top);
  }
  return heights;
}

function distinct(rings: Ring[], body: Body): Ring[] {
  if (new Set(rings.map(({ key }) => key)).size === rings.length) return rings;
  throw new RangeError(`${body.name}: expected contours that do not touch, got one twice`);
}

function refuseTouching(rings: readonly Ring[], body: Body): void {
  rings.forEach((ring, i) => {
    if (rings.slice(i + 1).some((other) => touches(ring, other))) {
      throw new RangeError(`${body.name}: expected contours that do not touch, got two that do`);
    }
  });
}

/** Corners of rings at the heights of floors, each made once. */
class Corners {
  readonly vertices: Vec3[] = [];
  readonly #first = new Map<string, number>();
  readonly #heights: readonly number[];

  constructor(heights: readonly number[]) {
    this.#heights = heights;
  }

  /** How high a floor lies, as a share of the whole body. */
  shareAt(floor: number): number {
    return (this.#heights[floor] ?? 0) / (this.#heights.at(-1) ?? 1);
  }

  /** The number of the ring's first corner at a floor; its others follow. */
  at(ring: Ring, floor: number): number {
    const name = `${floor} ${ring.key}`;
    const known = this.#first.get(name);
    if (known !== undefined) return known;
    const first = this.vertices.length;
    const height = this.#heights[floor] ?? 0;
    for (const [x, y] of raisedTo(ring, this.shareAt(floor)).points)
      this.vertices.push(vec3(x / STEPS, y / STEPS, height));
    this.#first.set(name, first);
    return first;
  }
}

/** The faces where two levels differ: upward where only the lower has material, downward where only the upper has. */
function capsBetween(
  below: readonly Ring[],
  above: readonly Ring[],
  floor: number,
  corners: Corners,
  body: Body,
): Triangle[] {
  const shared = below.filter((ring) => holds(above, ring));
  const changed = [...below, ...above].filter((ring) => !holds(shared, ring));
  if (shared.some((ring) => depthIn(changed, ring) % 2 === 1)) {
    throw new RangeError(`${body.name}: expected levels that share faces, got two that meet along an edge only`);
  }
  return changed.flatMap((outer) => {
    const depth = depthIn(changed, outer);
    if (depth % 2 === 1) return [];
    const holes = changed.filter(
      (ring) => depthIn(changed, ring) === depth + 1 && ring.points[0] && isWithin(ring.points[0], outer),
    );
    const facesUp = (depthIn(below, outer) + (holds(below, outer) ? 1 : 0)) % 2 === 1;
    const numbers = [outer, ...holes].flatMap((ring) => ring.points.map((_, i) => corners.at(ring, floor) + i));
    const [rim = outer, ...within] = [outer, ...holes].map((ring) => raisedTo(ring, corners.shareAt(floor)));
    return triangulated(rim, within).map(([a, b, c]): Triangle => {
      const [first, second, third] = [numbers[a] ?? 0, numbers[b] ?? 0, numbers[c] ?? 0];
      return facesUp ? [first, second, third] : [first, third, second];
    });
  });
}

/** The walls that begin at a floor, each as high as its ring runs on through the levels. */
function wallsFrom(levels: readonly (readonly Ring[])[], floor: number, corners: Corners): Triangle[] {
  const here = levels[floor] ?? [];
  return here
    .filter((ring) => !holds(levels[floor - 1] ?? [], ring))
    .flatMap((ring) => {
      const end = levels.findIndex((level, i) => i > floor && !holds(level, ring));
      const [low, high] = [corners.at(ring, floor), corners.at(ring, end < 0 ? levels.length : end)];
      const isHole = depthIn(here, ring) % 2 === 1;
      return ring.points.flatMap((_, i): Triangle[] => {
        const next = (i + 1) % ring.points.length;
        const [from, to] = isHole ? [next, i] : [i, next];
        return [
          [low + from, low + to, high + to],
          [low + from, high + to, high + from],
        ];
      });
    });
}
