import type { Suggestion } from '$lib/solution/findings/suggestion.ts';
import { withEdits } from './edit.ts';
import type { Editable } from './undo.svelte.ts';

/** The part of an undo that makes one step of several edits. */
interface Steps {
  begin(): void;
  finish(): void;
}

/** Does what a suggestion says, as one step of undo. */
export function followSuggestion(open: Editable, steps: Steps, { edits }: Suggestion): void {
  steps.begin();
  open.change((draft) =>
    withEdits(
      draft,
      edits.map(({ pointer, value }) => [pointer, value]),
    ),
  );
  steps.finish();
}
