import { expect, test } from 'vitest';
import { faultLine } from '$lib/project/fault.ts';
import { checkProject } from '$lib/project/parse.ts';
import { demoWith, firstLayout, project } from '../projects.ts';
import { inRoom, wallAt } from '../rooms.ts';

const lines = (changes: Record<string, unknown>): string[] => {
  const result = checkProject(demoWith(changes));
  return result.ok ? [] : result.faults.map(faultLine);
};

test('a file without a room or a design point is sound: nothing is near, nothing absorbs, its maker lined it up', () => {
  const parsed = project({ '/layouts/0/room': undefined, '/speaker/designPoint': undefined });
  expect(firstLayout(parsed).room).toEqual({ walls: [], ceiling: null });
  expect(firstLayout(parsed).desk.absorption).toBe(0);
  expect(parsed.speaker.designPoint).toEqual({ rule: 'maker' });
});

test.each([
  [null, { rule: 'none' }],
  [
    { driver: 'woofer', distance: 700 },
    { rule: 'measured', driver: 'woofer', distance: 700 },
  ],
])('a design point without a rule, as files once held it, is read on: %j', (older, now) => {
  expect(project({ '/speaker/designPoint': older }).speaker.designPoint).toEqual(now);
});

test.each<[unknown, string]>([
  [{ rule: 'guessed' }, '/speaker/designPoint/rule: expected "maker" or "measured" or "none", got "guessed"'],
  [{ rule: 'measured', driver: 'tweeter' }, '/speaker/designPoint/distance: expected a length'],
  ['maker', '/speaker/designPoint: expected an object with a rule, got "maker"'],
])('a design point of no rule is refused: %j', (value, message) => {
  expect(lines({ '/speaker/designPoint': value })[0]).toContain(message);
});

test('a room may be given in part', () => {
  const { room } = firstLayout(project({ '/layouts/0/room': { walls: [{ name: 'window', distance: 900 }] } }));
  expect(room).toEqual({ walls: [wallAt('window', 0, 900)], ceiling: null });
  const low = firstLayout(project({ '/layouts/0/room': { ceiling: { height: 2100 } } }));
  expect(low.room).toEqual({ walls: [], ceiling: { height: 2100, absorption: 0 } });
});

const walls = (...list: unknown[]) => ({ '/layouts/0/room': { walls: list } });

test.each<[Record<string, unknown>, string]>([
  [
    { '/speaker/designPoint': { driver: 'horn', distance: 1000 } },
    '/speaker/designPoint/driver: expected the name of a driver ("tweeter", "woofer"), got "horn"',
  ],
  [
    { '/speaker/designPoint': { driver: 'tweeter', distance: 0 } },
    '/speaker/designPoint/distance: expected a length over 0 mm, got 0',
  ],
  [
    walls({ name: 'left', bearing: -90, distance: -5 }),
    '/layouts/0/room/walls/0/distance: expected a length from 0 to 20000 mm, got -5',
  ],
  [
    walls({ name: 'left', bearing: 190, distance: 900 }),
    '/layouts/0/room/walls/0/bearing: expected a bearing from -180 to 180°, got 190',
  ],
  [
    walls(wallAt('left', -90, 900), wallAt('left', 90, 900)),
    '/layouts/0/room/walls/1/name: expected a name not used before, got "left"',
  ],
  // A desk of 1400 × 700 mm: its corners at 45° lie (700 + 700)/√2 away.
  [
    walls(wallAt('askew', 45, 900)),
    `/layouts/0/room/walls/0/distance: expected a wall at least ${Math.ceil(14000 / Math.SQRT2) / 10} mm from the middle of the desk’s front edge so that it does not run through the desk, got 900`,
  ],
  [
    walls(wallAt('behind the chair', 180, 100)),
    '/layouts/0/room/walls/0/distance: expected a wall at least 180 mm from the middle of the desk’s front edge so that it does not run through the head, got 100',
  ],
  [
    { '/layouts/0/room': { ceiling: { height: 100 } } },
    '/layouts/0/room/ceiling/height: expected a length from 300 to 20000 mm, got 100',
  ],
  [{ '/layouts/0/desk/absorption': 1.5 }, '/layouts/0/desk/absorption: expected a fraction from 0 to 1, got 1.5'],
  [{ '/layouts/0/room': { floor: 1 } }, '/layouts/0/room/floor: unknown key, expected one of walls, ceiling'],
])('%j is refused', (changes, line) => {
  expect(lines(changes)).toEqual([line]);
});

test('a desk may stand against a wall on any side', () => {
  expect(lines(walls(wallAt('behind', 0, 700), wallAt('left', -90, 700), wallAt('right', 90, 700)))).toEqual([]);
  expect(lines(inRoom({ gap: 0, left: 700, right: 700 }))).toEqual([]);
});
