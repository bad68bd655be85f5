import { expect, test } from 'vitest';
import { ownNames } from '$lib/project/ownNames.ts';
import { project } from '../projects.ts';

test('the names of a project are those of all its things', () => {
  expect(ownNames(project())).toEqual([
    'Bindery desk',
    'tweeter',
    'woofer',
    'MDF 3 mm',
    'window side',
    'behind',
    'leaning in',
  ]);
  expect(ownNames(null)).toEqual([]);
  expect(ownNames({ name: 3, list: [{ name: 'a' }, 'b'] })).toEqual(['a']);
});
