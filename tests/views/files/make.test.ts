import { unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { allFiles } from '$lib/files/allFiles.ts';
import { plan } from '$lib/solution/plan.ts';
import { solve } from '$lib/solution/solve.ts';
import { makeArchive } from '$lib/views/files/make.ts';
import { sheetSteps } from '$lib/workers/jobs.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { firstLayout, project } from '../../projects.ts';

/** Parts of several kinds on two boards, a layout with a seed of its own, inches. */
const projects = [
  { '/layouts/0/stand/build': 'ribbed', '/layouts/0/stand/lift': 40 },
  { '/layouts/0/arrangement': { seed: 7, locked: [] }, '/display/length': 'in', '/layouts/0/stand/width': 60 },
];

test.each(projects)(
  'the archive of a page and the folder of the command are the same bytes, whatever was looked at before: %j',
  async (changes) => {
    const of = project(changes);
    // The command: nothing is read before the files are made.
    const solved = solve(of, firstLayout(of));
    if (!solved.ok) throw new Error(JSON.stringify(solved.faults));
    const folder = await allFiles(solved.value);
    if (!folder.ok) throw new Error(JSON.stringify(folder.faults));

    // A page: sheets come from the worker's job, and sound and suggestions have been looked at.
    const planned = plan(of, firstLayout(of));
    if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
    const looked = solve(of, firstLayout(of));
    if (looked.ok)
      expect([looked.value.sound.frequencies.length, looked.value.suggestions.size >= 0]).toEqual([480, true]);
    const nested = toTheEnd(sheetSteps({ project: structuredClone(of), layoutIndex: 0 }));
    if (!nested.ok) throw new Error(JSON.stringify(nested.faults));
    const archive = await makeArchive(planned.value, nested.value.sheets);
    if (!archive.ok) throw new Error(JSON.stringify(archive.faults));

    const files = unzipSync(archive.bytes);
    expect(Object.keys(files)).toEqual(folder.value.files.map(({ path }) => path));
    for (const { path, content } of folder.value.files) {
      const written = typeof content === 'string' ? new TextEncoder().encode(content) : content;
      expect(Buffer.compare(files[path] ?? new Uint8Array(), written), path).toBe(0);
    }
  },
  120_000,
);
