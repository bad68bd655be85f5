import { useKeptNesting } from './context.ts';
import { connect } from './nesting/connect.ts';
import { Nesting } from './nesting.svelte.ts';

/** How the parts lie on their sheets, found in a worker. Fetched and made with the first part of a page that shows it. */
export function useNesting(): Nesting {
  const kept = useKeptNesting();
  return (kept.thing ??= new Nesting(connect));
}
