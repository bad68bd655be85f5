import {
  areaPathsD,
  differenceD,
  EndType,
  FillRule,
  inflatePathsD,
  intersectD,
  JoinType,
  unionD,
  type PathD,
} from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { circle, type Circle, type Contour, type Path } from '$lib/geometry/contour.ts';
import { figureFlaw, type LeastWood } from '$lib/geometry/figureFlaw.ts';
import { moved } from '$lib/geometry/moved.ts';
import { reversed } from '$lib/geometry/reversed.ts';
import { checkProject } from '$lib/project/parse.ts';
import { solve } from '$lib/solution/solve.ts';
import { wallOf } from '$lib/stand/pockets.ts';
import { seeded } from '../../bench/measure.ts';
import { randomProject, type Source } from '../randomProject.ts';
import { runs } from '../runs.ts';

// Clipper2 by Angus Johnson, through its port clipper2-ts: it knows points and areas, no arcs and no distances, and so shares
// nothing with the check.

/** mm. Nearer than this to a limit the library cannot tell: chords of two arcs, and of what it grows, take up to three quarters. */
const BLUR = 0.02;
/** Decimals of a millimetre that the library keeps. */
const DIGITS = 6;
/** mm². What is smaller is the rounding of long edges to those. */
const SLIVER = 1e-3;
/** mm of wood that there have to be where none are asked for: lines that touch are as bad as lines that cross. */
const TOUCH = 0.001;

interface Figure {
  readonly outside: Path;
  readonly holes: readonly (Path | Circle)[];
}

/** How many chords keep a quarter of the blur from an arc. */
const chords = (angle: number, radius: number): number =>
  Math.max(1, Math.ceil(Math.abs(angle) / (2 * Math.acos(Math.max(0, 1 - BLUR / 4 / radius)))));

/** A closed line as points, arcs in chords; from corners and bulges alone. */
function points(contour: Contour): PathD {
  if (contour.kind === 'circle') {
    const count = chords(2 * Math.PI, contour.radius);
    return Array.from({ length: count }, (_, i) => {
      const angle = (2 * Math.PI * i) / count;
      return {
        x: contour.centre[0] + contour.radius * Math.cos(angle),
        y: contour.centre[1] + contour.radius * Math.sin(angle),
      };
    });
  }
  return contour.vertices.flatMap((from, i) => {
    const to = contour.vertices[(i + 1) % contour.vertices.length] ?? from;
    if (from.bulge === 0) return [{ x: from.x, y: from.y }];
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    // The chord's middle, and from there to the centre along its left normal.
    const off = (1 / from.bulge - from.bulge) / 4;
    const [cx, cy] = [(from.x + to.x) / 2 - dy * off, (from.y + to.y) / 2 + dx * off];
    const count = chords(4 * Math.atan(from.bulge), Math.hypot(from.x - cx, from.y - cy));
    return Array.from({ length: count }, (_, k) => {
      const turn = (4 * Math.atan(from.bulge) * k) / count;
      const [x, y] = [from.x - cx, from.y - cy];
      return { x: cx + x * Math.cos(turn) - y * Math.sin(turn), y: cy + x * Math.sin(turn) + y * Math.cos(turn) };
    });
  });
}

const grown = (path: PathD, by: number): PathD[] =>
  inflatePathsD(unionD([path], [], FillRule.NonZero, DIGITS), by, JoinType.Round, EndType.Polygon, 2, DIGITS, BLUR / 4);

const isEmpty = (paths: PathD[]): boolean => Math.abs(areaPathsD(paths)) < SLIVER;

/** Nothing of it is enclosed twice, or the other way round. */
function isSimple(line: PathD): boolean {
  const [odd, all] = [FillRule.EvenOdd, FillRule.NonZero].map((rule) => unionD([line], [], rule, DIGITS));
  const area = Math.abs(areaPathsD([line]));
  return odd?.length === 1 && [odd, all].every((paths) => Math.abs(areaPathsD(paths ?? []) - area) < SLIVER);
}

/** Whether every hole has the least wood, and so much `more`, round it. */
function hasWood({ outside, holes }: Figure, least: LeastWood, more: number): boolean {
  const [rim, lines] = [points(outside), holes.map(points)];
  return lines.every((line, i) => {
    const hole = holes[i];
    if (!hole) return false;
    const rest = differenceD(grown(line, Math.max(TOUCH, least[hole.kind] + more)), [rim], FillRule.NonZero, DIGITS);
    return (
      isEmpty(rest) &&
      lines.slice(0, i).every((other, j) => {
        const room = Math.max(TOUCH, leastBetween(hole, holes[j] ?? hole, least) + more);
        return isEmpty(intersectD(grown(line, room), [other], FillRule.NonZero, DIGITS));
      })
    );
  });
}

const leastBetween = (a: Path | Circle, b: Path | Circle, least: LeastWood): number =>
  a.kind === 'circle' && b.kind === 'circle' ? Math.min(least.circle, 2 * a.radius, 2 * b.radius) : least.path;

/** What the library says of a figure; null where that hangs on less than it can tell. */
function verdict(figure: Figure, least: LeastWood): boolean | null {
  const rim = points(figure.outside);
  if (areaPathsD([rim]) <= 0 || ![rim, ...figure.holes.map(points)].every(isSimple)) return false;
  if (hasWood(figure, least, BLUR)) return true;
  return hasWood(figure, least, -BLUR) ? null : false;
}

interface Case {
  readonly figure: Figure;
  readonly least: LeastWood;
}

/** Of each random stand that has a plan, parts of all kinds. */
function* partsOf(next: Source): Generator<Case> {
  for (;;) {
    const read = checkProject(randomProject(next));
    const layout = read.ok ? read.value.layouts[0] : undefined;
    const made = read.ok && layout ? solve(read.value, layout) : null;
    if (!layout || !made?.ok) continue;
    const least = { path: layout.stand.relief?.web ?? 0, circle: wallOf(layout.stand) };
    const { parts } = made.value;
    const every = Math.ceil(parts.length / 4);
    for (const { outside, inside } of parts.filter((_, i) => i % every === 0)) {
      yield { figure: { outside, holes: inside }, least };
    }
  }
}

/** A hole moved, or there twice; the outside the other way round, or one of its corners moved. */
function spoilt({ outside, holes }: Figure, next: Source): Figure {
  const shift = (): number => (next() - 0.5) * 40;
  const at = Math.floor(next() * holes.length);
  const hole = holes[at];
  if (hole && next() < 0.6) return { outside, holes: holes.with(at, moved(hole, [shift(), shift()])) };
  if (next() < 0.3) return { outside, holes: [...holes, ...holes.slice(0, 1)] };
  if (next() < 0.1) return { outside: reversed(outside), holes };
  const corner = Math.floor(next() * outside.vertices.length);
  const vertices = outside.vertices.map((vertex, i) =>
    i === corner ? { ...vertex, x: vertex.x + shift(), y: vertex.y + shift() } : vertex,
  );
  return { outside: { ...outside, vertices }, holes };
}

it('agrees with a polygon library about parts of random stands, and about the same parts spoilt', () => {
  const next = seeded(20260301);
  const cases = partsOf(next);
  const pairs = Math.ceil(runs(10_000) / 2);
  const seen = { good: 0, bad: 0, close: 0 };
  for (const { figure, least } of cases) {
    if (seen.good + seen.bad + seen.close >= 2 * pairs) break;
    // Windows and rods lie just at their least wood: the library finds nothing amiss, or cannot tell.
    expect(figureFlaw(figure.outside, figure.holes, least)).toBeNull();
    const made = verdict(figure, least);
    expect(made, JSON.stringify(figure)).not.toBe(false);
    seen[made ? 'good' : 'close']++;

    const changed = spoilt(figure, next);
    const sound = verdict(changed, least);
    const flaw = figureFlaw(changed.outside, changed.holes, least);
    if (sound !== null) expect(flaw === null, JSON.stringify({ changed, least, flaw })).toBe(sound);
    seen[sound === null ? 'close' : sound ? 'good' : 'bad']++;
  }
  expect(seen.close).toBeLessThan(pairs / 5);
  expect(seen.good).toBeGreaterThan(pairs);
  expect(seen.bad).toBeGreaterThan(pairs / 5);
}, 1_200_000);

const least = { path: 8, circle: 2 };
const path = (...corners: readonly (readonly [number, number, number?])[]): Path => ({
  kind: 'path',
  closed: true,
  vertices: corners.map(([x, y, bulge = 0]) => ({ x, y, bulge })),
});
const board = path([0, 0], [100, 0], [100, 60], [0, 60]);
const pill = path([0, 0], [100, 0, 1], [100, 60], [0, 60, 1]);
const window = (x: number, y: number): Path => reversed(path([x, y], [x + 20, y], [x + 20, y + 20], [x, y + 20]));

describe('agrees with it about outlines made by hand', () => {
  it.each<[string, boolean, Path, (Path | Circle)[]]>([
    ['a board with a window and a bore', true, board, [window(20, 20), circle([70, 30], 6)]],
    ['round ends', true, pill, [circle([-20, 30], 6), circle([120, 30], 6)]],
    ['a bore whose wall a round end has', true, pill, [circle([-30 + 3 + 2.1, 30], 3)]],
    ['one whose wall it has not', false, pill, [circle([-30 + 3 + 1.9, 30], 3)]],
    ['a bow tie', false, path([0, 0], [100, 60], [100, 0], [0, 60]), []],
    ['a loop of a hundredth of a square millimetre', false, path([0, 0], [100, 0], [100, 60], [0, 0.1], [0.2, 60]), []],
    ['a clockwise outside', false, reversed(board), []],
    ['an arc through the far edge', false, path([0, 0, -1], [100, 0], [100, 40], [0, 40]), []],
    ['two arcs through each other', false, path([0, 0, -0.6], [100, 0], [100, 50, -0.6], [0, 50]), []],
    ['a window across the edge', false, board, [window(90, 20)]],
    ['a window beside the board', false, board, [window(130, 20)]],
    ['a thin web', false, board, [window(7.9, 20)]],
    ['a thin web between windows', false, board, [window(10, 20), window(37.9, 20)]],
    ['a window in a window', false, board, [window(20, 20), reversed(path([10, 10], [60, 10], [60, 50], [10, 50]))]],
    ['a bore twice', false, board, [circle([50, 30], 4), circle([50, 30], 4)]],
    ['a window in a round end', false, pill, [window(-25, 5)]],
  ])('%s', (_, sound, outside, holes) => {
    expect(verdict({ outside, holes }, least)).toBe(sound);
    expect(figureFlaw(outside, holes, least) === null).toBe(sound);
  });
});
