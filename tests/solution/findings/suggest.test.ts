import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding, FindingCode } from '$lib/solution/findings/finding.ts';
import { plainFindingText } from '$lib/solution/findings/findingText.ts';
import { leastStep } from '$lib/solution/findings/leastStep.ts';
import { isBetter } from '$lib/solution/findings/suggest.ts';
import { effectText } from '$lib/solution/findings/effectText.ts';
import { priceText } from '$lib/solution/findings/price.ts';
import { kindOf, notTaken, type Suggestion } from '$lib/solution/findings/suggestion.ts';
import { harm } from '$lib/solution/findings/harm.ts';
import { wholeFindings } from '$lib/solution/findings/whole.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { solve } from '$lib/solution/solve.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { asMm, plainText } from '$lib/project/sentence.ts';
import { withEdits } from '$lib/document/edit.ts';
import { anyDesk, firstLayout, project } from '../../projects.ts';
import { runs } from '../../runs.ts';
import { withGap } from '../../rooms.ts';

type Changes = Record<string, unknown>;

/** What a solution is judged by. */
type Judged = Solution;

/** Everything said of a project, with suggestions; null where it has no answer. */
function judge(of: Project): Judged | null {
  const solved = solve(of, firstLayout(of));
  return solved.ok ? solved.value : null;
}

function judged(changes: Changes = {}): Judged {
  const found = judge(project(changes));
  if (!found) throw new Error('expected a plan');
  return found;
}

/** What becomes of it once a suggestion is followed, through the same door as the page. */
function followed(of: Judged, { edits }: Suggestion): Judged {
  const draft = withEdits(
    of.project,
    edits.map(({ pointer, value }) => [pointer, value]),
  );
  const checked = checkProject(draft);
  if (!checked.ok) throw new Error('a suggestion must leave a sound project');
  const after = judge(checked.value);
  if (!after) throw new Error('a suggestion must leave a plan');
  return after;
}

/** Judged from the findings alone: those of a code are fewer, less grave or at most half as far off; none of a graver level is new. */
function expectHelped(before: Judged, after: Judged, code: string): void {
  const own = ({ findings }: Judged) => findings.filter((one) => one.code === code);
  const count = ({ findings }: Judged, level: Finding['level']) => findings.filter((one) => one.level === level).length;
  const off = (found: Judged, level: Finding['level']) =>
    own(found)
      .filter((one) => one.level === level)
      .reduce((sum, { value, limit }) => sum + Math.abs(value - limit), 0);
  const [worst] = (['fault', 'caution', 'note'] as const).filter((level) =>
    own(before).some((one) => one.level === level),
  );
  if (worst === undefined) throw new Error(`expected a finding ${code}`);
  expect(off(after, worst)).toBeLessThanOrEqual(off(before, worst) / 2);
  expect(count(after, 'fault')).toBeLessThanOrEqual(count(before, 'fault'));
  if (worst !== 'fault') expect(count(after, 'caution')).toBeLessThanOrEqual(count(before, 'caution'));
}

/** How the axes pass a posture that the aim is not for, and its triangle: told, but no reason against a suggestion. */
const isOfNobodyServed = ({ code }: Finding, { layout }: Judged): boolean =>
  layout.aim.over === null && ['posture-missed', 'posture-triangle'].includes(code);

/** What of other codes is worse after than before, by value and more than a little; a fault by anything at all. */
function worse(before: Judged, after: Judged, code: string): string[] {
  const little: Record<string, number> = { mm: 1, '°': 0.5, dB: 0.5, µs: 10, '%': 0.5 };
  return after.findings.flatMap((now) => {
    if (now.code === code || isOfNobodyServed(now, after)) return [];
    const was = before.findings
      .filter((one) => one.code === now.code && isDeepStrictEqual([one.sides, one.subject], [now.sides, now.subject]))
      .map(({ value, limit }) => Math.abs(value - limit));
    const more = Math.abs(now.value - now.limit) - Math.max(0, ...was);
    const allowed = now.level === 'fault' ? 0 : (little[now.unit] ?? 0);
    return more > allowed + 1e-6 ? [`${now.code} by ${more} ${now.unit}`] : [];
  });
}

/** Every length among the values of an edit, with its own pointer. */
function lengthsOf({ pointer, value }: { pointer: string; value: unknown }): { pointer: string; value: number }[] {
  if (typeof value === 'number') return /aim/.test(pointer) ? [] : [{ pointer, value }];
  if (typeof value !== 'object' || value === null || pointer.includes('/aim/')) return [];
  return Object.entries(value).flatMap(([key, held]) => lengthsOf({ pointer: `${pointer}/${key}`, value: held }));
}

const valueAt = (of: unknown, pointer: string): unknown =>
  pointer
    .split('/')
    .slice(1)
    .reduce<unknown>((at, key) => (at as Record<string, unknown> | null | undefined)?.[key], of);

/** A screen that may be in the way, or nearly. */
const anyScreen = fc
  .record({
    y: fc.integer({ min: 250, max: 650 }),
    width: fc.integer({ min: 400, max: 900 }),
    bottom: fc.integer({ min: 20, max: 150 }),
  })
  .map((screen) => ({ x: 0, height: 365, depth: 40, ...screen }));

const codes = ({ findings }: Judged): FindingCode[] => findings.map(({ code }) => code);
const kind = ({ code, subject }: Finding) => ({ code, subject });
const kindsOf = ({ findings }: Judged) => new Set(findings.map((finding) => JSON.stringify(kind(finding))));

/** A seat and marks that few checks have anything to say about. */
const calm = {
  '/layouts/0/listener/setback': 450,
  '/layouts/0/listener/earHeight': 1130,
  '/layouts/0/listener/postures': [],
  '/layouts/0/placement/left': { x: -430, y: 250 },
  '/layouts/0/placement/right': { x: 430, y: 250 },
  '/layouts/0/monitors': [],
  '/layouts/0/stand/friction': 0.6,
};

describe('a suggestion', () => {
  test.each([
    ['a pair too wide', {}, 'triangle-angle'],
    ['an axis too steep', {}, 'inclination'],
    [
      'a cabinet in a monitor',
      { ...calm, '/layouts/0/monitors': [{ y: 300, width: 900, height: 365, bottom: 20 }] },
      'monitor-collision',
    ],
    [
      'a stand in the wall',
      {
        ...calm,
        ...withGap(0),
        '/layouts/0/placement/left/y': 600,
        '/layouts/0/placement/right/y': 600,
      },
      'into-wall',
    ],
    [
      'a stand over the edge',
      { ...calm, '/layouts/0/placement/left/y': -40, '/layouts/0/placement/right/y': -40 },
      'stand-over-edge',
    ],
    ['a seat beside the middle', { ...calm, '/layouts/0/listener/offset': 80 }, 'time-difference'],
    ['a seat beside the middle', { ...calm, '/layouts/0/listener/offset': 80 }, 'level-difference'],
    ['an axis past the head', { ...calm, '/layouts/0/aim/toe': { rule: 'straight' } }, 'axis-misses-head'],
    [
      'drivers out of step',
      {
        ...calm,
        '/speaker/designPoint': { driver: 'tweeter', distance: 1000 },
        '/layouts/0/aim/tilt': { rule: 'as-set', degrees: -15 },
      },
      'crossover-sum',
    ],
    [
      'a tweeter that beams past',
      { ...calm, '/layouts/0/aim/toe': { rule: 'as-set', degrees: -25 } },
      'treble-off-axis',
    ],
    [
      'a narrow stand',
      {
        ...calm,
        '/layouts/0/stand': { lift: 250, width: 60, rods: null },
        '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 0 },
      },
      'tips',
    ],
    ['a steep slope', { '/layouts/0/stand/friction': 0.15, '/layouts/0/stand/lift': 20 }, 'slides'],
  ] satisfies [string, Changes, FindingCode][])('for %s is there and helps', (_, changes, code) => {
    const before = judged(changes);
    expect(codes(before)).toContain(code);
    const suggestion = before.suggestions.get(code);
    if (!suggestion) throw new Error('expected a suggestion');
    expect(plainText(suggestion.label)).toMatch(/^[A-Z].*\S$/);
    const after = followed(before, suggestion);
    expectHelped(before, after, code);
    expect(worse(before, after, code)).toEqual([]);
  });

  test('makes no other finding worse by more than a little, by its value, on any desk with a screen', () => {
    let made = 0;
    fc.assert(
      fc.property(anyDesk, anyScreen, (changes, screen) => {
        const before = judge(project({ ...changes, '/layouts/0/monitors': [screen] }));
        if (!before) return;
        for (const [code, suggestion] of before.suggestions) {
          made += 1;
          const after = followed(before, suggestion);
          const label = plainText(suggestion.label);
          expect([label, worse(before, after, code)]).toEqual([label, []]);
          expectHelped(before, after, code);
          const left = kindsOf(after);
          const gone = [...kindsOf(before)].filter((one) => !left.has(one));
          expect(suggestion.clears.map((one) => JSON.stringify(one))).toEqual(gone);
          expect(suggestion.edits.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: runs(60), endOnFailure: true },
    );
    expect(made).toBeGreaterThan(runs(60) / 2);
  }, 180_000);

  test('of the demo for its triangle leaves room at the screen, hides nothing and does not make the cabinets slide sooner', () => {
    const before = judged();
    const suggestion = before.suggestions.get('triangle-angle');
    if (!suggestion) throw new Error('the demo has a better place');
    const after = followed(before, suggestion);
    expect(Math.abs(after.triangle.angle - 60)).toBeLessThan(5);
    expect(codes(after)).not.toContain('screen-hidden');
    expect(codes(after)).not.toContain('close-to-screen');
    expect(after.balance.right.slide.margin).toBeGreaterThan(before.balance.right.slide.margin - 0.5);
    expect(plainText(suggestion.label)).toMatch(/^(Move both marks|Sit) /);
  });

  test('that was followed is not offered again, whatever was followed before', () => {
    let of = judged();
    const taken = new Set<string>();
    for (let press = 0; press < 12; press++) {
      const [next] = notTaken(of.suggestions, taken).values();
      if (!next) break;
      expect(taken.has(kindOf(next))).toBe(false);
      taken.add(kindOf(next));
      of = followed(of, next);
    }
    expect(taken.size).toBeGreaterThan(1);
    expect([...notTaken(of.suggestions, taken)]).toEqual([]);
  });

  test('says the move to make, not the place in the room', () => {
    const seat = judged({ ...calm, '/layouts/0/placement/left/x': -412, '/layouts/0/listener/offset': -40 });
    const made = seat.suggestions.get('time-difference');
    const offset = made?.edits.find(({ pointer }) => pointer.endsWith('/offset'))?.value;
    expect(offset).toBeGreaterThan(0);
    expect(made && plainText(made.label)).toBe(`Sit ${Number(offset) + 40} mm further to the right`);
  });

  test.each([8, 16, 64] as const)('is on the tape of a project in 1/%d inch, and still an answer', (fraction) => {
    const inches = { '/display': { length: 'in', fraction } };
    const step = 25.4 / fraction;
    let lengths = 0;
    for (const changes of [
      {},
      { ...calm, '/layouts/0/listener/offset': 80 },
      { ...calm, '/layouts/0/placement/left/y': -40, '/layouts/0/placement/right/y': -40 },
      {
        ...calm,
        '/layouts/0/stand': { lift: 250, width: 60, rods: null },
        '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 0 },
      },
    ]) {
      const before = judged({ ...changes, ...inches });
      for (const [code, suggestion] of before.suggestions) {
        for (const { pointer, value } of suggestion.edits.flatMap(lengthsOf)) {
          const was = valueAt(before.project, pointer);
          if (value === was) continue;
          lengths += 1;
          expect([pointer, Math.abs(value / step - Math.round(value / step)) < 1e-6]).toEqual([pointer, true]);
        }
        expect(worse(before, followed(before, suggestion), code)).toEqual([]);
      }
    }
    expect(lengths).toBeGreaterThan(5);
  });

  test('clears a fault and the cautions that go with it in one press, and is shown once', () => {
    const before = judged({ ...calm, '/layouts/0/monitors': [{ y: 400, width: 900, height: 365, bottom: 20 }] });
    const suggestion = before.suggestions.get('monitor-collision');
    expect(suggestion?.clears).toContainEqual({ code: 'monitor-collision', subject: { monitor: 0 } });
    expect(suggestion?.clears.length).toBeGreaterThan(1);
    expect(effectText(suggestion ?? { clears: [], price: { layers: 0, mass: 0, alike: true } })).toMatch(
      /^Clears \d findings/,
    );
    const shown = wholeFindings(before.findings, before.suggestions).flatMap(({ suggestion: one }) =>
      one ? [JSON.stringify(one.edits)] : [],
    );
    expect(new Set(shown).size).toBe(shown.length);
  });

  test('says its price beside its gain', () => {
    const before = judged({
      ...calm,
      '/layouts/0/stand': { lift: 250, width: 60, rods: null, friction: 0.6 },
      '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 0 },
    });
    const suggestion = before.suggestions.get('tips');
    if (!suggestion) throw new Error('a narrow stand can be made wider');
    const after = followed(before, suggestion);
    expect(suggestion.price.layers).toBe(after.stand.right.layers - before.stand.right.layers);
    expect(suggestion.price.mass).toBeCloseTo(after.stand.right.mass - before.stand.right.mass, 9);
    const alike = true;
    expect(priceText({ layers: 3, mass: 2.04, alike })).toEqual(['3 more layers a stand', '2.0 kg heavier a stand']);
    expect(priceText({ layers: -1, mass: -0.06, alike })).toEqual(['1 fewer layer a stand', '0.1 kg lighter a stand']);
    expect(priceText({ layers: 0, mass: 0.01, alike })).toEqual([]);
    // Stands that differ: the one that costs more, or saves less.
    expect(priceText({ layers: 2, mass: 0.3, alike: false })).toEqual([
      'up to 2 more layers a stand',
      'up to 0.3 kg heavier a stand',
    ]);
    expect(priceText({ layers: 0, mass: -0.3, alike: false })).toEqual(['at least 0.3 kg lighter a stand']);
    // Sheets are not counted, and nothing is said of them.
    expect(priceText({ layers: 2, mass: 0.3, alike }).join()).not.toContain('sheet');
  });

  test('is not made where none is good: a bare desk sends sound back at any place', () => {
    const before = judged();
    expect(before.findings.map(kind)).toContainEqual({
      code: 'early-reflection',
      subject: { surface: 'desk', monitor: null },
    });
    expect(before.suggestions.get('early-reflection')).toBeUndefined();
  });
});

describe('better', () => {
  /** Four kinds of which a finding needs no more than its number. */
  const [AIM, WALL, MAT, LEVEL] = ['time-difference', 'close-to-wall', 'idle-mat', 'level-difference'] as const;
  const kinds = {
    [AIM]: { code: AIM, quantities: { time: asMm(1) } },
    [WALL]: {
      code: WALL,
      subject: { wall: 0 },
      facts: { wall: 'behind', way: 'back' },
      quantities: { gap: asMm(1), wanted: asMm(1) },
    },
    [MAT]: { code: MAT, quantities: { feet: asMm(1) } },
    [LEVEL]: { code: LEVEL, quantities: { level: asMm(1) } },
  } as const;
  const finding = (code: keyof typeof kinds, level: Finding['level'], value: number): Finding => ({
    subject: {},
    facts: {},
    ...kinds[code],
    level,
    sides: [],
    value,
    limit: 0,
    unit: 'mm',
    source: 'geometry',
  });

  test('is gone, graver never, half as far at the most', () => {
    const before = [finding(AIM, 'caution', 10)];
    expect(isBetter(before, [], AIM)).toBe(true);
    expect(isBetter(before, [finding(AIM, 'caution', 5)], AIM)).toBe(true);
    expect(isBetter(before, [finding(AIM, 'caution', 5.1)], AIM)).toBe(false);
    expect(isBetter(before, [finding(AIM, 'note', 9)], AIM)).toBe(true);
    expect(isBetter(before, [finding(AIM, 'fault', 1)], AIM)).toBe(false);
  });

  test('trades no trouble for another of any level, but for a little', () => {
    const before = [finding(AIM, 'caution', 10), finding(WALL, 'note', 5), finding(LEVEL, 'fault', 5)];
    const after = (...others: Finding[]): boolean => isBetter(before, [finding(LEVEL, 'fault', 5), ...others], AIM);
    expect(after()).toBe(true);
    expect(after(finding(WALL, 'note', 5.9))).toBe(true);
    expect(after(finding(WALL, 'note', 6.1))).toBe(false);
    expect(after(finding(MAT, 'note', 1.1))).toBe(false);
    expect(after(finding(WALL, 'note', 5), finding(MAT, 'note', 0.9))).toBe(true);
    expect(after(finding(MAT, 'caution', 0.9))).toBe(false);
    expect(after(finding(MAT, 'fault', 0.9))).toBe(false);
    expect(isBetter(before, [finding(LEVEL, 'fault', 5.1)], AIM)).toBe(false);
  });
});

describe('the whole list', () => {
  test('is sorted by harm, says nothing twice, and each side alike once', () => {
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const found = judge(project(changes));
        fc.pre(found !== null);
        const whole = wholeFindings(found.findings, found.suggestions);
        const levels = whole.map(({ level }) => harm[level]);
        expect(levels).toEqual([...levels].sort((a, b) => a - b));
        const texts = whole.map(plainFindingText);
        expect(new Set(texts).size).toBe(texts.length);
        expect(new Set(whole.map(({ code }) => code))).toEqual(new Set(codes(found)));
        const labels = whole.flatMap(({ suggestion }) => (suggestion ? [suggestion] : []));
        const different = new Set([...found.suggestions.values()].map(({ edits }) => JSON.stringify(edits)));
        expect(labels.length).toBe(different.size);
      }),
      { numRuns: runs(40) },
    );
  });

  test('of a mirrored desk speaks of each loudspeaker, not of left and right', () => {
    const whole = wholeFindings(judged().findings);
    expect(whole.filter(({ sides }) => sides.length === 1)).toEqual([]);
    const steep = whole.filter(({ code }) => code === 'inclination');
    expect(steep.map(({ sides }) => sides)).toEqual([['left', 'right']]);
    expect(steep.map(plainFindingText)[0]).toMatch(/^Each axis rises /);
    const beside = wholeFindings(judged({ '/layouts/0/listener/offset': 60 }).findings);
    expect(beside.filter(({ code }) => code === 'inclination').map(({ sides }) => sides)).toEqual([
      ['left'],
      ['right'],
    ]);
  });
});

test('the least step is found where a test passes from some number on', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }), (first, most) => {
      expect(leastStep((steps) => steps >= first, most)).toBe(first <= most ? first : null);
    }),
  );
});
