import { readFile } from 'node:fs/promises';
import { strFromU8, strToU8, unzipSync } from 'fflate';
import type { Download } from 'playwright';
import { expect } from 'vitest';
import { allFiles } from '$lib/files/allFiles.ts';
import { cutFiles } from '$lib/files/bundle.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { solutionOf } from '$lib/solution/solve.ts';
import { planFile } from '$lib/files/planFile.ts';
import { settleProject } from '$lib/document/settle.ts';
import { project } from '../projects.ts';

/** What the demo with some values set comes to, without a page. */
export function shownOf(changes: Readonly<Record<string, unknown>> = {}): Solution {
  const { shown } = settleProject(project(changes), 0);
  if (!shown) throw new Error('the demo has an answer');
  return solutionOf(shown);
}

/** Every cut file that the same code makes of it without a page. */
export async function expected(changes: Readonly<Record<string, unknown>> = {}): Promise<Record<string, string>> {
  const shown = shownOf(changes);
  const made = await cutFiles(shown);
  if (!made.ok) throw new Error('the demo has cut files');
  const files = [{ path: 'plan.json', text: planFile(shown, made.value.sheets) }, ...made.value.cut];
  return Object.fromEntries(files.map(({ path, text }) => [path, text]));
}

/** Every file that the command writes of it, as texts. */
export async function folderOf(changes: Readonly<Record<string, unknown>> = {}): Promise<Record<string, string>> {
  const made = await allFiles(shownOf(changes));
  if (!made.ok) throw new Error('the demo has files');
  // Decoding leaves out the mark at the beginning of a text, here as in an archive.
  const text = (content: string | Uint8Array): string =>
    strFromU8(typeof content === 'string' ? strToU8(content) : content);
  return Object.fromEntries(made.value.files.map(({ path, content }) => [path, text(content)]));
}

export const bytes = async (file: Download): Promise<Uint8Array> => new Uint8Array(await readFile(await file.path()));

/** The files of an archive as texts. */
export async function unzipped(file: Download): Promise<Record<string, string>> {
  const files = unzipSync(await bytes(file));
  return Object.fromEntries(Object.entries(files).map(([path, content]) => [path, strFromU8(content)]));
}

/** The sines of two engines differ in their last digit; nothing in a plan is so near to nothing that this shows. */
const DUST = 1e-9;

/** Fails where two values read from JSON differ. */
export function expectSame(one: unknown, other: unknown): void {
  if (typeof one === 'number' && typeof other === 'number') expect(Math.abs(one - other)).toBeLessThan(DUST);
  else if (typeof one === 'object' && one !== null && typeof other === 'object' && other !== null) {
    expect(Object.keys(one)).toEqual(Object.keys(other));
    for (const [key, value] of Object.entries(one)) expectSame(value, Reflect.get(other, key));
  } else expect(one).toBe(other);
}
