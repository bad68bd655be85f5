import { tickStep } from 'd3';
import { entryText, entryValue, rangeMessage } from '$lib/project/entry.ts';
import type { NumberField } from '$lib/project/fields/field.ts';
import { MM_PER_INCH, type LengthUnit } from '$lib/project/units.ts';
import { MOST_STEPS } from '$lib/study/sweep.ts';

/** What a sweep goes over, in the file's unit. */
export interface SweepRange {
  readonly from: number;
  readonly to: number;
  /** How many values, both ends among them. */
  readonly steps: number;
}

/** The same as typed. */
export type RangeTexts = Readonly<Record<keyof SweepRange, string>>;

export type ReadRange =
  { readonly ok: true; readonly range: SweepRange } | { readonly ok: false; readonly messages: Partial<RangeTexts> };

/** So many steps to each side of the open value are looked at to begin with, about. */
const EACH_WAY = 30;
/** How far that goes: a part of the value itself, and so many presses of an arrow key at least, of which a length wants more. */
const PART = 0.25;
const PRESSES = { length: 100, other: 20 } as const;

/** Steps add up without float dust: no step has more decimals. */
const DECIMALS = 6;
const clean = (value: number): number => Number(value.toFixed(DECIMALS)) + 0;

/**
 * A sensible range round a value: in round steps of the unit it is shown in, with the value itself one of them, and within
 * what the field takes.
 */
export function rangeRound(field: NumberField, value: number, unit: LengthUnit): SweepRange {
  const inches = field.unit === 'mm' && unit === 'in';
  const half = Math.max(PART * Math.abs(value), PRESSES[field.unit === 'mm' ? 'length' : 'other'] * field.step);
  const round = inches
    ? 2 ** Math.round(Math.log2(half / MM_PER_INCH / EACH_WAY)) * MM_PER_INCH
    : tickStep(0, half, EACH_WAY);
  const step = field.whole ? Math.max(1, Math.round(round)) : round;
  const most = Math.round(half / step);
  /** How often the step goes into what is left to an end; dust must not cost one. */
  const ways = (room: number): number => Math.max(0, Math.min(most, Math.floor(room / step + 1e-9)));
  const [down, up] = [ways(value - field.min), ways(field.max - value)];
  // A range that is smaller than a step is looked at whole.
  if (down + up === 0) return { from: field.min, to: field.max, steps: 2 };
  return { from: clean(value - down * step), to: clean(value + up * step), steps: down + up + 1 };
}

export const rangeTexts = ({ from, to, steps }: SweepRange, field: NumberField, unit: LengthUnit): RangeTexts => ({
  from: entryText(from, field, unit),
  to: entryText(to, field, unit),
  steps: String(steps),
});

/** The range that is typed, or what to do about it at each of its fields. */
export function readRange(texts: RangeTexts, field: NumberField, unit: LengthUnit): ReadRange {
  const [from, to] = [entryValue(texts.from, field, unit, false), entryValue(texts.to, field, unit, false)];
  const steps = entryValue(texts.steps, STEPS, unit, false);
  const messages: Partial<Record<keyof SweepRange, string>> = {};
  const tell = (at: keyof SweepRange, message: string | null): void => {
    if (message !== null) messages[at] = message;
  };
  tell('from', rangeMessage(from, field, unit));
  tell('to', rangeMessage(to, field, unit));
  tell('steps', rangeMessage(steps, STEPS, unit));
  const [first, last, count] = [Number(from), Number(to), Number(steps)];
  if (Object.keys(messages).length === 0) {
    if (first >= last) tell('to', `Enter more than ${texts.from.trim()}, where the range begins`);
    else if (field.whole && !Number.isInteger((last - first) / (count - 1))) {
      tell('steps', `Enter a number that leaves every value whole, such as ${last - first + 1}`);
    }
  }
  return Object.keys(messages).length === 0
    ? { ok: true, range: { from: first, to: last, steps: count } }
    : { ok: false, messages };
}

const STEPS = { what: 'a number of values', min: 2, max: MOST_STEPS, unit: '', whole: true } as const;
