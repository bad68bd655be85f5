/** What a number may be. */
export interface Range {
  /** What the number is, with its article: `a length`. */
  readonly what: string;
  readonly min: number;
  readonly max: number;
  /** `mm`, `°`, `kg`, `Hz`, `°C`, `kg/m³`, or empty for a bare number. */
  readonly unit: string;
  readonly whole?: boolean;
}

/** What a number may be, for whoever types it: `200 to 2500 mm`, `−30 to 45°`, `2 to 8, a whole number`. */
export function limitsText({ min, max, unit, whole }: Range): string {
  const text = `${min} to ${max}${unit === '' || unit === '°' ? unit : ` ${unit}`}`.replaceAll('-', '\u2212');
  return whole ? `${text}, a whole number` : text;
}

/** What was expected, in words: `a length over 0 mm` for a value that misses a positive range below zero. */
export function expectation(range: Range, value: unknown): string {
  const unit = range.unit === '°' ? '°' : range.unit && ` ${range.unit}`;
  if (range.min > 0 && typeof value === 'number' && value <= 0) return `${range.what} over 0${unit}`;
  return `${range.what} from ${range.min} to ${range.max}${unit}`;
}
