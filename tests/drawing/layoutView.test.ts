import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { laidOver } from '$lib/drawing/laidOver.ts';
import { layoutView } from '$lib/drawing/layoutView.ts';
import { topView } from '$lib/drawing/topView.ts';
import type { Dimension, Item, View } from '$lib/drawing/view.ts';
import { isDimension } from '$lib/drawing/viewPrimitives.ts';
import { scenes } from './arbitraries.ts';
import { scene, type Scene } from './scene.ts';
import { runs } from '../runs.ts';

const laid = ({ items }: View): Item[] => items.filter(({ pen }: Item & { pen?: string }) => pen === 'other');
const moves = ({ items }: View): Dimension[] =>
  items.flatMap((item) => (item.kind === 'dimension' && item.id.startsWith('move-') ? [item] : []));
const viewOf = ({ project, layout, plan }: Scene): View => topView(project.speaker, layout, 0, plan);

describe('a layout in the small', () => {
  it('gives the angle at the head, no other size, and only what is drawn at rest', () => {
    const { items } = layoutView(scene().plan, null);
    expect(items.filter(isDimension).map(({ id }) => id)).toEqual(['triangle-angle']);
    expect(items.filter(({ kind, rank }) => kind === 'label' || (rank ?? 1) > 1)).toEqual([]);
    for (const id of ['wall-0', 'desk', 'monitor-0', 'cabinet-left', 'cabinet-right', 'head', 'axis-left']) {
      expect(items.map((item) => item.id)).toContain(id);
    }
  });

  it('says of a pair drawn together how far each mark has come inwards, once', () => {
    const together = scene({ left: { x: -277, y: 320 }, right: { x: 277, y: 320 } });
    const view = layoutView(together.plan, scene().plan);
    expect(moves(view).map(({ name, run, value }) => [name, run, value])).toEqual([
      ['each mark, inwards', 'across', 153],
      ['each mark, away from the listener', 'up', 20],
    ]);
    const ids = laid(view).map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(['other-cabinet-left', 'other-cabinet-right', 'other-axis-left']));
    // What stands where it stood is not drawn again.
    expect(ids).not.toContain('other-desk');
    expect(ids).not.toContain('other-head');
    expect(ids).not.toContain('other-monitor-0');
  });

  it('says of one loudspeaker and the head which way each has gone', () => {
    const pushed = scene({ right: { x: 450, y: 280 }, offset: -30 });
    expect(moves(layoutView(pushed.plan, scene().plan)).map(({ name, value }) => [name, value])).toEqual([
      ['right mark, to the right', 20],
      ['right mark, towards the listener', 20],
      ['head, to the left', 30],
    ]);
  });
});

describe('another layout laid over a view', () => {
  it('is dashed lines without fill, within the extent, and every one of them is elsewhere in the view itself', () => {
    let differed = 0;
    fc.assert(
      fc.property(scenes, scenes, (one, other) => {
        const [own, others] = [viewOf(one), viewOf(other)];
        const both = laidOver(own, others);
        expect(both.items.slice(0, own.items.length)).toEqual(own.items);
        const added = both.items.slice(own.items.length);
        differed += Math.min(1, added.length);
        const [left, bottom, right, top] = both.extent;
        for (const item of added) {
          if (item.kind !== 'outline') throw new Error('only lines are laid over');
          expect(item).toMatchObject({ pen: 'other', subject: 'other', filled: false });
          for (const [x, y] of item.points) expect(x >= left && x <= right && y >= bottom && y <= top).toBe(true);
          const before = own.items.find(({ id }) => `other-${id}` === item.id);
          const apart =
            before?.kind === 'outline' && before.points.length === item.points.length
              ? Math.max(...before.points.map(([x, y], i) => Math.hypot(x - (item.points[i]?.[0] ?? 0), y - (item.points[i]?.[1] ?? 0)))) // prettier-ignore
              : Infinity;
          expect(apart).toBeGreaterThanOrEqual(0.5);
        }
        // Nothing at all of a layout laid over itself.
        expect(laidOver(own, own)).toBe(own);
      }),
      { numRuns: runs(100) },
    );
    expect(differed).toBeGreaterThan(runs(100) / 2);
  });
});
