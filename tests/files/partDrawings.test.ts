import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgesOf, pointAt } from '$lib/geometry/edge.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import type { Circle, Path } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import { dimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { dimensionText } from '$lib/drawing/dimensionText.ts';
import { drawDimension } from '$lib/drawing/drawDimension.ts';
import type { View } from '$lib/drawing/view.ts';
import type { Block } from '$lib/files/buildSheet/block.ts';
import { scaledView } from '$lib/files/scaledView.ts';
import { partBlocks, solidBlocks } from '$lib/files/buildSheet/partBlocks.ts';
import { printedBlocks } from '$lib/files/buildSheet/printedBlocks.ts';
import { toldStands } from '$lib/files/buildSheet/subject.ts';
import { takesOf } from '$lib/solution/sheets.ts';
import type { Printed } from '$lib/stand/body.ts';
import { planGauges } from '$lib/solution/gauges.ts';
import { solve } from '$lib/solution/solve.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Part } from '$lib/workshop/part.ts';
import { faultLine } from '$lib/project/fault.ts';
import { boxed, meeting } from '../drawing/textBoxes.ts';
import { numberFrom } from '../numbers.ts';
import { demoWith, firstLayout, project } from '../projects.ts';

const STYLE = dimensionStyle(1);
const MM_PER_INCH = 25.4;

/** Half of the last figure, mm: on a line a tenth of a millimetre, in a table a hundredth; a thousandth of an inch on both. */
const rounding = ({ length }: LengthDisplay, listed: boolean): number =>
  length === 'mm' ? (listed ? 0.005 : 0.05) : 0.0005 * MM_PER_INCH;
/** What an arc lies beside the chords that stand for it here, mm: a 48th of 120° at a radius of 20 mm. */
const CHORD = 0.02;

/** A number as somebody reads it off the paper, mm. */
function read(text: string, { length }: LengthDisplay): number {
  if (!/^\d+(\.\d+)?$/.test(text)) throw new Error(`"${text}" is no plain number`);
  return Number(text) * (length === 'mm' ? 1 : MM_PER_INCH);
}

type Told = Pick<Part, 'outside' | 'inside'>;

const shapeOf = (blocks: readonly Block[]) => {
  const [drawing, points] = blocks;
  if (drawing?.kind !== 'drawing') throw new Error('a part has a drawing');
  return { view: drawing.view, note: drawing.note ?? '', points: points?.kind === 'table' ? points : null };
};

/**
 * Where the drawing's dimension lines say that points are: a point's extension line leads to the arrow of the number to
 * read; one without stands over the datum, from which all run.
 */
function readOff(view: View, display: LengthDisplay): (point: Point) => Point {
  const place = { scale: 1, origin: [0, 0] } as const;
  const lines = view.items.flatMap((item) => {
    if (item.kind !== 'dimension' || item.run === 'aligned') return [];
    const { text, arrows } = drawDimension(item, place, view.extent, STYLE, dimensionText(item, display));
    const [datum, tip] = arrows.map(([at]) => (item.run === 'across' ? at[0] : -at[1]));
    if (datum === undefined || tip === undefined) throw new Error('a dimension has two arrows');
    return [{ run: item.run, datum, tip, text: text.text }];
  });
  const along = (run: 'across' | 'up', at: number): number => {
    const own = lines.filter((line) => line.run === run);
    const found = own.find(({ tip }) => Math.abs(tip - at) < 1e-6);
    if (found) return read(found.text, display);
    if (own.every(({ datum }) => Math.abs(datum - at) < 1e-6)) return 0;
    throw new Error(`nothing says where ${run} ${at} is`);
  };
  return ([x, y]) => [along('across', x), along('up', y)];
}

/** The contours that the dimension lines and the note give. */
function fromLines({ view, note }: ReturnType<typeof shapeOf>, display: LengthDisplay) {
  const at = readOff(view, display);
  const contours = view.items.flatMap((item): (readonly Point[])[] => {
    if (item.kind === 'outline' && item.id === 'outside') return [item.points.map(at)];
    if (item.kind !== 'round') return [];
    const size = /(\d+) holes? ⌀(\d+(?:\.\d+)?)/.exec(note);
    if (!size) throw new Error('the note gives the holes');
    const rounds = view.items.filter(({ kind }) => kind === 'round');
    expect(Number(size[1])).toBe(rounds.length);
    return [ringOf(at(item.centre), read(size[2] ?? '', display) / 2)];
  });
  return contours;
}

const ringOf = ([x, y]: Point, radius: number): readonly Point[] =>
  Array.from({ length: 180 }, (_, i) => [x + radius * Math.cos((i * Math.PI) / 90), y + radius * Math.sin((i * Math.PI) / 90)]); // prettier-ignore

/** The contours that the table of points gives: corners joined in their order, rounded where they say so. */
function fromTable(rows: readonly (readonly string[])[], display: LengthDisplay): (readonly Point[])[] {
  const named = new Map<string, { at: Point; size: string }[]>();
  for (const [name = '', x = '', y = '', size = ''] of rows) {
    const contour = name.replace(/\d+$/, '');
    named.set(contour, [...(named.get(contour) ?? []), { at: [read(x, display), read(y, display)], size }]);
  }
  return [...named.values()].map((corners) => {
    const [only] = corners;
    if (only?.size.startsWith('⌀')) return ringOf(only.at, read(only.size.slice(1), display) / 2);
    return corners.flatMap(({ at, size }, i): readonly Point[] => {
      if (size === '') return [at];
      return roundedCorner(
        corners.at(i - 1)?.at ?? at,
        at,
        corners[(i + 1) % corners.length]?.at ?? at,
        read(size, display),
      );
    });
  });
}

/** An arc of that radius against both legs of a corner. */
function roundedCorner(before: Point, at: Point, after: Point, radius: number): readonly Point[] {
  const way = ([x, y]: Point): Point => {
    const [dx, dy] = [x - at[0], y - at[1]];
    return [dx / Math.hypot(dx, dy), dy / Math.hypot(dx, dy)];
  };
  const [a, b] = [way(before), way(after)];
  const half = Math.acos(a[0] * b[0] + a[1] * b[1]) / 2;
  const bisector: Point = [(a[0] + b[0]) / (2 * Math.cos(half)), (a[1] + b[1]) / (2 * Math.cos(half))];
  const centre: Point = [
    at[0] + (bisector[0] * radius) / Math.sin(half),
    at[1] + (bisector[1] * radius) / Math.sin(half),
  ];
  const turn = Math.PI - 2 * half;
  const side = a[0] * b[1] - a[1] * b[0] < 0 ? 1 : -1;
  return Array.from({ length: 25 }, (_, i) => {
    const angle = side * turn * (i / 24 - 0.5);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return [
      centre[0] - radius * (bisector[0] * cos - bisector[1] * sin),
      centre[1] - radius * (bisector[0] * sin + bisector[1] * cos),
    ];
  });
}

/** Points all round a contour of the part, mm from its lower left. */
function pointsOn(contour: Path | Circle, { left, bottom }: { left: number; bottom: number }): Point[] {
  return edgesOf(contour).flatMap((edge) =>
    [0, 0.25, 0.5, 0.75].map((share): Point => {
      const [x, y] = pointAt(edge, share);
      return [x - left, y - bottom];
    }),
  );
}

const gapTo = ([x, y]: Point, ring: readonly Point[]): number =>
  Math.min(
    ...ring.map(([ax, ay], i) => {
      const [bx, by] = ring[(i + 1) % ring.length] ?? [ax, ay];
      const [dx, dy] = [bx - ax, by - ay];
      const long = dx * dx + dy * dy;
      const share = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long));
      return Math.hypot(x - ax - share * dx, y - ay - share * dy);
    }),
  );

/** How far the contours read off the paper are from the part's own, mm, at the worst. */
function worstGap(part: Told, blocks: readonly Block[], display: LengthDisplay): number {
  const shape = shapeOf(blocks);
  const found = shape.points ? fromTable(shape.points.rows, display) : fromLines(shape, display);
  // Corners drawn out may lie beyond the part: both are laid on each other by their own left ends and lowest lines.
  const outline = found[0] ?? [];
  const from = [Math.min(...outline.map(([x]) => x)), Math.min(...outline.map(([, y]) => y))] as const;
  const told = found.map((ring) => ring.map(([x, y]): Point => [x - from[0], y - from[1]]));
  const own = [part.outside, ...part.inside];
  expect(told).toHaveLength(own.length);
  const extent = extentOf(part.outside);
  return Math.max(
    ...own.flatMap((contour, i) => {
      const ring = told[i] ?? [];
      const points = pointsOn(contour, extent);
      // Both ways: neither has anything that the other lacks.
      return [
        ...points.map((point) => gapTo(point, ring)),
        ...ring.map((point) => gapTo(point, denser(contour, extent))),
      ];
    }),
  );
}

const denser = (contour: Path | Circle, { left, bottom }: { left: number; bottom: number }): Point[] =>
  edgesOf(contour).flatMap((edge) =>
    Array.from({ length: edge.kind === 'arc' ? 60 : 1 }, (_, i): Point => {
      const [x, y] = pointAt(edge, i / (edge.kind === 'arc' ? 60 : 1));
      return [x - left, y - bottom];
    }),
  );

/** That no text of a view stands on another, at the scale that it has on A4 and on Letter. How many texts there are. */
function expectClear(view: View, display: LengthDisplay): number {
  let texts = 0;
  for (const [width, height] of [
    [178, 126],
    [184, 118],
  ] as const) {
    // prettier-ignore
    const scaled = scaledView(view, width, height, display);
    if (!scaled) throw new Error('a part fits on a page');
    const boxes = scaled.primitives.flatMap((one) =>
      one.kind === 'text'
        ? [boxed(one.text, { text: one.text, at: one.at, turn: one.turn ?? 0, anchor: one.anchor }, STYLE)]
        : [],
    );
    texts += boxes.length;
    expect(meeting(boxes)).toEqual([]);
  }
  return texts;
}

const or = <T>(some: fc.Arbitrary<T>) => fc.option(some, { nil: null, freq: 2 });
const anyStand = fc.record({
  build: fc.constantFrom('stacked', 'stacked', 'skinned', 'ribbed', 'solid'),
  base: fc.constantFrom('turned', 'turned', 'square-to-desk'),
  lift: numberFrom(12, 90),
  ends: fc.constantFrom('plumb', 'square'),
  frontMargin: fc.constantFrom(0, 5, 40),
  rearMargin: fc.constantFrom(0, 5, 40),
  stop: or(fc.record({ height: numberFrom(2, 20), thickness: numberFrom(2, 20) })),
  cable: or(fc.record({ width: numberFrom(4, 20), depth: numberFrom(2, 8), fromRear: numberFrom(30, 150) })),
  recess: or(fc.record({ face: fc.constantFrom('top', 'base'), depth: numberFrom(0.5, 3), border: numberFrom(5, 30) })),
  corner: or(numberFrom(1, 10)),
  relief: or(fc.record({ web: numberFrom(4, 14), corner: numberFrom(0, 6) })),
  rods: or(fc.record({ diameter: fc.constantFrom(4, 6, 8), count: fc.integer({ min: 2, max: 4 }) })),
  pockets: or(fc.record({ count: fc.integer({ min: 1, max: 2 }), diameter: fc.constantFrom(6, 10), depth: numberFrom(5, 20) })), // prettier-ignore
});
const displays: readonly LengthDisplay[] = [
  { length: 'mm', fraction: null },
  { length: 'in', fraction: null },
  { length: 'in', fraction: 16 },
];

interface Drawn {
  readonly of: Project;
  readonly display: LengthDisplay;
  readonly part: Told;
  readonly blocks: readonly Block[];
}

/** Parts of one project as they are drawn: of different slices the first and the last; gauges; faces of blocks. */
function drawnOf(of: Project): readonly Drawn[] {
  const layout = firstLayout(of);
  const made = solve(of, layout);
  if (!made.ok) return [];
  const { parts, stand } = made.value;
  const some = parts.length > 8 ? [...parts.slice(0, 2), ...parts.slice(-2)] : parts;
  return [
    ...[...some, ...planGauges(made.value, layout.stand)].map((part) => ({
      of,
      display: of.display,
      part,
      blocks: partBlocks(of, [part], takesOf(made.value)),
    })),
    ...toldStands(made.value).flatMap((told) =>
      told.stand.printed.flatMap((body) => {
        const [lower, upper = lower, ...more] = printedFaces(body);
        const blocks = printedBlocks(of, told, body);
        const drawings = blocks.flatMap((block, i) => (block.kind === 'drawing' ? [i] : []));
        if (!lower || !upper || more.length > 0) throw new Error('a body has one drawing or two');
        expect(drawings).toHaveLength(body.roof ? 2 : 1);
        return drawings.map((from, k) => ({
          of,
          display: of.display,
          part: body.roof && k === 0 ? lower : upper,
          blocks: blocks.slice(from, drawings[k + 1]),
        }));
      }),
    ),
    ...stand.right.blocks.flatMap((block) =>
      block.templates.map((template) => ({
        of,
        display: of.display,
        part: { outside: template.outline, inside: [] },
        blocks: solidBlocks(of, 'Each stand', { ...block, templates: [template] }),
      })),
    ),
  ];
}

/** What is seen of a printed body from below and from above: pockets are open above alone. */
function printedFaces({ levels, roof, name }: Printed): readonly Told[] {
  const [below, ...more] = levels.map(({ contours: [outside, ...inside] }): Told => {
    if (outside?.kind !== 'path') throw new Error(`${name} has an outline`);
    return { outside, inside };
  });
  const above = more.at(-1) ?? below;
  if (!below || !above) throw new Error(`${name} has a level`);
  return [below, { ...above, outside: roof ?? above.outside }];
}

const drawn: readonly Drawn[] = fc
  .sample(fc.tuple(anyStand, fc.constantFrom(...displays)), { numRuns: 70, seed: 7 })
  .flatMap(([{ ends, stop, ...stand }, display]) => {
    const turned = stand.base === 'turned';
    const read = checkProject(
      demoWith({
        '/layouts/0/stand': { ...stand, ends: turned ? ends : 'plumb', stop: turned ? stop : null },
        '/display': display,
      }),
    );
    return read.ok ? drawnOf(read.value) : [];
  });

describe('a part’s drawing', () => {
  it('is enough to make the part from: outline and holes come back within what rounding does', () => {
    let [byLines, byTable] = [0, 0];
    for (const { part, blocks, display } of drawn) {
      const listed = shapeOf(blocks).points !== null;
      if (listed) byTable += 1;
      else byLines += 1;
      // Half a figure along and up, of the point and of the datum.
      const most = 2 * Math.SQRT2 * rounding(display, listed) + CHORD;
      expect(worstGap(part, blocks, display)).toBeLessThan(most);
    }
    expect(byLines).toBeGreaterThan(60);
    expect(byTable).toBeGreaterThan(30);
  });

  it('says nothing of a point when its dimension is taken away', () => {
    const of = project({});
    const [{ part, blocks } = { part: null, blocks: [] }] = drawnOf(of);
    if (!part) throw new Error('there is a slice');
    const { view } = shapeOf(blocks);
    const lines = view.items.filter(({ kind, id }) => kind === 'dimension' && id !== 'slope');
    // Length, both ends, and both places of two rods.
    expect(lines.length).toBeGreaterThanOrEqual(6);
    for (const { id } of lines) {
      const less = { ...view, items: view.items.filter((item) => item.id !== id) };
      const [first, ...rest] = blocks;
      if (first?.kind !== 'drawing') throw new Error('a part has a drawing');
      expect(() => worstGap(part, [{ ...first, view: less }, ...rest], of.display)).toThrow('nothing says where');
    }
  });

  it('of slices that all differ is that of the first, and a row of what is different for each', () => {
    let families = 0;
    for (const stand of [{}, { corner: 4, relief: { web: 8 } }, { recess: { depth: 2 } }]) {
      const of = project({ '/layouts/0/stand': { base: 'square-to-desk', lift: 35, ...stand } });
      const made = solve(of, firstLayout(of));
      if (!made.ok) throw new Error('the layout has a plan');
      const { parts } = made.value;
      expect(parts.length).toBeGreaterThan(50);
      const [drawing, points, differ, ...more] = partBlocks(of, parts, takesOf(made.value));
      if (drawing?.kind !== 'drawing' || points?.kind !== 'table' || differ?.kind !== 'table') {
        throw new Error('a family has a drawing and two tables');
      }
      expect(more).toEqual([]);
      expectClear(drawing.view, of.display);
      families += 1;
      expect(differ.rows.map(([name]) => name)).toEqual(parts.map(({ name }) => name));
      const axes = differ.columns.slice(4).map((column) => column.split(' from '));
      for (const [k, row] of differ.rows.entries()) {
        const own = points.rows.map(([name = '', x = '', y = '', size = '']) => {
          const [along, up] = ['the left', 'below'].map((way) => axes.findIndex(([point, axis]) => point === name && axis === way)); // prettier-ignore
          const value = (at: number | undefined, told: string): string => (at === undefined || at < 0 ? told : (row[at + 4] ?? '')); // prettier-ignore
          return [name, value(along, x), value(up, y), size];
        });
        const part = parts[k];
        if (k % 9 > 0) continue;
        if (!part) throw new Error('each row is a part');
        expect(Number(row[3])).toBe(part.quantity);
        expect(Number(row[1]) + Number(row[2])).toBe(part.quantity);
        const most = 2 * Math.SQRT2 * rounding(of.display, true) + CHORD;
        expect(worstGap(part, [drawing, { ...points, rows: own }], of.display)).toBeLessThan(most);
      }
    }
    expect(families).toBe(3);
  });

  it('gives the slots of ribs to a hundredth of a millimetre: the wood, the fit and nothing else', () => {
    const of = project({ '/layouts/0/stand': { build: 'ribbed', lift: 30, ribs: { fit: 0.13 } } });
    const ribs = drawnOf(of).filter(({ blocks }) => /^Part .*rib/.test(shapeOf(blocks).view.name));
    expect(ribs.length).toBeGreaterThan(3);
    // The demo's board is 3.05 mm thick.
    for (const { blocks } of ribs) expect(shapeOf(blocks).note).toContain('Slots 3.18 wide.');
    for (const { blocks } of drawnOf(project({}))) expect(shapeOf(blocks).note).not.toContain('Slots');
  });

  it('of a printed core says how wide it is, how deep its pockets are and how many are printed; it leans as both its faces say', () => {
    const cored = (stand: Record<string, unknown>, shop: Record<string, unknown> = {}) => {
      const of = project({ '/layouts/0/stand': { build: 'skinned', lift: 30, ...stand }, ...shop });
      const made = solve(of, firstLayout(of));
      if (!made.ok) throw new Error(made.faults.map(faultLine).join('; '));
      return toldStands(made.value).flatMap((told) =>
        told.stand.printed.map((body) => ({ body, blocks: printedBlocks(of, told, body) })),
      );
    };
    const noteOf = (blocks: readonly Block[]) => shapeOf(blocks).note.replaceAll('\u202f', ' ');
    const [core] = cored({ pockets: { count: 2, diameter: 10, depth: 40 } });
    if (!core) throw new Error('there is a core');
    const wide = core.body.levels.reduce((sum, { height }) => sum + height, 0);
    expect(noteOf(core.blocks)).toContain(`${wide.toFixed(1)} mm high on the bed; 1 for each stand, 2 for both.`);
    expect(noteOf(core.blocks)).toContain(
      'C and D are pockets 40 mm deep in the upper face; the other holes go through.',
    );
    const halves = cored({}, { '/printer': { bed: { x: 220, y: 220, z: 120 } } });
    expect(halves.map(({ blocks }) => noteOf(blocks))).toEqual([
      expect.stringContaining('2 for each stand, 4 for both'),
    ]);
    const leaning = cored({ base: 'square-to-desk' });
    expect(leaning).toHaveLength(2);
    for (const { body, blocks } of leaning) {
      expect(body.roof).toBeDefined();
      expect(noteOf(blocks)).toMatch(/1 for the (left|right) stand\. /);
      expect(blocks.filter(({ kind }) => kind === 'drawing')).toHaveLength(2);
    }
  });

  it('says for which stand it is, as everywhere: for each stand and for both, never in all', () => {
    const of = project({ '/layouts/0/stand': { base: 'square-to-desk', lift: 35 } });
    const alike = project({});
    for (const one of [of, alike]) {
      const made = solve(one, firstLayout(one));
      if (!made.ok) throw new Error(made.faults.map(faultLine).join('; '));
      const blocks = partBlocks(one, made.value.parts, takesOf(made.value));
      expect(JSON.stringify(blocks)).not.toMatch(/in all/i);
      expect(shapeOf(blocks).note).toMatch(/thick, \d+ for (each stand, \d+ for both|the (left|right) stand)\./);
    }
  });

  it('has brackets round what follows from the rest alone', () => {
    const [{ blocks } = { blocks: [] }] = drawnOf(project({}));
    for (const item of shapeOf(blocks).view.items) {
      if (item.kind !== 'dimension') continue;
      const text = dimensionText(item, { length: 'mm', fraction: null });
      expect(text.startsWith('(')).toBe(item.id === 'slope');
    }
  });

  it('has no text on another, at the scale that it has on A4 and on Letter', () => {
    let texts = 0;
    for (const { blocks, display } of drawn) texts += expectClear(shapeOf(blocks).view, display);
    expect(texts).toBeGreaterThan(800);
  });
});
