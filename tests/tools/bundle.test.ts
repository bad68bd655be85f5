import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { bringUpToDate } from '../../tools/bundle.mjs';

let home = '';
let builds = 0;

beforeEach(() => {
  builds = 0;
  home = mkdtempSync(join(tmpdir(), 'wedgewright-bundle-'));
  mkdirSync(join(home, 'src/command'), { recursive: true });
  writeFileSync(join(home, 'src/command/plan.ts'), 'one');
});
afterEach(() => rmSync(home, { recursive: true }));

const dist = (...steps: string[]): string => join(home, 'dist', ...steps);

/** Stands in for the bundler: an entry that names its chunk by the number of the build. */
function build(folder: string): boolean {
  builds += 1;
  mkdirSync(join(folder, 'chunks'));
  writeFileSync(join(folder, 'chunks', `part-${builds}.js`), 'part');
  writeFileSync(join(folder, 'plan.js'), `import './chunks/part-${builds}.js'`);
  return true;
}

const update = (): boolean => bringUpToDate({ home, build });

describe('the bundles are built', () => {
  test('once for the same sources', () => {
    expect([update(), update()]).toEqual([true, true]);
    expect(builds).toBe(1);
    expect(readdirSync(dist()).sort()).toEqual(['.sources', 'chunks', 'plan.js']);
  });

  test.each([
    ['edited', () => writeFileSync(join(home, 'src/command/plan.ts'), 'other')],
    ['put back to an older time', () => utimesSync(join(home, 'src/command/plan.ts'), 1, 1)],
    ['added', () => writeFileSync(join(home, 'package.json'), '{}')],
    ['removed', () => rmSync(join(home, 'src/command/plan.ts'))],
  ])('again after a source was %s', (_, change) => {
    update();
    change();
    update();
    expect(builds).toBe(2);
  });

  test('again when a source was edited during the build', () => {
    const edit = (folder: string): boolean => {
      writeFileSync(join(home, 'src/command/plan.ts'), 'edited meanwhile');
      return build(folder);
    };
    bringUpToDate({ home, build: edit });
    update();
    expect(builds).toBe(2);
  });
});

describe('whoever reads meanwhile', () => {
  test('finds the bundles of before until the new ones are whole', () => {
    update();
    writeFileSync(join(home, 'src/command/plan.ts'), 'other');
    const look = (folder: string): boolean => {
      const well = build(folder);
      expect(readFileSync(dist('plan.js'), 'utf8')).toContain('part-1');
      return well;
    };
    bringUpToDate({ home, build: look });
    expect(readFileSync(dist('plan.js'), 'utf8')).toContain('part-2');
  });

  test('still finds the chunks of the bundle it started with, for a day', () => {
    update();
    writeFileSync(join(home, 'src/command/plan.ts'), 'other');
    update();
    expect(readdirSync(dist('chunks')).sort()).toEqual(['part-1.js', 'part-2.js']);
    const twoDaysAgo = Date.now() / 1000 - 2 * 24 * 60 * 60;
    utimesSync(dist('chunks', 'part-1.js'), twoDaysAgo, twoDaysAgo);
    writeFileSync(join(home, 'src/command/plan.ts'), 'a third');
    update();
    expect(readdirSync(dist('chunks')).sort()).toEqual(['part-2.js', 'part-3.js']);
  });
});

test('a build that fails leaves the bundles of before alone and is tried again', () => {
  update();
  writeFileSync(join(home, 'src/command/plan.ts'), 'broken');
  const fail = (folder: string): boolean => build(folder) && false;
  expect(bringUpToDate({ home, build: fail })).toBe(false);
  expect(readFileSync(dist('plan.js'), 'utf8')).toContain('part-1');
  expect(readdirSync(dist()).sort()).toEqual(['.sources', 'chunks', 'plan.js']);
  update();
  expect(builds).toBe(3);
});
