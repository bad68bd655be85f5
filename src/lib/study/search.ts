import type { Layout, Project } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import { candidatesOf, type Ask, type Rule } from './ask.ts';
import { Candidates } from './candidates.ts';
import {
  askedOf,
  grainsOf,
  leavesEarly,
  merged,
  type Found,
  type Nearest,
  type Part,
  type Tried,
  type Valued,
  type Values,
} from './found.ts';
import { Front } from './front.ts';
import { measureOf, type Measure } from './measure.ts';
import { badness } from './ranked.ts';
import { visited } from './visited.ts';

/** Shares are as many whatever the workers, and what is found hangs on nothing else. */
const SHARES = 16;

/** How many candidates are looked at closely, at the most. */
const SAMPLE = 1024;

/** Candidates between two looks at the clock, by the dearest measure: some milliseconds each. */
const CHUNK: Record<Measure['needs'], number> = { aim: 1024, bodies: 64, stands: 16, heard: 8, sound: 2, sheets: 1 };
/** Each answer has so many times the candidates of the one before: first answers come at once, and few in all. */
const GROWTH = 1.4;

/**
 * Looks at every candidate of an ask and keeps the best compromises that satisfy its rules. The same for the same ask
 * and seed, which orders the visit, however many workers share it. `ask` must be of this layout. Pure.
 */
export function search(project: Project, layout: Layout, ask: Ask, seed: number): Found {
  const steps = searchSteps(project, layout, ask, seed, { worker: 0, of: 1 });
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return merged(ask, [step.value]);
}

/** The part of one of several workers, in steps of some milliseconds; now and then what it has found so far. */
export function* searchSteps(
  project: Project,
  layout: Layout,
  ask: Ask,
  seed: number,
  { worker, of }: { readonly worker: number; readonly of: number },
): Generator<{ readonly share: number } | { readonly answer: Part }, Part> {
  const all = candidatesOf(ask);
  const shares = Array.from({ length: SHARES }, (_, share) => share).filter((share) => share % of === worker);
  const looking = new Looking(project, layout, ask, worker === 0 ? presentOf(project, layout, ask) : null);
  const chunk = CHUNK[dearest(ask)];
  let told = chunk;
  for (const share of shares) {
    let place = 0;
    for (const index of visited(all, seed, share, SHARES)) {
      looking.look(index, place < SAMPLE / SHARES);
      place += 1;
      if (looking.tried % chunk > 0) continue;
      if (looking.tried < told) {
        yield { share: Math.min(1, (looking.tried * of) / all) };
      } else {
        told = GROWTH * looking.tried;
        yield { answer: looking.part };
      }
    }
  }
  return looking.part;
}

/** Every measure of the layout as it is. */
function presentOf(project: Project, layout: Layout, ask: Ask): Values | null {
  const solved = solve(project, layout, false);
  if (!solved.ok) return null;
  return Object.fromEntries(askedOf(ask).map((measure) => [measure.name, measureOf(measure, solved.value, layout)]));
}

const cost: Record<Measure['needs'], number> = { aim: 0, bodies: 1, stands: 2, heard: 3, sound: 4, sheets: 5 };

const dearest = (ask: Ask): Measure['needs'] =>
  askedOf(ask).reduce<Measure['needs']>((most, { needs }) => (cost[needs] > cost[most] ? needs : most), 'aim');

/** Looks at candidates, one after the other, and keeps what is worth keeping. */
class Looking {
  readonly #ask: Ask;
  readonly #asked: readonly Measure[];
  readonly #candidates: Candidates;
  readonly #front: Front<Valued>;
  readonly #nearest: (Nearest | null)[];
  readonly #sample: Tried[] = [];
  /** The cheapest first. */
  readonly #rules: readonly { readonly rule: Rule; readonly place: number; readonly isDear: boolean }[];
  readonly #leavesEarly: boolean;
  readonly #present: Values | null;
  /** Written over for each candidate. */
  readonly #looked: { index: number; readonly bad: number[] };
  #satisfied = false;
  #held = 0;
  tried = 0;

  constructor(project: Project, layout: Layout, ask: Ask, present: Values | null) {
    this.#ask = ask;
    this.#present = present;
    this.#asked = askedOf(ask);
    this.#candidates = new Candidates(project, layout, ask);
    this.#front = new Front<Valued>(grainsOf(ask));
    this.#nearest = ask.rules.map(() => null);
    this.#rules = ask.rules
      .map((rule, place) => ({ rule, place, isDear: rule.measure.needs !== 'aim' }))
      .sort((a, b) => cost[a.rule.measure.needs] - cost[b.rule.measure.needs]);
    this.#leavesEarly = leavesEarly(ask);
    this.#looked = { index: 0, bad: ask.aims.map(() => 0) };
  }

  get part(): Part {
    const [tried, held, front, nearest] = [this.tried, this.#held, this.#front.kept, [...this.#nearest]];
    return { tried, held, front, nearest, sample: [...this.#sample], present: this.#present };
  }

  look(index: number, closely: boolean): void {
    this.tried += 1;
    const canBeAimed = this.#candidates.turnTo(index);
    if (closely) this.#sample.push(this.#closely(index, canBeAimed));
    if (!canBeAimed) return;
    this.#looked.index = index;
    // What cannot be among the best by its aims need not be held against rules that take long.
    if (this.#leavesEarly && this.#satisfied && !(this.#isJudged() && this.#front.admits(this.#looked))) return;
    if (!this.#holds()) return;
    this.#held += 1;
    if (!this.#isJudged() || !this.#front.admits(this.#looked) || !this.#candidates.isSound) return;
    // What comes in is judged by its plan, to the last digit.
    if (!this.#ask.rules.every((rule) => satisfies(rule, this.#candidates.exact(rule.measure) ?? null))) return;
    const values = Object.fromEntries(this.#asked.map(({ name }, i) => [name, this.#exact(i)]));
    const bad = this.#ask.aims.map((aim) => badness(aim, values[aim.name] ?? null) ?? Infinity);
    this.#satisfied = true;
    this.#front.add({ index, bad, values });
  }

  #exact(place: number): number | null {
    const measure = this.#asked[place];
    return (measure && this.#candidates.exact(measure)) ?? null;
  }

  /** Whether every aim has a value: how bad each is. */
  #isJudged(): boolean {
    const { aims } = this.#ask;
    for (let i = 0; i < aims.length; i++) {
      const aim = aims[i];
      const value = aim && this.#candidates.value(aim);
      const bad = aim && value !== undefined ? badness(aim, value) : null;
      if (bad === null) return false;
      this.#looked.bad[i] = bad;
    }
    return true;
  }

  /** Whether every rule is satisfied. Where one alone is not, remembers by how much, as long as nothing has satisfied all. */
  #holds(): boolean {
    let violated: { readonly place: number; readonly near: Nearest } | null = null;
    for (const { rule, place, isDear } of this.#rules) {
      // What is no nearer than another need not be held against rules that take long.
      if (isDear && violated && violated.near.by >= (this.#nearest[violated.place]?.by ?? Infinity)) return false;
      const value = this.#candidates.value(rule.measure);
      if (value === undefined) return false;
      if (satisfies(rule, value)) continue;
      // A second violation, or one that nothing is known of, makes it no candidate of a relaxed rule either.
      if (this.#satisfied || violated || value === null) return false;
      violated = { place, near: { value, by: Math.abs(value - rule.value) } };
    }
    if (!violated) return true;
    const { place, near } = violated;
    const least = this.#nearest[place];
    if ((!least || near.by < least.by) && this.#candidates.isSound) this.#nearest[place] = near;
    return false;
  }

  /** What is drawn of it: all of what holds; of the rest, what it cost to know that it does not, and its quick aims. */
  #closely(index: number, canBeAimed: boolean): Tried {
    const values: Record<string, number | null> = {};
    if (!canBeAimed) return { index, values, holds: false };
    const valueOf = (measure: Measure): number | null =>
      (values[measure.name] ??= this.#candidates.value(measure) ?? null);
    const holds = this.#rules.every(({ rule }) => satisfies(rule, valueOf(rule.measure)));
    for (const aim of this.#ask.aims) if (holds || aim.needs === 'aim') valueOf(aim);
    return { index, values, holds };
  }
}

function satisfies({ measure, end, value: limit }: Rule, value: number | null): boolean {
  if (value === null) return measure.missing?.is === 'best' && end === (measure.better === 'less' ? 'most' : 'least');
  return end === 'most' ? value <= limit : value >= limit;
}
