import { rangeMessage } from '$lib/project/entry.ts';
import type { Range } from '$lib/project/range.ts';
import { sameJson } from '$lib/project/sameJson.ts';
import type { LengthUnit } from '$lib/project/units.ts';
import type { Plan } from '$lib/solution/document.ts';
import { excessOf, readAsk, type Ask, type Excess, type Free } from '$lib/study/ask.ts';
import { freeInputs, freeRules, movesAsPair, spanCount, type FreeInput, type Span } from '$lib/study/freeInputs.ts';
import type { RulePointer } from '$lib/study/freeRule.ts';
import { inputAt, type AimRule } from '$lib/study/input.ts';
import type { Measure } from '$lib/study/measure.ts';
import { measures } from '$lib/study/measures.ts';
import type { AskDocument, RuleDocument } from '$lib/study/questions.ts';

/** What is searched: of its plan, what the rules begin with. */
type Subject = Pick<Plan, 'project' | 'layout' | 'sides'>;

/** A number as typed: in the file's unit, or a text that is none. */
export type Typed = number | string;

/** One thing that may move. */
export interface FreeRow {
  readonly input: FreeInput;
  /** What the ends may be. */
  readonly range: Range;
  readonly on: boolean;
  readonly from: Typed;
  readonly to: Typed;
  readonly step: Typed;
}

/** A rule of toe or tilt that may be any of several. */
export interface RuleChoiceRow {
  readonly pointer: RulePointer;
  readonly on: boolean;
  readonly options: readonly { readonly rule: AimRule; readonly on: boolean }[];
}

/** One thing that must hold. */
export interface RuleRow {
  readonly measure: Measure;
  readonly end: 'most' | 'least';
  readonly range: Range;
  readonly on: boolean;
  readonly value: Typed;
}

/** What is wrong with the numbers of a row; null where nothing is. */
export interface SpanFaults {
  readonly from: string | null;
  readonly to: string | null;
  readonly step: string | null;
}

/** Rules that can be switched on beside those of the plain questions, with a value to begin with. */
const MORE_RULES: readonly RuleDocument[] = [
  { measure: 'screen-gap', least: 20 },
  { measure: 'screen-hidden', most: 3 },
  { measure: 'wall-gap', least: 20 },
  { measure: 'edge-gap', least: 0 },
  { measure: 'tilt', most: 16 },
  { measure: 'tip-angle', least: 10 },
  { measure: 'lift', most: 100 },
  { measure: 'miss', most: 10 },
  { measure: 'sheets', most: 4 },
];

/** The least step that is one, by unit. */
const stepRange = (unit: 'mm' | '°'): Range => ({ what: 'a step', min: 0.1, max: unit === 'mm' ? 5000 : 90, unit });
const limitRange = ({ unit }: Measure): Range => ({
  what: 'a limit',
  min: unit === '' || unit === '%' || unit === 'kg' || unit === 'µs' ? 0 : unit === '°' ? -90 : -10_000,
  max: unit === '%' ? 100 : unit === '°' ? 180 : 10_000,
  unit: unit === 'mm' || unit === '°' ? unit : '',
  whole: unit === '',
});

/** Aims of one's own: every row as typed, sound or not. */
export class OwnAsk {
  readonly #of: Subject;
  #asPair = $state(true);
  #free = $state.raw<readonly FreeRow[]>([]);
  #choices = $state.raw<readonly RuleChoiceRow[]>([]);
  #rules = $state.raw<readonly RuleRow[]>([]);
  #aims = $state.raw<readonly string[]>([]);

  /** @param like Where it begins. */
  constructor(of: Subject, like: AskDocument) {
    this.#of = of;
    this.#asPair = movesAsPair(like.free);
    this.#free = this.#rowsOf(like.free.flatMap((one) => ('values' in one ? [] : [one])));
    this.#choices = freeRules(of).map(({ pointer, values }) => choiceRow(pointer, values, like));
    this.#rules = [...MORE_RULES, ...like.rules.filter((rule) => !MORE_RULES.some((one) => isAlike(one, rule)))].flatMap((rule) => rowsOf(rule, like.rules)); // prettier-ignore
    this.#aims = like.aims;
  }

  #rowsOf(free: readonly Span[]): FreeRow[] {
    return freeInputs(this.#of.project, this.#of.layout, this.#asPair).map((input): FreeRow => {
      const span = free.find(({ pointer }) => pointer === input.pointer);
      const step = input.unit === 'mm' ? 10 : 1;
      const { from, to } = input;
      const field = inputAt(this.#of.layout, input.pointer, '');
      const range = field.ok ? field.value.field : { what: 'a number', min: from, max: to, unit: input.unit };
      return { input, range, on: span !== undefined, from, to, step, ...(span && typedOf(span)) };
    });
  }

  /** Whether the marks move as mirror images of each other; else each by itself. */
  get asPair(): boolean {
    return this.#asPair;
  }

  /** All else stays as it is typed; the right mark keeps its range. */
  set asPair(asPair: boolean) {
    const typed = this.#free;
    this.#asPair = asPair;
    this.#free = this.#rowsOf([]).map((row) => {
      const before = typed.find(({ input }) => input.pointer === row.input.pointer);
      return before ? { ...before, input: row.input } : row;
    });
  }

  get free(): readonly FreeRow[] {
    return this.#free;
  }

  get choices(): readonly RuleChoiceRow[] {
    return this.#choices;
  }

  get rules(): readonly RuleRow[] {
    return this.#rules;
  }

  get aims(): readonly string[] {
    return this.#aims;
  }

  setFree(row: FreeRow, change: Partial<FreeRow>): void {
    this.#free = this.#free.map((one) => (one === row ? { ...one, ...change } : one));
  }

  /** Whether a rule of toe or tilt is free, or which it may be. */
  setChoice(row: RuleChoiceRow, change: Partial<RuleChoiceRow>): void {
    this.#choices = this.#choices.map((one) => (one === row ? { ...one, ...change } : one));
  }

  setRule(row: RuleRow, change: Partial<RuleRow>): void {
    this.#rules = this.#rules.map((one) => (one === row ? { ...one, ...change } : one));
  }

  /** In the order of the list of measures. */
  setAim(name: string, on: boolean): void {
    const isWanted = (aim: string): boolean => (aim === name ? on : this.#aims.includes(aim));
    this.#aims = measures.flatMap((measure) => (isWanted(measure.name) ? [measure.name] : []));
  }

  faultsOf({ input, range, on, from, to, step }: FreeRow, unit: LengthUnit): SpanFaults {
    if (!on) return { from: null, to: null, step: null };
    const [ofFrom, ofTo] = [rangeMessage(from, range, unit), rangeMessage(to, range, unit)];
    const turned = typeof from === 'number' && typeof to === 'number' && from > to;
    return {
      from: ofFrom,
      to: ofTo ?? (turned ? 'Enter no less than where it begins' : null),
      step: rangeMessage(step, stepRange(input.unit), unit),
    };
  }

  faultOf({ range, on, value }: RuleRow, unit: LengthUnit): string | null {
    return on ? rangeMessage(value, range, unit) : null;
  }

  /** What is wrong with a choice of rules; null where nothing is. */
  choiceFault({ pointer, on, options }: RuleChoiceRow): string | null {
    if (!on) return null;
    if (options.every((option) => !option.on)) return 'Choose at least one';
    const own = this.#free.find(({ input, on: isFree }) => isFree && input.pointer.startsWith(`${pointer}/`));
    return own ? `Choose either this or “${own.input.label}”` : null;
  }

  /** As a file has it; null while a number is wrong. */
  documentOf(unit: LengthUnit): AskDocument | null {
    const isWrong = (row: FreeRow): boolean => Object.values(this.faultsOf(row, unit)).some((fault) => fault !== null);
    if (this.#choices.some((row) => this.choiceFault(row) !== null)) return null;
    if (this.#free.some(isWrong) || this.#rules.some((row) => this.faultOf(row, unit) !== null)) return null;
    return {
      free: [
        ...this.#free.flatMap(({ input: { pointer, mirror }, on, from, to, step }) =>
          on ? [{ pointer, mirror, from: Number(from), to: Number(to), step: Number(step) }] : [],
        ),
        ...this.#choices.flatMap(({ pointer, on, options }) =>
          on ? [{ pointer, values: options.flatMap((option) => (option.on ? [option.rule] : [])) }] : [],
        ),
      ],
      rules: this.#rules.flatMap(({ measure, end, on, value }) =>
        on ? [{ measure: measure.name, [end]: Number(value) }] : [],
      ),
      aims: this.#aims,
    };
  }

  /** What is too many, of an ask that is sound but for that. */
  excessOf(document: AskDocument): Excess | null {
    const by = (names: readonly string[]): Measure[] => measures.filter(({ name }) => names.includes(name));
    const free = document.free.map((one): Free => {
      if ('values' in one) return { pointer: one.pointer, rules: one.values, count: one.values.length, mirror: false };
      const { pointer, mirror, from, step } = one;
      return { pointer, mirror, from, step, count: spanCount(one), rules: null };
    });
    const rules = by(document.rules.map(({ measure }) => measure)).map((measure) => ({ measure, end: 'most', value: 0 }) as const); // prettier-ignore
    return excessOf({ free, rules, aims: by(document.aims) });
  }

  /** The ask; null where there is none to be had. */
  askOf(document: AskDocument): Ask | null {
    const read = readAsk(document, this.#of.layout);
    return read.ok ? read.value : null;
  }
}

const typedOf = ({ from, to, step }: Span) => ({ from, to, step });

function choiceRow(pointer: RulePointer, rules: readonly AimRule[], like: AskDocument): RuleChoiceRow {
  const asked = like.free.find((one) => one.pointer === pointer);
  const values = asked && 'values' in asked ? asked.values : null;
  const isOn = (rule: AimRule): boolean => values === null || values.some((one) => sameJson(one, rule));
  return { pointer, on: values !== null, options: rules.map((rule) => ({ rule, on: isOn(rule) })) };
}

const isAlike = (one: RuleDocument, other: RuleDocument): boolean =>
  one.measure === other.measure && (one.most === undefined) === (other.most === undefined);

function rowsOf(rule: RuleDocument, on: readonly RuleDocument[]): RuleRow[] {
  const measure = measures.find(({ name }) => name === rule.measure);
  if (!measure) return [];
  const set = on.find((one) => isAlike(one, rule));
  const end = rule.most === undefined ? 'least' : 'most';
  return [{ measure, end, range: limitRange(measure), on: set !== undefined, value: (set ?? rule)[end] ?? 0 }];
}
