import { useProject } from '$lib/document/context.ts';
import { useClients } from './context.ts';
import type { SheetSearch } from './sheetSearch.svelte.ts';

/** How long typing must rest before sheets are laid out, ms. */
const REST = 250;

/**
 * The sheets of the open project, searched for as long as the component that asks is there.
 *
 * @param wanted Whether it has come into sight.
 */
export function useSheets(wanted: () => boolean): SheetSearch {
  const open = useProject();
  const { sheets } = useClients();
  $effect(() => sheets.use());
  $effect(() => {
    const { shown } = open;
    if (!wanted() || shown === null) return;
    const waiting = setTimeout(() => sheets.ask(shown), REST);
    return () => clearTimeout(waiting);
  });
  return sheets;
}
