import './fieldTable.ts';

/** What tells a sound project from any other document; with it come the builders and the fields of all that may be in one. */
export { checkProject } from '$lib/project/parse.ts';
