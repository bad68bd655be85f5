import type { Suggestion } from '$lib/solution/findings/suggestion.ts';
import { withEdits } from './edit.ts';
import { withEntered } from './markEntered.ts';
import type { Editable } from './undo.svelte.ts';

/** The part of an undo that makes one step of several edits. */
interface Steps {
  begin(): void;
  finish(): void;
}

/** Does what a suggestion says, as one step of undo. Whoever takes it makes its values their own. */
export function followSuggestion(open: Editable, steps: Steps, { edits }: Suggestion): void {
  steps.begin();
  open.change((draft) =>
    withEntered(
      withEdits(
        draft,
        edits.map(({ pointer, value }) => [pointer, value]),
      ),
      edits.map(({ pointer }) => pointer),
    ),
  );
  steps.finish();
}
