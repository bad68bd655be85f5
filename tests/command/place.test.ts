import { describe, expect, test } from 'vitest';
import { placeFile } from '$lib/files/placeFile.ts';
import { placeExisting } from '$lib/study/placeExisting.ts';
import { readPlaceAsk } from '$lib/study/placing/readAsk.ts';
import { demoWith, firstLayout, project } from '../projects.ts';
import { builtStands } from '$lib/proof/builtStands.ts';
import { blank, off, planned, taken } from '../proof/stands.ts';
import { command } from './ran.ts';

const { run, file } = command('place');

const document = { stands: { tilt: 15, lift: 12 }, miss: 3, setback: { from: 150, to: 250 } };

describe('place', () => {
  test('prints what the engine finds as JSON', () => {
    const of = project();
    const ask = readPlaceAsk(document, of, firstLayout(of));
    if (!ask.ok) throw new Error('it is an ask');
    const { status, out, lines } = run(file(demoWith()), '--ask', file(document));
    expect({ status, lines }).toEqual({ status: 0, lines: [] });
    expect(out).toBe(placeFile('window side', ask.value, placeExisting(of, firstLayout(of), ask.value)));
    const printed = JSON.parse(out) as { ways: { moves: string; total: number }[]; sides: { right: { regions: unknown[] } } }; // prettier-ignore
    expect(printed).toMatchObject({ format: 'wedgewright/place', version: 1, allowed: { by: 'miss', miss: 3 } });
    expect(printed.ways[0]?.total).toBeLessThanOrEqual(printed.ways.at(-1)?.total ?? 0);
    expect(printed.sides.right.regions.length).toBeGreaterThan(0);
  });

  test('has no ways where nothing will do, and the shim or riser that would', () => {
    const { status, out } = run(file(demoWith()), '--ask', file({ stands: { tilt: 4, lift: 12 }, miss: 5 }));
    expect(status).toBe(0);
    const printed = JSON.parse(out) as { ways: unknown[]; sides: { left: { packing: { under: string }[] } } };
    expect(printed.ways).toEqual([]);
    expect(printed.sides.left.packing.map(({ under }) => under)).toContain('base');
  });

  test('takes stands as built, by the readings of a layout', () => {
    const [left, right] = [planned('left'), planned('right')];
    const kinds = [blank.front, blank.rear];
    const real = { left: off(left.plan, [0, 0, 3, 0, -2, 0]), right: off(right.plan, [0, 0, 1, 0, -1, 0]) };
    const sides = { left: { readings: taken(kinds, real.left, left) }, right: { readings: taken(kinds, real.right, right) } }; // prettier-ignore
    const path = file(demoWith({ '/layouts/0/built': { sides } }));
    const of = project({ '/layouts/0/built': { sides } });
    const stands = builtStands(of, firstLayout(of));
    if (!stands) throw new Error('the readings say how they stand');
    const asked = (ask: unknown) => run(path, '--ask', file(ask));
    const built = asked({ ...document, stands: { built: 'window side' } });
    expect(built.status).toBe(0);
    expect(built.out).toBe(asked({ ...document, stands }).out);
    expect(built.out).not.toBe(asked(document).out);
    const refused = (ask: object) => asked({ ...document, stands: ask }).lines;
    expect(refused({ built: 'attic' })).toEqual(['ask/stands/built: expected the name of a layout ("window side"), got "attic"']); // prettier-ignore
    expect(refused({ built: 7 })).toEqual(['ask/stands/built: expected the name of a layout, got 7']);
    expect(refused({ built: 'window side', lift: 3 })).toEqual([
      'ask/stands/built: expected built alone, got lift beside it',
    ]);
    const unread = run(file(demoWith()), '--ask', file({ ...document, stands: { built: 'window side' } }));
    expect([unread.status, unread.lines]).toEqual([2, ['ask/stands/built: expected a layout whose readings say how its stands stand, got one without']]); // prettier-ignore
  });

  test('refuses what is no ask, at its pointer', () => {
    const path = file(demoWith());
    const refused = (...words: string[]) => {
      const { status, out, lines } = run(path, ...words);
      expect([status, out]).toEqual([2, '']);
      return lines;
    };
    expect(refused()[0]).toBe('/: expected --ask and the path of a file, got nothing');
    expect(refused('--ask', '/nowhere/ask.json')).toEqual([
      'ask: expected an ask, got "/nowhere/ask.json", which is not there',
    ]);
    expect(refused('--ask', file({ ...document, miss: -1 }))).toEqual(['ask/miss: expected a miss over 0 mm, got -1']);
    expect(refused('--ask', file(document), '--layout', 'attic')[0]).toBe(
      '/: expected the name of a layout ("window side"), got "attic"',
    );
  });
});
