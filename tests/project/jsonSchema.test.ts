import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { projectJsonSchema } from '$lib/project/jsonSchema.ts';

test('project.schema.json is what `npm run schema` writes today', () => {
  const kept = readFileSync(new URL('../../project.schema.json', import.meta.url), 'utf8');
  expect(kept).toBe(projectJsonSchema());
});

test('says what a project holds: required keys, ranges with their reasons, no other keys', () => {
  const schema = JSON.parse(projectJsonSchema()) as {
    required: string[];
    additionalProperties: boolean;
    properties: { speaker: { properties: { width: Record<string, unknown> } } };
  };
  expect(schema.required).toEqual(['format', 'version', 'speaker', 'stock', 'layouts']);
  expect(schema.additionalProperties).toBe(false);
  expect(schema.properties.speaker.properties.width).toEqual({
    type: 'number',
    minimum: 20,
    maximum: 3000,
    description:
      'a length from 20 to 3000 mm: from a single small driver to the largest cabinet a desk or a low table carries',
  });
});
