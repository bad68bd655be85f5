/** What makes files of a project, saves and opens it, and what to heed with them. */
export { default as Cautions } from './Cautions.svelte';
export { default as CutFiles } from './CutFiles.svelte';
export { default as ProjectFile } from './ProjectFile.svelte';
