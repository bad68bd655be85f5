import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batched } from '$lib/drawing/batch.ts';
import { viewOf } from '$lib/drawing/sheet.ts';
import { steadyPanes, type DrawnPane } from '$lib/drawing/steady.ts';
import { groupOf, isLit, thingAt, thingsOf } from '$lib/drawing/thing.ts';
import type { Item } from '$lib/drawing/view.ts';
import { valueAt } from '$lib/document/pointer.ts';
import { scenes } from './arbitraries.ts';
import { scene, type Scene } from './scene.ts';
import { runs } from '../runs.ts';

const views = ['top', 'side', 'front', 'stand'] as const;
const itemsOf = (made: Scene, view: (typeof views)[number]): readonly Item[] =>
  viewOf(view, { ...made, layoutIndex: 0, side: 'right' }, 'true').items;
const litIn = (made: Scene, chosen: Parameters<typeof isLit>[1]): string[] =>
  views.flatMap((view) =>
    itemsOf(made, view)
      .filter((item) => isLit(item, chosen, view === 'top' ? null : 'right'))
      .map(({ id }) => `${view} ${id}`),
  );

describe('what is chosen', () => {
  it('lights up a loudspeaker on every view that shows it, and no other one', () => {
    const lit = litIn(scene(), { kind: 'thing', thing: 'speaker-right' });
    for (const id of ['top cabinet-right', 'side cabinet-right', 'front cabinet-right']) expect(lit).toContain(id);
    expect(lit.some((id) => id.startsWith('stand cabinet-edge'))).toBe(true);
    expect(lit.filter((id) => id.includes('left'))).toEqual([]);
  });

  it('lights up its dimension and its thing for a number, and no other dimension', () => {
    const lit = litIn(scene(), { kind: 'value', pointer: '/layouts/0/listener/earHeight' });
    expect(lit).toContain('side ear-height');
    expect(lit).toContain('top head');
    expect(lit).toContain('side head');
    expect(lit).not.toContain('side setback');
  });

  it('leads from every thing to a part of the project, and from there back to a thing', () => {
    fc.assert(
      fc.property(scenes, (made) => {
        for (const item of views.flatMap((view) => itemsOf(made, view))) {
          for (const thing of thingsOf(item, 'right')) {
            const group = groupOf(thing, 0);
            expect(group, thing).not.toBeNull();
            expect(valueAt(made.project, group ?? '')).toBeDefined();
          }
          if ('input' in item && item.input !== undefined) expect(thingAt(item.input), item.input).not.toBeNull();
        }
      }),
      { numRuns: runs(20) },
    );
  });
});

describe('batched', () => {
  it('draws every line of a view once, in its order', () => {
    fc.assert(
      fc.property(scenes, fc.constantFrom(...views), (made, view) => {
        const items = itemsOf(made, view).filter(({ kind }) => kind !== 'dimension' && kind !== 'angle');
        const drawn = batched(items).flatMap((one): unknown[] => (one.kind === 'lines' ? [...one.lines] : [one]));
        expect(drawn).toHaveLength(items.length);
        items.forEach((item, index) => {
          const one = drawn[index];
          expect(one === item || (item.kind === 'outline' && one === item.points)).toBe(true);
        });
      }),
      { numRuns: runs(20) },
    );
    expect(batched(itemsOf(scene(), 'stand')).length).toBeLessThan(itemsOf(scene(), 'stand').length);
  });
});

describe('steadyPanes', () => {
  const panes = (made: Scene): DrawnPane[] =>
    views.map((key) => ({
      key,
      view: viewOf(key, { ...made, layoutIndex: 0, side: 'right' }, 'true'),
      place: { scale: 0.2, origin: [10, 20] },
      frame: { left: 0, top: 0, width: 900, height: 700 },
      headed: true,
      handles: [],
    }));

  it('says what the new views say, with the old ones’ own objects wherever they say the same', () => {
    fc.assert(
      fc.property(scenes, scenes, (one, other) => {
        const [before, after] = [panes(one), panes(other)];
        const steady = steadyPanes(before, after);
        expect(steady).toEqual(after);
        const [again] = steadyPanes(before, panes(one));
        expect(again?.place).toBe(before[0]?.place);
        again?.view.items.forEach((item, index) => expect(item).toBe(before[0]?.view.items[index]));
      }),
      { numRuns: runs(15) },
    );
  });
});
