import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { candidatesOf, readAsk } from '$lib/study/ask.ts';
import { freeInputs, movesAsPair, spansOf } from '$lib/study/freeInputs.ts';
import { inputAt } from '$lib/study/input.ts';
import { askOf, questions } from '$lib/study/questions.ts';
import { anyDesk, demoWith, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

describe('what may move', () => {
  test('lies round what it is now, on the desk, and in steps that meet what it is now', () => {
    let checked = 0;
    fc.assert(
      fc.property(anyDesk, fc.integer({ min: 1, max: 100_000 }), fc.boolean(), (changes, most, asPair) => {
        const read = checkProject(demoWith(changes));
        if (!read.ok) return;
        checked += 1;
        const layout = firstLayout(read.value);
        const inputs = freeInputs(read.value, layout, asPair);
        expect(movesAsPair(inputs)).toBe(asPair);
        // A range of each number is an ask by itself, whether the other mark goes along or not.
        for (const span of spansOf(inputs, 1)) expect(readAsk({ free: [span], aims: ['tilt'] }, layout).ok).toBe(true);
        expect(new Set(inputs.map(({ label }) => label)).size).toBe(inputs.length);
        for (const { pointer, now, from, to } of inputs) {
          const input = inputAt(layout, pointer, '');
          if (!input.ok) throw new Error(`${pointer} is no input`);
          expect(now).toBe(input.value.now);
          expect(from).toBeLessThanOrEqual(now);
          expect(to).toBeGreaterThanOrEqual(now);
        }
        const three = inputs.slice(0, 3);
        const spans = spansOf(three, Math.max(125, most));
        let count = 1;
        spans.forEach(({ from, to, step }, i) => {
          const { now = NaN, from: least = NaN, to: greatest = NaN } = three[i] ?? {};
          expect(Math.abs((now - from) / step - Math.round((now - from) / step))).toBeLessThan(1e-9);
          expect(from).toBeGreaterThanOrEqual(least - 1e-9);
          expect(to).toBeLessThanOrEqual(greatest + 1e-9);
          count *= Math.round((to - from) / step) + 1;
        });
        expect(count).toBeLessThanOrEqual(Math.max(125, most));
      }),
      { numRuns: runs(200) },
    );
    expect(checked).toBeGreaterThan(runs(200) / 3);
  });

  test('is also what the rules of toe and tilt leave to be set', () => {
    const labels = (changes: Record<string, unknown>): string[] => {
      const of = project(changes);
      return freeInputs(of, firstLayout(of)).map(({ label }) => label);
    };
    expect(labels({})).toEqual([
      'Marks, sideways',
      'Marks, from the edge',
      'Head from the edge',
      'Head, sideways',
      'Ears over the floor',
      'Lift',
      'Screen, sideways',
      'Screen, from the edge',
      'Screen, over the desk',
    ]);
    expect(labels({ '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 10 } })).toContain('Tilt');
    expect(labels({ '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 14 } })).not.toContain('Lift');
    expect(labels({ '/layouts/0/aim/toe': { rule: 'behind-head', distance: 200 } })).toContain('Axes meet behind the head'); // prettier-ignore
    expect(labels({ '/layouts/0/aim/toe': { rule: 'as-set', degrees: 20 } })).toContain('Toe');
  });
});

test('every question is an ask of any sound layout, of no more than some seconds', () => {
  let asked = 0;
  fc.assert(
    fc.property(anyDesk, fc.constantFrom(...questions), (changes, question) => {
      const read = checkProject(demoWith(changes));
      if (!read.ok) return;
      const layout = firstLayout(read.value);
      const ask = readAsk(askOf(question, read.value, layout), layout);
      if (!ask.ok) throw new Error(JSON.stringify(ask.faults));
      asked += 1;
      expect(candidatesOf(ask.value)).toBeLessThanOrEqual(30_000);
    }),
    { numRuns: runs(300) },
  );
  expect(asked).toBeGreaterThan(runs(300) / 3);
});
