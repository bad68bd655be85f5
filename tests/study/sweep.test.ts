import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fieldTable } from '$lib/project/fields/table.ts';
import { checkProject } from '$lib/project/parse.ts';
import { plainText } from '$lib/project/sentence.ts';
import { solve } from '$lib/solution/solve.ts';
import { measureOf, type Measure } from '$lib/study/measure.ts';
import { measures } from '$lib/study/measures.ts';
import { sweep, sweepSteps, type Sweep, type SweepRequest } from '$lib/study/sweep.ts';
import { anyDesk, demoWith, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

const of = measures.filter(({ name }) => ['tilt', 'triangle-error', 'off-axis', 'clearance', 'move'].includes(name));

const request: SweepRequest = { over: '/stand/lift', from: 10, to: 90, steps: 5, of, mirror: false };

const demo = project();

function swept(asked: Partial<SweepRequest>, changes: Record<string, unknown> = {}) {
  const of = project(changes);
  const result = sweep(of, firstLayout(of), { ...request, ...asked });
  if (!result.ok) throw new Error(result.faults.map(({ message }) => plainText(message)).join());
  return result.value;
}

function refused(asked: Partial<SweepRequest>): string[] {
  const result = sweep(demo, firstLayout(demo), { ...request, ...asked });
  return result.ok ? [] : result.faults.map(({ pointer, message }) => `${pointer}: ${plainText(message)}`);
}

/** A range of each kind of number. */
const ranges = [
  ['/listener/setback', 0, 700],
  ['/listener/earHeight', 900, 1500],
  ['/placement/right/x', -200, 900],
  ['/desk/height', 600, 900],
  ['/stand/lift', 0, 200],
  ['/monitors/0/y', 200, 600],
  ['/speaker/depth', 150, 300],
  ['/speaker/baffleRake', -5, 10],
  ['/speaker/drivers/0/height', 150, 400],
  ['/stock/0/thickness', 3, 30],
] as const;

/** As an edit of the demo has it. */
const inProject = (over: string): string => (/^\/(speaker|stock)\//.test(over) ? over : `/layouts/0${over}`);

test('no key with a number in it is both the layout’s and the project’s', () => {
  const numbers = Object.entries(fieldTable).flatMap(([pointer, { kind }]) => (kind === 'number' ? [pointer] : []));
  const firstOf = (pointers: readonly string[]) => new Set(pointers.map((pointer) => pointer.split('/')[1]));
  const own = firstOf(numbers.flatMap((pointer) => pointer.match(/^\/layouts\/\*(.*)/)?.[1] ?? []));
  const shared = firstOf(numbers.filter((pointer) => !pointer.startsWith('/layouts/')));
  expect([...shared]).toContain('speaker');
  expect([...own]).toContain('listener');
  expect([...own].filter((key) => key !== undefined && key in demo)).toEqual([]);
});

describe('a row', () => {
  test('is the plan of the project with that number set, and the last one is the end itself', () => {
    let [answered, none] = [0, 0];
    fc.assert(
      fc.property(anyDesk, fc.constantFrom(...ranges), fc.integer({ min: 2, max: 5 }), (changes, range, steps) => {
        const [over, from, to] = range;
        const read = checkProject(demoWith(changes));
        if (!read.ok) return;
        const result = sweep(read.value, firstLayout(read.value), { over, from, to, steps, of, mirror: false });
        if (!result.ok) throw new Error('the range is a sound one');
        const { rows } = result.value;
        expect(rows.map(({ at }) => at)).toHaveLength(steps);
        expect([rows[0]?.at, rows.at(-1)?.at]).toEqual([from, to]);
        for (const row of rows) {
          const single = checkProject(demoWith({ ...changes, [inProject(over)]: row.at }));
          const layout = single.ok ? firstLayout(single.value) : undefined;
          const solved = single.ok && layout ? solve(single.value, layout, false) : single;
          expect(row.ok).toBe(solved.ok);
          if (solved.ok) answered += 1;
          else none += 1;
          expect(row.reason).toEqual(solved.ok ? null : solved.faults);
          for (const measure of of) {
            const value = solved.ok && 'layout' in solved.value ? measureOf(measure, solved.value, firstLayout(read.value)) : null; // prettier-ignore
            expect(row.values[measure.name]).toBe(value);
          }
        }
      }),
      { numRuns: runs(150) },
    );
    expect(answered).toBeGreaterThan(runs(150));
    expect(none).toBeGreaterThan(0);
  });

  test('mirrors a mark, so that the pair stays symmetrical', () => {
    const { rows } = swept({ over: '/placement/left/x', from: -600, to: -300, mirror: true, of: measures.filter(({ needs }) => needs === 'aim') }); // prettier-ignore
    for (const { at, values } of rows) {
      expect(values['time-difference']).toBeCloseTo(0, 9);
      expect(values.move).toBeCloseTo(2 * Math.abs(at + 430), 9);
    }
  });
});

describe('in steps', () => {
  test('tells what is quick first, then comes to the same as all at once', () => {
    const both = [...of, ...measures.filter(({ name }) => name === 'faults')];
    const asked = { ...request, of: both };
    const told: Sweep[] = [];
    const shares: number[] = [];
    const steps = sweepSteps(demo, firstLayout(demo), asked);
    let step = steps.next();
    for (; !step.done; step = steps.next()) {
      if ('share' in step.value) shares.push(step.value.share);
      else if (step.value.answer.ok) told.push(step.value.answer.value);
    }
    expect(step.value).toEqual(sweep(demo, firstLayout(demo), asked));
    expect(told).toEqual([sweep(demo, firstLayout(demo), request)].flatMap((one) => (one.ok ? [one.value] : [])));
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.at(-1)).toBeCloseTo(1, 9);
    expect(step.value.ok && step.value.value.rows.every(({ values }) => typeof values.faults === 'number')).toBe(true);
  });
});

describe('a gap', () => {
  test('ends where the answer begins, with the reason', () => {
    // The thin end of an upward wedge is as high as the lift: 3 mm at least.
    const { gaps } = swept({ from: 0, to: 40 });
    expect(gaps).toHaveLength(1);
    expect(gaps[0]?.from).toBe(0);
    expect(gaps[0]?.to).toBeCloseTo(3, 1);
    expect(gaps[0]?.to).toBeLessThan(3);
    expect(plainText(gaps[0]?.reason[0]?.message ?? '')).toMatch(/^expected a thin end of at least 3 mm/);
  });

  test('lies between rows, and there may be several', () => {
    // The right cabinet cannot stand in the left one; it can stand to both sides of it.
    const { gaps, rows } = swept({ over: '/placement/right/x', from: -900, to: 100, steps: 51 }, {
      '/layouts/0/aim/toe': { rule: 'straight' },
      '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 2 },
    }); // prettier-ignore
    expect(rows.some(({ ok }) => ok)).toBe(true);
    // 165 mm wide cabinets side by side, the left one 430 mm to the left.
    expect(gaps).toHaveLength(1);
    expect(gaps[0]?.from).toBeCloseTo(-430 - 165, 1);
    expect(gaps[0]?.to).toBeCloseTo(-430 + 165, 1);
  });
});

describe('a kink', () => {
  test('is where the stands go from sloping up to sloping down: the ear as high as the driver', () => {
    const { kinks } = swept({ from: 10, to: 400, steps: 33 });
    const tilts = kinks.filter(({ measure }) => measure === 'tilt');
    expect(tilts).toMatchObject([{ what: 'bend' }]);
    // Ear height less desk, less the height of the driver on the baffle.
    expect(tilts[0]?.at).toBeCloseTo(1180 - 735 - 205, 1);
  });

  test('is not where a curve is merely steep', () => {
    const { kinks } = swept({ over: '/listener/setback', from: -200, to: 200, steps: 21, of: measures.filter(({ name }) => name === 'tilt') }); // prettier-ignore
    expect(kinks).toEqual([]);
  });

  test('is at the angle of the stereo triangle, where its error turns round', () => {
    const { kinks } = swept({ over: '/listener/setback', from: 0, to: 800, steps: 17, of: measures.filter(({ name }) => name === 'triangle-error') }); // prettier-ignore
    expect(kinks).toMatchObject([{ measure: 'triangle-error', what: 'bend' }]);
    const at = kinks[0]?.at ?? NaN;
    const { rows } = swept({ over: '/listener/setback', from: at, to: at + 1, steps: 2 });
    expect(rows[0]?.values['triangle-error']).toBeLessThan(0.05);
    // The value there is told with it, the same on both sides of a bend.
    expect(kinks[0]?.before).toBe(rows[0]?.values['triangle-error']);
    expect(kinks[0]?.after).toBe(kinks[0]?.before);
  });
});

describe('a finding', () => {
  const says = (over: string, at: number, code: string): boolean => {
    const single = project({ [`/layouts/0${over}`]: at });
    const solved = solve(single, firstLayout(single), false);
    return solved.ok && solved.value.checks.some((finding) => finding.code === code);
  };

  test('begins and ends where a single plan begins and ceases to have it', () => {
    const { findings, rows } = swept({ over: '/listener/setback', from: 100, to: 900, steps: 17 });
    const step = (rows[1]?.at ?? NaN) - (rows[0]?.at ?? NaN);
    let edges = 0;
    for (const { finding, from, to } of findings) {
      expect(says('/listener/setback', from, finding.code)).toBe(true);
      expect(says('/listener/setback', to, finding.code)).toBe(true);
      for (const [edge, end, beyond] of [
        [from, 100, from - step / 500],
        [to, 900, to + step / 500],
      ] as const) {
        if (edge === end) continue;
        edges += 1;
        // Another level of the same kind may go on from there.
        const goesOn = findings.some((other) => other.finding.code === finding.code && other.finding !== finding);
        if (!goesOn) expect(says('/listener/setback', beyond, finding.code)).toBe(false);
      }
    }
    expect(edges).toBeGreaterThan(1);
    expect(findings.map(({ finding }) => finding.code)).toContain('triangle-angle');
  });

  test('is told once for both loudspeakers, and once for each stretch', () => {
    const { findings } = swept({ over: '/listener/setback', from: 100, to: 900, steps: 17 });
    const told = findings.map(({ finding: { code, level, subject }, from }) => JSON.stringify([code, level, subject, from])); // prettier-ignore
    expect(new Set(told).size).toBe(told.length);
  });
});

describe('what is not a range', () => {
  test('is refused at its place in the request', () => {
    expect(refused({ over: '/stand/beauty' })).toEqual([
      expect.stringMatching(
        /^\/over: expected the pointer of a number in the layout or the project \(.*\/listener\/setback, .*\/speaker\/depth, .*\), got "\/stand\/beauty"$/,
      ),
    ]);
    expect(refused({ over: '/aim/tilt/degrees' })[0]).toMatch(/^\/over: /);
    expect(refused({ over: '/name' })[0]).toMatch(/^\/over: /);
    expect(refused({ from: 90, to: 10 })).toEqual(['/to: expected more than 90, where the range begins, got 10']);
    expect(refused({ from: 90, to: 90 })).toEqual(['/to: expected more than 90, where the range begins, got 90']);
    expect(refused({ from: NaN })).toEqual([expect.stringMatching(/^\/from: expected a length .*, got NaN$/)]);
    expect(refused({ to: Infinity })).toEqual([expect.stringMatching(/^\/to: expected a length .*, got Infinity$/)]);
    expect(refused({ over: '/desk/height', from: 0, to: 900 })).toEqual(['/from: expected a length over 0 mm, got 0']);
    for (const steps of [0, 1, -3, 2.5, NaN, 1e9]) {
      expect(refused({ steps })).toEqual([
        `/steps: expected a whole number from 2 to 1000, both ends of the range among them, got ${steps}`,
      ]);
    }
    expect(refused({ of: [] as Measure[] })).toEqual(['/of: expected at least one measure, got none']);
    expect(refused({ mirror: true })).toEqual([
      '/mirror: expected a mark, such as /placement/right/x, to mirror, got "/stand/lift"',
    ]);
  });
});
