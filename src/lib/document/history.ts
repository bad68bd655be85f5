/**
 * Undo and redo over values that are never changed in place. A gesture (a drag, typing into one field) is opened by a
 * mark and is one step however many values it went through.
 */
export interface Step<Value> {
  /** What was done, for people: `ear height`. */
  readonly label: string;
  /** The value on the other side of the step: before it in the past, after it in the future. */
  readonly value: Value;
}

export interface History<Value> {
  readonly present: Value;
  /** Steps that can be undone, oldest first. */
  readonly past: readonly Step<Value>[];
  /** Steps that can be redone, the next one last. */
  readonly future: readonly Step<Value>[];
  /** The open gesture and the value it began with; null when none is open. */
  readonly gesture: Step<Value> | null;
}

/** Steps that can be undone, at most. Values share what did not change, so a step is small. */
export const DEEPEST = 200;

export const newHistory = <Value>(present: Value): History<Value> => ({ present, past: [], future: [], gesture: null });

/** A new value: a step of its own, or a part of the open gesture. The same value again is no edit. */
export function edited<Value>(history: History<Value>, value: Value, label: string): History<Value> {
  if (Object.is(value, history.present)) return history;
  if (history.gesture) return { ...history, present: value };
  return stepped(history, { label, value: history.present }, value);
}

/** Opens a gesture. One that is open already is finished first. */
export function begun<Value>(history: History<Value>, label: string): History<Value> {
  const ready = finished(history);
  return { ...ready, gesture: { label, value: ready.present } };
}

/** Closes the open gesture as one step; as none where it ended with the value it began with. */
export function finished<Value>(history: History<Value>): History<Value> {
  const { gesture, present } = history;
  if (gesture === null) return history;
  const closed = { ...history, gesture: null };
  return Object.is(gesture.value, present) ? closed : stepped(closed, gesture, present);
}

/** Closes the open gesture as if it had never been: its first value is back, and what could be redone still can. */
export function cancelled<Value>(history: History<Value>): History<Value> {
  const { gesture } = history;
  return gesture === null ? history : { ...history, present: gesture.value, gesture: null };
}

/** One step back; an open gesture is finished and is that step. Where there is none, nothing changes. */
export function undone<Value>(history: History<Value>): History<Value> {
  const { present, past, future } = finished(history);
  const step = past.at(-1);
  if (step === undefined) return finished(history);
  return {
    present: step.value,
    past: past.slice(0, -1),
    future: [...future, { label: step.label, value: present }],
    gesture: null,
  };
}

/** One step forward again. Where there is none, nothing changes but that an open gesture is finished. */
export function redone<Value>(history: History<Value>): History<Value> {
  const { present, past, future } = finished(history);
  const step = future.at(-1);
  if (step === undefined) return finished(history);
  return {
    present: step.value,
    past: [...past, { label: step.label, value: present }],
    future: future.slice(0, -1),
    gesture: null,
  };
}

/** What the next undo takes back; null when there is nothing to undo. */
export function undoLabel<Value>({ gesture, past, present }: History<Value>): string | null {
  const open = gesture !== null && !Object.is(gesture.value, present) ? gesture : past.at(-1);
  return open?.label ?? null;
}

/** What the next redo does again; null when there is nothing to redo. */
export function redoLabel<Value>({ gesture, future, present }: History<Value>): string | null {
  const clears = gesture !== null && !Object.is(gesture.value, present);
  return clears ? null : (future.at(-1)?.label ?? null);
}

function stepped<Value>(history: History<Value>, step: Step<Value>, present: Value): History<Value> {
  return { present, past: [...history.past, step].slice(-DEEPEST), future: [], gesture: null };
}
