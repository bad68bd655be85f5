import { createContext } from 'svelte';
import type { OpenProject } from './openProject.svelte.ts';
import type { Undo } from './undo.svelte.ts';
import type { Workspace } from './workspace.svelte.ts';

/** The open project of the page: the frame provides it, every control uses it. */
export const [useProject, provideProject] = createContext<OpenProject>();

/** Its undo: a control that edits by a gesture, such as a drag, opens and closes it here as one step. */
export const [useUndo, provideUndo] = createContext<Undo>();

/** What surrounds the open project: where it is kept, and what the page has to say of that. */
export const [useWorkspace, provideWorkspace] = createContext<Workspace>();
