import { ESLint } from 'eslint';
import { describe, expect, test } from 'vitest';
import { root } from '../../tools/root.mjs';

const eslint = new ESLint({ cwd: root });
const ARROW_RULES = ['no-restricted-imports', 'no-restricted-syntax', 'no-restricted-globals'];

/** What the arrow rules say about a file of this text at this place. */
async function refusals(filePath: string, text: string): Promise<string[]> {
  const [result] = await eslint.lintText(text, { filePath: `${root}${filePath}` });
  const messages = result?.messages ?? [];
  expect(messages.filter((message) => message.fatal)).toEqual([]);
  return messages.filter(({ ruleId }) => ARROW_RULES.includes(ruleId ?? '')).map(({ message }) => message);
}

const using = (module: string): string => `import { thing } from '${module}';\nexport const use = thing;\n`;

// Left may not import right: each against the one direction that the rooms are in.
const wrong = [
  ['geometry', '$lib/project/fault.ts'],
  ['project', '$lib/layout/pose.ts'],
  ['layout', '$lib/acoustics/air.ts'],
  ['acoustics', '$lib/stand/profile.ts'],
  ['stand', '$lib/acoustics/air.ts'],
  ['stand', '$lib/workshop/part.ts'],
  ['workshop', '$lib/solution/document.ts'],
  ['solution', '$lib/study/measure.ts'],
  ['study', '$lib/proof/fit.ts'],
  ['proof', '$lib/drawing/view.ts'],
  ['drawing', '$lib/files/svg.ts'],
  ['files', '$lib/document/store.svelte.ts'],
  ['files', '$lib/workers/jobs.ts'],
  ['document', '$lib/workers/client.svelte.ts'],
  ['workers', '$lib/views/Field.svelte'],
  ['geometry', '../project/fault.ts'],
  ['geometry', './../project/fault.ts'],
  ['files', 'node:fs'],
  ['files', 'fs'],
  ['files', 'fs/promises'],
  ['solution', 'svelte'],
  ['drawing', 'svelte/store'],
  ['project', '$app/environment'],
] as const;

const right = [
  ['project', '$lib/geometry/point.ts'],
  ['acoustics', '$lib/layout/pose.ts'],
  ['workshop', '$lib/stand/profile.ts'],
  ['solution', '$lib/workshop/part.ts'],
  ['study', '$lib/solution/solve.ts'],
  ['proof', '$lib/solution/solve.ts'],
  ['files', '$lib/drawing/view.ts'],
  ['files', 'fflate'],
  ['document', '$lib/files/svg.ts'],
  ['workers', '$lib/document/store.svelte.ts'],
  ['views', '$lib/workers/client.svelte.ts'],
  ['views', 'svelte'],
  ['geometry', './point.ts'],
] as const;

describe('the lint rule holds the arrows between the rooms', () => {
  test.each(wrong)('%s may not import %s', async (room, module) => {
    const place = `src/lib/${room}/example.ts`;
    expect(await refusals(place, using(module))).toHaveLength(1);
    expect(await refusals(place, `export { thing } from '${module}';\n`)).toHaveLength(1);
    expect(await refusals(place, `export const thing = () => import('${module}');\n`)).toHaveLength(1);
    expect(await refusals(place, `import type { Thing } from '${module}';\nexport type Use = Thing;\n`)).toHaveLength(
      1,
    );
  });

  test.each(right)('%s may import %s', async (room, module) => {
    const place = `src/lib/${room}/example.ts`;
    expect(await refusals(place, using(module))).toEqual([]);
    expect(await refusals(place, `export const thing = () => import('${module}');\n`)).toEqual([]);
  });

  test('says which rooms are open', async () => {
    expect(await refusals('src/lib/layout/example.ts', using('$lib/solution/plan.ts'))).toEqual([
      expect.stringContaining('"layout" may import from geometry, project only: imports run one way'),
    ]);
  });

  test.each(['document', 'window', 'process', 'localStorage'])(
    'no %s in the rooms that run everywhere',
    async (name) => {
      const text = `export const seen = ${name};\n`;
      expect(await refusals('src/lib/solution/example.ts', text)).toEqual([
        expect.stringContaining('"solution" runs in a page'),
      ]);
      expect(await refusals('src/lib/document/example.ts', text)).toEqual([]);
    },
  );
});
