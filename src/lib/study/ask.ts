import { failure, pointerTo, success, type Fault, type Result } from '$lib/project/fault.ts';
import { got } from '$lib/project/got.ts';
import type { Layout } from '$lib/project/project.ts';
import { spanCount } from './freeInputs.ts';
import { isRulePointer, readFreeRule, type FreeRule } from './freeRule.ts';
import { inputAt, mirrored, rangeFault, type Input } from './input.ts';
import type { Measure } from './measure.ts';
import { measureNamed, measuresNamed } from './measures.ts';
import { unknownKeys, type Document } from './unknownKeys.ts';

/** What a search may change, what has to hold, and what is wanted. */
export interface Ask {
  readonly free: readonly Free[];
  readonly rules: readonly Rule[];
  readonly aims: readonly Measure[];
}

export type Free = FreeNumber | FreeRule;

/** A number that may be anything from … to in steps. */
export interface FreeNumber {
  readonly pointer: string;
  readonly from: number;
  readonly step: number;
  /** How many values, the first one among them. */
  readonly count: number;
  /** Whether the other loudspeaker goes to the mirror image in x = 0. */
  readonly mirror: boolean;
  readonly rules: null;
}

/** What has to hold: at most, or at least, so much of a measure. */
export interface Rule {
  readonly measure: Measure;
  readonly end: 'most' | 'least';
  readonly value: number;
}

/** More candidates than this are not begun with, by the dearest thing that is measured: each takes minutes. */
const MOST_CANDIDATES: Record<Measure['needs'], number> = {
  aim: 50_000_000,
  bodies: 500_000,
  stands: 500_000,
  heard: 200_000,
  sound: 50_000,
  sheets: 100,
};
const dearestFirst: readonly Measure['needs'][] = ['sheets', 'sound', 'heard', 'stands', 'bodies', 'aim'];

/**
 * An ask from its document, every pointer and measure resolved for the layout; or its faults, with pointers from the
 * document. Says before any work when there are too many candidates, and what would fit.
 */
export function readAsk(document: unknown, layout: Layout): Result<Ask> {
  if (!isObject(document)) {
    return failure({ pointer: '', message: `expected an object with free, rules and aims, got ${got(document)}` });
  }
  const faults: Fault[] = [];
  const take = <Value>(result: Result<Value>): Value[] => {
    if (result.ok) return [result.value];
    faults.push(...result.faults);
    return [];
  };
  for (const key of Object.keys(document)) {
    if (!['free', 'rules', 'aims'].includes(key)) {
      faults.push({ pointer: pointerTo(key), message: 'unknown key, expected one of free, rules, aims' });
    }
  }
  const free = listAt(document, 'free', true, faults).flatMap((one, i) => take(readFree(one, layout, pointerTo('free', i)))); // prettier-ignore
  const rules = listAt(document, 'rules', false, faults).flatMap((one, i) =>
    take(readRule(one, pointerTo('rules', i))),
  );
  const aims = take(measuresNamed(listAt(document, 'aims', true, faults), 'aims')).flat();
  if (faults.length > 0) return { ok: false, faults };
  const ask = { free, rules, aims };
  const contradictions = [...twice(free), ...contradicting(rules), ...tooMany(ask)];
  return contradictions.length > 0 ? { ok: false, faults: contradictions } : success(ask);
}

export const candidatesOf = ({ free }: Pick<Ask, 'free'>): number => free.reduce((all, { count }) => all * count, 1);

/** The dearest thing that has to be worked out for every candidate. */
const dearestOf = ({ rules, aims }: Ask): Measure['needs'] => {
  const needs = [...aims, ...rules.map(({ measure }) => measure)].map((measure) => measure.needs);
  return dearestFirst.find((one) => needs.includes(one)) ?? 'aim';
};

/** How many candidates there are, how many there may be, and how much coarser steps would have to be. */
export interface Excess {
  readonly all: number;
  readonly most: number;
  readonly coarser: number;
}

/** What is too many of an ask; null where it is not. */
export function excessOf(ask: Ask): Excess | null {
  const [all, most] = [candidatesOf(ask), MOST_CANDIDATES[dearestOf(ask)]];
  const numbers = ask.free.filter(({ rules }) => rules === null).length;
  return all <= most ? null : { all, most, coarser: Math.ceil(10 * (all / most) ** (1 / Math.max(1, numbers))) / 10 };
}

function tooMany(ask: Ask): Fault[] {
  const excess = excessOf(ask);
  if (!excess) return [];
  const { all, most, coarser } = excess;
  const message = `expected at most ${most} candidates for these measures, got ${all}: steps ${coarser} times as large would fit, or narrower ranges`;
  return [{ pointer: '/free', message }];
}

const isObject = (value: unknown): value is Document =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function listAt(document: Document, key: string, needed: boolean, faults: Fault[]): readonly unknown[] {
  const list = document[key];
  if (list === undefined && !needed) return [];
  if (Array.isArray(list) && (list.length > 0 || !needed)) return list;
  const what = needed ? 'a list of at least one' : 'a list';
  faults.push({ pointer: pointerTo(key), message: `expected ${what}, got ${got(list)}` });
  return [];
}

function readFree(one: unknown, layout: Layout, at: string): Result<Free> {
  if (!isObject(one)) {
    return failure({ pointer: at, message: `expected an object with pointer, from, to and step, got ${got(one)}` });
  }
  if (isRulePointer(one.pointer)) return readFreeRule(one, one.pointer, layout, at);
  const unknown = unknownKeys(one, ['pointer', 'from', 'to', 'step', 'mirror'], at);
  if (unknown.length > 0) return { ok: false, faults: unknown };
  const input = inputAt(layout, one.pointer, `${at}/pointer`);
  if (!input.ok) return input;
  const { pointer } = input.value;
  const { from, to, step, mirror = false } = one;
  const faults = [
    ...numberFault(from, `${at}/from`),
    ...numberFault(to, `${at}/to`),
    ...numberFault(step, `${at}/step`),
  ];
  if (typeof mirror !== 'boolean') faults.push({ pointer: `${at}/mirror`, message: `expected true or false, got ${got(mirror)}` }); // prettier-ignore
  if (mirror === true && mirrored({ pointer, value: 0 }) === null) {
    const message = `expected a mark, such as /placement/right/x, to mirror, got ${got(pointer)}`;
    faults.push({ pointer: `${at}/mirror`, message });
  }
  if (typeof from !== 'number' || typeof to !== 'number' || typeof step !== 'number' || faults.length > 0) {
    return { ok: false, faults };
  }
  const wrong = spanFaults(input.value, from, to, step, at);
  const count = spanCount({ from, to, step });
  return wrong.length > 0 ? { ok: false, faults: wrong } : success({ pointer, from, step, count, mirror: mirror === true, rules: null }); // prettier-ignore
}

function spanFaults(input: Input, from: number, to: number, step: number, at: string): Fault[] {
  const ends = [rangeFault(input, from, `${at}/from`), rangeFault(input, to, `${at}/to`)].filter((one) => one !== null);
  if (ends.length > 0) return ends;
  if (from > to)
    return [{ pointer: `${at}/to`, message: `expected ${from} or more, where the range begins, got ${to}` }];
  if (!(step > 0)) return [{ pointer: `${at}/step`, message: `expected a step over 0, got ${step}` }];
  if (input.field.whole && !Number.isInteger(step)) {
    return [{ pointer: `${at}/step`, message: `expected a whole number, got ${step}` }];
  }
  return [];
}

function readRule(one: unknown, at: string): Result<Rule> {
  if (!isObject(one)) {
    return failure({ pointer: at, message: `expected an object with measure and most or least, got ${got(one)}` });
  }
  const unknown = unknownKeys(one, ['measure', 'most', 'least'], at);
  if (unknown.length > 0) return { ok: false, faults: unknown };
  const measure = measureNamed(one.measure, `${at}/measure`);
  if (!measure.ok) return measure;
  const ends = (['most', 'least'] as const).filter((end) => one[end] !== undefined);
  const [end] = ends;
  if (end === undefined || ends.length > 1) {
    return failure({
      pointer: at,
      message: `expected one of most and least, got ${ends.length === 0 ? 'none' : 'both'}`,
    });
  }
  const value = one[end];
  if (typeof value !== 'number' || !Number.isFinite(value)) return { ok: false, faults: numberFault(value, `${at}/${end}`) }; // prettier-ignore
  return success({ measure: measure.value, end, value });
}

const numberFault = (value: unknown, pointer: string): Fault[] =>
  typeof value === 'number' && Number.isFinite(value)
    ? []
    : [{ pointer, message: `expected a number, got ${got(value)}` }];

/** Numbers that would be set twice, also by way of the mirror or as part of a rule. */
function twice(free: readonly Free[]): Fault[] {
  const seen: string[] = [];
  return free.flatMap(({ pointer, mirror }, index) => {
    const set = [pointer, ...(mirror ? [mirrored({ pointer, value: 0 })?.pointer ?? pointer] : [])];
    const isIn = (one: string, other: string): boolean => one === other || one.startsWith(`${other}/`);
    const again = set.find((one) => seen.some((other) => isIn(one, other) || isIn(other, one)));
    seen.push(...set);
    const message = `expected a pointer whose value nothing else in the list sets, got ${got(again)} again`;
    return again === undefined ? [] : [{ pointer: pointerTo('free', index, 'pointer'), message }];
  });
}

/** A least of a measure over its most: nothing can hold both. */
const contradicting = (rules: readonly Rule[]): Fault[] =>
  rules.flatMap(({ measure, end, value }, index) => {
    const above = rules.find((other) => other.measure === measure && other.end === 'most' && other.value < value);
    if (end !== 'least' || !above) return [];
    const message = `expected at most ${above.value}, which another rule sets for ${measure.name}, got ${value}`;
    return [{ pointer: pointerTo('rules', index, 'least'), message }];
  });
