import fc from 'fast-check';
import { checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { anyDesk, demoWith } from '../projects.ts';

/** The demo with one layout for each set of changes to its first, parsed; null where one of them is not sound. */
export function withLayouts(...changes: readonly Readonly<Record<string, unknown>>[]): Project | null {
  const documents = changes.map((change) => demoWith(change) as { speaker: unknown; layouts: [object] });
  const layouts = documents.map(({ layouts: [layout] }, index) => ({ ...layout, name: `layout ${index}` }));
  const result = checkProject({ ...documents[0], layouts });
  return result.ok ? result.value : null;
}

/** Changes that make several layouts for one pair of loudspeakers. */
export const severalLayouts: fc.Arbitrary<Record<string, unknown>[]> = fc
  .array(anyDesk, { minLength: 2, maxLength: 4 })
  .map((desks) =>
    desks.map((desk) => ({
      ...desk,
      ...Object.fromEntries(Object.entries(desks[0] ?? {}).filter(([pointer]) => pointer.startsWith('/speaker'))),
    })),
  );
