import type { Circle, Contour, Path, Vertex } from '$lib/geometry/contour.ts';

/** Cut files hold lengths to a micrometre: far below what any cutter places, and short to read. */
const DECIMALS = 3;
const STEPS = 10 ** DECIMALS;
/** What rounding to the grid may move a point by, mm. */
const HALF_STEP = 0.5 / STEPS;

/**
 * The contour with its points on the file grid, ready to write. Arcs wider than `widest` are split first: an arc that
 * is nearly a full turn hangs on a chord so short that rounding its ends would change its radius. What rounding makes
 * vanish (edges shorter than the grid, arcs flatter than half of it) is left out; the shape stays within the grid.
 *
 * @param widest the most an arc may turn, radians.
 * @param owner whose contour it is, for the error message.
 * @throws RangeError when a number is not finite or nothing is left to cut.
 */
export function onGrid(contour: Contour, widest: number, owner: string): Contour {
  return contour.kind === 'circle' ? circleOnGrid(contour, owner) : pathOnGrid(contour, widest, owner);
}

function circleOnGrid(circle: Circle, owner: string): Circle {
  const [x, y] = circle.centre;
  const radius = rounded(circle.radius, owner);
  if (radius <= 0)
    throw new RangeError(`${owner}: expected a circle over ${1 / STEPS} mm, got radius ${circle.radius}`);
  return { kind: 'circle', centre: [rounded(x, owner), rounded(y, owner)], radius };
}

function pathOnGrid(path: Path, widest: number, owner: string): Path {
  const split = edges(path).flatMap(([from, to]) => pieces(from, to, widest, owner));
  const last = path.vertices.at(-1);
  const all = path.closed || !last ? split : [...split, { ...last, bulge: 0 }];
  const round = all.map((vertex) => ({ ...vertex, x: rounded(vertex.x, owner), y: rounded(vertex.y, owner) }));
  const kept = round.filter((vertex, index) => {
    const next = round[index + 1] ?? (path.closed ? round[0] : undefined);
    return next === undefined || next.x !== vertex.x || next.y !== vertex.y;
  });
  if (kept.length < 2) throw new RangeError(`${owner}: expected a path over ${1 / STEPS} mm, got one without length`);
  return { ...path, vertices: kept.map((vertex, index) => straightened(vertex, kept[(index + 1) % kept.length])) };
}

function edges({ vertices, closed }: Path): [Vertex, Vertex][] {
  return vertices.flatMap((from, index) => {
    const to = vertices[index + 1] ?? (closed ? vertices[0] : undefined);
    return to ? [[from, to]] : [];
  });
}

/** The edge as the vertices that start its pieces, each turning by at most `widest`. */
function pieces(from: Vertex, to: Vertex, widest: number, owner: string): Vertex[] {
  if (!Number.isFinite(from.bulge)) throw new RangeError(`${owner}: expected a finite bulge, got ${from.bulge}`);
  const turn = 4 * Math.atan(from.bulge);
  // A half turn comes out of atan a rounding error wide of π.
  const count = Math.max(1, Math.ceil(Math.abs(turn) / widest - 1e-9));
  if (count === 1) return [from];
  const bulge = Math.tan(turn / count / 4);
  return Array.from({ length: count }, (_, index) => ({ ...along(from, to, turn, index / count), bulge }));
}

/** The point a fraction of the way along an arc, from its chord: chords at the arc's start turn by half of what they span. */
function along(from: Vertex, to: Vertex, turn: number, fraction: number): { x: number; y: number } {
  const share = Math.sin((turn * fraction) / 2) / Math.sin(turn / 2);
  const angle = (-turn * (1 - fraction)) / 2;
  const [cos, sin] = [Math.cos(angle) * share, Math.sin(angle) * share];
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return { x: from.x + dx * cos - dy * sin, y: from.y + dx * sin + dy * cos };
}

function straightened(vertex: Vertex, next: Vertex | undefined): Vertex {
  const chord = next ? Math.hypot(next.x - vertex.x, next.y - vertex.y) : 0;
  return (Math.abs(vertex.bulge) * chord) / 2 < HALF_STEP ? { ...vertex, bulge: 0 } : vertex;
}

function rounded(value: number, owner: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`${owner}: expected finite lengths, got ${value}`);
  return Math.round(value * STEPS) / STEPS;
}
