import { describe, expect, test } from 'vitest';
import { measuredWith, tapes } from '$lib/project/fields/measuredWith.ts';
import { sure } from '$lib/project/fields/sure.ts';
import { byTape, type SureKey } from '$lib/project/sure.ts';

const keys = Object.keys(byTape).filter((key): key is SureKey => Object.hasOwn(byTape, key));

// Directive 2014/32/EU, annex on material measures: class II has 0.3 + 0.2 L, L rounded up to whole metres, and 0.2 more with a
// hook: 0.5 and 0.7 over a metre, 0.7 over two, 2.3 over ten.
test.each([
  [1, 0.7],
  [999, 0.7],
  [1000, 0.7],
  [1001, 0.9],
  [-1500, 0.9],
  [10_000, 2.5],
])('a tape of class II over %d mm is off by %d at the most, and half a millimetre in reading', (length, error) => {
  expect(tapes(length)[1]).toEqual({ name: 'tape, class II', sure: Number((error + 0.5).toFixed(2)) });
});

describe.each(keys)('%s', (key) => {
  test.each([0, 735, 12_000])('is measured with something, each within its field’s range, over %d mm', (length) => {
    const tools = measuredWith(key, length);
    expect(tools.length).toBeGreaterThan(1);
    expect(new Set(tools.map(({ name }) => name)).size).toBe(tools.length);
    for (const { sure: by } of tools) {
      expect(by).toBeGreaterThan(sure[key].min);
      expect(by).toBeLessThanOrEqual(sure[key].max);
    }
    // A guess is the worst.
    const guess = tools.find(({ name }) => name.startsWith('estimate'));
    if (guess && length < 12_000) expect(Math.max(...tools.map((one) => one.sure))).toBe(guess.sure);
  });
});

test('a longer thing is less sure by tape, and a better class surer', () => {
  for (const length of [300, 1400, 4200]) {
    const [one, two, three] = tapes(length).map((tool) => tool.sure);
    expect([one, two, three].toSorted((a = 0, b = 0) => a - b)).toEqual([one, two, three]);
    expect(tapes(length + 1000)[0]?.sure).toBeGreaterThan(one ?? NaN);
  }
});
