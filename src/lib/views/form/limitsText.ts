import type { Range } from '$lib/project/range.ts';

/** What a number field takes, in words: `−30 to 45°`. */
export function limitsText({ min, max, unit, whole }: Range): string {
  const text = `${min} to ${max}${unit === '' || unit === '°' ? unit : ` ${unit}`}`.replaceAll('-', '\u2212');
  return whole ? `${text}, whole` : text;
}
