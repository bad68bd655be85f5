/** A value that is followed by itself. */
export class Cell {
  value: unknown;

  constructor(value: unknown) {
    this.value = $state.raw(value);
  }
}

/** Whether whoever asks now is told of changes: a part of the page, and not a handler or a test. */
export const isFollowing = (): boolean => $effect.tracking();
