import { untrack } from 'svelte';
import { sameJson } from '$lib/project/sameJson.ts';
import { changedValues, changeLabel } from './changes.ts';
import {
  begun,
  cancelled,
  edited,
  finished,
  newHistory,
  redoLabel,
  redone,
  undoLabel,
  undone,
  type History,
} from './history.ts';

/** What undo works on: an open project, or anything else with one door for edits. */
export interface Editable {
  readonly draft: unknown;
  change(turn: (draft: unknown) => unknown): void;
}

/** What an undo or a redo did. */
export interface Done {
  /** For a message to a screen reader: `Undone: Listener, ear height`. */
  readonly message: string;
  /** Where the document changed, the first place: what should be in view. */
  readonly pointer: string;
}

/** What a gesture is called until it is finished and its change is known. */
const UNFINISHED = 'this edit';

/** Undo and redo of an open project: keeps the steps, and puts the document of a step back through `change`. */
export class Undo {
  #history: History<unknown>;
  readonly #open: Editable;
  /** By themselves: an open gesture changes the history with every frame, and these hardly ever. */
  readonly #undoLabel = $derived.by(() => undoLabel(this.#history));
  readonly #redoLabel = $derived.by(() => redoLabel(this.#history));
  readonly #gesturing = $derived.by(() => this.#history.gesture !== null);

  constructor(open: Editable) {
    this.#open = open;
    this.#history = $state.raw(newHistory<unknown>(open.draft));
  }

  /** What the next undo takes back; null when there is nothing. */
  get undoLabel(): string | null {
    return this.#undoLabel;
  }

  /** What the next redo does again; null when there is nothing. */
  get redoLabel(): string | null {
    return this.#redoLabel;
  }

  /** Whether a gesture is open. */
  get gesturing(): boolean {
    return this.#gesturing;
  }

  /**
   * Takes up what has been edited since. To be called from an effect, or after each change; whatever was edited between
   * two calls is one step.
   */
  follow(): void {
    const { draft } = this.#open;
    untrack(() => {
      const history = this.#history;
      if (draft === history.present) return;
      // What a gesture comes to is looked at when it is finished, and not with every frame of it.
      this.#history =
        history.gesture !== null || sameJson(draft, history.present)
          ? { ...history, present: draft }
          : edited(history, draft, changeLabel(history.present, draft));
    });
  }

  /** Opens a gesture: a drag, or typing into one field. What is edited until it is finished is one step. */
  begin(): void {
    this.finish();
    this.#history = begun(this.#history, UNFINISHED);
  }

  /** Closes the gesture. One that changed nothing in the end is no step. */
  finish(): void {
    this.follow();
    const history = this.#history;
    const { gesture, present } = history;
    if (gesture === null) return;
    this.#history = sameJson(gesture.value, present)
      ? { ...history, gesture: null }
      : finished({ ...history, gesture: { ...gesture, label: changeLabel(gesture.value, present) } });
  }

  /** Closes the gesture and puts back the document that it began with. */
  cancel(): void {
    this.follow();
    this.#go(cancelled(this.#history));
  }

  /** One step back; null when there is none. */
  undo(): Done | null {
    this.finish();
    const label = undoLabel(this.#history);
    return label === null ? null : this.#done(`Undone: ${label}`, undone(this.#history));
  }

  /** One step forward again; null when there is none. */
  redo(): Done | null {
    this.finish();
    const label = redoLabel(this.#history);
    return label === null ? null : this.#done(`Redone: ${label}`, redone(this.#history));
  }

  /** Forgets every step: another project is open. */
  restart(): void {
    this.#history = newHistory<unknown>(this.#open.draft);
  }

  #done(message: string, next: History<unknown>): Done {
    const [pointer = ''] = changedValues(this.#history.present, next.present);
    this.#go(next);
    return { message, pointer };
  }

  #go(next: History<unknown>): void {
    this.#history = next;
    if (this.#open.draft !== next.present) this.#open.change(() => next.present);
  }
}
