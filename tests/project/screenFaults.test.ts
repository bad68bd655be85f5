import { expect, test } from 'vitest';
import { faultLine } from '$lib/project/fault.ts';
import { checkProject } from '$lib/project/parse.ts';
import { demoWith } from '../projects.ts';

const lines = (changes: Record<string, unknown>): string[] => {
  const result = checkProject(demoWith(changes));
  return result.ok ? [] : result.faults.map(faultLine);
};
const screen = { x: 0, y: 780, width: 600, height: 360, bottom: 110, depth: 40 };
const withScreen = (changes: object) => ({ '/layouts/0/monitors': [{ ...screen, ...changes }] });

test('a screen may hang on the wall, its back in it, and may be turned until a corner meets it', () => {
  expect(lines(withScreen({ y: 820 }))).toEqual([]);
  // Half of 600 mm · sin 7° = 36.6 mm.
  expect(lines(withScreen({ turn: 7 }))).toEqual([]);
});

test.each([
  [{ y: 830 }, '/layouts/0/monitors/0/y: expected a screen before the wall “behind”, got its face 10 mm inside it'],
  [{ turn: 9 }, 'got its face 6.9'],
  [{ turn: -9 }, 'got its face 6.9'],
  // 360 mm · sin 12° = 74.8 mm.
  [{ lean: 12 }, 'got its face 34.8'],
  [{ curve: 280 }, '/layouts/0/monitors/0/curve: expected a bend of 300 mm at least, half of the width, got 280'],
  [{ turn: 95 }, '/layouts/0/monitors/0/turn: expected an angle from -90 to 90°, got 95'],
])('a screen in the wall or bent too far is refused at its field: %j', (changes, message) => {
  const [line = ''] = lines(withScreen(changes));
  expect(line).toContain(message);
});
