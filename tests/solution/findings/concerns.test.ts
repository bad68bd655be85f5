import { expect, test } from 'vitest';
import { concernedBy, levelsByPointer } from '$lib/solution/findings/concerns.ts';
import { solve } from '$lib/solution/solve.ts';
import { firstLayout, project } from '../../projects.ts';

function findingsOf(changes: Readonly<Record<string, unknown>>) {
  const of = project(changes);
  const solved = solve(of, firstLayout(of));
  if (!solved.ok) throw new Error('the demo has a solution');
  return solved.value.findings;
}

test('the marks are what a wide triangle concerns, in the layout asked for', () => {
  const wide = findingsOf({}).filter(({ code }) => code === 'triangle-angle');
  expect(levelsByPointer(wide, 2)).toEqual(
    new Map([
      ['/layouts/2/placement/left/x', 'caution'],
      ['/layouts/2/placement/right/x', 'caution'],
    ]),
  );
});

test('only the mark of the loudspeaker that stands over the edge is concerned, with the worst that is said of it', () => {
  const over = findingsOf({ '/layouts/0/placement/left': { x: -430, y: -40 } });
  const levels = levelsByPointer(over, 0);
  expect(levels.get('/layouts/0/placement/left/y')).toBe('fault');
  expect(levels.get('/layouts/0/placement/right/y')).toBeUndefined();
  // A fault and a caution about one value, in either order.
  const [fault] = over.filter(({ code }) => code === 'stand-over-edge');
  if (!fault) throw new Error('the stand is over the edge');
  const mild = { ...fault, level: 'caution' } as const;
  for (const both of [
    [fault, mild],
    [mild, fault],
  ]) {
    expect(levelsByPointer(both, 0).get('/layouts/0/placement/left/y')).toBe('fault');
  }
});

test('a note marks nothing', () => {
  const notes = findingsOf({}).filter(({ level }) => level === 'note');
  expect(notes.length).toBeGreaterThan(0);
  expect(notes.flatMap((note) => concernedBy(note, 0)).length).toBeGreaterThan(0);
  expect(levelsByPointer(notes, 0).size).toBe(0);
});
