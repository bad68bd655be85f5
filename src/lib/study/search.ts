import type { Layout, Project } from '$lib/project/project.ts';
import { plan } from '$lib/solution/plan.ts';
import { solutionOf } from '$lib/solution/solve.ts';
import { speedOfSound } from '$lib/acoustics/air.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { aimKernel, aimPair } from './aimKernel.ts';
import { candidatesOf, type Ask, type Rule } from './ask.ts';
import { Front, type Member } from './front.ts';
import { edited, mirrored, withEdits, type Edit } from './input.ts';
import { measureOf, placesOf, type Aimed, type Measure } from './measure.ts';
import { badness } from './ranked.ts';
import { visited } from './visited.ts';

/** What a search found. */
export interface Found {
  /** Candidates looked at. */
  readonly tried: number;
  /** The best compromises, none of them dominated by any candidate. Empty where nothing satisfies the rules. */
  readonly front: readonly FrontMember[];
  /** Where nothing satisfies the rules: each rule that, relaxed alone, would let something pass. */
  readonly relax: readonly Relaxed[];
}

export interface FrontMember {
  readonly edits: readonly Edit[];
  /** Every measure that was asked for or ruled by, of the plan with these edits. */
  readonly values: Readonly<Record<string, number | null>>;
}

export interface Relaxed {
  /** Its place in the list of rules. */
  readonly rule: number;
  /** The value that would do, and how far that is from the one asked for. */
  readonly to: number;
  readonly by: number;
}

/** A stretch of a search, as one worker makes it; those of all workers are merged. */
export interface Share {
  readonly front: Front<Member>;
  /** Of each rule the candidate that violates it alone, and least. */
  readonly nearest: readonly (Nearest | null)[];
}

interface Nearest {
  readonly value: number;
  readonly by: number;
}

/** Shares are as many whatever the workers: what each finds hangs on nothing else, and so does the whole. */
const SHARES = 16;

/** The least difference that counts, in each unit: finer than anybody can set or hear it. */
const grains: Record<Measure['unit'], number> = { '°': 0.01, mm: 0.1, µs: 0.1, dB: 0.01, kg: 0.001, '%': 0.01, '': 1 };

/**
 * Looks at every candidate of an ask and keeps the best compromises that satisfy its rules. The same for the same ask
 * and seed, which orders the visit, however many workers share it. `ask` must be of this layout. Pure.
 */
export function search(project: Project, layout: Layout, ask: Ask, seed: number): Found {
  const shares = Array.from({ length: SHARES }, (_, share) => searchShare(project, layout, ask, seed, share));
  return merged(project, layout, ask, shares);
}

/** The findings of all shares, in any order, as one. */
export function merged(project: Project, layout: Layout, ask: Ask, shares: readonly Share[]): Found {
  const front = new Front<Member>(grainsOf(ask));
  for (const share of shares) front.merge(share.front);
  const all = [...ask.aims, ...ask.rules.map(({ measure }) => measure)];
  const members = front.members.map(({ index }): FrontMember => {
    const edits = editsOf(ask, valuesAt(ask, index));
    const changed = edited(project, layout, edits);
    const solution = changed.ok ? plan(changed.value.project, changed.value.layout, false) : changed;
    if (!solution.ok) throw new Error('a member of the front has a plan');
    const of = solutionOf(solution.value);
    return { edits, values: Object.fromEntries(all.map((measure) => [measure.name, measureOf(measure, of, layout)])) };
  });
  const relax = ask.rules.flatMap(({ value }, rule) => {
    const near = shares
      .flatMap(({ nearest }) => nearest[rule] ?? [])
      .reduce<Nearest | null>((least, one) => (least && least.by <= one.by ? least : one), null);
    return near ? [{ rule, to: near.value, by: Math.abs(near.value - value) }] : [];
  });
  return { tried: candidatesOf(ask), front: members, relax: members.length > 0 ? [] : relax };
}

const grainsOf = ({ aims }: Ask): number[] => aims.map(({ unit }) => grains[unit]);

/** One of `SHARES` stretches of a search. */
export function searchShare(project: Project, layout: Layout, ask: Ask, seed: number, share: number): Share {
  const front = new Front<Member>(grainsOf(ask));
  const nearest: (Nearest | null)[] = ask.rules.map(() => null);
  const rules = ask.rules
    .map((rule, place) => ({ rule, place }))
    .sort((a, b) => cost[a.rule.measure.needs] - cost[b.rule.measure.needs]);
  const judge = judgeOf(project, layout, ask);
  const isQuick = ask.aims.every(({ needs }) => needs === 'aim');
  let satisfied = false;
  for (const index of visited(candidatesOf(ask), seed, share, SHARES)) {
    const candidate = judge(index);
    if (!candidate) continue;
    const quickly = isQuick ? badnessOf(ask, candidate.value) : null;
    let violated: { readonly place: number; readonly near: Nearest } | null = null;
    let fails = false;
    for (const { rule, place } of rules) {
      // What cannot come in by its aims need not be held against rules that take long; nor what is no nearer than another.
      const isDear = rule.measure.needs !== 'aim';
      if (isDear && satisfied && quickly && !front.admits({ index, bad: quickly })) fails = true;
      if (isDear && violated && violated.near.by >= (nearest[violated.place]?.by ?? Infinity)) fails = true;
      if (fails) break;
      const value = candidate.value(rule.measure);
      if (value === undefined) fails = true;
      if (value === undefined || holds(rule, value)) continue;
      // A second violation, or one that nothing is known of, makes it no candidate of a relaxed rule either.
      if (satisfied || violated || value === null) fails = true;
      else violated = { place, near: { value, by: Math.abs(value - rule.value) } };
    }
    if (fails) continue;
    if (violated) {
      const { place, near } = violated;
      const least = nearest[place];
      if ((!least || near.by < least.by) && candidate.isSound()) nearest[place] = near;
      continue;
    }
    const bad = badnessOf(ask, candidate.value);
    if (!bad || !front.admits({ index, bad }) || !candidate.isSound()) continue;
    // What comes in is judged by its plan, to the last digit.
    if (!ask.rules.every((rule) => holds(rule, candidate.planned(rule.measure) ?? null))) continue;
    satisfied = true;
    front.add({ index, bad: badnessOf(ask, candidate.planned) ?? bad });
  }
  return { front, nearest };
}

const cost: Record<Measure['needs'], number> = { aim: 0, bodies: 1, stands: 2, sound: 3, sheets: 4 };

function badnessOf({ aims }: Ask, valueOf: Candidate['value']): number[] | null {
  const bad: number[] = [];
  for (const aim of aims) {
    const value = valueOf(aim);
    const one = value === undefined ? null : badness(aim, value);
    if (one === null) return null;
    bad.push(one);
  }
  return bad;
}

function holds({ measure, end, value: limit }: Rule, value: number | null): boolean {
  if (value === null) return measure.missing?.is === 'best' && end === (measure.better === 'less' ? 'most' : 'least');
  return end === 'most' ? value <= limit : value >= limit;
}

/** One candidate, worked out as far as it is asked. */
interface Candidate {
  /** Of a measure; null where it has no answer, undefined where there is no plan. */
  readonly value: (measure: Measure) => number | null | undefined;
  /** The same, of the plan whatever it needs. */
  readonly planned: (measure: Measure) => number | null | undefined;
  /** Whether the project with it is a sound one that has a plan. */
  readonly isSound: () => boolean;
}

/** What makes candidates of their numbers; null for one that cannot be aimed. */
function judgeOf(project: Project, layout: Layout, ask: Ask): (index: number) => Candidate | null {
  const { speaker } = project;
  const pointers = editsOf(ask, valuesAt(ask, 0)).map(({ pointer }) => pointer);
  const kernel = aimKernel(speaker, layout, pointers);
  const before = placesOf(layout);
  const speed = speedOfSound(layout.air.temperature);
  const at = project.layouts.indexOf(layout);
  return (index) => {
    const edits = editsOf(ask, valuesAt(ask, index));
    const pair = kernel ? kernel.aim(edits.map(({ value }) => value)) : aimPair(speaker, withEdits(layout, edits));
    if (!pair) return null;
    const aimed: Aimed = { ...pair, speedOfSound: speed, before };
    let solved: Solution | null | undefined;
    const solution = (): Solution | null => {
      if (solved !== undefined) return solved;
      // Not checked yet: every number is in its own range, and only what would come in is checked as a whole.
      const changed = withEdits(layout, edits);
      const made = plan({ ...project, layouts: project.layouts.with(at, changed) }, changed, false);
      return (solved = made.ok ? solutionOf(made.value) : null);
    };
    const planned = (measure: Measure): number | null | undefined => {
      const whole = solution();
      return whole ? measureOf(measure, whole, layout) : undefined;
    };
    return {
      value: (measure) => (measure.needs === 'aim' ? measure.of(aimed) : planned(measure)),
      planned,
      isSound: () => solution() !== null && edited(project, layout, edits).ok,
    };
  };
}

/** The numbers of a candidate: its digits in a system of as many as each number has values, the first one running fastest. */
function valuesAt({ free }: Pick<Ask, 'free'>, index: number): number[] {
  let rest = index;
  return free.map(({ from, step, count }) => {
    const digit = rest % count;
    rest = (rest - digit) / count;
    return from + digit * step;
  });
}

const editsOf = ({ free }: Pick<Ask, 'free'>, values: readonly number[]): Edit[] =>
  free.flatMap(({ pointer, mirror }, i) => {
    const edit = { pointer, value: values[i] ?? 0 };
    const other = mirror ? mirrored(edit) : null;
    return other ? [edit, other] : [edit];
  });
