import { describe, expect, test } from 'vitest';
import { topView } from '$lib/drawing/topView.ts';
import type { Dimension } from '$lib/drawing/view.ts';
import { solve } from '$lib/solution/solve.ts';
import { Typing } from '$lib/views/drawing/typing.svelte.ts';
import { firstLayout, project } from '../../projects.ts';

/** Dimensions of the demo's top view: two that can be typed into, and a result. */
function dimensions() {
  const of = project();
  const layout = firstLayout(of);
  const planned = solve(of, layout);
  if (!planned.ok) throw new Error('the demo has a plan');
  const all = topView(of.speaker, layout, 0, planned.value).items.filter(
    (item): item is Dimension => item.kind === 'dimension',
  );
  const [first, second] = all.filter(({ input }) => input !== undefined);
  const result = all.find(({ input }) => input === undefined);
  if (!first || !second || !result) throw new Error('the top view has inputs and results');
  return { first, second, result };
}

const { first, second, result } = dimensions();

function typing() {
  const held: string[] = [];
  const made = new Typing(() => [], { hold: (view) => held.push(view), release: () => held.push('released') });
  return { made, held };
}

describe('typing into the drawing', () => {
  test('opens an input and no result, and holds the sheet meanwhile', () => {
    const { made, held } = typing();
    expect(made.open('top', result, '5')).toBe(false);
    expect([made.now, held]).toEqual([null, []]);
    expect(made.open('top', first, '5')).toBe(true);
    expect(made.now).toMatchObject({ view: 'top', input: first.input, first: '5' });
    expect(made.leave('left')).toBe(true);
    expect([made.now, held]).toEqual([null, ['top', 'released']]);
  });

  test('keeps the keys that come before its field does', () => {
    const { made } = typing();
    for (const key of '12.5') made.open('top', first, key);
    expect(made.now?.first).toBe('12.5');
  });

  test.each([
    ['another input', () => ['top', second, '7'] as const, '7'],
    ['the same one in another view', () => ['side', first, '7'] as const, '7'],
    ['an arrow', () => ['top', first, 'ArrowUp'] as const, 'ArrowUp'],
    ['a click', () => ['top', first, ''] as const, ''],
  ])('begins anew with %s', (_, next, expected) => {
    const { made } = typing();
    made.open('top', first, '1');
    const [view, dimension, key] = next();
    made.open(view, dimension, key);
    expect(made.now?.first).toBe(expected);
  });

  test('does not take an arrow for something typed', () => {
    const { made } = typing();
    made.open('top', first, 'ArrowUp');
    made.open('top', first, '3');
    expect(made.now?.first).toBe('3');
  });
});
