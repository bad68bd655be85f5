import { readdirSync, readFileSync } from 'node:fs';
import { HAIR } from '$lib/workshop/nesting/arrange.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import { around } from '$lib/geometry/extent.ts';
import { Greedy, largestFirst } from '$lib/workshop/nesting/nestGreedy.ts';
import { layoutFaults } from '$lib/workshop/nesting/validity.ts';
import { nest, type Nested } from '$lib/workshop/nesting/nest.ts';
import { problemOf } from '$lib/workshop/nesting/nestProblem.ts';
import { faultLine } from '$lib/project/fault.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Stock } from '$lib/project/project.ts';
import type { Part } from '$lib/workshop/part.ts';
import { pairBoxes } from './pairBoxes.ts';
import { seeded, type Measured } from './measure.ts';

const cutter = { kerf: 0.2, taper: 0, spacing: 2, margin: 5 };
const exact = { kerf: 0, taper: 0, spacing: 0, margin: 0 };

const board = (width: number, height: number, grain: Stock['grain']): Stock => ({
  name: 'board',
  thickness: 3,
  sheet: { width, height },
  density: 750,
  kerf: null,
  taper: null,
  feed: null,
  price: null,
  solidPrice: null,
  grain,
  sheets: null,
  offcuts: [],
});

function part(name: string, corners: readonly Point[], quantity: number): Part {
  const { left, bottom } = around(corners);
  const outside = polygonPath(corners.map(([x, y]): Point => [x - left, y - bottom]));
  return { name, stock: 'board', thickness: 3, quantity, outside, inside: [], mark: [], labels: [] };
}

const wedge = (run: number, thin: number, thick: number): Point[] => [
  [0, 0],
  [run, 0],
  [run, thick],
  [0, thin],
];
const trapezoid = wedge(220, 12, 50);
const triangle: Point[] = [
  [0, 0],
  [150, 0],
  [0, 90],
];

interface Run {
  readonly nested: Nested;
  /** ms, from the asking. */
  readonly first: number;
  readonly reached: number;
}

/** Nests until all lie on one sheet or the work is spent; every answer is checked. */
function run(parts: readonly Part[], stock: Stock, spaces: typeof cutter, seed: number, budget: number): Run {
  const began = performance.now();
  const since = (): number => performance.now() - began;
  const found: Run[] = [];
  for (const step of nest(parts, [stock], spaces, { seed, budget })) {
    if (step.kind !== 'better') continue;
    found.push({ nested: step.nested, first: found[0]?.first ?? since(), reached: since() });
    if (step.nested.sheets.length === 1) break;
  }
  const last = found.at(-1);
  if (last === undefined) throw new Error('expected parts that fit');
  const wrong = layoutFaults(last.nested.sheets, parts, spaces.spacing, spaces.margin);
  if (wrong.length > 0) throw new Error(wrong.map(faultLine).join());
  return last;
}

const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? NaN;

/** Where everything lies, as one number: thousandths of a millimetre, added up. */
const checksum = (nested: readonly Nested[]): string => {
  const sum = nested
    .flatMap(({ sheets }) => sheets.flatMap(({ placements }) => placements))
    .reduce((total, { x, y, turn }, i) => total + (i + 1) * Math.round(1000 * (x + 2 * y + 3 * turn)), 0);
  return sum.toString(16);
};

const SEEDS = [1, 2, 3, 4, 5];

/** How long it takes until so many copies lie on one sheet; the median of five seeds, all of which must get there. */
const goal =
  (what: string, corners: readonly Point[], copies: number, stock: Stock, limit: number | null) => (): Measured => {
    const runs = SEEDS.map((seed) => run([part('part', corners, copies)], stock, cutter, seed, 120_000_000));
    const there = runs.filter(({ nested }) => nested.sheets.length === 1).length;
    return {
      name: `nesting: ${copies} ${what} (${there} of ${SEEDS.length} seeds)`,
      median: there === SEEDS.length ? median(runs.map(({ reached }) => reached)) : Infinity,
      limit,
      checksum: checksum(runs.map(({ nested }) => nested)),
    };
  };

/** 200 copies of one part, then 200 parts no two of which are alike. */
function firstAnswer(): Measured {
  const next = seeded(20260401);
  const alike = [part('part', trapezoid, 200)];
  const unlike = Array.from({ length: 200 }, (_, i) =>
    part(`part ${i}`, wedge(60 + 180 * next(), 8 + 10 * next(), 20 + 40 * next()), 1),
  );
  const runs = [alike, unlike].map((parts) => {
    // Once to warm up: a shop asks more than once.
    run(parts, board(600, 300, 'none'), cutter, 1, 0);
    return run(parts, board(600, 300, 'none'), cutter, 1, 0);
  });
  return {
    name: 'nesting: first answer for 200 parts, the slower of alike and unlike ones',
    median: Math.max(...runs.map(({ first }) => first)),
    limit: 100,
    checksum: checksum(runs.map(({ nested }) => nested)),
  };
}

/** Any wedge on any board: as many copies as pairs packed as boxes put on it must find room on it too. */
function pairBoxFloor(): Measured {
  const next = seeded(20260402);
  let [below, sum] = [0, 0];
  const times: number[] = [];
  for (let i = 0; i < 300; i++) {
    const corners = wedge(40 + 220 * next(), 5 + 20 * next(), 15 + 50 * next());
    const stock = board(300 + 900 * next(), 250 + 500 * next(), next() < 0.5 ? 'none' : 'along');
    const { width, height } = stock.sheet;
    const room = { width: width - 10, height: height - 10 };
    const copies = pairBoxes(corners, room, cutter.spacing + HAIR, stock.grain === 'none');
    if (copies === 0) continue;
    const { nested, reached } = run([part('part', corners, copies)], stock, cutter, 1, 40_000_000);
    times.push(reached);
    if (nested.sheets.length > 1) below++;
    sum += copies * (i + 1) * nested.sheets.length;
  }
  return {
    name: `nesting: never below pair boxes (${below} of ${times.length} boards below)`,
    median: below === 0 ? median(times) : Infinity,
    limit: 1000,
    checksum: sum.toString(16),
  };
}

interface Data {
  readonly name: string;
  readonly bin: readonly [number, number];
  readonly items: readonly (readonly Point[])[];
}

/** Work that takes about a second here: counted, so that every machine gives one answer. */
const ONE_SECOND = 8_000_000;

/**
 * terashima1 (CC0, see tests/fixtures/nesting): sheets of all 36 problems together. Greedy lays the largest part first, each on the
 * first sheet that takes it, as low as it can touch two neighbours or walls, at any of four turns; it never moves one again.
 */
function terashima(): Measured {
  const folder = new URL('../tests/fixtures/nesting/', import.meta.url);
  const files = readdirSync(folder).filter((file) => file.endsWith('.json'));
  const runs = files.map((file) => {
    const { bin, items } = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as Data;
    const parts = items.map((corners, i) => part(`${i}`, corners, 1));
    const stock = board(bin[0], bin[1], 'none');
    return { greedy: greedySheets(parts, stock), ...timed(parts, stock) };
  });
  const sums = runs.reduce(
    (sum, { greedy, nested }) => ({ greedy: sum.greedy + greedy, nested: sum.nested + nested.sheets.length }),
    { greedy: 0, nested: 0 },
  );
  return {
    name: `nesting: terashima1, ${files.length} problems: greedy ${sums.greedy} sheets, nested ${sums.nested}`,
    median: sums.nested < sums.greedy ? median(runs.map(({ time }) => time)) : Infinity,
    limit: null,
    checksum: checksum(runs.map(({ nested }) => nested)),
  };
}

function timed(parts: readonly Part[], stock: Stock): { readonly nested: Nested; readonly time: number } {
  const began = performance.now();
  const { nested } = run(parts, stock, exact, 1, ONE_SECOND);
  return { nested, time: performance.now() - began };
}

function greedySheets(parts: readonly Part[], stock: Stock): number {
  const made = toTheEnd(problemOf(parts, stock, 0, exact));
  if (!made.ok) throw new Error('expected parts that can be cut');
  const { items, pairs, room } = made.value;
  const greedy = new Greedy([], pairs);
  for (const item of largestFirst(items)) {
    if (toTheEnd(greedy.lay(item))) continue;
    greedy.add({ room, number: greedy.boards.length + 1, offcut: false, bodies: [] });
    toTheEnd(greedy.lay(item));
  }
  return greedy.boards.length;
}

/** A wedge with slots cut into its slope, as ribs have them. */
function rib(run: number, thin: number, thick: number, slots: number): Point[] {
  const at = (x: number): number => thin + ((thick - thin) * x) / run;
  const corners = Array.from({ length: slots }, (_, i) => (run * (slots - i)) / (slots + 1)).flatMap((x): Point[] => [
    [x + 3, at(x + 3)],
    [x + 3, at(x) / 2],
    [x - 3, at(x) / 2],
    [x - 3, at(x - 3)],
  ]);
  return [[0, 0], [run, 0], [run, thick], ...corners, [0, thin]];
}

/** The longest that nesting works without a pause, at parts that are hard to look at: it must be there to be stopped. */
function longestStep(): Measured {
  const parts = [part('rib', rib(200, 20, 60, 3), 77), part('cross rib', rib(160, 30, 40, 2), 77)];
  let [longest, last] = [0, performance.now()];
  const found: Nested[] = [];
  for (const step of nest(parts, [board(600, 400, 'none')], cutter)) {
    longest = Math.max(longest, performance.now() - last);
    if (step.kind === 'better') found.push(step.nested);
    last = performance.now();
  }
  return {
    name: 'nesting: longest step, 154 copies of two slotted parts',
    median: longest,
    limit: 50,
    checksum: checksum(found),
  };
}

export const benchNesting: readonly (() => Measured)[] = [
  firstAnswer,
  goal('right trapezoids on 600 × 300, quarter turns', trapezoid, 22, board(600, 300, 'none'), 1000),
  goal('right trapezoids on 1200 × 600, half turns', trapezoid, 92, board(1200, 600, 'along'), 2500),
  goal('right triangles on 600 × 300, half turns', triangle, 22, board(600, 300, 'along'), null),
  pairBoxFloor,
  longestStep,
  terashima,
];
