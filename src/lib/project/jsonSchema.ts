import { toJsonSchema } from '@valibot/to-json-schema';
import { projectSchema, VERSION } from './schema.ts';

/**
 * JSON Schema (draft 2020-12) of the project file, for editors and other programs. What a schema cannot say (names used
 * once, references resolved, drivers on their baffle) is left to the reader.
 */
export function projectJsonSchema(): string {
  const schema = toJsonSchema(projectSchema, {
    target: 'draft-2020-12',
    typeMode: 'input',
    errorMode: 'ignore',
  });
  const { $schema, ...rest } = schema;
  const titled = {
    $schema,
    title: `Wedgewright project, version ${VERSION}`,
    description: 'Lengths in mm, angles in degrees, masses in kg, frequencies in Hz, temperatures in °C.',
    ...rest,
  };
  return `${JSON.stringify(titled, null, 2)}\n`;
}
