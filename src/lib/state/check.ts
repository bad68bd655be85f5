/** What tells a sound project from any other document, fetched with the first edit. */
export { checkProject } from '$lib/project/parse.ts';
