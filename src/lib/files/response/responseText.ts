import type { MeasuredCurve } from '$lib/proof/heard/curve.ts';
import { bytesText } from './bytesText.ts';
import { fieldsOf, isNumberLike, numberIn, rowText, separatorOf, type Commas, type Row, type Separator } from './columns.ts'; // prettier-ignore
import { commasOf } from './commas.ts';

/** The largest file that is read, bytes. */
const MOST_BYTES = 20e6;

/** The most lines: five times what any measurement of hearing's range has. */
const MOST_LINES = 500_000;

/** What a file may hold: wide enough for any unit and any reference of a level, dB; any unwrapped phase, degrees. */
const HIGHEST = 1e6;
const LEVEL = 300;
const PHASE = 1e7;

/** The range of hearing, Hz, and the fewest frequencies within it that are a response. */
const HEARING = [20, 20_000] as const;
const FEWEST = 3;

/** Lines read between two pauses. */
const PAUSE = 10_000;

/** What was found in a file beside the curve. */
export interface ReadFile {
  readonly curve: MeasuredCurve;
  readonly separator: Separator;
  /** Whether its numbers have decimal commas. */
  readonly decimalCommas: boolean;
  /** Most columns of any row: more than three are passed over. */
  readonly columns: number;
  /** Lines without numbers; rows at 0 Hz; rows of a frequency that is there already, whose mean level counts. */
  readonly passedOver: number;
  readonly atZero: number;
  readonly repeated: number;
  readonly sorted: boolean;
}

/** A response read; or what is to be asked, with the two ways of reading one number; or why it cannot be read. */
export type ResponseReading =
  | ({ readonly kind: 'read' } & ReadFile)
  | { readonly kind: 'ask'; readonly line: number; readonly field: string; readonly decimal: number; readonly thousands: number }
  | { readonly kind: 'refused'; readonly message: string }; // prettier-ignore

const refused = (message: string): ResponseReading => ({ kind: 'refused', message });
const atLine = (line: number, message: string): ResponseReading => refused(`line ${line}: ${message}`);

/** So much of a field as a message shows. */
const shown = (text: string): string => JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}…` : text);

/**
 * A measured response of a text file: rows of frequency (Hz), level (dB) and, where there is one, phase (degrees), in any
 * order, with semicolons, tabs, spaces or commas between; comments and lines of words are passed over (common practice, no
 * source). A row that begins with a number must be one from the first sound row on. Yields the share done.
 *
 * @param commas What commas in numbers are, where somebody was asked; null lets the file tell.
 */
export function* readResponse(bytes: Uint8Array, commas: Commas | null): Generator<number, ResponseReading> {
  if (bytes.length === 0) return refused('expected a text with frequencies and levels, got an empty file');
  if (bytes.length > MOST_BYTES) return refused(`expected at most ${MOST_BYTES / 1e6} MB, got ${(bytes.length / 1e6).toFixed(1)} MB`);
  const raw = bytesText(bytes);
  if (raw === null) return refused('expected a text with frequencies and levels, got a file that is no text');
  const text = raw.includes('"') || raw.includes('\u2212') ? raw.replaceAll('"', '').replaceAll('\u2212', '-') : raw;
  const count = linesOf(text);
  if (count > MOST_LINES) return refused(`line ${MOST_LINES + 1}: expected at most ${MOST_LINES} lines, got ${count}`);
  yield 0.1;
  // A return before a line's end is a blank of that line.
  const lines = text.split(/\r(?!\n)/.test(text) ? /\r\n|[\n\r]/ : '\n');
  const rows: Row[] = [];
  let empty = 0;
  for (let index = 0; index < lines.length; index++) {
    if (index % PAUSE === 0) yield 0.1 + (0.2 * index) / lines.length;
    const line = lines[index] ?? '';
    const row = rowText(line);
    if (row !== null) rows.push({ line: index + 1, text: row });
    else if (line.trim() === '') empty += 1;
  }
  const separator = separatorOf(rows);
  if (separator === null) return nothingIn(rows);
  const data = rows.slice(rows.findIndex((row) => isSound(row, separator)));
  const told = commas === null && text.includes(',') ? commasOf(data, separator) : { kind: 'told' as const, commas };
  if (told.kind === 'contradicted') {
    return atLine(told.thousands.line, `expected commas as in line ${told.decimal.line} (${shown(told.decimal.text)}), got ${shown(told.thousands.text)}: one has decimal commas, one commas between thousands`);
  }
  if (told.kind === 'untold') {
    const { row, field } = told;
    return { kind: 'ask', line: row.line, field, decimal: numberIn(field, true), thousands: numberIn(field, false) };
  }
  const decimalCommas = separator !== 'comma' && told.commas === 'decimal';
  const table = yield* tableOf(data, separator, decimalCommas);
  if ('kind' in table) return table;
  const within = table.curve.frequencies.filter((f) => f >= HEARING[0] && f <= HEARING[1]).length;
  if (within < FEWEST) return refused(`expected at least ${FEWEST} frequencies from 20 Hz to 20 kHz, got ${within}`);
  return { kind: 'read', separator, decimalCommas, passedOver: lines.length - empty - data.length, ...table };
} // prettier-ignore

/** Why there is no row with two numbers. */
function nothingIn([first]: readonly Row[]): ResponseReading {
  const expected = 'expected a frequency in Hz and a level in dB';
  return first ? atLine(first.line, `${expected}, got ${shown(first.text)}`) : refused(`${expected} on each line, got no line that begins with a number`);
} // prettier-ignore

function linesOf(text: string): number {
  let lines = 1;
  for (let at = text.search(/[\n\r]/); at >= 0 && at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) lines += 1;
  }
  return lines;
}

const isSound = ({ text }: Row, separator: Separator): boolean => {
  const [frequency, level] = fieldsOf(text, separator);
  return frequency !== undefined && level !== undefined && isNumberLike(frequency) && isNumberLike(level);
};

type Table = Pick<ReadFile, 'curve' | 'columns' | 'atZero' | 'repeated' | 'sorted'>;

/** The rows as numbers, in the order of their frequencies; or what is wrong with one of them. */
function* tableOf(
  rows: readonly Row[],
  separator: Separator,
  decimal: boolean,
): Generator<number, Table | ResponseReading> {
  const table = { frequencies: new Float64Array(rows.length), levels: new Float64Array(rows.length), phases: new Float64Array(rows.length) };
  let [count, columns, atZero, sorted, last] = [0, 2, 0, true, -Infinity];
  for (let index = 0; index < rows.length; index++) {
    if (index % PAUSE === 0) yield 0.3 + (0.6 * index) / rows.length;
    const { line, text } = rows[index] ?? { line: 0, text: '' };
    const fields = fieldsOf(text, separator);
    const [first = '', second = '', third] = fields;
    if (separator === 'comma' && fields.length === 4 && !text.includes('.')) {
      return atLine(line, `expected two or three columns, got four by commas and no decimal point in ${shown(text)}: save it with decimal points, or with semicolons between the columns`);
    }
    if (fields.length > columns) columns = fields.length;
    const f = numberIn(first, decimal);
    if (!(f >= 0 && f <= HIGHEST)) return atLine(line, `expected a frequency of 0 to ${HIGHEST} Hz, got ${shown(first)}`);
    const level = numberIn(second, decimal);
    if (!(Math.abs(level) <= LEVEL)) return atLine(line, `expected a level of -${LEVEL} to ${LEVEL} dB, got ${second === '' ? 'nothing' : shown(second)}`);
    const phase = third === undefined ? NaN : numberIn(third, decimal);
    if (third !== undefined && !(Math.abs(phase) <= PHASE)) return atLine(line, `expected a phase in degrees, got ${shown(third)}`);
    if (f < last) sorted = false;
    last = f;
    if (f === 0) atZero += 1;
    else {
      table.frequencies[count] = f;
      table.levels[count] = level;
      table.phases[count] = phase;
      count += 1;
    }
  }
  const curve = merged(sorted ? firstOf(table, count) : inOrder(table, count));
  yield 1;
  return { curve, columns, atZero, sorted, repeated: count - curve.frequencies.length };
} // prettier-ignore

interface Places {
  readonly frequencies: Float64Array;
  readonly levels: Float64Array;
  /** NaN where there is none. */
  readonly phases: Float64Array;
}

const firstOf = ({ frequencies, levels, phases }: Places, count: number): Places => ({
  frequencies: frequencies.slice(0, count),
  levels: levels.slice(0, count),
  phases: phases.slice(0, count),
});

/** By frequency; those of one frequency stay in their order. */
function inOrder({ frequencies, levels, phases }: Places, count: number): Places {
  const order = Array.from({ length: count }, (_, i) => i).sort((a, b) => (frequencies[a] ?? 0) - (frequencies[b] ?? 0) || a - b);
  const sorted = (column: Float64Array): Float64Array => Float64Array.from(order, (at) => column[at] ?? NaN);
  return { frequencies: sorted(frequencies), levels: sorted(levels), phases: sorted(phases) };
} // prettier-ignore

/** Rows of one frequency as one, with their mean level and the first one's phase: in place. */
function merged({ frequencies, levels, phases }: Places): MeasuredCurve {
  let kept = 0;
  for (let from = 0; from < frequencies.length; kept += 1) {
    const f = frequencies[from] ?? 0;
    const phase = phases[from] ?? NaN;
    let [sum, to] = [0, from];
    for (; frequencies[to] === f; to += 1) sum += levels[to] ?? 0;
    frequencies[kept] = f;
    levels[kept] = sum / (to - from);
    phases[kept] = phase;
    from = to;
  }
  const phased = kept > 0 && !phases.subarray(0, kept).includes(NaN);
  return {
    frequencies: frequencies.slice(0, kept),
    levels: levels.slice(0, kept),
    phases: phased ? phases.slice(0, kept) : null,
  };
}
