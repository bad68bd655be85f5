import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { faultLine } from '$lib/project/fault.ts';
import { migrate } from '$lib/project/migrate.ts';
import { checkProject, parseProject } from '$lib/project/parse.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { readLink } from '$lib/files/link.ts';
import { solve } from '$lib/solution/solve.ts';
import { numberFrom } from '../numbers.ts';
import { root } from '../../tools/root.mjs';
import { packed } from '../files/packed.ts';
import { wallAt } from '../rooms.ts';
import { runs } from '../runs.ts';

const textOf = (name: string): string => readFileSync(`${root}tests/fixtures/projects/version1/${name}.json`, 'utf8');

function opened(text: string): Project {
  const parsed = parseProject(text);
  if (!parsed.ok) throw new Error(parsed.faults.map(faultLine).join('\n'));
  return parsed.value;
}

const builds = ['stacked', 'skinned', 'ribbed', 'solid'] as const;

/** What stands in each file, in the words of version 2: written by hand, not by the migration. */
const rooms: Readonly<Record<(typeof builds)[number], readonly Pick<Layout, 'desk' | 'room'>[]>> = {
  stacked: [
    {
      desk: { height: 735, absorption: 0, outline: { rule: 'rectangle', width: 1400, depth: 700, corner: 0 } },
      room: { walls: [wallAt('behind', 0, 820)], ceiling: null },
    },
  ],
  skinned: [
    {
      desk: { height: 722, absorption: 0.1, outline: { rule: 'rectangle', width: 1520.5, depth: 640.25, corner: 0 } },
      room: { walls: [wallAt('left', -90, 980, 0.3)], ceiling: { height: 2400, absorption: 0 } },
    },
  ],
  ribbed: [
    {
      desk: { height: 735, absorption: 0, outline: { rule: 'rectangle', width: 1400, depth: 700, corner: 0 } },
      room: { walls: [wallAt('behind', 0, 700, 0.2), wallAt('right', 90, 1900, 0.4)], ceiling: null },
    },
    {
      desk: { height: 735, absorption: 0, outline: { rule: 'rectangle', width: 1600, depth: 800, corner: 0 } },
      room: { walls: [], ceiling: null },
    },
  ],
  // The wall at the left stood 500 mm from the middle of a desk 1400 mm wide: it is put at its edge.
  solid: [
    {
      desk: { height: 735, absorption: 0, outline: { rule: 'rectangle', width: 1400, depth: 700, corner: 0 } },
      room: { walls: [wallAt('behind', 0, 820), wallAt('left', -90, 700), wallAt('right', 90, 2000)], ceiling: null },
    },
  ],
};

describe.each(builds)('a file of version 1, %s', (name) => {
  test('opens with its desk and its walls, has a plan, and opens from a link as well', async () => {
    const project = opened(textOf(name));
    expect(project.version).toBe(2);
    expect(project.layouts[0]?.stand.build).toBe(name);
    // Version 1 assumed nothing of a maker.
    expect(project.speaker.designPoint).toEqual({ rule: 'none' });
    const walls = (layout: Pick<Layout, 'desk' | 'room'>) => ({ desk: layout.desk, room: layout.room });
    expect(project.layouts.map(walls)).toEqual(rooms[name]);
    for (const layout of project.layouts) expect(solve(project, layout, false).ok).toBe(true);
    expect(await readLink(packed(textOf(name)))).toEqual({ kind: 'project', project });
    // Written as version 2 it is the same again.
    expect(opened(JSON.stringify(project))).toEqual(project);
  });
});

test('what was measured of the desk and its wall counts as measured', () => {
  expect(opened(textOf('stacked')).layouts[0]?.entered).toEqual([
    'desk/outline/width',
    'room/walls',
    'listener/setback',
  ]);
});

/** The document of the first fixture with its first layout changed. */
function changed(layout: Readonly<Record<string, unknown>>): unknown {
  const document = JSON.parse(textOf('stacked')) as { layouts: [Record<string, unknown>] };
  return { ...document, layouts: [{ ...document.layouts[0], ...layout }] };
}

/** A screen in the middle of the desk. */
const SCREEN = { y: 520, width: 615, height: 365, bottom: 110 };

test('any room of version 1 opens, each wall where it was unless that ran through the desk, the head or the screen', () => {
  const maybe = (from: number, to: number) => fc.option(numberFrom(from, to));
  fc.assert(
    fc.property(
      fc.record({ width: numberFrom(200, 10000), depth: numberFrom(100, 5000), wallGap: maybe(0, 10000) }),
      fc.record({ leftWall: maybe(100, 15000), rightWall: maybe(100, 15000), ceiling: maybe(300, 20000) }),
      fc.record({ offset: numberFrom(-6000, 6000), setback: numberFrom(-3000, 6000), headWidth: numberFrom(80, 250) }),
      (desk, room, seat) => {
        const checked = checkProject(
          changed({ desk: { ...desk, height: 735 }, room, monitors: [SCREEN], listener: { ...seat, earHeight: 1180 } }),
        );
        if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('\n'));
        const [layout] = checked.value.layouts;
        const at = (name: string) => layout?.room.walls.find((wall) => wall.name === name)?.distance ?? null;
        const least = (edge: number, ear: number, wall: number | null) => wall && Math.max(wall, edge, ear);
        const half = seat.headWidth / 2;
        const back = desk.wallGap === null ? null : desk.depth + desk.wallGap;
        expect(at('behind')).toBe(back === null ? null : Math.max(back, -seat.setback, SCREEN.y));
        expect(at('left')).toBe(least(Math.max(desk.width / 2, SCREEN.width / 2), half - seat.offset, room.leftWall));
        expect(at('right')).toBe(least(Math.max(desk.width / 2, SCREEN.width / 2), half + seat.offset, room.rightWall));
      },
    ),
    { numRuns: runs(500) },
  );
});

test.each<[Record<string, unknown>, string]>([
  [
    { desk: { depth: 700, height: 735 } },
    '/layouts/0/desk/outline/width: expected a length from 200 to 10000 mm, got nothing',
  ],
  [
    { desk: { width: 'wide', depth: 700, height: 735 } },
    '/layouts/0/desk/outline/width: expected a length from 200 to 10000 mm, got "wide"',
  ],
  [
    { desk: { width: 1400, depth: 700, height: 735, wallGap: 'near' } },
    '/layouts/0/room/walls/0/distance: expected a length from 0 to 20000 mm, got "near"',
  ],
  [
    { desk: { width: 1400, depth: 700, height: 735, wallGap: -20 } },
    '/layouts/0/room/walls/0/distance: expected a wall at least 700 mm from the middle of the desk’s front edge so that it does not run through the desk, got 680',
  ],
  [
    { desk: { width: 1400, depth: 700, height: 735, colour: 'red' } },
    '/layouts/0/desk/colour: unknown key, expected one of height, absorption, outline',
  ],
  [{ room: { floor: 1 } }, '/layouts/0/room/floor: unknown key, expected one of walls, ceiling'],
  [{ room: 5 }, '/layouts/0/room: expected an object, got 5'],
  [{ room: { absorption: { floor: 1 } } }, '/layouts/0/room/floor: unknown key, expected one of walls, ceiling'],
  [{ room: { absorption: 5 } }, '/layouts/0/room/absorption: unknown key, expected one of walls, ceiling'],
  [{ room: { ceiling: 100 } }, '/layouts/0/room/ceiling/height: expected a length from 300 to 20000 mm, got 100'],
  [
    { room: { leftWall: 2000, absorption: { sides: 2 } } },
    '/layouts/0/room/walls/1/absorption: expected a fraction from 0 to 1, got 2',
  ],
  [{ desk: 7 }, '/layouts/0/desk: expected an object, got 7'],
])('%j of version 1 is refused where it now stands', (layout, line) => {
  const checked = checkProject(changed(layout));
  expect(checked.ok ? [] : checked.faults.map(faultLine)).toEqual([line]);
});

test('a document is not changed by being brought up, and nothing throws at what is none', () => {
  const document: unknown = JSON.parse(textOf('solid'));
  const before = JSON.stringify(document);
  migrate(document);
  expect(JSON.stringify(document)).toBe(before);
  fc.assert(
    fc.property(fc.jsonValue(), (layouts) => {
      checkProject({ format: 'wedgewright/project', version: 1, layouts });
      checkProject(changed({ desk: layouts, room: layouts, listener: layouts, entered: layouts }));
    }),
    { numRuns: runs(300) },
  );
});
