import type { Layout } from '$lib/project/project.ts';
import { sameJson } from '$lib/project/sameJson.ts';
import type { Ask } from '$lib/study/ask.ts';
import { digitsAt, editsAt } from '$lib/study/editsAt.ts';
import { askedOf, type Found, type Values } from '$lib/study/found.ts';
import type { FreeInput } from '$lib/study/freeInputs.ts';
import type { AimRule } from '$lib/study/input.ts';
import type { Measure } from '$lib/study/measure.ts';
import { ruleLabels } from './ruleWords.ts';

/** Something that candidates differ in: an input, or a measure. */
export interface Dimension {
  /** A pointer, or a measure's name. */
  readonly key: string;
  readonly label: string;
  readonly unit: Measure['unit'];
  /** Of a measure. */
  readonly better: 'less' | 'more' | null;
  /** Of a rule: those that it may be, each standing at its place among them. Null for anything else. */
  readonly rules: readonly AimRule[] | null;
}

/** One candidate, by the keys of the dimensions; null and absent where it has no value. */
export interface Point {
  readonly index: number;
  readonly at: Values;
}

/** The inputs first, then aims and rules that have to hold. */
export const dimensionsOf = (ask: Ask, inputs: readonly FreeInput[]): readonly Dimension[] => [
  ...ask.free.flatMap(({ pointer, rules }): Dimension[] => {
    if (rules) return [{ key: pointer, label: ruleLabels[pointer], unit: '', better: null, rules }];
    const input = inputs.find((one) => one.pointer === pointer);
    return input ? [{ key: pointer, label: input.label, unit: input.unit, better: null, rules }] : [];
  }),
  ...askedOf(ask).map(({ name, label, unit, better }) => ({ key: name, label, unit, better, rules: null })),
];

/** The numbers of a candidate, and the places of its rules, by pointer. */
function inputsAt(ask: Ask, index: number): Values {
  const digits = digitsAt(ask, index);
  const rules = ask.free.flatMap((one, place) => (one.rules ? [[one.pointer, digits[place] ?? 0] as const] : []));
  const numbers = editsAt(ask, index).flatMap(({ pointer, value }) => (typeof value === 'number' ? [[pointer, value] as const] : [])); // prettier-ignore
  return Object.fromEntries([...numbers, ...rules]);
}

export const frontPoints = ({ front }: Found, ask: Ask): readonly Point[] =>
  front.map(({ index, values }) => ({ index, at: { ...inputsAt(ask, index), ...values } }));

/** Those that were looked at closely, that hold or do not. */
export const triedPoints = ({ sample }: Found, ask: Ask, holds: boolean): readonly Point[] =>
  sample.flatMap((tried) =>
    tried.holds === holds ? [{ index: tried.index, at: { ...inputsAt(ask, tried.index), ...tried.values } }] : [],
  );

/** The layout as it is. */
export function presentPoint({ present }: Found, ask: Ask, layout: Layout, inputs: readonly FreeInput[]): Point | null {
  if (!present) return null;
  const numbers = inputs.map(({ pointer, now }) => [pointer, now] as const);
  const rules = ask.free.flatMap(({ pointer, rules: all }) => {
    const now = pointer === '/aim/toe' ? layout.aim.toe : layout.aim.tilt;
    const place = all ? all.findIndex((one) => sameJson(one, now)) : -1;
    return place < 0 ? [] : [[pointer, place] as const];
  });
  return { index: -1, at: { ...Object.fromEntries([...numbers, ...rules]), ...present } };
}

/** Where the values of all that is drawn lie; null where there are none. */
export function spanOf(points: readonly Point[], key: string): readonly [number, number] | null {
  let [least, most] = [Infinity, -Infinity];
  for (const { at } of points) {
    const value = at[key] ?? null;
    if (value === null) continue;
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return least > most ? null : [least, most];
}

/** What somebody has narrowed down to: ends by key. */
export type Narrowed = Readonly<Record<string, readonly [number, number]>>;

export const isWithin = ({ at }: Point, narrowed: Narrowed): boolean =>
  Object.entries(narrowed).every(([key, [from, to]]) => {
    const value = at[key] ?? null;
    return value !== null && value >= from && value <= to;
  });

/** The one that gives up least in all aims together, each measured over what the front spans: where nobody has chosen. */
export function middling(points: readonly Point[], aims: readonly Measure[]): Point | null {
  const spans = aims.map(({ name }) => spanOf(points, name));
  const given = ({ at }: Point): number =>
    aims.reduce((sum, { name, better }, i) => {
      const [span, value] = [spans[i], at[name] ?? null];
      if (!span || value === null) return sum;
      const share = (value - span[0]) / (span[1] - span[0] || 1);
      return sum + (better === 'less' ? share : 1 - share) ** 2;
    }, 0);
  return points.reduce<Point | null>((best, one) => (best && given(best) <= given(one) ? best : one), null);
}

/** What a question means: the best in the second aim of those that are as good as the best in the first. @param near In the unit of the first aim. */
export function answering(points: readonly Point[], [first, second]: readonly Measure[], near: number): Point | null {
  if (!first || !second) return null;
  const cost = ({ at }: Point, { name, better }: Measure): number => {
    const value = at[name] ?? null;
    return value === null ? Infinity : better === 'less' ? value : -value;
  };
  const best = Math.min(...points.map((point) => cost(point, first)));
  const good = points.filter((point) => cost(point, first) <= best + near);
  return good.reduce<Point | null>((one, point) => (one && cost(one, second) <= cost(point, second) ? one : point), null); // prettier-ignore
}
