import { describe, expect, test } from 'vitest';
import { faultLine } from '$lib/project/fault.ts';
import { checkProject } from '$lib/project/parse.ts';
import { footCorners, surfaceCorners } from '$lib/project/surface.ts';
import { demoWith, firstLayout, project } from '../projects.ts';

type Changes = Readonly<Record<string, unknown>>;

const faults = (changes: Changes): readonly string[] => {
  const result = checkProject(demoWith(changes));
  return result.ok ? [] : result.faults.map(faultLine);
};

const shelf = { name: 'shelf', y: 560, width: 1200, depth: 240, height: 1180 };
const surfaces = (...list: readonly object[]) => ({ '/layouts/0/surfaces': list });
const right = (x: number, y: number, on: string) => ({ '/layouts/0/placement/right': { x, y, on } });

describe('a surface', () => {
  test('of a file is a fixed plate, turned nowhere, with its base as large as itself', () => {
    expect(firstLayout(project(surfaces(shelf))).surfaces).toEqual([
      { ...shelf, on: 'wall', x: 0, turn: 0, thickness: 18, foot: null },
    ]);
    expect(firstLayout(project()).placement.left.on).toBe('desk');
  });

  test('has its corners about the middle of its front edge, its back where its turn says', () => {
    const [of] = firstLayout(
      project({ ...surfaces({ ...shelf, x: 100, turn: 90 }), '/layouts/0/room/walls': [] }),
    ).surfaces;
    expect(of && surfaceCorners(of)).toEqual([
      [100, 1160],
      [100, -40],
      [340, -40],
      [340, 1160],
    ]);
  });

  test('stands on a base whose middle is under its own', () => {
    const riser = { ...shelf, on: 'desk', y: 300, height: 900, foot: { width: 400, depth: 100 } };
    const [of] = firstLayout(project(surfaces(riser))).surfaces;
    expect(of && footCorners(of)).toEqual([
      [-200, 370],
      [200, 370],
      [200, 470],
      [-200, 470],
    ]);
  });
});

describe('refused, by what would mend it', () => {
  test.each<[string, Changes, string]>([
    [
      'a loudspeaker on a surface that is not there',
      right(430, 280, 'attic'),
      '/layouts/0/placement/right/on: expected the name of a surface ("desk", "floor"), got "attic"',
    ],
    [
      'a surface called as what every layout has',
      surfaces({ ...shelf, name: 'floor' }),
      '/layouts/0/surfaces/0/name: expected a name other than "floor", which every layout has',
    ],
    [
      'a name used twice',
      surfaces(shelf, { ...shelf, height: 1500 }),
      '/layouts/0/surfaces/1/name: expected a name not used before, got "shelf"',
    ],
    [
      'a plate in another',
      surfaces(shelf, { ...shelf, name: 'other', height: 1190, turn: 30 }),
      '/layouts/0/surfaces/1/height: expected a plate clear of “shelf”, got one that reaches into it: change its height or its place',
    ],
    [
      'a plate in the desk’s top',
      surfaces({ ...shelf, height: 740 }),
      '/layouts/0/surfaces/0/height: expected a plate clear of the desk’s top, at least 753 mm over the floor or at most 735 mm, got 740',
    ],
    [
      'a plate in the floor',
      surfaces({ ...shelf, height: 10, y: 900 }),
      '/layouts/0/surfaces/0/thickness: expected a plate over the floor, at most 10 mm thick, got 18',
    ],
    [
      'a plate through a wall',
      { ...surfaces({ ...shelf, y: 700 }), '/layouts/0/room/walls': [{ name: 'behind', distance: 820 }] },
      '/layouts/0/surfaces/0/y: expected a plate on this side of the wall behind, got one that reaches 120 mm into it',
    ],
    [
      'a riser over the desk’s edge',
      surfaces({ ...shelf, on: 'desk', height: 900 }),
      '/layouts/0/surfaces/0/y: expected a riser whose base is on the desk, got one 100 mm over its edge',
    ],
    [
      'a riser under the desk',
      surfaces({ ...shelf, on: 'desk', y: 100, height: 700 }),
      '/layouts/0/surfaces/0/height: expected a riser that stands on the desk, at least 753 mm over the floor, got 700',
    ],
    [
      'a floor stand whose column runs through the desk',
      surfaces({ ...shelf, on: 'floor', y: 300 }),
      '/layouts/0/surfaces/0/y: expected a floor stand beside the desk, got one whose column would run through it',
    ],
    [
      'a mark off its surface',
      { ...surfaces(shelf), ...right(430, 530, 'shelf') },
      '/layouts/0/placement/right/y: expected a mark on “shelf”, got one 30 mm off its front edge: move it, or let the stand be on something else',
    ],
    [
      'a mark beside it',
      { ...surfaces(shelf), ...right(640, 600, 'shelf') },
      '/layouts/0/placement/right/x: expected a mark on “shelf”, got one 40 mm off its right edge: move it, or let the stand be on something else',
    ],
  ])('%s', (_, changes, line) => {
    expect(faults(changes)).toEqual([line]);
  });

  test('not what only touches', () => {
    const touching = [
      { ...shelf, name: 'second', height: 1162 },
      { ...shelf, name: 'beside', x: 1200 },
    ];
    expect(faults({ ...surfaces(shelf, ...touching), ...right(430, 560, 'shelf') })).toEqual([]);
  });
});
