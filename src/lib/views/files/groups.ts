import type { Download } from './cutSet.svelte.ts';

export interface FileGroup {
  readonly name: string;
  readonly about: string;
  readonly files: readonly Download[];
}

const folders = [
  { folder: 'sheets', name: 'Sheets', about: 'to cut: parts laid out, kerf taken into account' },
  { folder: 'parts', name: 'Parts', about: 'each at its finished size' },
  { folder: '', name: 'Plan', about: 'every number of this layout' },
] as const;

/** The files by their folder, those to cut first; a folder without files is left out. */
export const fileGroups = (files: readonly Download[]): readonly FileGroup[] =>
  folders
    .map(({ folder, ...group }) => ({ ...group, files: files.filter(({ path }) => folderOf(path) === folder) }))
    .filter((group) => group.files.length > 0);

const folderOf = (path: string): string => (path.includes('/') ? path.slice(0, path.indexOf('/')) : '');
