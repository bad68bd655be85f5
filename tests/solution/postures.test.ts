import { describe, expect, test } from 'vitest';
import { plan } from '$lib/solution/plan.ts';
import { plainFindingText } from '$lib/solution/findings/findingText.ts';
import { posturesOf, type PosturePlan } from '$lib/solution/postures.ts';
import { servedText } from '$lib/solution/servedText.ts';
import { solve } from '$lib/solution/solve.ts';
import { workingOf } from '$lib/solution/working.ts';
import { sideNames } from '$lib/project/project.ts';
import { firstLayout, project } from '../projects.ts';

const two = [
  { name: 'leaning in', setback: 60, earHeight: 1150 },
  { name: 'standing', setback: 350, earHeight: 1560, weight: 0.5 },
];
const withTwo = { '/layouts/0/listener/postures': two };
const over = (postures: unknown, by = 'worst') => ({ ...withTwo, '/layouts/0/aim/over': { postures, by } });

function planOf(changes: Readonly<Record<string, unknown>>) {
  const of = project(changes);
  const planned = plan(of, firstLayout(of));
  if (!planned.ok) throw new Error(planned.faults.map(({ pointer }) => pointer).join());
  return planned.value;
}

const worst = (all: readonly PosturePlan[]): number =>
  Math.max(...all.flatMap(({ sides }) => sideNames.map((side) => sides[side].offAxis)));

describe('every posture', () => {
  test('is told beside the aim for it alone: that of a layout with the posture as its seat', () => {
    for (const posture of posturesOf(planOf(over('all')))) {
      const own = two.find(({ name }) => name === posture.name) ?? { setback: 180, earHeight: 1180 };
      const alone = planOf({
        '/layouts/0/listener/setback': own.setback,
        '/layouts/0/listener/earHeight': own.earHeight,
      });
      for (const side of sideNames) {
        const { toe, tilt, lift, miss } = alone.sides[side];
        const told = posture.sides[side].alone;
        expect([told?.toe, told?.tilt, told?.lift, told?.miss]).toEqual([toe, tilt, lift, miss]);
        // The rules of the demo hit the head.
        expect(told?.offAxis).toBeLessThan(1e-9);
        expect(posture.sides[side].offAxis).toBeGreaterThan(1);
      }
    }
  });

  test('is served or not, the seat always', () => {
    const served = (changes: object) => posturesOf(planOf({ ...changes })).map(({ name, served }) => [name, served]);
    expect(served(withTwo)).toEqual([['seat', true], ['leaning in', false], ['standing', false]]); // prettier-ignore
    expect(served(over(['standing']))).toEqual([['seat', true], ['leaning in', false], ['standing', true]]); // prettier-ignore
  });

  test('costs the seat something and spares the worst', () => {
    const [plain, shared] = [posturesOf(planOf(withTwo)), posturesOf(planOf(over('all')))];
    expect(worst(shared)).toBeLessThan(worst(plain) - 1);
    expect(plain[0]?.sides.right.offAxis).toBeLessThan(1e-9);
    expect(shared[0]?.sides.right.offAxis).toBeGreaterThan(1);
  });

  test('is checked as the seat is: the miss, the treble, the crossover and the triangle', () => {
    const large = { '/speaker/drivers/0/diameter': 60, '/speaker/drivers/0/radiating': 60 };
    const of = project({ ...withTwo, ...large, '/speaker/designPoint': { driver: 'tweeter', distance: 1000 } });
    const solved = solve(of, firstLayout(of));
    if (!solved.ok) throw new Error('it has a plan');
    const told = solved.value.findings.filter(({ code }) => code.startsWith('posture-')).map(plainFindingText);
    expect(told).toContainEqual(
      expect.stringMatching(
        /^In the posture “standing” the (?:left|right) axis passes \d+\.?\d* mm under the ears, further than sounds as on the axis\.$/,
      ),
    );
    expect(told).toContainEqual(
      expect.stringMatching(/^In the posture “standing” the treble falls \d+\.?\d* dB under that on the axis\.$/),
    );
    expect(told).toContainEqual(
      expect.stringMatching(
        /^In the posture “standing” a crossover falls \d+\.?\d* dB under that of the planned seat\.$/,
      ),
    );
    expect(told).toContainEqual(
      expect.stringMatching(
        /^In the posture “leaning in” the (?:left|right) axis passes \d+\.?\d* mm beside the middle of the head, outside it\.$/,
      ),
    );
    expect(told).toContainEqual(
      expect.stringMatching(/^In the posture “leaning in” the loudspeakers stand \d+\.?\d*° apart; 60° is wanted\.$/),
    );
  });
});

test('says for whom the aim is', () => {
  expect(servedText(firstLayout(project(withTwo)))).toBe('The aim is for the seat alone.');
  expect(servedText(firstLayout(project(over([]))))).toBe('The aim is for the seat alone.');
  expect(servedText(firstLayout(project(over('all'))))).toBe(
    'One aim for the seat, “leaning in” and “standing”, with the least worst angle.',
  );
  expect(servedText(firstLayout(project(over(['standing'], 'mean'))))).toBe(
    'One aim for the seat and “standing”, with the least weighted mean square of the angles.',
  );
});

test('the working of toe and tilt does not claim an aim for several postures', () => {
  const holds = (changes: object) => {
    const shown = planOf({ ...changes });
    return ['toe', 'tilt'].map(
      (id) =>
        workingOf(id, { project: shown.project, layout: shown.layout, plan: shown, side: 'right', index: 0 })?.holds,
    );
  };
  expect(holds(withTwo)).toEqual([true, true]);
  expect(holds(over([]))).toEqual([true, true]);
  expect(holds(over('all'))).toEqual([false, false]);
  expect(holds({ ...over('all'), '/layouts/0/aim/toe': { rule: 'behind-head', distance: 300 } })).toEqual([
    true,
    false,
  ]);
});
