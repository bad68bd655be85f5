import type { Measure } from './measure.ts';
import type { SweepRow } from './sweepRow.ts';

/** A place where a measure does not go on as it came. */
export interface Kink {
  readonly measure: string;
  /** Value of the input, to a 256th of the distance of two rows. */
  readonly at: number;
  /** A bend turns the slope, a jump changes the value itself. */
  readonly what: 'bend' | 'jump';
  /** The measure itself just before and just after; the same at a bend. */
  readonly before: number;
  readonly after: number;
}

/** A bend is looked for where the slope changes by more than this part of the steepest slope from one row to the next. */
const SUSPECT = 0.02;
/** Nor where the value itself bends by less than this, in any unit: rounding. */
const DUST = 1e-6;
/** How often the distance is halved. A smooth curve turns ever less between three places; a bend turns as much, a jump ever more. */
const HALVINGS = 8;
/** By then a smooth curve turns 2⁸ times less and a jump 2⁸ times more: what lies half way, in powers, parts them. */
const AMPLE = 2 ** (HALVINGS / 2);

/**
 * The bends and jumps of a measure along a sweep. Numbers of things always jump and are left out, and so is what takes
 * long to work out. @param valueAt Of the measure; null where there is no answer.
 */
export function kinksOf(rows: readonly SweepRow[], measure: Measure, valueAt: (at: number) => number | null): Kink[] {
  if (measure.unit === '' || measure.needs === 'sound' || measure.needs === 'sheets') return [];
  const places = rows.map(({ at, values }): Place => ({ at, value: values[measure.name] ?? null }));
  const slopes = places.slice(1).map((to, i) => slope(places[i] ?? to, to));
  const steepest = Math.max(...slopes.map((one) => Math.abs(one ?? 0)));
  const step = Math.abs((places[1]?.at ?? 0) - (places[0]?.at ?? 0));
  const kinks: Kink[] = [];
  for (let i = 1; i + 1 < places.length; i++) {
    const three = [places[i - 1], places[i], places[i + 1]];
    const turn = turnOf(three);
    if (turn === null || Math.abs(turn) <= SUSPECT * steepest || Math.abs(turn) * step <= DUST) continue;
    const found = narrowed(three, turn, valueAt);
    if (found && !kinks.some(({ at }) => Math.abs(at - found.at) <= found.within)) {
      const { at, what, before, after } = found;
      kinks.push({ measure: measure.name, at, what, before, after });
    }
  }
  return kinks;
}

interface Place {
  readonly at: number;
  readonly value: number | null;
}

function slope(from: Place, to: Place): number | null {
  return from.value === null || to.value === null ? null : (to.value - from.value) / (to.at - from.at);
}

/** By how much the slope changes over three places; null where one of them has no value. */
function turnOf([a, b, c]: readonly (Place | undefined)[]): number | null {
  if (!a || !b || !c) return null;
  const [before, after] = [slope(a, b), slope(b, c)];
  return before === null || after === null ? null : after - before;
}

/** Where, within three places, the slope still turns when they are drawn together; null where the curve is smooth after all. */
function narrowed(three: readonly (Place | undefined)[], turn: number, valueAt: (at: number) => number | null) {
  let places = three;
  let size = Math.abs(turn);
  for (let halving = 0; halving < HALVINGS; halving++) {
    const [a, b, c] = places;
    if (!a || !b || !c) return null;
    const five = [a, middleOf(a, b, valueAt), b, middleOf(b, c, valueAt), c];
    const threes = [five.slice(0, 3), five.slice(1, 4), five.slice(2, 5)];
    const turns = threes.map((one) => Math.abs(turnOf(one) ?? NaN));
    size = Math.max(...turns);
    places = threes[turns.indexOf(size)] ?? [];
  }
  const [before, middle, after] = places;
  if (!before || !middle || !after) return null;
  const grown = size / Math.abs(turn);
  if (grown < 1 / AMPLE || before.value === null || middle.value === null || after.value === null) return null;
  const place = { at: middle.at, within: after.at - before.at };
  return grown > AMPLE
    ? { ...place, what: 'jump' as const, before: before.value, after: after.value }
    : { ...place, what: 'bend' as const, before: middle.value, after: middle.value };
}

const middleOf = (from: Place, to: Place, valueAt: (at: number) => number | null): Place => {
  const at = (from.at + to.at) / 2;
  return { at, value: valueAt(at) };
};
