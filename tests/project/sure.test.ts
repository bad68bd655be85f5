import { describe, expect, test } from 'vitest';
import { withoutDefaults } from '$lib/files/withoutDefaults.ts';
import { byTape, sureKeyOf } from '$lib/project/sure.ts';
import { checkProject } from '$lib/project/parse.ts';
import { projectSchema } from '$lib/project/schema.ts';
import { valueAt } from '$lib/document/pointer.ts';
import { faultLine } from '$lib/project/fault.ts';
import { demoWith, project } from '../projects.ts';

describe('how sure a value is', () => {
  test('is what a careful hand with a tape reaches, where nobody says', () => {
    expect(project().sure).toEqual(byTape);
    expect(project({ '/sure': { earHeight: 25 } }).sure).toEqual({ ...byTape, earHeight: 25 });
  });

  test('is refused out of its range and under a name that nothing measured has', () => {
    const refused = checkProject(demoWith({ '/sure': { earHeight: -1, toe: 2 } }));
    expect(refused.ok ? [] : refused.faults.map(faultLine)).toEqual([
      '/sure/earHeight: expected a length from 0 to 500 mm, got -1',
      expect.stringContaining('/sure/toe: unknown key'),
    ]);
  });

  test.each([
    ['/layouts/0/listener/earHeight', 'earHeight'],
    ['/layouts/12/monitors/3/width', 'monitor'],
    ['/speaker/drivers/1/height', 'driverHeight'],
    ['/layouts/0/placement/left/x', 'markX'],
    ['/stock/0/thickness', 'thickness'],
  ] as const)('%s goes by %s', (pointer, key) => {
    expect(sureKeyOf(pointer)).toBe(key);
  });

  test.each(['/layouts/0/stand/lift', '/title', '', '/speaker/drivers/1', '/sure/earHeight'])(
    'nobody measures %j',
    (pointer) => {
      expect(sureKeyOf(pointer)).toBeNull();
    },
  );

  test('is said of every measured number of the demo, and only of numbers', () => {
    const measured = numbersOf(project()).filter((pointer) => sureKeyOf(pointer) !== null);
    expect(new Set(measured.map(sureKeyOf))).toEqual(new Set(Object.keys(byTape)));
  });

  test('is no part of a link to a project that says nothing of it', () => {
    expect(valueAt(withoutDefaults(project(), projectSchema), '/sure')).toBeUndefined();
  });
});

function numbersOf(value: unknown, at = ''): string[] {
  if (typeof value === 'number') return [at];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, held]) => numbersOf(held, `${at}/${key}`));
}
