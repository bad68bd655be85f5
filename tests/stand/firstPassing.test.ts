import fc from 'fast-check';
import { expect, it } from 'vitest';
import { firstPassing } from '$lib/stand/firstPassing.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';

it('finds the first that passes of any rising margin, or null, in a few asks', () => {
  let asked = 0;
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 20_000 }),
      numberFrom(-0.1, 1.1),
      numberFrom(0, 1.3),
      numberFrom(1, 3),
      (count, root, end, power) => {
        const margin = (index: number): number =>
          Math.sign(index / 2e4 - root) * Math.abs(index / 2e4 - root) ** (1 / power);
        const last = Math.floor(end * 2e4);
        let asks = 0;
        const found = firstPassing(count, (index) => {
          asks++;
          return index > last ? null : margin(index);
        });
        const first = Math.max(0, Math.ceil(root * 2e4));
        // Just before the end the margin may rise too steeply to be believed in.
        fc.pre(first <= count && first <= last ? last - first > 0.3 * last || last >= count : true);
        expect(found).toBe(first <= Math.min(count, last) ? first : null);
        asked = Math.max(asked, asks);
      },
    ),
    { numRuns: runs(1000) },
  );
  // Never more than twice what halving alone would take.
  expect(asked).toBeLessThanOrEqual(2 * Math.ceil(Math.log2(20_000)) + 2);
});

it('gives up where what is left of the way is far too short', () => {
  let asks = 0;
  const level = firstPassing(10_000, (index) => {
    asks++;
    return index > 7000 ? null : -1 + index * 1e-6;
  });
  expect([level, asks]).toEqual([null, 3]);
});

it('finds the same from any likely number, in a handful of asks from a near one', () => {
  const range = fc.integer({ min: 0, max: 10_000 });
  let near = 0;
  fc.assert(
    fc.property(
      range,
      range,
      numberFrom(1, 3),
      range,
      fc.integer({ min: -20, max: 20 }),
      (count, root, power, likely, off) => {
        // Straight, bent, or in steps as with the layers of a stack.
        const margin = (index: number): number =>
          power > 2
            ? Math.floor(index / 30) >= Math.floor(root / 30)
              ? 0.5
              : -0.5
            : (index - root) * (1 + index / 1e4) ** power;
        const ask = (start: number | null): readonly [number | null, number] => {
          let asks = 0;
          const found = firstPassing(
            count,
            (index) => {
              asks++;
              return margin(index);
            },
            start,
          );
          return [found, asks];
        };
        const [first] = ask(null);
        expect(first === null || (margin(first) >= 0 && (first === 0 || margin(first - 1) < 0))).toBe(true);
        expect(ask(likely)[0]).toBe(first);
        if (power > 2 || first === null) return;
        const [found, asks] = ask(first + off);
        expect(found).toBe(first);
        near = Math.max(near, asks);
      },
    ),
    { numRuns: runs(2000) },
  );
  // Halving alone would take fourteen; nine is the most that 40,000 ranges took.
  expect(near).toBeLessThanOrEqual(9);
});
