import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { projectJsonSchema } from '$lib/project/jsonSchema.ts';

const [path = 'project.schema.json'] = process.argv.slice(2);
writeFileSync(resolve(path), projectJsonSchema());
process.stdout.write(`wrote ${path}\n`);
