import type { Range } from '$lib/project/range.ts';

/** What a number field takes, in words: `−30 to 45°`. */
export function limitsText({ min, max, unit, whole }: Range): string {
  const text = `${min} to ${max}${unit === '' || unit === '°' ? unit : ` ${unit}`}`.replaceAll('-', '\u2212');
  return whole ? `${text}, whole` : text;
}

/** Steps add up without float dust: no step has more decimals. */
const DECIMALS = 6;

/** The text of a number moved by so many steps, held within its range. */
export function stepped(value: number, steps: number, step: number, range: Range): string {
  const size = range.unit === 'in' ? INCH_STEP : step;
  const moved = Math.min(range.max, Math.max(range.min, value + steps * size));
  return String(Number(moved.toFixed(DECIMALS)));
}

/** A sixteenth: what a tape measure in inches is divided into. */
const INCH_STEP = 1 / 16;
