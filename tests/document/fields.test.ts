import { describe, expect, test } from 'vitest';
import { startOf } from '$lib/project/fields/starts.ts';
import { fieldTable } from '$lib/project/fields/table.ts';
import { printerOf } from '$lib/project/printer.ts';
import { expectation } from '$lib/project/range.ts';
import { checkProject } from '$lib/project/parse.ts';
import { fieldAt, fieldIn, fieldOf, ownerOf, placeOf } from '$lib/document/fields.ts';
import { patternOf, valueAt, withValue } from '$lib/document/pointer.ts';
import { pointerTo } from '$lib/project/fault.ts';
import { plainText } from '$lib/project/sentence.ts';
import { project } from '../projects.ts';
import { inRoom } from '../rooms.ts';

/** The demo with everything in it that a project may have. */
const full = project({
  '/speaker/drivers/0/radiating': 25,
  '/speaker/drivers/1/radiating': 75,
  '/layouts/0/monitors/0/curve': 1500,
  '/speaker/centreOfMass': { depth: 100, height: 130 },
  '/layouts/0/stand/stop': { height: 8, thickness: 6 },
  '/layouts/0/aim/through': { between: ['tweeter', 'woofer'], fraction: 0.5 },
  '/layouts/0/aim/toe': { rule: 'behind-head', distance: 300 },
  '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 5 },
  '/layouts/0/aim/over': { postures: 'all' },
  '/speaker/designPoint': { driver: 'tweeter', distance: 1000 },
  ...inRoom({
    left: 2000,
    right: 1800,
    ceiling: 2500,
    absorbs: { desk: 0, wall: 0.1, sides: 0.2, ceiling: 0.3 },
  }),
  '/layouts/0/listener/postures/0/deskHeight': 1100,
  '/layouts/0/surfaces': [
    {
      name: 'riser',
      on: 'desk',
      x: 0,
      y: 300,
      width: 500,
      depth: 250,
      height: 900,
      foot: { width: 300, depth: 200, mass: 4 },
    },
  ],
  '/layouts/0/listener/earHeightFrom': {
    sex: 'woman',
    stature: 1700,
    percentile: 50,
    seat: 450,
    slump: 40,
    shoes: 30,
  },
  '/layouts/0/stand/width': 165,
  '/layouts/0/stand/corner': 4,
  '/layouts/0/stand/frictionMost': 0.6,
  '/layouts/0/stand/padFriction': 0.8,
  '/layouts/0/stand/feetFriction': 0.7,
  '/layouts/0/stand/relief': { web: 8, corner: 3 },
  '/layouts/0/stand/cheeks': { stock: null, count: 1 },
  '/layouts/0/stand/ribs': { count: 2, cross: 3, fit: 0.1, inset: 10, skin: null },
  '/layouts/0/stand/pockets': { count: 2, diameter: 8, depth: 20 },
  '/layouts/0/stand/cable': { width: 12, depth: 8, fromRear: 60 },
  '/layouts/0/stand/recess': { face: 'base', depth: 1, border: 5 },
  '/stock/0/kerf': 0.18,
  '/stock/0/taper': 1,
  '/stock/0/price': 12,
  '/stock/0/solidPrice': 1200,
  '/stock/0/sheets': 3,
  '/stock/0/feed': { outside: 10, inside: 8, mark: 60 },
  '/stock/0/offcuts': [{ width: 200, height: 150, count: 2 }],
  '/cutter/colours': { outside: '#ff0000', inside: '#0000ff', mark: '#000000' },
  '/printer': { bed: { x: 220, y: 220, z: 250 }, clearance: 0.2, density: 1240, fill: 0.3, rate: 8, price: 25 },
  '/shop': {
    saw: { depth: 80, tiltsMost: 45, tilts: 'left' },
    bandSaw: { height: 200, tiltsMost: 45 },
    router: { bit: 3, tab: { width: 6, height: 1.5 } },
    glue: { line: 0.08, open: 8, clamp: 45, clamps: 6, opening: 300 },
  },
});
const readings = [
  { what: 'mark', x: 430, y: 300, sure: 1.5 },
  { what: 'rise', value: 40, run: 150, sure: 0.5 },
  { what: 'spot', on: 'top', x: 10, z: 420, sure: 4 },
];
/** What was read of finished stands. The kind of a reading, and which corner, driver or light it is of, is chosen as it is added. */
const read = project({
  '/layouts/0/built': {
    date: '14 March',
    note: 'glued',
    sides: { left: { readings }, right: { readings } },
    heard: [
      {
        name: 'at the seat',
        of: 'left',
        at: 'seat',
        curve: { from: 0, step: 0, levels: Array.from({ length: 48 }, () => 80) },
      },
    ],
  },
});
const asSet = project({ '/layouts/0/aim/toe': { rule: 'as-set', degrees: 20 } });

/** Pointers of every number of a document. */
function numbersIn(value: unknown, at = ''): string[] {
  if (typeof value === 'number') return [at];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, held]) => numbersIn(held, at + pointerTo(key)));
}
/** The number that is no measurement, and those of a curve that the program keeps. */
const unread = /^\/version$|\/curve\//;
/** Desks of the other shapes: each has sizes of its own. */
const outlines = [
  { rule: 'bowed', width: 1400, depth: 700, bow: 60 },
  { rule: 'corner', left: 1500, right: 1500, leftDepth: 600, rightDepth: 600, front: 600 },
  { rule: 'l', width: 1600, depth: 700, return: { side: 'left', width: 600, length: 700 } },
  { rule: 'outline', points: [[-700, 0, 0], [700, 0, 0], [700, 700, 0.1], [-700, 700, 0]] }, // prettier-ignore
].map((outline) => project({ '/layouts/0/desk/outline': outline, '/layouts/0/room': {} }));
const numbers = [
  ...new Set([
    ...numbersIn(full),
    ...numbersIn(read.layouts[0]?.built, '/layouts/0/built'),
    '/layouts/0/aim/toe/degrees',
    ...outlines.flatMap((one) => numbersIn(one.layouts[0]?.desk.outline, '/layouts/0/desk/outline')),
  ]),
].filter((pointer) => !unread.test(pointer));
const holder = (pointer: string): unknown => {
  if (pointer.endsWith('/toe/degrees')) return asSet;
  if (pointer.includes('/built/')) return read;
  return [full, ...outlines].find((one) => typeof valueAt(one, pointer) === 'number');
};
/** The field of a control that stands at a pointer. */
const numberAt = (pointer: string) => {
  const field = fieldIn(holder(pointer), pointer);
  if (field?.kind !== 'number') throw new Error(`there is no number at ${pointer}`);
  return field;
};

describe('the field table', () => {
  test.each(numbers)('knows %s, with the limits of the schema', (pointer) => {
    const range = numberAt(pointer);
    for (const value of [range.min - 1, range.max + 1, '']) {
      const checked = checkProject(withValue(holder(pointer), pointer, value));
      const faults = checked.ok ? [] : checked.faults.filter((fault) => fault.pointer === pointer);
      expect(faults.map(({ message }) => message)).toContainEqual(
        expect.stringContaining(`expected ${expectation(range, value)}, got `),
      );
    }
  });

  test('holds no number that a project does not', () => {
    const known = new Set([...numbers.map(patternOf)]);
    const listed = Object.entries(fieldTable).filter(([, { kind }]) => kind === 'number');
    // Of the file it is a wall's distance, which is given from the desk.
    known.add('/layouts/*/room/gap');
    // A screen's sides are entered by its diagonal as well.
    known.add('/layouts/*/monitors/*/diagonal');
    // The numbers of a corner have a field each.
    for (const place of [0, 1, 2]) known.add(`/layouts/*/desk/outline/points/*/${place}`);
    expect(listed.map(([pattern]) => pattern).filter((pattern) => !known.has(pattern))).toEqual([]);
  });

  test('an empty field has a meaning exactly where the schema takes null', () => {
    for (const pointer of numbers) {
      const taken = checkProject(withValue(holder(pointer), pointer, null)).ok;
      expect([pointer, numberAt(pointer).empty !== undefined]).toEqual([pointer, taken]);
    }
  });

  test('every choice is one that the schema takes', () => {
    const rules = new Set([
      '/display',
      '/speaker/designPoint',
      '/layouts/*/aim/toe',
      '/layouts/*/aim/tilt',
      '/layouts/*/aim/over',
      '/layouts/*/monitors/*/ratio',
      '/layouts/*/desk/outline/rule',
      // Hangs on where the surface is.
      '/layouts/*/surfaces/*/on',
    ]);
    const choices = Object.entries(fieldTable).flatMap(([pattern, field]) =>
      field.kind === 'choice' && !rules.has(pattern) ? field.options.map(([value]) => [pattern, value] as const) : [],
    );
    expect(choices.length).toBeGreaterThan(10);
    for (const [pattern, value] of choices) {
      const checked = checkProject(withValue(full, pattern.replaceAll('*', '0'), value));
      expect([pattern, value, checked.ok]).toEqual([pattern, value, true]);
    }
  });

  test('says in a line what to measure', () => {
    for (const { label, hint } of Object.values(fieldTable)) {
      expect(label).toMatch(/^[A-Z]/);
      expect(plainText(hint).length).toBeGreaterThan(3);
      // One line of the form's column.
      expect(plainText(hint).length).toBeLessThanOrEqual(56);
    }
  });
});

describe('defaults', () => {
  test.each([
    '/cutter',
    '/shop',
    '/shop/saw',
    '/shop/router',
    '/shop/glue',
    '/sure',
    '/layouts/0/air',
    '/layouts/0/room',
    '/layouts/0/stand/rods',
    '/layouts/0/stand/veneerFaces',
  ])('%s left out is the same as one that says nothing', (pointer) => {
    expect(project({ '/shop': {}, '/layouts/0/room': {}, [pointer]: undefined })).toEqual(
      project({ '/shop': {}, '/layouts/0/room': {}, [pointer]: {} }),
    );
  });

  test('a printer that says nothing is the common one', () => {
    expect(project({ '/printer': {} }).printer).toEqual(printerOf({ printer: null }));
  });

  test('a thing that is switched on starts as something that the project takes', () => {
    const things = Object.entries(fieldTable).flatMap(([pattern, field]) =>
      field.kind === 'switch' && field.fields ? [[pattern.replaceAll('*', '0'), field.fields] as const] : [],
    );
    // Where the cabinet balances is started from the cabinet itself.
    const complete = things.filter(([pointer]) => !/centreOfMass/.test(pointer));
    expect(complete.length).toBe(things.length - 1);
    for (const [pointer, fields] of complete) {
      const started = checkProject(withValue(full, pointer, startOf(fields)));
      expect([pointer, started.ok]).toEqual([pointer, true]);
    }
  });
});

/** Pointers of every text and every switch. */
function wordsIn(value: unknown, at = ''): string[] {
  if (typeof value === 'string' || typeof value === 'boolean') return [at];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, held]) => wordsIn(held, at + pointerTo(key)));
}

test.each(
  wordsIn(full).filter(
    (pointer) =>
      !/^\/format$|^\/example$|\/entered\/\d+$|^\/display\/length$|\/(?:aim\/(?:toe|tilt)|desk\/outline)\/rule$|\/speaker\/designPoint\//.test(
        pointer,
      ),
  ),
)('there is a control for %s', (pointer) => {
  expect(fieldAt(pointer)?.kind).toMatch(/^(?:text|colour|choice|switch)$/);
});

describe('where a fault belongs', () => {
  test.each([
    ['/speaker/width', '/speaker/width'],
    ['/speaker/crossovers/0/between/1', '/speaker/crossovers/0/between/1'],
    ['/layouts/0/aim/toe/rule', '/layouts/0/aim/toe'],
    ['/layouts/0/aim/through/between', '/layouts/0/aim/through'],
    ['/layouts/0/stand/rods', '/layouts/0/stand/rods'],
    ['/layouts/0/placement', '/layouts/0/placement'],
    ['/layouts/0/listener/nonsense', '/layouts/0/listener'],
    ['/speaker/drivers/3', '/speaker/drivers/3'],
    ['/format', null],
    ['', null],
  ])('%j: %j', (pointer, owner) => {
    expect(ownerOf(pointer)).toBe(owner);
  });

  test.each([
    ['/speaker/width', 'Loudspeaker, width'],
    ['/speaker/drivers/0/height', 'Loudspeaker, driver 1, centre height'],
    ['/speaker/crossovers/1/between/0', 'Loudspeaker, crossover 2, upper driver'],
    ['/layouts/0/monitors/2/y', 'Screen 3, face, from the edge'],
    ['/layouts/0/stand/rods/diameter', 'Stand, rod diameter'],
    ['/stock/0/sheet/width', 'Stock, board 1, sheet width'],
    ['/stock/1/offcuts/0/height', 'Stock, board 2, offcut 1, offcut height'],
    ['/layouts/0/stand/ribs/fit', 'Stand, custom ribs, slot clearance'],
    ['/layouts/0/listener/postures/0/name', 'Listener, posture 1, name'],
    ['/layouts/0/built/sides/left/readings/2/sure', 'As built, reading 3 of the left stand, sure to, ±'],
    ['/layouts/0/built/heard/1/moved/x', 'As built, measured response 2, moved, sideways'],
    ['', 'Project'],
  ])('%j reads %j', (pointer, place) => {
    expect(placeOf(pointer)).toBe(place);
  });

  test('what an empty number field means fits its box: some 92 px, and 9 px a character on a telephone', () => {
    for (const [pattern, field] of Object.entries(fieldTable)) {
      if (field.kind !== 'number' || field.empty === undefined) continue;
      expect([pattern, field.empty.length <= 10]).toEqual([pattern, true]);
    }
  });

  test.each([
    ['slope', 'value', '°'],
    ['toe', 'sure', '°'],
    ['front-height', 'value', 'mm'],
    ['rise', 'value', 'mm'],
    ['weight', 'value', 'mm'],
    ['toString', 'value', 'mm'],
  ])('a reading of %j has its own %s, in %s', (what, key, unit) => {
    const document = { layouts: [{ built: { sides: { left: { readings: [{ what, value: 1, sure: 1 }] } } } }] };
    const field = fieldIn(document, `/layouts/0/built/sides/left/readings/0/${key}`);
    expect(field?.kind === 'number' && field.unit).toBe(unit);
  });

  test('a control of another kind than the table has is a mistake', () => {
    expect(() => fieldOf('text', '/speaker/width')).toThrow('the field table has no text at /speaker/width');
    expect(fieldAt('/speaker/weight')).toBeUndefined();
    expect(fieldAt('/toString')).toBeUndefined();
    expect(valueAt(full, '/speaker/width')).toBe(165);
  });
});
