import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { plainText } from '$lib/project/sentence.ts';
import type { Project } from '$lib/project/project.ts';
import { sameJson } from '$lib/project/sameJson.ts';
import { solve } from '$lib/solution/solve.ts';
import { readAsk, type Ask } from '$lib/study/ask.ts';
import { measureOf, type Measure } from '$lib/study/measure.ts';
import { merged, type Part } from '$lib/study/found.ts';
import { search, searchSteps } from '$lib/study/search.ts';
import { visited } from '$lib/study/visited.ts';
import { anyDesk, demoWith, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

function ask(of: Project, document: object): Ask {
  const read = readAsk(document, firstLayout(of));
  if (!read.ok) throw new Error(read.faults.map(({ pointer, message }) => `${pointer}: ${plainText(message)}`).join());
  return read.value;
}

const refused = (document: unknown): string[] => {
  const of = project();
  const read = readAsk(document, firstLayout(of));
  return read.ok ? [] : read.faults.map(({ pointer, message }) => `${pointer}: ${plainText(message)}`);
};

/** A worker's part, worked through to its end. */
function finished(steps: ReturnType<typeof searchSteps>): Part {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

const dominates = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((one, aim) => one <= (b[aim] ?? 0)) && a.some((one, aim) => one < (b[aim] ?? 0));

const x = { pointer: '/placement/right/x', from: 300, to: 600, step: 60, mirror: true };
const setback = { pointer: '/listener/setback', from: 0, to: 500, step: 100 };

const asks = [
  { free: [x, setback], rules: [{ measure: 'tilt', most: 15 }], aims: ['triangle-error', 'move'] },
  { free: [x, setback], rules: [{ measure: 'clearance', least: 40 }], aims: ['triangle-error', 'tilt'] },
  { free: [setback, { pointer: '/stand/lift', from: 0, to: 60, step: 20 }], rules: [], aims: ['tilt', 'lift', 'wood'] },
  { free: [{ ...x, mirror: false }], rules: [{ measure: 'slip-margin', least: 0 }], aims: ['level-difference'] },
  {
    free: [{ pointer: '/monitors/0/y', from: 300, to: 600, step: 50 }],
    rules: [],
    aims: ['screen-hidden', 'clearance'],
  },
  {
    free: [
      { ...setback, step: 250 },
      { ...x, step: 150 },
    ],
    rules: [],
    aims: ['desk-level', 'safe-zone'],
  },
  {
    free: [
      { pointer: '/aim/toe', values: [{ rule: 'to-head' }, { rule: 'to-ear' }, { rule: 'behind-head', distance: 400 }, { rule: 'as-set', degrees: 12 }] }, // prettier-ignore
      setback,
      { pointer: '/aim/tilt', values: [{ rule: 'tilt-to-ear' }, { rule: 'lift-to-ear', degrees: 8 }] },
    ],
    rules: [{ measure: 'miss', most: 60 }],
    aims: ['off-axis', 'stand-height'],
  },
  { free: [{ pointer: '/air/temperature', from: 0, to: 30, step: 10 }], rules: [], aims: ['time-difference', 'desk-level'] }, // prettier-ignore
];

/** A grid evaluated whole, each candidate by the document's own door. */
function exhaustive(changes: Record<string, unknown>, of: Project, { free, rules, aims }: Ask) {
  const layout = firstLayout(of);
  const valuesOf = (one: Ask['free'][number]): readonly unknown[] => one.rules ?? Array.from({ length: one.count }, (_, i) => one.from + i * one.step); // prettier-ignore
  const places = free.reduce<unknown[][]>((all, one) => all.flatMap((before) => valuesOf(one).map((value) => [...before, value])), [[]]); // prettier-ignore
  const passing = places.flatMap((values) => {
    const edits = Object.fromEntries(
      free.flatMap(({ pointer, mirror }, i): [string, unknown][] => {
        const value = values[i] ?? 0;
        return [[`/layouts/0${pointer}`, value], ...(mirror ? [['/layouts/0/placement/left/x', -Number(value)] as [string, number]] : [])]; // prettier-ignore
      }),
    );
    const read = checkProject(demoWith({ ...changes, ...edits }));
    const solved = read.ok ? solve(read.value, firstLayout(read.value), false) : read;
    if (!solved.ok || !('layout' in solved.value)) return [];
    const solution = solved.value;
    const valueOf = (measure: Measure): number => measureOf(measure, solution, layout) ?? NaN;
    const holds = rules.every(({ measure, end, value }) => (end === 'most' ? valueOf(measure) <= value : valueOf(measure) >= value)); // prettier-ignore
    const bad = aims.map((aim) => (aim.better === 'less' ? valueOf(aim) : -valueOf(aim)));
    return holds ? [{ edits, bad }] : [];
  });
  return { passing, best: passing.filter(({ bad }) => !passing.some((other) => dominates(other.bad, bad))) };
}

describe('a search', () => {
  test('finds what exhaustive evaluation of a small grid finds: the front as a set, rules held, values those of the plan', () => {
    let members = 0;
    fc.assert(
      fc.property(
        anyDesk,
        fc.constantFrom('upright', 'tweeter-inboard'),
        fc.constantFrom(...asks),
        fc.integer({ min: 0, max: 1000 }),
        (desk, lying, asked, seed) => {
          const changes = { ...desk, '/speaker/lying': lying };
          const read = checkProject(demoWith(changes));
          if (!read.ok) return;
          const of = read.value;
          const wanted = ask(of, asked);
          const found = search(of, firstLayout(of), wanted, seed);
          const { passing, best } = exhaustive(changes, of, wanted);
          // Candidates nearer to each other than a grain count as alike: each member has one of the best within it.
          const grains = wanted.aims.map(({ unit }) => (unit === 'mm' ? 0.1 : unit === 'kg' ? 0.001 : 0.01));
          const near = (a: readonly number[], b: readonly number[]) => a.every((one, i) => Math.abs(one - (b[i] ?? NaN)) <= (grains[i] ?? 0)); // prettier-ignore
          const badOf = (values: Readonly<Record<string, number | null>>) => wanted.aims.map(({ name, better }) => (better === 'less' ? 1 : -1) * (values[name] ?? NaN)); // prettier-ignore
          expect(found.front.length === 0).toBe(passing.length === 0);
          for (const { edits, values } of found.front) {
            members += 1;
            const own = passing.find((one) => edits.every(({ pointer, value }) => sameJson(one.edits[`/layouts/0${pointer}`], value))); // prettier-ignore
            expect(own?.bad).toEqual(badOf(values));
            expect(passing.some(({ bad }) => dominates(bad, badOf(values)))).toBe(false);
          }
          for (const { bad } of best) {
            const covering = found.front.some(({ values }) => badOf(values).every((one, i) => one <= (bad[i] ?? NaN) + (grains[i] ?? 0))); // prettier-ignore
            expect(covering || found.front.some(({ values }) => near(badOf(values), bad))).toBe(true);
          }
        },
      ),
      { numRuns: runs(120) },
    );
    expect(members).toBeGreaterThan(runs(120));
  });

  test('is the same for every number of workers and every order of theirs', () => {
    const of = project();
    const layout = firstLayout(of);
    const wanted = ask(of, {
      free: [
        { ...x, step: 7 },
        { ...setback, step: 13 },
      ],
      aims: ['triangle-error', 'move'],
    });
    const whole = search(of, layout, wanted, 7);
    const partsOf = (workers: number): Part[] =>
      Array.from({ length: workers }, (_, worker) => finished(searchSteps(of, layout, wanted, 7, { worker, of: workers }))); // prettier-ignore
    for (const workers of [2, 3, 16]) {
      expect(merged(wanted, partsOf(workers))).toEqual(whole);
      expect(merged(wanted, partsOf(workers).toReversed())).toEqual(whole);
    }
    expect(search(of, layout, wanted, 7)).toEqual(whole);
    expect(whole.front.length).toBeGreaterThan(3);
    expect(whole.tried).toBe(43 * 39);
  });

  test('with the triangle alone finds the equilateral layout: ITU-R BS.775, 30 degrees to each side', () => {
    const of = project();
    const wanted = ask(of, {
      free: [{ ...x, from: 250, to: 650, step: 0.5 }, { ...setback, from: 0, to: 700, step: 1 }],
      aims: ['triangle-error'],
    }); // prettier-ignore
    const { front, tried } = search(of, firstLayout(of), wanted, 1);
    expect(tried).toBe(801 * 701);
    expect(front).toHaveLength(1);
    expect(front[0]?.values['triangle-error']).toBeLessThan(0.01);
    const [member] = front;
    const edits = Object.fromEntries(member?.edits.map(({ pointer, value }) => [`/layouts/0${pointer}`, value]) ?? []);
    const changed = project(edits);
    const solved = solve(changed, firstLayout(changed), false);
    if (!solved.ok) throw new Error('it has a plan');
    const { head, sides } = solved.value;
    for (const side of ['left', 'right'] as const) {
      const { aimedPoint } = sides[side];
      const bearing = (Math.atan2(Math.abs(aimedPoint.x - head.x), aimedPoint.y - head.y) * 180) / Math.PI;
      expect(bearing).toBeCloseTo(30, 1);
    }
  });

  test('gives first answers soon, each of more than the one before, and what it has so far is dominated by nothing it has seen', () => {
    const of = project();
    const layout = firstLayout(of);
    const wanted = ask(of, {
      free: [
        { ...x, step: 2 },
        { ...setback, step: 2 },
      ],
      aims: ['triangle-error', 'move'],
    });
    const steps = searchSteps(of, layout, wanted, 7, { worker: 0, of: 1 });
    const answers: Part[] = [];
    let shares = 0;
    for (let step = steps.next(); !step.done; step = steps.next()) {
      if ('answer' in step.value) answers.push(step.value.answer);
      else shares += 1;
    }
    expect(answers[0]?.tried).toBeLessThan(151 * 251 * 0.03);
    expect(answers.length).toBeGreaterThan(5);
    expect(shares).toBeGreaterThan(answers.length);
    answers.forEach(({ tried }, i) => expect(tried).toBeGreaterThan(answers[i - 1]?.tried ?? 0));
    const last = search(of, layout, wanted, 7);
    for (const answer of answers) {
      const { front } = merged(wanted, [structuredClone(answer)]);
      expect(front.length).toBeGreaterThan(0);
      for (const { values } of front) {
        const [error = NaN, move = NaN] = [values['triangle-error'] ?? NaN, values.move ?? NaN];
        const covering = last.front.some((one) => (one.values['triangle-error'] ?? NaN) < error + 0.01 && (one.values.move ?? NaN) < move + 0.1); // prettier-ignore
        expect(covering).toBe(true);
      }
    }
  });

  test('counts what holds, and looks closely at some that are spread over all', () => {
    const of = project();
    const layout = firstLayout(of);
    const rules = [{ measure: 'tilt', most: 13 }];
    const fine = { free: [{ ...x, step: 4 }, { ...setback, step: 5 }], aims: ['triangle-error', 'move'] }; // prettier-ignore
    const counted = search(of, layout, ask(of, { ...fine, rules }), 7);
    expect(counted.tried).toBe(76 * 101);
    const { passing } = exhaustive({}, of, ask(of, { ...fine, free: [{ ...x, step: 20 }, { ...setback, step: 50 }], rules })); // prettier-ignore
    expect(counted.holding.counted).toBe(true);
    const share = counted.holding.count / counted.tried;
    expect(share).toBeGreaterThan(0.2);
    expect(share).toBeLessThan(0.9);
    expect(Math.abs(share - passing.length / (16 * 11))).toBeLessThan(0.1);
    expect(counted.sample).toHaveLength(1024);
    const sampled = counted.sample.filter(({ holds }) => holds).length / counted.sample.length;
    expect(Math.abs(sampled - share)).toBeLessThan(0.04);
    for (const { values, holds } of counted.sample) expect(holds).toBe((values.tilt ?? NaN) <= 13);
    // What is left before a dear rule is worked out is not counted, and the sample tells how many there are.
    const dear = { ...fine, rules: [...rules, { measure: 'screen-gap', least: 0 }] };
    const { holding, sample, tried } = search(of, layout, ask(of, dear), 7);
    expect(holding.counted).toBe(false);
    expect(holding.count).toBe(Math.round((sample.filter(({ holds }) => holds).length / 1024) * tried));
  });

  test('says which rule, relaxed alone and by how much, would let something pass', () => {
    const of = project();
    const rules = [
      { measure: 'clearance', least: 10 },
      { measure: 'tilt', most: 1 },
    ];
    const wanted = ask(of, { free: [setback], rules, aims: ['triangle-error'] });
    const { front, relax } = search(of, firstLayout(of), wanted, 1);
    expect(front).toEqual([]);
    expect(relax).toHaveLength(1);
    expect(relax[0]).toMatchObject({ rule: 1 });
    const to = relax[0]?.to ?? NaN;
    expect(relax[0]?.by).toBe(to - 1);
    // With that it passes; with a hair less it does not.
    const withMost = (most: number) => search(of, firstLayout(of), ask(of, { free: [setback], rules: [{ measure: 'clearance', least: 10 }, { measure: 'tilt', most }], aims: ['triangle-error'] }), 1).front.length; // prettier-ignore
    expect(withMost(to + 1e-9)).toBe(1);
    expect(withMost(to - 1e-6)).toBe(0);
  });

  test('relaxes nothing where two rules stand in the way', () => {
    const of = project();
    const rules = [
      { measure: 'clearance', least: 900 },
      { measure: 'tilt', most: 1 },
    ];
    const { relax } = search(of, firstLayout(of), ask(of, { free: [setback], rules, aims: ['triangle-error'] }), 1);
    expect(relax).toEqual([]);
  });
});

test('every candidate is visited once, whatever the seed and the shares', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 0, max: 1e9 }), fc.integer({ min: 1, max: 9 }), (count, seed, shares) => {
      const all = Array.from({ length: shares }, (_, share) => [...visited(count, seed, share, shares)]).flat();
      expect(all.toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
    }), // prettier-ignore
    { numRuns: runs(300) },
  );
});

describe('an ask that is none', () => {
  const good = { free: [setback], aims: ['tilt'] };

  test('is refused at the pointer of what is wrong', () => {
    expect(refused([])).toEqual(['/: expected an object with free, rules and aims, got a list of 0'.replace('/', '')]);
    expect(refused({ ...good, wishes: [] })).toEqual(['/wishes: unknown key, expected one of free, rules, aims']);
    expect(refused({ aims: ['tilt'] })).toEqual(['/free: expected a list of at least one, got nothing']);
    expect(refused({ ...good, aims: [] })).toEqual(['/aims: expected a list of at least one, got a list of 0']);
    expect(refused({ ...good, aims: ['beauty'] })[0]).toMatch(/^\/aims\/0: expected the name of a measure \(/);
    const free = (change: object) => refused({ ...good, free: [{ ...setback, ...change }] });
    expect(free({ pointer: '/listener/beauty' })[0]).toMatch(/^\/free\/0\/pointer: expected the pointer of a number/);
    expect(free({ pointer: 7 })[0]).toMatch(/got 7$/);
    expect(free({ from: 600 })).toEqual(['/free/0/to: expected 600 or more, where the range begins, got 500']);
    expect(free({ step: 0 })).toEqual(['/free/0/step: expected a step over 0, got 0']);
    expect(free({ step: -1 })).toEqual(['/free/0/step: expected a step over 0, got -1']);
    expect(free({ step: 'wide' })).toEqual(['/free/0/step: expected a number, got "wide"']);
    expect(free({ to: 99_999 })).toEqual([expect.stringMatching(/^\/free\/0\/to: expected a position .*, got 99999$/)]);
    expect(free({ mirror: true })[0]).toMatch(/^\/free\/0\/mirror: expected a mark/);
    expect(free({ hurry: 1 })).toEqual(['/free/0/hurry: unknown key, expected one of pointer, from, to, step, mirror']);
    expect(refused({ ...good, free: [setback, setback] })).toEqual([
      '/free/1/pointer: expected a pointer whose value nothing else in the list sets, got "/listener/setback" again',
    ]);
    const rule = (one: unknown) => refused({ ...good, rules: [one] });
    expect(rule({ measure: 'beauty', most: 1 })[0]).toMatch(/^\/rules\/0\/measure: expected the name of a measure/);
    expect(rule({ measure: 'tilt' })).toEqual(['/rules/0: expected one of most and least, got none']);
    expect(rule({ measure: 'tilt', most: 1, least: 0 })).toEqual([
      '/rules/0: expected one of most and least, got both',
    ]);
    expect(rule({ measure: 'tilt', most: null })).toEqual(['/rules/0/most: expected a number, got null']);
  });

  test('has rules of toe and tilt by their values, each as a file has it', () => {
    const toe = (values: unknown, ...more: object[]) => refused({ ...good, free: [{ pointer: '/aim/toe', values }, ...more] }); // prettier-ignore
    expect(toe([{ rule: 'to-ear' }, { rule: 'as-set', degrees: 4 }])).toEqual([]);
    expect(toe([])).toEqual(['/free/0/values: expected a list of at least one rule, got a list of 0']);
    expect(toe(undefined)).toEqual(['/free/0/values: expected a list of at least one rule, got nothing']);
    expect(toe([{ rule: 'to-head' }, { rule: 'sideways' }])).toEqual([
      expect.stringMatching(/^\/free\/0\/values\/1\/rule: expected .*to-ear.*, got "sideways"$/),
    ]);
    expect(toe([{ rule: 'as-set' }])).toEqual([expect.stringMatching(/^\/free\/0\/values\/0\/degrees: expected .* got nothing/)]); // prettier-ignore
    expect(toe([{ rule: 'to-head', degrees: 3 }])).toEqual([expect.stringMatching(/^\/free\/0\/values\/0\/degrees: unknown key/)]); // prettier-ignore
    expect(refused({ ...good, free: [{ pointer: '/aim/toe', from: 1, to: 2, step: 1 }] })).toEqual(
      ['from', 'to', 'step'].map((key) => `/free/0/${key}: unknown key, expected one of pointer, values`),
    );
    const of = project({ '/layouts/0/aim/toe': { rule: 'as-set', degrees: 5 } });
    const degrees = { pointer: '/aim/toe/degrees', from: 0, to: 10, step: 5 };
    const both = readAsk({ ...good, free: [{ pointer: '/aim/toe', values: [{ rule: 'to-head' }] }, degrees] }, firstLayout(of)); // prettier-ignore
    expect(both.ok || both.faults.map(({ pointer }) => pointer)).toEqual(['/free/1/pointer']);
  });

  test('may not begin a tilt at a lift that there is not', () => {
    const of = project({
      '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 12 },
      '/layouts/0/stand/lift': undefined,
    });
    const free = [{ pointer: '/aim/tilt', values: [{ rule: 'lift-to-ear', degrees: 3 }, { rule: 'tilt-to-ear' }] }];
    const read = readAsk({ free, aims: ['tilt'] }, firstLayout(of));
    expect(read.ok || read.faults).toEqual([
      { pointer: '/free/0/values/1/rule', message: 'expected lift-to-ear, as the layout has no lift of its own, got "tilt-to-ear"' }, // prettier-ignore
    ]);
  });

  test('may contradict itself: a least over a most', () => {
    expect(refused({ ...good, rules: [{ measure: 'tilt', most: 5 }, { measure: 'tilt', least: 9 }] })).toEqual([
      '/rules/1/least: expected at most 5, which another rule sets for tilt, got 9',
    ]); // prettier-ignore
  });

  test('may ask for a billion candidates, which is said before any work, with what would fit', () => {
    const many = [{ ...setback, to: 999, step: 1 }, { ...x, from: 1, to: 1000, step: 1 }, { pointer: '/listener/earHeight', from: 1000, to: 1999, step: 1 }]; // prettier-ignore
    const began = performance.now();
    expect(refused({ free: many, aims: ['tilt'] })).toEqual([
      '/free: expected at most 50000000 candidates for these measures, got 1000000000: steps 2.8 times as large would fit, or narrower ranges',
    ]);
    expect(performance.now() - began).toBeLessThan(1000);
    expect(refused({ free: [{ ...setback, to: 500, step: 0.001 }], aims: ['safe-zone'] })[0]).toMatch(
      /^\/free: expected at most 200000 candidates .*, got 500001: steps 2\.6 times as large/,
    );
  });
});
