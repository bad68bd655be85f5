import { builtStands } from '$lib/proof/builtStands.ts';
import { rangeMessage } from '$lib/project/entry.ts';
import { placement, tilt } from '$lib/project/fields/aim.ts';
import { listener } from '$lib/project/fields/listener.ts';
import { stand } from '$lib/project/fields/stand.ts';
import type { Range } from '$lib/project/range.ts';
import type { LengthUnit } from '$lib/project/units.ts';
import type { Plan } from '$lib/solution/document.ts';
import { clearRange, frontRange, missRange, wholeDesk } from '$lib/study/placing/readAsk.ts';
import type { Typed } from './ownAsk.svelte.ts';

/** A number of the form. */
export type PlaceKey = 'tilt' | 'height' | 'miss' | 'screen' | 'wall' | `${SpanKey}/from` | `${SpanKey}/to`;
export type SpanKey = 'x' | 'y' | 'setback' | 'earHeight';

/** Stands that need not be typed: those that a layout asks for, or how its finished ones stand by their readings. */
export interface KnownStands {
  readonly layout: string;
  /** Null: as planned. */
  readonly built: ReturnType<typeof builtStands>;
}

/** Of every layout those as built, where its readings tell; and those planned, but for the one that is open. */
export const knownStands = ({ project, layout }: Plan): KnownStands[] =>
  project.layouts.flatMap((one): KnownStands[] => {
    const built = builtStands(project, one);
    return [
      ...(built ? [{ layout: one.name, built }] : []),
      ...(one === layout ? [] : [{ layout: one.name, built: null }]),
    ];
  });

/** What may be moved. */
export type Movable = 'marks' | 'setback' | 'earHeight';

/** How far from where it is a chair is moved to begin with, mm. */
const CHAIR = 200;
/** And how much higher or lower one sits, mm: as far as most chairs go. */
const SEAT = 60;

/** What is typed of stands that exist and of what may be moved, sound or not. */
export class PlaceForm {
  /** Null for a slope and height that are typed. */
  of = $state.raw<KnownStands | null>(null);
  /** What the height is of. */
  at = $state<'lift' | 'front'>('lift');
  /** What the axes may miss by. */
  by = $state<'safe-zone' | 'miss'>('safe-zone');
  moves = $state<Readonly<Record<Movable, boolean>>>({ marks: true, setback: true, earHeight: false });
  #typed: Readonly<Record<PlaceKey, Typed>>;

  /** Begins with what a layout's own stands are, as near as anybody can measure them. */
  constructor({ layout, sides: { right } }: Plan) {
    const desk = wholeDesk(layout);
    const { setback, earHeight } = layout.listener;
    this.#typed = $state.raw({
      tilt: Math.round(2 * right.tilt) / 2,
      height: Math.round(right.lift),
      miss: 10,
      screen: 10,
      wall: 40,
      'x/from': 0,
      'x/to': desk.right,
      'y/from': desk.front,
      'y/to': desk.back,
      'setback/from': setback - CHAIR,
      'setback/to': setback + CHAIR,
      'earHeight/from': earHeight - SEAT,
      'earHeight/to': earHeight + SEAT,
    });
  }

  value(key: PlaceKey): Typed {
    return this.#typed[key];
  }

  set(key: PlaceKey, value: Typed): void {
    this.#typed = { ...this.#typed, [key]: value };
  }

  rangeOf(key: PlaceKey): Range {
    return key === 'height' && this.at === 'front' ? frontRange : ranges[key];
  }

  /** What is wrong with a number; null where nothing is, or where it does not count. */
  faultOf(key: PlaceKey, unit: LengthUnit): string | null {
    if (!this.#counts(key)) return null;
    const fault = rangeMessage(this.value(key), this.rangeOf(key), unit);
    if (fault !== null || !key.endsWith('/to')) return fault;
    const [from, to] = [this.value(`${spanOf(key)}/from`), this.value(key)];
    return typeof from === 'number' && typeof to === 'number' && from > to
      ? 'Enter no less than where it begins'
      : null;
  }

  /** As a file has it; null while a number is wrong. */
  documentOf(unit: LengthUnit): unknown {
    if (keys.some((key) => this.faultOf(key, unit) !== null)) return null;
    const span = (key: SpanKey) => ({ from: this.value(`${key}/from`), to: this.value(`${key}/to`) });
    return {
      stands: this.#stands,
      ...(this.by === 'miss' ? { miss: this.value('miss') } : {}),
      clear: { screen: this.value('screen'), wall: this.value('wall') },
      marks: this.moves.marks && { x: span('x'), y: span('y') },
      ...(this.moves.setback ? { setback: span('setback') } : {}),
      ...(this.moves.earHeight ? { earHeight: span('earHeight') } : {}),
    };
  }

  get #stands(): unknown {
    if (this.of === null) return { tilt: this.value('tilt'), [this.at]: this.value('height') };
    return this.of.built ?? { layout: this.of.layout };
  }

  #counts(key: PlaceKey): boolean {
    if (key === 'tilt' || key === 'height') return this.of === null;
    if (key === 'miss') return this.by === 'miss';
    if (key === 'screen' || key === 'wall') return true;
    return this.moves[movableOf(spanOf(key))];
  }
}

const ranges: Readonly<Record<PlaceKey, Range>> = {
  tilt: tilt.degrees,
  height: stand.lift,
  miss: missRange,
  screen: clearRange,
  wall: clearRange,
  'x/from': placement.right.x,
  'x/to': placement.right.x,
  'y/from': placement.right.y,
  'y/to': placement.right.y,
  'setback/from': listener.setback,
  'setback/to': listener.setback,
  'earHeight/from': listener.earHeight,
  'earHeight/to': listener.earHeight,
};
const isKey = (key: string): key is PlaceKey => key in ranges;
const keys = Object.keys(ranges).filter(isKey);

const spanKeys = ['x', 'y', 'setback', 'earHeight'] as const;
const spanOf = (key: PlaceKey): SpanKey => spanKeys.find((span) => key.startsWith(`${span}/`)) ?? 'x';
const movableOf = (key: SpanKey): Movable => (key === 'x' || key === 'y' ? 'marks' : key);
