import { expect, test } from 'vitest';
import { faultLine } from '$lib/project/fault.ts';
import { checkProject } from '$lib/project/parse.ts';
import { demoWith, firstLayout, project } from '../projects.ts';

const lines = (changes: Record<string, unknown>): string[] => {
  const result = checkProject(demoWith(changes));
  return result.ok ? [] : result.faults.map(faultLine);
};

test('a file without a room or a design point is sound: nothing is near, nothing absorbs, nothing is known', () => {
  const parsed = project();
  expect(firstLayout(parsed).room).toEqual({
    leftWall: null,
    rightWall: null,
    ceiling: null,
    absorption: { desk: 0, wall: 0, sides: 0, ceiling: 0 },
  });
  expect(parsed.speaker.designPoint).toBeNull();
});

test('a room may be given in part', () => {
  const { room } = firstLayout(project({ '/layouts/0/room': { leftWall: 900, absorption: { desk: 0.3 } } }));
  expect(room).toEqual({
    leftWall: 900,
    rightWall: null,
    ceiling: null,
    absorption: { desk: 0.3, wall: 0, sides: 0, ceiling: 0 },
  });
});

test.each<[Record<string, unknown>, string]>([
  [
    { '/speaker/designPoint': { driver: 'horn', distance: 1000 } },
    '/speaker/designPoint/driver: expected the name of a driver ("tweeter", "woofer"), got "horn"',
  ],
  [
    { '/speaker/designPoint': { driver: 'tweeter', distance: 0 } },
    '/speaker/designPoint/distance: expected a length over 0 mm, got 0',
  ],
  [{ '/layouts/0/room': { leftWall: -5 } }, '/layouts/0/room/leftWall: expected a length over 0 mm, got -5'],
  [{ '/layouts/0/room': { ceiling: 100 } }, '/layouts/0/room/ceiling: expected a length from 300 to 20000 mm, got 100'],
  [
    { '/layouts/0/room': { absorption: { desk: 1.5 } } },
    '/layouts/0/room/absorption/desk: expected a fraction from 0 to 1, got 1.5',
  ],
  [
    { '/layouts/0/room': { floor: 1 } },
    '/layouts/0/room/floor: unknown key, expected one of leftWall, rightWall, ceiling, absorption',
  ],
])('%j is refused', (changes, line) => {
  expect(lines(changes)).toEqual([line]);
});
