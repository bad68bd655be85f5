import type { Ask } from './ask.ts';
import { editsAt } from './editsAt.ts';
import { Front, type Kept, type Member } from './front.ts';
import type { Change } from './input.ts';
import type { Measure } from './measure.ts';

/** What a search found, or has found so far. */
export interface Found {
  /** Candidates looked at. */
  readonly tried: number;
  /** How many of them satisfy the rules: counted, or estimated by a sample where most were left before the dear rules. */
  readonly holding: { readonly count: number; readonly counted: boolean };
  /** The best compromises, none of them dominated by any candidate. Empty where nothing satisfies the rules. */
  readonly front: readonly FrontMember[];
  /** Where nothing satisfies the rules: each rule that, relaxed alone, would let something pass. */
  readonly relax: readonly Relaxed[];
  /** Some of those looked at, spread evenly over all. */
  readonly sample: readonly Tried[];
  /** The layout as it is; null where it has no plan. */
  readonly present: Values | null;
}

export interface FrontMember {
  /** Which candidate it is. */
  readonly index: number;
  readonly edits: readonly Change[];
  /** Every measure that was asked for or ruled by, of the plan with these edits. */
  readonly values: Values;
}

export type Values = Readonly<Record<string, number | null>>;

/** A candidate that was looked at closely. */
export interface Tried {
  readonly index: number;
  /** By measure; absent where it was not worth the work. */
  readonly values: Values;
  readonly holds: boolean;
}

export interface Relaxed {
  /** Its place in the list of rules. */
  readonly rule: number;
  /** The value that would do, and how far that is from the one asked for. */
  readonly to: number;
  readonly by: number;
}

/** What one worker has found: plain data; those of all workers are merged. */
export interface Part {
  readonly tried: number;
  readonly held: number;
  readonly front: Kept<Valued>;
  /** Of each rule the candidate that violates it alone, and least. */
  readonly nearest: readonly (Nearest | null)[];
  readonly sample: readonly Tried[];
  /** Of the layout as it is, from the first worker; null from the others. */
  readonly present: Values | null;
}

export interface Valued extends Member {
  readonly values: Values;
}

export interface Nearest {
  readonly value: number;
  readonly by: number;
}

/** The findings of all workers, in any order, as one. */
export function merged(ask: Ask, parts: readonly Part[]): Found {
  const front = new Front<Valued>(grainsOf(ask));
  for (const part of parts) front.merge(part.front);
  const members = front.members.map(({ index, values }): FrontMember => ({
    index,
    edits: editsAt(ask, index),
    values,
  }));
  const relax = ask.rules.flatMap(({ value }, rule) => {
    const near = parts
      .flatMap(({ nearest }) => nearest[rule] ?? [])
      .reduce<Nearest | null>((least, one) => (least && least.by <= one.by ? least : one), null);
    return near ? [{ rule, to: near.value, by: Math.abs(near.value - value) }] : [];
  });
  const sum = (of: (part: Part) => number): number => parts.reduce((all, part) => all + of(part), 0);
  const tried = sum((part) => part.tried);
  const sample = parts.flatMap((part) => part.sample).sort((a, b) => a.index - b.index);
  const share = sample.filter(({ holds }) => holds).length / Math.max(1, sample.length);
  const counted = !leavesEarly(ask);
  return {
    tried,
    holding: { count: counted ? sum(({ held }) => held) : Math.round(share * tried), counted },
    front: members,
    relax: members.length > 0 ? [] : relax,
    sample,
    present: parts.find(({ present }) => present !== null)?.present ?? null,
  };
}

export const grainsOf = ({ aims }: Ask): number[] => aims.map(({ unit }) => grains[unit]);

/** Every measure that an ask is about, each once. */
export const askedOf = ({ aims, rules }: Ask): readonly Measure[] => [
  ...new Set([...aims, ...rules.map(({ measure }) => measure)]),
];

/** Whether what cannot be among the best is left before its dear rules are worked out. */
export const leavesEarly = ({ aims, rules }: Ask): boolean =>
  aims.every(({ needs }) => needs === 'aim') && rules.some(({ measure }) => measure.needs !== 'aim');

/** The least difference that counts, in each unit: finer than anybody can set or hear it. */
const grains: Record<Measure['unit'], number> = { '°': 0.01, mm: 0.1, µs: 0.1, dB: 0.01, kg: 0.001, '%': 0.01, '': 1 };
