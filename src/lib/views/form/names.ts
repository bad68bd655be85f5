import { listAt, valueAt } from '$lib/document/pointer.ts';

/** The names in a list as options of a choice, each once. */
export function namesAt(document: unknown, list: string): readonly (readonly [value: string, label: string])[] {
  const names = listAt(document, list).map((entry) => valueAt(entry, '/name'));
  const texts = names.filter((name) => typeof name === 'string');
  return [...new Set(texts)].map((name) => [name, name]);
}
