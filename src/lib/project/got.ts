const SHOWN = 40;

/** The value as a message names it: short, on one line, never walking into what it holds. */
export function got(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (typeof value === 'string') return JSON.stringify(value.length > SHOWN ? `${value.slice(0, SHOWN)}…` : value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return 'an object';
}
