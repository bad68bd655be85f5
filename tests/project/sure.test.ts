import { describe, expect, test } from 'vitest';
import { withoutDefaults } from '$lib/files/withoutDefaults.ts';
import { byTape } from '$lib/project/sure.ts';
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

  test('is no part of a link to a project that says nothing of it', () => {
    expect(valueAt(withoutDefaults(project(), projectSchema), '/sure')).toBeUndefined();
  });
});
