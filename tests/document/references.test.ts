import { expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { valueAt } from '$lib/document/pointer.ts';
import { referencesTo } from '$lib/document/references.ts';
import { withoutDriver } from '$lib/document/withoutEntry.ts';
import { project } from '../projects.ts';

const DRIVER = '/speaker/designPoint/driver';
const of = project({ '/speaker/designPoint': { driver: 'woofer', distance: 1000 } });

test('a design point follows the name of its driver', () => {
  expect(referencesTo(of, '/speaker/drivers/1/name')).toContain(DRIVER);
  expect(referencesTo(of, '/speaker/drivers/0/name')).not.toContain(DRIVER);
});

test('a design point goes with its driver, and stays when another goes', () => {
  const gone = withoutDriver(of, 1);
  expect(valueAt(gone, '/speaker/designPoint')).toBeNull();
  expect(checkProject(gone).ok).toBe(true);
  const stays = withoutDriver(of, 0);
  expect(valueAt(stays, DRIVER)).toBe('woofer');
  expect(checkProject(stays).ok).toBe(true);
});
