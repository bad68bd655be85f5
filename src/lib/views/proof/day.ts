/** A day as ISO 8601 has it and every country reads it: `2031-03-14`, by the clock on the wall. */
export const dayText = (at: Date): string =>
  [at.getFullYear(), at.getMonth() + 1, at.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
