import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Plan } from '$lib/solution/document.ts';
import type { Finding } from '$lib/solution/findings/finding.ts';
import { placedFindings } from '$lib/solution/findings/placed.ts';
import { solve } from '$lib/solution/solve.ts';
import { checkProject } from '$lib/project/parse.ts';
import { seeded } from '../../../bench/measure.ts';
import { firstLayout } from '../../projects.ts';
import { randomProject } from '../../randomProject.ts';
import { runs } from '../../runs.ts';
import { inWords, type FindingInWords } from '../inWords.ts';

/** Whether a finding is of a check that asks for nothing of the stands. */
const isOfPlaces = ({ code }: { code: string }): boolean =>
  /^(monitor-collision|monitor-in-sight-line|screen-hidden|close-to-|axis-|lobe-|time-|level-|triangle-|inclination)/.test(
    code,
  );

/** What is made for both stands, and how they are placed. */
const bodiesOf = ({ sides, triangle, balance, stand, parts }: Plan) => ({ sides, triangle, balance, stand, parts });

test('findings of places, and a plan without advice, are those of the whole plan', () => {
  const seen = { planned: 0, placed: 0, tips: 0 };
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 32 - 1 }), (seed) => {
      const read = checkProject(randomProject(seeded(seed)));
      if (!read.ok) return;
      const layout = firstLayout(read.value);
      const whole = solve(read.value, layout);
      const bare = solve(read.value, layout, false);
      expect(bare.ok).toBe(whole.ok);
      if (!whole.ok || !bare.ok) return;
      seen.planned++;
      const placed = placedFindings(read.value, layout);
      const expected = whole.value.findings.filter(isOfPlaces);
      const byText = (a: FindingInWords, b: FindingInWords) => (a.text < b.text ? -1 : 1);
      expect(placed?.map(inWords).sort(byText)).toEqual(expected.map(inWords).sort(byText));
      seen.placed += expected.length;
      const withoutAdvice = (finding: Finding): Finding => ({ ...finding, advice: undefined });
      expect(bare.value.findings.map(withoutAdvice)).toEqual(whole.value.findings.map(withoutAdvice));
      expect(bodiesOf(bare.value)).toEqual(bodiesOf(whole.value));
      if (whole.value.findings.some(({ code }) => code === 'tips' || code === 'may-tip')) seen.tips++;
    }),
    { numRuns: runs(600) },
  );
  expect(seen.planned).toBeGreaterThan(runs(600) / 4);
  expect(seen.placed).toBeGreaterThan(seen.planned);
  expect(seen.tips).toBeGreaterThan(0);
});
