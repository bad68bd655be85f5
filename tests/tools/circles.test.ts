import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { expect, test } from 'vitest';
import { root } from '../../tools/root.mjs';

const LIB = 'src/lib/';

const files = readdirSync(`${root}${LIB}`, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => /\.(ts|svelte)$/.test(file));

/** Files of `src/lib` that a text at this place imports at once, types too. A lazy import waits for no one. */
const importsOf = (file: string, text: string): string[] =>
  [...text.matchAll(/(?:^|[^\w$])(?:from|import)\s*'(\$lib\/|\.)([^']*)'/g)].map(([, start = '', rest = '']) =>
    start === '.' ? posix.join(posix.dirname(file), `.${rest}`) : rest,
  );

/** Files that import one another round a circle, each circle from the file that closes it. */
function circlesOf(imports: ReadonlyMap<string, readonly string[]>): string[][] {
  const circles: string[][] = [];
  const done = new Set<string>();
  const visit = (file: string, way: readonly string[]): void => {
    const begun = way.indexOf(file);
    if (begun >= 0) circles.push([...way.slice(begun), file]);
    if (begun >= 0 || done.has(file)) return;
    for (const next of imports.get(file) ?? []) visit(next, [...way, file]);
    done.add(file);
  };
  for (const file of imports.keys()) visit(file, []);
  return circles;
}

test('no file imports itself round a circle, not even types', () => {
  const imports = new Map(files.map((file) => [file, importsOf(file, readFileSync(`${root}${LIB}${file}`, 'utf8'))]));
  expect([...imports.values()].flat().length).toBeGreaterThan(files.length);
  expect([...imports.values()].flat().filter((file) => /\.(ts|svelte)$/.test(file) && !imports.has(file))).toEqual([]);
  // A component that shows a tree shows itself.
  expect(circlesOf(imports).filter(([file = '', ...rest]) => rest.length > 1 || !file.endsWith('.svelte'))).toEqual([]);
});

test('a circle is told, also one of types', () => {
  const imports = new Map(
    Object.entries({
      'a/one.ts': "import type { Two } from './two.ts';",
      'a/two.ts': "import { three } from '$lib/b/three.ts';",
      'b/three.ts': "import '$lib/a/one.ts';\nconst late = () => import('$lib/c/four.ts');",
      'c/four.ts': "export { three } from '$lib/b/three.ts';",
    }).map(([file, text]) => [file, importsOf(file, text)] as const),
  );
  expect(circlesOf(imports)).toEqual([['a/one.ts', 'a/two.ts', 'b/three.ts', 'a/one.ts']]);
});
