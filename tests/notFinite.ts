/** Where in a value there are numbers that no file can hold: pointers of what is NaN or infinite. */
export function notFinite(value: unknown, at = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, held]) => notFinite(held, `${at}/${key}`));
}
