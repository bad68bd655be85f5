import { expect, test } from 'vitest';
import { buildNamed, builds } from '$lib/stand/builds/builds.ts';
import { plainText } from '$lib/project/sentence.ts';
import { bodyOf, thick } from './buildRequests.ts';

test('each build is found by its name and makes a body of that name', () => {
  for (const build of builds) {
    expect(buildNamed(build.name)).toBe(build);
    expect(bodyOf({ board: thick, settings: { build: build.name, rods: null } }).build).toBe(build.name);
  }
  expect(new Set(builds.map(({ label }) => label)).size).toBe(builds.length);
});

test('a detail that a build has no use for is left out with a note, any other without', () => {
  const details = {
    relief: { web: 4, corner: 2 },
    cheeks: { stock: null, count: 1 },
    ribs: { count: 2, cross: 3, fit: 0.1, inset: 10, skin: null },
    pockets: { count: 1, diameter: 4, depth: 3 },
  } as const;
  const names = { relief: 'Relief windows', cheeks: 'Cheeks', ribs: 'Ribs', pockets: 'Pockets' } as const;
  for (const build of builds) {
    const notes = bodyOf({ board: thick, settings: { ...details, build: build.name, rods: null } }).notes.map(
      plainText,
    );
    for (const detail of ['relief', 'cheeks', 'ribs', 'pockets'] as const) {
      const said = notes.some((note) => note.startsWith(names[detail]) && note.endsWith(' build: left out.'));
      expect([build.name, detail, said]).toEqual([build.name, detail, !build.details.includes(detail)]);
    }
  }
});
