import { posturesServed } from '$lib/layout/ears.ts';
import type { Layout } from '$lib/project/project.ts';

/** For whom the aim is, as one sentence. */
export function servedText(layout: Layout): string {
  const names = posturesServed(layout).map(({ name }) => `“${name}”`);
  if (names.length === 0) return 'The aim is for the seat alone.';
  const all = ['the seat', ...names];
  const least =
    layout.aim.over?.by === 'mean' ? 'with the least weighted mean square of the angles' : 'with the least worst angle';
  return `One aim for ${all.slice(0, -1).join(', ')} and ${all.at(-1) ?? ''}, ${least}.`;
}
