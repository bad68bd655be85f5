import { describe, expect, test } from 'vitest';
import { compareFile } from '$lib/files/compareFile.ts';
import { compare } from '$lib/study/compare.ts';
import { measures, measuresNamed } from '$lib/study/measures.ts';
import { withLayouts } from '../study/layouts.ts';
import { command } from './ran.ts';

const { run, file } = command('compare');

const OF = ['tilt', 'miss', 'cautions'];

function threeLayouts() {
  const of = withLayouts({}, { '/layouts/0/listener/setback': 320 }, { '/layouts/0/placement/right/x': -400 });
  if (!of) throw new Error('the layouts are sound');
  return of;
}

describe('compare', () => {
  test('prints what the engine finds as JSON, a layout without an answer with its reason', () => {
    const of = threeLayouts();
    const { status, out, lines } = run(file(of), '--of', OF.join());
    expect({ status, lines }).toEqual({ status: 0, lines: [] });
    const by = measuresNamed(OF);
    if (!by.ok) throw new Error('they are measures');
    expect(out).toBe(compareFile(compare(of, of.layouts, by.value), by.value));
    expect(JSON.parse(out)).toMatchObject({
      format: 'wedgewright/compare',
      version: 1,
      layouts: [
        { name: 'layout 0', ok: true, measures: { tilt: { unit: '°', better: 'less' } }, reason: null },
        { name: 'layout 1', ok: true },
        { name: 'layout 2', ok: false, reason: [{ pointer: '/layouts/2/placement' }] },
      ],
      stands: [
        { from: 'layout 0', to: 'layout 1' },
        { from: 'layout 1', to: 'layout 0' },
      ],
    });
  });

  test('takes every measure but the move where none is named, the sheets among them', () => {
    const { out } = run(file(withLayouts({})));
    const { layouts } = JSON.parse(out) as { layouts: { measures: object }[] };
    const names = measures.map(({ name }) => name).filter((name) => name !== 'move');
    expect(Object.keys(layouts[0]?.measures ?? {})).toEqual(names);
    expect(layouts).toMatchObject([{ measures: { sheets: { value: 5 } } }]);
  });

  test('prints a table, one row a layout, empty where there is no answer', () => {
    const { out } = run(file(threeLayouts()), '--of', 'tilt,lift', '--csv');
    expect(out.split('\r\n')).toEqual([
      '\ufefflayout,tilt (°),lift (mm)',
      expect.stringMatching(/^layout 0,\d+\.\d{3},12\.00$/),
      expect.stringMatching(/^layout 1,\d+\.\d{3},12\.00$/),
      'layout 2,,',
      '',
    ]);
  });

  test('prints all of it for reading, best and worst marked', () => {
    const { out } = run(file(threeLayouts()), '--of', 'tilt,cautions', '--text');
    expect(out).toMatch(/tilt \(°\) +\d+\.\d+ - +\d+\.\d+ \+ +none\n/);
    expect(out).toMatch(/\/listener\/setback +180 +320 +180\n/);
    expect(out).toContain('Findings of layout 1');
    expect(out).toMatch(/layout 0 +layout 1 .* inside\n/);
  });

  test('takes the layouts that are named, in that order', () => {
    const { out } = run(file(threeLayouts()), '--layouts', 'layout 1,layout 0', '--of', 'tilt');
    const { layouts } = JSON.parse(out) as { layouts: { name: string }[] };
    expect(layouts.map(({ name }) => name)).toEqual(['layout 1', 'layout 0']);
  });

  test('refuses unknown layouts and measures, with the known ones, and both ways to print', () => {
    const path = file(threeLayouts());
    expect(run(path, '--layouts', 'attic')).toEqual({
      status: 2,
      out: '',
      lines: ['/: expected the name of a layout ("layout 0", "layout 1", "layout 2"), got "attic"'],
    });
    const unknown = run(path, '--of', 'tilt,beauty');
    expect(unknown.status).toBe(2);
    expect(unknown.lines).toEqual([
      expect.stringMatching(/^\/of\/1: expected the name of a measure \(triangle-error, miss, .*\), got "beauty"$/),
    ]);
    const both = run(path, '--csv', '--text');
    expect(both.status).toBe(2);
    expect(both.lines[0]).toBe('/: expected one of --csv and --text, got both');
  });

  test('says how it is used', () => {
    const { status, out } = run('--help');
    expect(status).toBe(0);
    for (const { name, says } of measures) expect(out).toContain(`${name.padEnd(17)} ${says}`);
  });
});
