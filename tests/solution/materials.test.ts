import { expect, test } from 'vitest';
import { standBodies } from '$lib/files/standBodies.ts';
import { glueUp } from '$lib/files/buildSheet/glueUp.ts';
import { glueUpOf } from '$lib/solution/glueUp.ts';
import { materialsOf, type Material } from '$lib/solution/materials.ts';
import { solve } from '$lib/solution/solve.ts';
import { widthRange, widthSpread } from '$lib/solution/widthSpread.ts';
import { faultLine } from '$lib/project/fault.ts';
import { inRows } from '../inRows.ts';
import { firstLayout, project } from '../projects.ts';

function made(changes: Readonly<Record<string, unknown>>) {
  const of = project(changes);
  const planned = solve(of, firstLayout(of));
  if (!planned.ok) throw new Error(planned.faults.map(faultLine).join('; '));
  const sheets = inRows(planned.value);
  if (!sheets.ok) throw new Error(sheets.faults.map(faultLine).join('; '));
  const rows = materialsOf(of, firstLayout(of), planned.value, sheets.value);
  const row = (what: string): Material | undefined => rows.find((one) => one.what === what);
  return { of, planned: planned.value, sheets: sheets.value, rows, row };
}

const STAND = { lift: 30, veneer: 0.6, feet: 3, pad: 2, glue: 0.05 };

test('a stack takes boards, rods, glue, veneer, feet and pads for both stands', () => {
  const { planned, sheets, row } = made({ '/layouts/0/stand': { ...STAND, rods: { count: 2, diameter: 6 } } });
  const { right } = planned.stand;
  expect(row('Sheet')).toMatchObject({
    of: 'MDF 3 mm',
    quantity: sheets.length,
    length: 600,
    width: 400,
    thickness: 3.05,
  });
  // Two rods in each of two stands, through all layers and the glue between them: the width less the veneer on its sides.
  expect(row('Rod')).toMatchObject({ quantity: 4, diameter: 6 });
  expect(row('Rod')?.length).toBeCloseTo(right.width - 2 * 0.6, 9);
  expect(row('Foot')).toMatchObject({ quantity: 8, thickness: 3 });
  expect(row('Pad')).toMatchObject({ quantity: 2, length: 205, thickness: 2 });
  // Veneer on top, front, rear and both sides of each stand, 15 % more to trim: the side is the profile's area.
  const [a, b, c, d] = right.profile;
  if (!a || !b || !c || !d) throw new Error('a wedge has four corners');
  const side = ((b[0] - a[0]) * (right.frontHeight + right.rearHeight + 2 * 0)) / 2;
  const bands = (c[1] - b[1] + Math.hypot(d[0] - c[0], d[1] - c[1]) + d[1] - a[1]) * right.width;
  // The wood's heights are under the veneer, the profile's over it: a millimetre of height is what they differ by at most.
  expect(Math.abs((row('Veneer')?.quantity ?? 0) / 1.15 / 2 - 2 * side - bands)).toBeLessThan(2 * 1.3 * 205);
  const joints = 2 * right.joints.reduce((sum, { area, count }) => sum + area * count, 0);
  expect(row('Wood glue')?.quantity).toBeCloseTo(((joints + (row('Veneer')?.quantity ?? 0) / 1.15) / 1e6) * 250, 6);
});

test('a printed core takes filament, and glue that holds on it; a solid block its blanks; neither takes rods it has not', () => {
  const core = made({ '/layouts/0/stand': { ...STAND, build: 'skinned', rods: null } });
  const printed = (['left', 'right'] as const).flatMap((side) => core.planned.stand[side].printed);
  expect(core.row('Filament')?.quantity).toBeCloseTo(
    printed.reduce((sum, { mass, quantity }) => sum + 1000 * mass * quantity, 0),
    9,
  );
  expect(core.row('Glue for wood on plastic')).toBeDefined();
  expect(core.row('Rod')).toBeUndefined();
  const solid = made({ '/layouts/0/stand': { ...STAND, build: 'solid' } });
  // A block is not made of the thin board that lends it its density.
  expect(solid.row('Solid wood, blank for the block')).toMatchObject({ quantity: 2, of: null });
  expect(solid.row('Solid wood, blank for the block')?.note).toContain('density');
  expect(solid.rows.map(({ what }) => what).filter((what) => /Sheet$|Rod|Filament|Clamp|Caul/.test(what))).toEqual([]);
});

test('offcuts that the sheets use are told apart from whole sheets', () => {
  const { sheets, rows } = made({ '/stock/0/offcuts': [{ width: 300, height: 250, count: 2 }] });
  const used = sheets.filter(({ offcut }) => offcut === true).length;
  expect(used).toBeGreaterThan(0);
  expect(rows.find(({ what }) => what === 'Offcut')).toMatchObject({ quantity: used, length: 300, width: 250 });
  expect(rows.find(({ what }) => what === 'Sheet')?.quantity).toBe(sheets.length - used);
});

test('sub-stacks are as big as the open time allows, hold every layer, and differ by one at most', () => {
  for (const open of [null, 1, 3, 8, 240]) {
    const { of, planned } = made({ '/shop': { glue: { open } } });
    const { right } = planned.stand;
    const up = glueUpOf(right, of, planned.parts);
    if (!up) throw new Error('a stack is glued up');
    expect(up.subStacks.reduce((sum, layers) => sum + layers, 0)).toBe(right.layers);
    expect(Math.max(...up.subStacks) - Math.min(...up.subStacks)).toBeLessThanOrEqual(1);
    // Half a minute a joint; five minutes where nothing is known (rules of thumb).
    expect(Math.max(...up.subStacks) - 1).toBeLessThanOrEqual(Math.max(1, 2 * (open ?? 5)));
    if (open === 240) expect(up.subStacks).toHaveLength(1);
  }
});

test('sub-stacks go between the clamps with their cauls, where it is said how wide those open', () => {
  let [limited, whole] = [0, 0];
  for (const opening of [null, 50, 60, 75, 100, 150, 400]) {
    for (const open of [3, 20, 240]) {
      const { of, planned } = made({ '/shop': { glue: { opening, open, line: 0.05 } } });
      const { right } = planned.stand;
      const up = glueUpOf(right, of, planned.parts);
      if (!up) throw new Error('a stack is glued up');
      expect(up.subStacks.reduce((sum, layers) => sum + layers, 0)).toBe(right.layers);
      // 54 boards of 3.05 mm with glue between them, and a caul of 20 mm on each side.
      expect(up.opening).toEqual({ needed: right.width + 40, have: opening });
      const most = Math.max(...up.subStacks);
      const timed = glueUpOf(
        right,
        { ...of, shop: { ...of.shop, glue: { ...of.shop.glue, opening: null } } },
        planned.parts,
      );
      const wide = (layers: number): number => layers * 3.05 + (layers - 1) * 0.05 + 40;
      if (opening !== null) expect(wide(most)).toBeLessThanOrEqual(opening);
      if (up.limit === 'opening') {
        limited += 1;
        // As few as the clamps allow: one sub-stack less, and one of them would not go in.
        expect(wide(Math.ceil(right.layers / (up.subStacks.length - 1)))).toBeGreaterThan(opening ?? Infinity);
        expect(up.subStacks.length).toBeGreaterThan(timed?.subStacks.length ?? Infinity);
      } else expect(up.subStacks).toEqual(timed?.subStacks);
      if (up.limit === null) whole += 1;
    }
  }
  expect(limited).toBeGreaterThan(5);
  expect(whole).toBeGreaterThan(1);
});

test.each(['stacked', 'skinned'])(
  '%s: cauls cover every side that they press on; clamps open for glue still wet',
  (build) => {
    for (const base of ['turned', 'square-to-desk']) {
      const { planned, row } = made({ '/layouts/0/stand': { lift: 40, veneer: 0.6, build, base } });
      const { right } = planned.stand;
      const points = planned.parts.flatMap(({ outside }) => outside.vertices);
      const span = (axis: 'x' | 'y'): number =>
        Math.max(...points.map((point) => point[axis])) - Math.min(...points.map((point) => point[axis]));
      expect(row('Caul')?.length).toBeCloseTo(span('x'), 9);
      expect(row('Caul')?.width).toBeCloseTo(span('y'), 9);
      // Two cauls of 20 mm; the veneer of 0.6 mm on both sides comes later; lines of 0 to 0.1 mm.
      const joints = right.widthSpread?.joints ?? NaN;
      expect(row('Clamp')?.length).toBeCloseTo(right.width - 2 * 0.6 + 0.1 * joints + 2 * 20, 9);
      expect(row('Sandpaper P80') !== undefined).toBe(build === 'skinned' || base === 'square-to-desk');
    }
  },
);

test('a stand printed in one piece is as wide as the layers that it stands for: veneer goes on it too', () => {
  for (const [veneer, glue] of [
    [0, 0],
    [0.6, 0.05],
  ] as const) {
    const { planned } = made({ '/layouts/0/stand': { lift: 30, veneer, glue } });
    const { right } = planned.stand;
    const [printed] = standBodies(planned);
    expect(printed?.body.levels.at(-1)?.height).toBeCloseTo(right.layers * 3.05 + (right.layers - 1) * glue, 9);
    expect(right.width).toBeCloseTo(right.layers * 3.05 + (right.layers - 1) * glue + 2 * veneer, 9);
  }
});

test('the build sheet says what keeps sub-stacks small, and when clamps do not reach across the whole stand', () => {
  const said = (glue: Record<string, unknown>, build = 'stacked') => {
    const { planned } = made({ '/shop': { glue }, '/layouts/0/stand/build': build });
    const sections = glueUp({ plan: planned, sheets: [] });
    return JSON.stringify(sections).replaceAll('\u202f', ' ');
  };
  expect(said({ opening: 100, open: 240 })).toContain('no more go with their cauls between clamps that open to 100 mm');
  expect(said({ opening: 100, open: 240 })).toContain(
    'To join the sub-stacks yours open too little, to 100 mm: borrow',
  );
  expect(said({ opening: 400, open: 8 })).toContain('no more can be spread within the open time of 8 min');
  expect(said({ opening: 400, open: 8 })).not.toContain('too little');
  expect(said({ opening: null })).not.toContain('too little');
  expect(said({ opening: 100 }, 'skinned')).toContain('Yours open too little, to 100 mm');
});

test('the plan holds the spread of its width, from the one glue line that counts', () => {
  for (const line of [null, 0.04]) {
    const { of, planned } = made({ '/shop': { glue: { line } }, '/layouts/0/stand/glue': 0.02 });
    const { right } = planned.stand;
    expect(right.widthSpread).toEqual(widthSpread(right, of, line ?? 0.02));
    const [least, most] = right.widthSpread ? widthRange(right.widthSpread) : [NaN, NaN];
    const boards = 0.05 * right.layers;
    const joints = right.layers - 1;
    expect(least).toBeCloseTo(line === null ? -boards - 0.02 * joints : -boards, 9);
    expect(most).toBeCloseTo(line === null ? boards + 0.08 * joints : boards, 9);
  }
  expect(made({ '/layouts/0/stand': { lift: 30, build: 'solid' } }).planned.stand.right.widthSpread).toBeNull();
});

test('clamps are counted for the side they press on, and say how many sub-stacks they hold', () => {
  const held = (clamps: number | null) => {
    const { of, planned } = made({ '/shop': { glue: { clamps } } });
    return glueUpOf(planned.stand.right, of, planned.parts);
  };
  const needed = held(null)?.clamps.needed ?? 0;
  expect(needed).toBeGreaterThanOrEqual(2);
  expect([held(null)?.atOnce, held(1)?.atOnce, held(3 * needed)?.atOnce]).toEqual([1, 1, 3]);
  const ribs = made({ '/layouts/0/stand': { lift: 30, build: 'ribbed' } });
  expect(glueUpOf(ribs.planned.stand.right, ribs.of, ribs.planned.parts)).toBeNull();
});

test('one reading for all boards and one for each spread a width differently; a measured glue line spreads it no more', () => {
  const { of, planned } = made({});
  const { right } = planned.stand;
  const spread = widthSpread(right, of, 0);
  // 54 layers read to 0.05 mm: 54 · 0.05 and √54 · 0.05; a pack of ten 54 · 0.05 / 10. 53 joints of 0 to 0.1 mm.
  expect(right.layers).toBe(54);
  expect(spread?.alike).toBeCloseTo(2.7, 9);
  expect(spread?.each).toBeCloseTo(0.3674, 4);
  expect(spread?.packed).toBeCloseTo(0.27, 9);
  expect(spread).toMatchObject({ joints: 53, glue: { least: -0 } });
  expect(spread?.glue.most).toBeCloseTo(5.3, 9);
  const measured = made({ '/shop': { glue: { line: 0.04 } } });
  expect(widthSpread(measured.planned.stand.right, measured.of, 0.04)?.glue).toEqual({ least: 0, most: 0 });
  // The width adds the measured line up, whatever the stand's own setting is.
  const { widths } = measured.planned.stand.right;
  expect(widths.find(({ what }) => what === 'glue')).toMatchObject({ each: 0.04 });
});

test('veneer is counted for the faces that there are: of open ribs only the edges', () => {
  const of = (skin: string | null) => {
    const stand = { ...STAND, lift: 40, build: 'ribbed', veneer: 0.6, ribs: { count: 2, cross: 3, skin } };
    const { row, planned } = made({ '/layouts/0/stand': stand });
    return { bare: (row('Veneer')?.quantity ?? 0) / 1.15, stands: [planned.stand.left, planned.stand.right] };
  };
  const open = of(null);
  // Two ribs: along front, rear and slope, as thick as they are. Three cross ribs: both ends, no higher than the front.
  const least = open.stands.reduce((sum, { profile: [a, b, c, d], thickness }) => {
    if (!a || !b || !c || !d) throw new Error('a wedge has four corners');
    return sum + 2 * thickness * (c[1] - b[1] + Math.hypot(d[0] - c[0], d[1] - c[1]) + d[1] - a[1]);
  }, 0);
  const ends = open.stands.reduce((sum, { thickness, frontHeight }) => sum + 6 * thickness * frontHeight, 0);
  expect(open.bare).toBeGreaterThan(least);
  expect(open.bare).toBeLessThan(least + ends);
  // Under a skin the slope is veneered all over.
  const slopes = open.stands.reduce((sum, { profile: [, , c, d], width }) => {
    if (!c || !d) throw new Error('a wedge has four corners');
    return sum + Math.hypot(d[0] - c[0], d[1] - c[1]) * width;
  }, 0);
  expect(of('MDF 3 mm').bare).toBeGreaterThan(slopes);
  expect(open.bare).toBeLessThan(slopes / 4);
});
