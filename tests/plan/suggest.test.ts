import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding, Plan } from '$lib/plan/document.ts';
import { leastStep } from '$lib/plan/findings/leastStep.ts';
import { allFindings, isBetter, suggestionsFor } from '$lib/plan/findings/suggest.ts';
import type { Suggestion } from '$lib/plan/findings/suggestion.ts';
import { harm } from '$lib/plan/findings/harm.ts';
import { wholeFindings } from '$lib/plan/findings/whole.ts';
import { plan } from '$lib/plan/plan.ts';
import { soundOf } from '$lib/plan/sound.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { withEdits } from '$lib/state/edit.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

type Changes = Record<string, unknown>;

interface Found {
  readonly project: Project;
  readonly plan: Plan;
  readonly sound: ReturnType<typeof soundOf>;
  readonly findings: readonly Finding[];
}

interface Judged extends Found {
  readonly suggestions: ReadonlyMap<string, Suggestion>;
}

/** Everything found in a project; null where it has no plan. */
function find(of: Project): Found | null {
  const layout = firstLayout(of);
  const planned = plan(of, layout);
  if (!planned.ok) return null;
  const sound = soundOf(of, layout, planned.value);
  return { project: of, plan: planned.value, sound, findings: allFindings(of, layout, planned.value, sound) };
}

/** The same with suggestions. */
function judge(of: Project): Judged | null {
  const found = find(of);
  return found && { ...found, suggestions: suggestionsFor(of, 0, found.plan, found.sound, found.findings) };
}

function judged(changes: Changes = {}): Judged {
  const found = judge(project(changes));
  if (!found) throw new Error('expected a plan');
  return found;
}

/** What becomes of it once a suggestion is followed, through the same door as the page. */
function followed(of: Judged, { edits }: Suggestion): Found {
  const draft = withEdits(
    of.project,
    edits.map(({ pointer, value }) => [pointer, value]),
  );
  const checked = checkProject(draft);
  if (!checked.ok) throw new Error('a suggestion must leave a sound project');
  const after = find(checked.value);
  if (!after) throw new Error('a suggestion must leave a plan');
  return after;
}

/** Judged from the findings alone: those of a code are fewer, less grave or at most half as far off; none of a graver level is new. */
function expectHelped(before: Found, after: Found, code: string): void {
  const own = ({ findings }: Found) => findings.filter((one) => one.code === code);
  const count = ({ findings }: Found, level: Finding['level']) => findings.filter((one) => one.level === level).length;
  const off = (found: Found, level: Finding['level']) =>
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

const codes = ({ findings }: Found): string[] => findings.map(({ code }) => code);

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
        '/layouts/0/desk/wallGap': 0,
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
  ] satisfies [string, Changes, string][])('for %s is there and helps', (_, changes, code) => {
    const before = judged(changes);
    expect(codes(before)).toContain(code);
    const suggestion = before.suggestions.get(code);
    if (!suggestion) throw new Error('expected a suggestion');
    expect(suggestion.label).toMatch(/^[A-Z].*\S$/);
    expectHelped(before, followed(before, suggestion), code);
  });

  test('never makes anything worse, on any desk', () => {
    let followedUp = 0;
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const before = judge(project(changes));
        fc.pre(before !== null);
        for (const [code, suggestion] of before.suggestions) {
          const after = followed(before, suggestion);
          expectHelped(before, after, code);
          followedUp++;
        }
      }),
      { numRuns: runs(12) },
    );
    expect(followedUp).toBeGreaterThan(runs(12));
  });

  test('is not made where none is good: a bare desk sends sound back at any place', () => {
    const before = judged();
    expect(codes(before)).toContain('early-desk');
    expect(before.suggestions.get('early-desk')).toBeUndefined();
  });

  test('speaks of whole millimetres or what a person would type', () => {
    const found = [...judged({ ...calm, '/layouts/0/listener/offset': 80 }).suggestions.values()];
    expect(found.map(({ label }) => label)).toContain('Sit in the middle');
  });
});

describe('better', () => {
  const finding = (code: string, level: Finding['level'], value: number): Finding => ({
    code,
    level,
    text: code,
    value,
    limit: 0,
    unit: 'mm',
    source: 'made up',
  });

  test('is gone, graver never, half as far at the most', () => {
    const before = [finding('a', 'caution', 10)];
    expect(isBetter(before, [], 'a')).toBe(true);
    expect(isBetter(before, [finding('a', 'caution', 5)], 'a')).toBe(true);
    expect(isBetter(before, [finding('a', 'caution', 5.1)], 'a')).toBe(false);
    expect(isBetter(before, [finding('a', 'note', 9)], 'a')).toBe(true);
    expect(isBetter(before, [finding('a', 'fault', 1)], 'a')).toBe(false);
  });

  test('does not trade one trouble for another of its level', () => {
    const before = [finding('a', 'caution', 10)];
    expect(isBetter(before, [finding('b', 'caution', 1)], 'a')).toBe(false);
    expect(isBetter(before, [finding('b', 'fault', 1)], 'a')).toBe(false);
    expect(isBetter(before, [finding('b', 'note', 1)], 'a')).toBe(true);
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
        const texts = whole.map(({ text }) => text);
        expect(new Set(texts).size).toBe(texts.length);
        expect(new Set(whole.map(({ code }) => code))).toEqual(new Set(codes(found)));
        const labels = whole.flatMap(({ suggestion }) => (suggestion ? [suggestion] : []));
        expect(labels.length).toBe(found.suggestions.size);
      }),
      { numRuns: runs(40) },
    );
  });

  test('of a mirrored desk speaks of each loudspeaker, not of left and right', () => {
    const whole = wholeFindings(judged().findings);
    expect(whole.filter(({ side }) => side !== undefined)).toEqual([]);
    expect(whole.find(({ code }) => code === 'inclination')?.text).toMatch(/^Each axis rises /);
    const beside = wholeFindings(judged({ '/layouts/0/listener/offset': 60 }).findings);
    expect(beside.filter(({ code }) => code === 'inclination').map(({ side }) => side)).toEqual(['left', 'right']);
  });
});

test('the least step is found where a test passes from some number on', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }), (first, most) => {
      expect(leastStep((steps) => steps >= first, most)).toBe(first <= most ? first : null);
    }),
  );
});
