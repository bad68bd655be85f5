import { expect, test } from 'vitest';
import { soundOf } from '$lib/solution/sound.ts';
import { sideNames } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import { firstLayout, project } from '../projects.ts';
import { seeded } from '../../bench/measure.ts';

type Changes = Record<string, unknown>;

/** Aims and lifts as they are cut: what is measured otherwise moves head and marks, not the wedge. */
const cut = {
  '/layouts/0/aim/toe': { rule: 'as-set', degrees: 38 },
  '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 14 },
};
const place = { ear: 1170, setback: 180, offset: 0, left: { x: -430, y: 300 }, right: { x: 430, y: 300 } };

const at = ({ ear, setback, offset, left, right }: typeof place, more: Changes = {}): Changes => ({
  ...cut,
  '/layouts/0/listener/earHeight': ear,
  '/layouts/0/listener/setback': setback,
  '/layouts/0/listener/offset': offset,
  '/layouts/0/placement/left': left,
  '/layouts/0/placement/right': right,
  ...more,
});

function heard(changes: Changes, bands = false) {
  const of = project(changes);
  const solved = solve(of, firstLayout(of));
  if (!solved.ok) throw new Error('expected an answer');
  return soundOf(of, firstLayout(of), solved.value, { bands });
}

const only = (sure: Readonly<Record<string, number>>): Changes => ({
  '/sure': {
    deskHeight: 0,
    wallGap: 0,
    earHeight: 0,
    setback: 0,
    headOffset: 0,
    monitor: 0,
    markX: 0,
    markY: 0,
    ...sure,
  },
});

test('values that are sure leave no band, and every notch where it is', () => {
  const { sides, bands } = heard(at(place, only({})), true);
  for (const side of sideNames) {
    const { fine, notches } = sides[side].response;
    expect(bands?.[side].least).toEqual(fine);
    expect(bands?.[side].most).toEqual(fine);
    notches.forEach(({ frequency, depth }, i) => {
      const range = bands?.[side].notches[i];
      expect(range?.frequency[0]).toBeCloseTo(frequency, 9);
      expect(range?.frequency[1]).toBeCloseTo(frequency, 9);
      expect(range?.depth).toEqual([depth, depth]);
    });
  }
});

test.each<[string, number, typeof place]>([
  ['earHeight', 10, { ...place, ear: place.ear + 10 }],
  ['earHeight', 10, { ...place, ear: place.ear - 10 }],
  ['setback', 20, { ...place, setback: place.setback + 20 }],
  ['headOffset', 10, { ...place, offset: 10 }],
  ['markX', 2, { ...place, left: { x: -428, y: 300 }, right: { x: 432, y: 300 } }],
  ['markY', 2, { ...place, left: { x: -430, y: 298 }, right: { x: 430, y: 298 } }],
])('with one value in doubt its end lies in the band: %s off by %s', (key, by, moved) => {
  const { bands } = heard(at(place, only({ [key]: by })), true);
  const there = heard(at(moved));
  for (const side of sideNames) {
    const { least, most } = bands?.[side] ?? { least: [], most: [] };
    there.sides[side].response.fine.forEach((level, i) => {
      expect(level).toBeGreaterThan((least[i] ?? NaN) - 1e-6);
      expect(level).toBeLessThan((most[i] ?? NaN) + 1e-6);
    });
  }
});

test('where everything is off at once, nine levels of ten lie in the band', () => {
  const now = heard(at(place), true);
  const next = seeded(14);
  const off = (by: number): number => by * (2 * next() - 1);
  const { earHeight, setback, headOffset, markX, markY } = project(at(place)).sure;
  let [inside, all] = [0, 0];
  for (let trial = 0; trial < 20; trial++) {
    const [x, y] = [off(markX), off(markY)];
    const { sides, frequencies } = heard(
      at({
        ear: place.ear + off(earHeight),
        setback: place.setback + off(setback),
        offset: off(headOffset),
        left: { x: -430 + x, y: 300 + y },
        right: { x: 430 + x, y: 300 + y },
      }),
    );
    sides.right.response.fine.forEach((level, i) => {
      if ((frequencies[i] ?? 0) < 250) return;
      all++;
      const { least, most } = now.bands?.right ?? { least: [], most: [] };
      if (level >= (least[i] ?? NaN) && level <= (most[i] ?? NaN)) inside++;
    });
  }
  expect(inside / all).toBeGreaterThan(0.9);
});

test('no notch is told deeper than the band allows, and each range holds what is predicted', () => {
  const { sides, both, bands } = heard(at(place), true);
  let told = 0;
  for (const [voice, { notches }] of [
    ['left', sides.left.response],
    ['right', sides.right.response],
    ['both', both],
  ] as const) {
    const band = bands?.[voice];
    notches.forEach(({ frequency, depth, level, index }, i) => {
      const range = band?.notches[i];
      if (!range || !band) throw new Error('every notch has a range');
      told++;
      expect(range.frequency[0]).toBeLessThanOrEqual(frequency * (1 + 1e-12));
      expect(range.frequency[1]).toBeGreaterThanOrEqual(frequency * (1 - 1e-12));
      expect(range.depth[0]).toBeLessThanOrEqual(depth);
      expect(range.depth[1]).toBeGreaterThanOrEqual(depth);
      const lowest = Math.min(...band.least.subarray(Math.max(0, index - 8), index + 9));
      expect(range.depth[1] - depth).toBeLessThanOrEqual(level - lowest + 1e-9);
      expect(range.same).toBeLessThanOrEqual(range.of);
    });
  }
  expect(told).toBeGreaterThan(3);
});
