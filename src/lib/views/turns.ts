/**
 * Work of a page that comes to life, each step in a task of its own: between two tasks the browser can draw, scroll and
 * hear the visitor, however slow the machine is. One piece is done after the other; what a piece asks for itself comes
 * right after it.
 */
const pieces: Iterator<unknown>[] = [];
/** Where what is asked for now belongs: at the end, or behind the piece that is at work. */
let next = Infinity;
let running = false;

/** Whether the page that was served is still coming to life: parts of it wait for their turn. */
let waking = true;

export const isWaking = (): boolean => waking;

/** Does something, a step a task. Returns what calls it off. */
export function inTurn(work: Iterator<unknown>): () => void {
  pieces.splice(next, 0, work);
  next += 1;
  if (!running) later();
  return () => {
    const index = pieces.indexOf(work);
    if (index >= 0) pieces.splice(index, 1);
  };
}

/** Work of a single step. */
export function* once(work: () => void): Generator<undefined, void> {
  work();
}

/** Does at once what waits for its turn; what that asks for itself comes next. */
export function rush(work: Iterator<unknown>): void {
  const index = pieces.indexOf(work);
  if (index >= 0) pieces.splice(index, 1);
  const before = next;
  next = 0;
  try {
    while (!work.next().done);
  } finally {
    next = before;
  }
}

/** To be the last turn: from then on whatever is shown is made at once, for a page that one comes to by a link is not served. */
export const awake = (): void => {
  waking = false;
};

function later(): void {
  running = true;
  setTimeout(step);
}

function step(): void {
  const [piece] = pieces;
  running = false;
  if (piece === undefined) return;
  next = 1;
  try {
    if (piece.next().done && pieces[0] === piece) pieces.shift();
  } finally {
    next = Infinity;
    if (pieces.length > 0) later();
  }
}
