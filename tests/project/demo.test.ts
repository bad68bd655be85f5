import { expect, test } from 'vitest';
import { withoutDefaults } from '$lib/files/withoutDefaults.ts';
import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import { projectSchema } from '$lib/project/schema.ts';
import { startProject } from '$lib/project/start.ts';

test.each([
  ['that opens first', demoProject],
  ['that an empty desk starts as', startProject],
])('the project %s is sound, and says nothing that is a default', (_, document) => {
  const checked = checkProject(document);
  expect(checked.ok && withoutDefaults(checked.value, projectSchema)).toEqual(document);
});
