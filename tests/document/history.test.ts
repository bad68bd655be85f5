import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  begun,
  cancelled,
  DEEPEST,
  edited,
  finished,
  newHistory,
  redoLabel,
  redone,
  undoLabel,
  undone,
  type History,
} from '$lib/document/history.ts';

type Document = { readonly ear: number; readonly desk: number };
type Move = (history: History<Document>) => History<Document>;

const start: Document = { ear: 1180, desk: 735 };

const anyDocument = fc.record({ ear: fc.integer(), desk: fc.integer() });
const anyLabel = fc.constantFrom('ear height', 'desk height', 'lift');
const anyEdit = fc.tuple(anyDocument, anyLabel).map(
  ([value, label]): Move =>
    (history) =>
      edited(history, value, label),
);
const anyMove: fc.Arbitrary<Move> = fc.oneof(
  { weight: 4, arbitrary: anyEdit },
  {
    weight: 2,
    arbitrary: anyLabel.map(
      (label): Move =>
        (history) =>
          begun(history, label),
    ),
  },
  { weight: 2, arbitrary: fc.constant<Move>(finished) },
  { weight: 1, arbitrary: fc.constant<Move>(cancelled) },
  { weight: 2, arbitrary: fc.constant<Move>(undone) },
  { weight: 1, arbitrary: fc.constant<Move>(redone) },
);
const moved = (moves: readonly Move[], from = newHistory(start)): History<Document> =>
  moves.reduce((history, move) => move(history), from);
const anyHistory = fc.array(anyMove, { maxLength: 40 }).map((moves) => moved(moves));
const closedHistory = anyHistory.map(finished);

const times = (count: number, move: Move): Move[] => Array.from({ length: count }, () => move);

describe('undo and redo over random edits', () => {
  it('undo takes an edit back, and redo brings it again', () => {
    fc.assert(
      fc.property(closedHistory, anyDocument, anyLabel, (history, value, label) => {
        const after = edited(history, value, label);
        expect(undone(after).present).toBe(history.present);
        expect(redone(undone(after))).toEqual(after);
        expect(redone(undone(after)).present).toBe(value);
      }),
    );
  });

  it('undo after redo, and redo after undo, change nothing', () => {
    fc.assert(
      fc.property(closedHistory, (history) => {
        if (history.past.length > 0) expect(redone(undone(history))).toEqual(history);
        if (history.future.length > 0) expect(undone(redone(history))).toEqual(history);
      }),
    );
  });

  it('any sequence of moves is undone to the start and redone to the end', () => {
    fc.assert(
      fc.property(closedHistory, (history) => {
        const back = moved(times(history.past.length, undone), history);
        expect(back.present).toBe(start);
        expect(back.past).toEqual([]);
        expect(undone(back)).toEqual(back);
        const forth = moved(times(history.past.length, redone), back);
        expect(forth).toEqual(history);
      }),
    );
  });

  it('a gesture is one step, whatever happened in it', () => {
    fc.assert(
      fc.property(closedHistory, fc.array(anyEdit, { minLength: 1 }), (history, edits) => {
        const after = finished(moved(edits, begun(history, 'ear height')));
        expect(undone(after).present).toBe(history.present);
        expect(after.past).toHaveLength(history.past.length + 1);
        expect(undoLabel(after)).toBe('ear height');
      }),
    );
  });

  it('a gesture that is cancelled leaves no trace', () => {
    fc.assert(
      fc.property(closedHistory, fc.array(anyEdit), (history, edits) => {
        expect(cancelled(moved(edits, begun(history, 'ear height')))).toEqual(history);
      }),
    );
  });

  it('a gesture that ends where it began is no step', () => {
    fc.assert(
      fc.property(closedHistory, fc.array(anyEdit), (history, edits) => {
        const there = moved(edits, begun(history, 'ear height'));
        expect(finished(edited(there, history.present, 'ear height'))).toEqual(history);
      }),
    );
  });

  it('undo amid a gesture takes the whole of it back', () => {
    fc.assert(
      fc.property(closedHistory, fc.array(anyEdit, { minLength: 1 }), (history, edits) => {
        const amid = moved(edits, begun(history, 'ear height'));
        expect(undone(amid).present).toBe(history.present);
        expect(redone(undone(amid)).present).toBe(amid.present);
      }),
    );
  });

  it('a new edit clears what could be redone', () => {
    fc.assert(
      fc.property(closedHistory, anyDocument, (history, value) => {
        expect(edited(undone(history), value, 'lift').future).toEqual([]);
        expect(finished(edited(begun(undone(history), 'lift'), value, 'lift')).future).toEqual([]);
      }),
    );
  });

  it('the same value again is no edit', () => {
    fc.assert(
      fc.property(anyHistory, (history) => {
        expect(edited(history, history.present, 'lift')).toBe(history);
      }),
    );
  });

  it('what undo and redo are said to do is what they do', () => {
    fc.assert(
      fc.property(anyHistory, (history) => {
        const [back, forth] = [undone(history), redone(history)];
        if (undoLabel(history) === null) expect(back.present).toBe(history.present);
        else expect(redoLabel(back)).toBe(undoLabel(history));
        if (redoLabel(history) === null) expect(forth.present).toBe(history.present);
        else expect(undoLabel(forth)).toBe(redoLabel(history));
      }),
    );
  });
});

describe('the depth of a history', () => {
  it('is bounded, and the newest steps are the ones kept', () => {
    const edits = Array.from({ length: DEEPEST + 7 }, (_, index): Move => {
      return (history) => edited(history, { ...start, ear: index }, `ear ${index}`);
    });
    const history = moved(edits);
    expect(history.past).toHaveLength(DEEPEST);
    expect(undoLabel(history)).toBe(`ear ${DEEPEST + 6}`);
    expect(moved(times(2 * DEEPEST, undone), history).present).toEqual({ ...start, ear: 6 });
  });
});

describe('labels', () => {
  it('say what is next', () => {
    const history = edited(edited(newHistory(start), { ear: 1200, desk: 735 }, 'ear height'), start, 'desk height');
    expect([undoLabel(history), redoLabel(history)]).toEqual(['desk height', null]);
    expect([undoLabel(undone(history)), redoLabel(undone(history))]).toEqual(['ear height', 'desk height']);
    expect([undoLabel(newHistory(start)), redoLabel(newHistory(start))]).toEqual([null, null]);
  });
});
