import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect } from 'vitest';
import { bringUpToDate } from '../../tools/bundle.mjs';

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly lines: readonly string[];
}

/** One of the headless commands as it is bundled, and a folder for its files that goes when the tests are done. */
export function command(name: 'compare' | 'sweep' | 'search' | 'place' | 'prove') {
  const bundle = fileURLToPath(new URL(`../../dist/${name}.js`, import.meta.url));
  let folder = '';
  let count = 0;
  beforeAll(() => {
    expect(bringUpToDate()).toBe(true);
    folder = mkdtempSync(join(tmpdir(), 'wedgewright-'));
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return {
    run: (...words: readonly string[]): Ran => {
      const { status, stdout, stderr } = spawnSync(process.execPath, [bundle, ...words], { encoding: 'utf8', timeout: 60_000 }); // prettier-ignore
      return { status, out: stdout, lines: stderr.split('\n').filter((line) => line !== '') };
    },
    file: (document: unknown): string => {
      const path = join(folder, `${count++}.json`);
      writeFileSync(path, JSON.stringify(document));
      return path;
    },
    /** A file of plain text. */
    textFile: (text: string): string => {
      const path = join(folder, `${count++}.txt`);
      writeFileSync(path, text);
      return path;
    },
  };
}
