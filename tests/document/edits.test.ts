import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solve } from '$lib/solution/solve.ts';
import { checkProject } from '$lib/project/parse.ts';
import { withEdits } from '$lib/document/edit.ts';
import { checkSize } from '$lib/document/fileSize.ts';
import { messageOf, messagesByOwner } from '$lib/document/messages.ts';
import { mirrorEdit, mirrorLeft } from '$lib/document/mirror.ts';
import { isMirrored } from '$lib/project/mirrored.ts';
import { valueAt, withValue } from '$lib/document/pointer.ts';
import { freeName } from '$lib/document/freeName.ts';
import { newPosture } from '$lib/document/newPosture.ts';
import { referencesTo } from '$lib/document/references.ts';
import { newCrossover, newDriver, newMonitor, newStock } from '$lib/document/templates.ts';
import { withoutDriver, withoutStock } from '$lib/document/withoutEntry.ts';
import { firstLayout, project } from '../projects.ts';

const demo = project();

describe('the mirrored pair', () => {
  const right = '/layouts/0/placement/right';
  const left = '/layouts/0/placement/left';

  test('an edit of one mark brings that of the other', () => {
    expect(mirrorEdit([`${right}/x`, 500])).toEqual([[`${left}/x`, -500]]);
    expect(mirrorEdit([`${left}/y`, 250])).toEqual([[`${right}/y`, 250]]);
    expect(mirrorEdit([`${right}/x`, 'wide'])).toEqual([]);
    expect(mirrorEdit(['/speaker/width', 200])).toEqual([]);
  });

  test('stays mirrored under any edits', () => {
    const edit = fc.tuple(
      fc.constantFrom(`${right}/x`, `${right}/y`, `${left}/x`, `${left}/y`),
      fc.integer({ min: -900, max: 900 }),
    );
    fc.assert(
      fc.property(fc.array(edit), (edits) => {
        const end = withEdits(
          demo,
          edits.flatMap((one) => [one, ...mirrorEdit(one)]),
        );
        const checked = checkProject(end);
        expect(checked.ok && isMirrored(firstLayout(checked.value).placement)).toBe(true);
        expect(JSON.stringify(end)).not.toContain('-0,');
      }),
    );
  });

  test('is made from the right one', () => {
    const uneven = withEdits(demo, [
      [`${right}/x`, 480],
      [`${right}/y`, 310],
    ]);
    expect(isMirrored(firstLayout(project({ [`${right}/x`]: 480 })).placement)).toBe(false);
    expect(valueAt(withEdits(uneven, mirrorLeft(uneven, 0)), '/layouts/0/placement')).toEqual({
      left: { x: -480, y: 310, on: 'desk' },
      right: { x: 480, y: 310, on: 'desk' },
    });
  });
});

describe('names that others speak of', () => {
  test('a driver is spoken of by its crossovers and the aim', () => {
    expect(referencesTo(demo, '/speaker/drivers/0/name')).toEqual([
      '/speaker/crossovers/0/between/0',
      '/layouts/0/aim/through',
    ]);
    expect(referencesTo(demo, '/speaker/drivers/1/name')).toEqual(['/speaker/crossovers/0/between/1']);
    expect(referencesTo(demo, '/stock/0/name')).toEqual([]);
    expect(referencesTo(project({ '/layouts/0/stand/stock': 'MDF 3 mm' }), '/stock/0/name')).toEqual([
      '/layouts/0/stand/stock',
    ]);
    expect(referencesTo(demo, '/title')).toEqual([]);
  });

  test('renaming along the references leaves a sound project, whatever the name', () => {
    const names = fc
      .string({ minLength: 1, maxLength: 30 })
      .filter((name) => /^[\x21-\x7e]+$/.test(name) && name !== 'woofer');
    fc.assert(
      fc.property(names, (name) => {
        const at = '/speaker/drivers/0/name';
        const renamed = withEdits(
          demo,
          [at, ...referencesTo(demo, at)].map((pointer) => [pointer, name]),
        );
        expect(checkProject(renamed).ok).toBe(true);
      }),
    );
  });

  test('a removed driver takes its crossovers along, and the aim moves to one that is left', () => {
    const end = withoutDriver(demo, 0);
    expect(checkProject(end).ok).toBe(true);
    expect(valueAt(end, '/speaker/crossovers')).toEqual([]);
    expect(valueAt(end, '/layouts/0/aim/through')).toBe('woofer');
    const between = project({ '/layouts/0/aim/through': { between: ['tweeter', 'woofer'], fraction: 0.5 } });
    expect(valueAt(withoutDriver(between, 1), '/layouts/0/aim/through')).toBe('tweeter');
  });

  test('a removed stock leaves its stands to the first one', () => {
    const second = { name: 'ply', thickness: 4, sheet: { width: 600, height: 400 }, density: 680 };
    const two = project({ '/stock/1': second, '/layouts/0/stand/stock': 'ply' });
    const end = withoutStock(two, 1);
    expect(checkProject(end).ok).toBe(true);
    expect(valueAt(end, '/layouts/0/stand/stock')).toBeNull();
  });
});

describe('what is added', () => {
  const layout = firstLayout(demo);

  test('leaves a sound project', () => {
    const added = withEdits(demo, [
      ['/speaker/drivers/2', newDriver(demo.speaker)],
      ['/speaker/crossovers/1', newCrossover(demo.speaker)],
      ['/stock/1', newStock(demo.stock)],
      ['/layouts/0/monitors/1', newMonitor(layout)],
      ['/layouts/0/listener/postures/1', newPosture(layout)],
    ]);
    expect(checkProject(added)).toMatchObject({ ok: true });
  });

  test('a driver fits any cabinet', () => {
    const side = fc.integer({ min: 20, max: 3000 });
    fc.assert(
      fc.property(side, side, (width, height) => {
        const speaker = { ...demo.speaker, width, height, crossovers: [], drivers: [] };
        const end = withEdits(demo, [
          ['/speaker', { ...speaker, drivers: [newDriver(speaker)] }],
          ['/layouts/0/aim/through', 'driver 1'],
        ]);
        expect(checkProject(end)).toMatchObject({ ok: true });
      }),
    );
  });

  test('has a name of its own', () => {
    expect(freeName('board', [{ name: 'board 2' }])).toBe('board 3');
    expect(newCrossover({ ...demo.speaker, drivers: demo.speaker.drivers.slice(1) })).toBeNull();
  });
});

describe('messages', () => {
  test('a number is told in the unit it was typed in, all else in the fault’s own words', () => {
    const draft = withValue(demo, '/speaker/width', -127);
    const fault = { pointer: '/speaker/width', message: 'expected a length over 0 mm, got -127' };
    expect(messageOf(fault, draft, 'in')).toBe('Enter 0.79 to 118.11 in');
    expect(messageOf(fault, draft, 'mm')).toBe('Enter 20 to 3000 mm');
    const geometry = { pointer: '/layouts/0/stand/lift', message: 'The lift would be under zero.' };
    expect(messageOf(geometry, draft, 'in')).toBe(geometry.message);
  });

  test('of a thin end says what there is and what is missing in inches, finer than a fraction', () => {
    const of = project({ '/layouts/0/stand/lift': 1 });
    const planned = solve(of, firstLayout(of));
    const [fault] = planned.ok ? [] : planned.faults;
    expect(fault && messageOf(fault, of, { length: 'in', fraction: 16 })).toBe(
      'Needs a thin end of at least 0.118″, not 0.039″: raise the lift by 0.079″',
    );
  });

  test('gather at the field or group they belong to', () => {
    const faults = [
      { pointer: '/layouts/0/aim/toe/rule', message: 'one' },
      { pointer: '/layouts/0/aim/toe', message: 'two' },
      { pointer: '/layouts/0/placement', message: 'three' },
      { pointer: '', message: 'four' },
    ];
    expect([...messagesByOwner(faults, demo, 'mm')]).toEqual([
      ['/layouts/0/aim/toe', ['one', 'two']],
      ['/layouts/0/placement', ['three']],
    ]);
  });
});

test('a file too large is refused by its size', () => {
  expect(checkSize(4_000_000)).toEqual({ ok: true, value: 4_000_000 });
  expect(checkSize(50_000_000)).toEqual({
    ok: false,
    faults: [{ pointer: '', message: 'expected a project file of at most 4 MB, got 50 MB' }],
  });
});
