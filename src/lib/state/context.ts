import { createContext } from 'svelte';
import type { OpenProject } from './openProject.svelte.ts';
import type { Undo } from './undo.svelte.ts';

/** The open project of the page: the frame provides it, every control uses it. */
export const [useProject, provideProject] = createContext<OpenProject>();

/** Undo and redo of it. */
export const [useUndo, provideUndo] = createContext<Undo>();
