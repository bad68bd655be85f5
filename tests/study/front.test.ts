import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Front, type Member } from '$lib/study/front.ts';
import { runs } from '../runs.ts';

const dominates = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((one, aim) => one <= (b[aim] ?? 0)) && a.some((one, aim) => one < (b[aim] ?? 0));

function frontOf(candidates: readonly Member[], grains: readonly number[]): Front<Member> {
  const front = new Front<Member>(grains);
  for (const candidate of candidates) front.add(candidate);
  return front;
}

const candidates = fc
  .array(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 80 })
  .map((all) => all.map((bad, index): Member => ({ index, bad })));

const numbers = (front: Front<Member>): number[] => front.members.map(({ index }) => index);

describe('the best compromises', () => {
  test('are those that exhaustive comparison leaves, one of each that are alike', () => {
    fc.assert(
      fc.property(candidates, (all) => {
        const best = all.filter(({ bad }) => !all.some((other) => dominates(other.bad, bad)));
        const values = new Set(best.map(({ bad }) => bad.join()));
        const found = frontOf(all, [1, 1, 1]).members.map(({ bad }) => bad.join());
        expect(new Set(found)).toEqual(values);
        expect(found).toHaveLength(values.size);
      }),
      { numRuns: runs(1000) },
    );
  });

  test('are the same in any order and however they are shared, also in coarse boxes', () => {
    fc.assert(
      fc.property(candidates, fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 5 }), (all, grain, shares) => {
        const grains = [grain, grain, 1];
        const whole = numbers(frontOf(all, grains));
        expect(numbers(frontOf(all.toReversed(), grains))).toEqual(whole);
        const merged = new Front<Member>(grains);
        for (let share = 0; share < shares; share++) {
          merged.merge(frontOf(all.filter(({ index }) => index % shares === share), grains).kept); // prettier-ignore
        }
        expect(numbers(merged)).toEqual(whole);
        for (const { bad } of merged.members) expect(all.some((other) => dominates(other.bad, bad))).toBe(false);
      }),
      { numRuns: runs(1000) },
    );
  });

  test('stay a choice of some hundred where there are ten thousand', () => {
    const all = Array.from({ length: 10_000 }, (_, index) => ({ index, bad: [index, 10_000 - index] }));
    const { members } = frontOf(all, [1, 1]);
    expect(members.length).toBeGreaterThan(300);
    expect(members.length).toBeLessThanOrEqual(1000);
  });
});

/**
 * Problems of two aims with known fronts, as published: Schaffer 1985, "Multiple objective optimization with vector evaluated
 * genetic algorithms"; Fonseca and Fleming 1995; Zitzler, Deb and Thiele 2000, "Comparison of multiobjective evolutionary
 * algorithms: empirical results" (ZDT1 to ZDT3). The formulas are from memory.
 */
const grid = (from: number, to: number, steps: number): number[] =>
  Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);

const zdt = (shape: (first: number, g: number) => number): readonly (readonly [number, number])[] =>
  grid(0, 1, 200).flatMap((x) =>
    grid(0, 1, 20).map((rest): [number, number] => {
      const g = 1 + 9 * rest;
      return [x, g * shape(x, g)];
    }),
  );

const problems: readonly {
  readonly name: string;
  readonly values: readonly (readonly [number, number])[];
  /** The second aim on the known front. */
  readonly known: (first: number) => number;
}[] = [
  {
    name: 'Schaffer: x² and (x − 2)²',
    values: grid(-10, 10, 2000).map((x) => [x * x, (x - 2) ** 2]),
    known: (first) => (Math.sqrt(first) - 2) ** 2,
  },
  {
    name: 'Fonseca and Fleming, two numbers',
    // A grid along the line between the two centres and square to it, with both centres on it.
    values: grid(-2 * Math.SQRT1_2, 2 * Math.SQRT1_2, 80).flatMap((along) =>
      grid(-1, 1, 40).map((across): [number, number] => {
        const [x, y] = [along + across, along - across];
        const at = (centre: number) => 1 - Math.exp(-((x - centre) ** 2) - (y - centre) ** 2);
        return [at(Math.SQRT1_2), at(-Math.SQRT1_2)];
      }),
    ),
    // Both numbers alike, from one centre to the other.
    known: (first) => 1 - Math.exp(-((2 - Math.sqrt(-Math.log(1 - first))) ** 2)),
  },
  { name: 'ZDT1', values: zdt((x, g) => 1 - Math.sqrt(x / g)), known: (x) => 1 - Math.sqrt(x) },
  { name: 'ZDT2', values: zdt((x, g) => 1 - (x / g) ** 2), known: (x) => 1 - x * x },
  {
    name: 'ZDT3, in five pieces',
    values: zdt((x, g) => 1 - Math.sqrt(x / g) - (x / g) * Math.sin(10 * Math.PI * x)),
    known: (x) => 1 - Math.sqrt(x) - x * Math.sin(10 * Math.PI * x),
  },
];

describe('problems whose fronts are known', () => {
  test.each(problems)('$name', ({ name, values, known }) => {
    const { members } = frontOf(values.map((bad, index) => ({ index, bad })), [1e-9, 1e-9]); // prettier-ignore
    expect(members.length).toBeGreaterThan(30);
    // Points of a grid lie on the front itself where the grid does; the last digits are rounding.
    for (const { bad } of members) expect(bad[1]).toBeCloseTo(known(bad[0] ?? NaN), 9);
    if (name.startsWith('ZDT3')) {
      // Zitzler, Deb and Thiele: x from 0 to 0.0830, 0.1823 to 0.2577, 0.4094 to 0.4538, 0.6184 to 0.6525, 0.8233 to 0.8518.
      const pieces = [[0, 0.083], [0.1823, 0.2577], [0.4094, 0.4538], [0.6184, 0.6525], [0.8233, 0.8518]]; // prettier-ignore
      const within = (x: number) => pieces.some(([from = 0, to = 0]) => x >= from - 0.005 && x <= to + 0.005);
      expect(members.filter(({ bad }) => !within(bad[0] ?? NaN))).toEqual([]);
    }
  });
});
