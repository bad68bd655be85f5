import { describe, expect, test } from 'vitest';
import { searchFile } from '$lib/files/searchFile.ts';
import { readAsk } from '$lib/study/ask.ts';
import { search } from '$lib/study/search.ts';
import { demoWith, firstLayout, project } from '../projects.ts';
import { command } from './ran.ts';

const { run, file } = command('search');

const document = {
  free: [{ pointer: '/placement/right/x', from: 300, to: 600, step: 50, mirror: true }],
  rules: [{ measure: 'clearance', least: 20 }],
  aims: ['triangle-error', 'move'],
};

describe('search', () => {
  test('prints what the engine finds as JSON, and as a table', () => {
    const of = project();
    const ask = readAsk(document, firstLayout(of));
    if (!ask.ok) throw new Error('it is an ask');
    const { status, out, lines } = run(file(demoWith()), '--ask', file(document), '--seed', '3');
    expect({ status, lines }).toEqual({ status: 0, lines: [] });
    expect(out).toBe(searchFile(search(of, firstLayout(of), ask.value, 3), ask.value));
    const printed = JSON.parse(out) as { kept: number; front: unknown[] };
    expect(printed).toMatchObject({ format: 'wedgewright/search', version: 1, tried: 7, relax: [] });
    expect(printed.front).toHaveLength(printed.kept);
    const table = run(file(demoWith()), '--ask', file(document), '--csv').out.split('\r\n');
    expect(table[0]).toBe('\ufeff/placement/right/x,/placement/left/x,triangle-error (°),move (mm),clearance (mm)');
    expect(table).toHaveLength(printed.kept + 2);
  });

  test('tries rules of toe, told as a file has them, and in one cell of a table', () => {
    const values = [{ rule: 'straight' }, { rule: 'behind-head', distance: 250.5 }];
    const toes = file({ ...document, free: [{ pointer: '/aim/toe', values }], rules: [], aims: ['miss', 'move'] });
    const printed = JSON.parse(run(file(demoWith()), '--ask', toes).out) as {
      tried: number;
      front: { edits: unknown }[];
    };
    expect(printed.tried).toBe(2);
    expect(printed.front[0]?.edits).toEqual([{ pointer: '/aim/toe', value: { rule: 'behind-head', distance: 250.5 } }]);
    expect(run(file(demoWith()), '--ask', toes, '--csv').out).toContain('\r\nbehind-head 250.5,');
  });

  test('says which rule would let something pass', () => {
    const none = { ...document, rules: [{ measure: 'tilt', most: 1 }] };
    const { status, out } = run(file(demoWith()), '--ask', file(none));
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ kept: 0, front: [], relax: [{ rule: 0, measure: 'tilt' }] });
  });

  test('asks a question by its name', () => {
    const { status, out } = run(file(demoWith()), '--question', 'sixty-degrees');
    expect(status).toBe(0);
    const printed = JSON.parse(out) as { front: { measures: Record<string, { value: number }> }[] };
    const errors = printed.front.map(({ measures }) => measures['triangle-error']?.value ?? NaN);
    expect(Math.min(...errors)).toBeLessThan(1);
    for (const { measures } of printed.front) expect(measures['screen-gap']?.value).toBeGreaterThanOrEqual(20);
  }, 120_000);

  test('refuses what is no ask, at its pointer', () => {
    const path = file(demoWith());
    const refused = (...words: string[]) => {
      const { status, out, lines } = run(path, ...words);
      expect([status, out]).toEqual([2, '']);
      return lines;
    };
    expect(refused()[0]).toBe('/: expected --ask and the path of a file, or --question and a name, got neither');
    expect(refused('--ask', file(document), '--question', 'sixty-degrees')[0]).toBe(
      '/: expected --ask or --question, got both',
    );
    expect(refused('--question', 'beauty')).toEqual([
      '/: expected the name of a question (sixty-degrees, lowest-stands, widest-safe-zone, least-desk-reflection) after --question, got "beauty"',
    ]);
    expect(refused('--ask', '/nowhere/ask.json')).toEqual([
      'ask: expected an ask, got "/nowhere/ask.json", which is not there',
    ]);
    expect(refused('--ask', file({ ...document, aims: ['beauty'] }))[0]).toMatch(
      /^ask\/aims\/0: expected the name of a measure \(/,
    );
    expect(refused('--ask', file(document), '--seed', 'two')[0]).toBe(
      '/: expected a whole number of at most nine digits after --seed, got "two"',
    );
  });
});
