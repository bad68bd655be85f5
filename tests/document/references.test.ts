import { describe, expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { valueAt } from '$lib/document/pointer.ts';
import { referencesTo } from '$lib/document/references.ts';
import { withoutDriver, withoutPosture } from '$lib/document/withoutEntry.ts';
import { project } from '../projects.ts';

const DRIVER = '/speaker/designPoint/driver';
const of = project({ '/speaker/designPoint': { driver: 'woofer', distance: 1000 } });

test('a design point follows the name of its driver', () => {
  expect(referencesTo(of, '/speaker/drivers/1/name')).toContain(DRIVER);
  expect(referencesTo(of, '/speaker/drivers/0/name')).not.toContain(DRIVER);
});

test('a design point goes with its driver, and stays when another goes', () => {
  const gone = withoutDriver(of, 1);
  expect(valueAt(gone, '/speaker/designPoint')).toEqual({ rule: 'none' });
  expect(checkProject(gone).ok).toBe(true);
  const stays = withoutDriver(of, 0);
  expect(valueAt(stays, DRIVER)).toBe('woofer');
  expect(checkProject(stays).ok).toBe(true);
});

describe('postures that an aim serves', () => {
  const postures = ['leaning in', 'leaning back'].map((name, i) => ({ name, setback: 100 * i, earHeight: 1150 }));
  const served = project({
    '/layouts/0/listener/postures': postures,
    '/layouts/0/aim/over': { postures: ['leaning back', 'leaning in'] },
  });
  const NAMES = '/layouts/0/aim/over/postures';

  test('follow a new name', () => {
    expect(referencesTo(served, '/layouts/0/listener/postures/0/name')).toEqual([`${NAMES}/1`]);
    expect(referencesTo(served, '/layouts/0/listener/postures/1/name')).toEqual([`${NAMES}/0`]);
  });

  test('are left when their posture goes', () => {
    const gone = withoutPosture(served, '/layouts/0', 1);
    expect(valueAt(gone, NAMES)).toEqual(['leaning in']);
    expect(checkProject(gone).ok).toBe(true);
    const none = withoutPosture(gone, '/layouts/0', 0);
    expect(valueAt(none, NAMES)).toEqual([]);
    expect(checkProject(none).ok).toBe(true);
  });

  test('all of them stay all', () => {
    const all = project({ '/layouts/0/aim/over': { postures: 'all' } });
    const gone = withoutPosture(all, '/layouts/0', 0);
    expect(valueAt(gone, NAMES)).toBe('all');
    expect(checkProject(gone).ok).toBe(true);
  });
});
