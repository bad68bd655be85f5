/** What is edited between `begin` and `finish` is one step of undo; `cancel` takes it all back. */
export interface Gestures {
  /** Whether one is open. */
  readonly gesturing: boolean;
  begin(): void;
  finish(): void;
  cancel(): void;
}
