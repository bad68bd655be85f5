import { expect, test } from 'vitest';
import { isSafe, reachOf, ringsOf, type Hit } from '$lib/views/proof/target.ts';

const hit = (right: number, over: number, major = 5): Hit => ({ side: 'right', right, over, major, minor: 2, turn: 0 });

test('a target holds every hit with what it may be off, and the head at least', () => {
  expect(reachOf([])).toBe(115);
  expect(reachOf([hit(3, -2)])).toBe(115);
  for (const one of [hit(200, 10), hit(0, -250, 40)]) {
    expect(reachOf([one])).toBeGreaterThan(Math.max(Math.abs(one.right), Math.abs(one.over)) + one.major);
  }
  expect(reachOf([hit(1e9, 0)])).toBe(900);
});

test('rings are round numbers of the unit that is shown', () => {
  expect(ringsOf(115, 'mm').map(({ text, radius }) => [text, radius])).toEqual([['10', 10], ['25', 25], ['50', 50]]); // prettier-ignore
  expect(ringsOf(115, 'in').map(({ text, radius }) => [text, radius])).toEqual([['0.5', 12.7], ['1', 25.4], ['2', 50.8]]); // prettier-ignore
  for (const reach of [115, 300, 900]) {
    expect(ringsOf(reach, 'mm').length).toBeLessThanOrEqual(4);
    expect(ringsOf(reach, 'mm').every(({ radius }) => radius < reach)).toBe(true);
  }
});

test('the safe zone has its own reach each way', () => {
  const zone = { left: 10, right: 20, up: 30, down: 40 };
  expect([hit(19, 0), hit(-9, 0), hit(0, 29), hit(0, -39)].map((one) => isSafe(one, zone))).toEqual([true, true, true, true]); // prettier-ignore
  expect([hit(21, 0), hit(-11, 0), hit(0, 31), hit(0, -41)].map((one) => isSafe(one, zone))).toEqual([false, false, false, false]); // prettier-ignore
});
