import { describe, expect, test } from 'vitest';
import { sideHandles, topHandles } from '$lib/drawing/handles.ts';
import { floorLevel } from '$lib/drawing/roomFromSide.ts';
import { viewOf } from '$lib/drawing/sheet.ts';
import { groupOf, thingAt, thingsOf } from '$lib/drawing/thing.ts';
import type { SheetSource } from '$lib/drawing/sheetSource.ts';
import { valueAt } from '$lib/document/pointer.ts';
import { solve } from '$lib/solution/solve.ts';
import { firstLayout, project } from '../projects.ts';

const of = project({
  '/layouts/0/room/walls': [],
  '/layouts/0/surfaces': [
    { name: 'shelf', y: 560, width: 900, depth: 240, height: 1380 },
    { name: 'pillar', on: 'floor', x: 1000, y: 300, width: 260, depth: 300, height: 650, turn: 25, foot: { width: 300, depth: 300 } }, // prettier-ignore
    { name: 'riser', on: 'desk', x: -430, y: 250, width: 260, depth: 300, height: 860 },
  ],
  '/layouts/0/placement': { left: { x: -430, y: 280, on: 'riser' }, right: { x: 1040, y: 330, on: 'pillar' } },
});

function source(): SheetSource {
  const layout = firstLayout(of);
  const planned = solve(of, layout);
  if (!planned.ok) throw new Error('the scene has a plan');
  return { project: of, layout, layoutIndex: 0, plan: planned.value, side: 'right' };
}

describe('surfaces', () => {
  test('are drawn from above and from the side, each a thing that leads to its part of the project', () => {
    for (const view of ['top', 'side'] as const) {
      const { items } = viewOf(view, source(), 'true');
      for (const index of [0, 1, 2]) {
        const item = items.find(({ id }) => id === `surface-${index}`);
        expect([view, index, item?.subject]).toEqual([view, index, 'surface']);
        const [thing] = item ? thingsOf(item) : [];
        expect(thing).toBe(`surface-${index}`);
        expect(groupOf(thing ?? '', 0)).toBe(`/layouts/0/surfaces/${index}`);
      }
      expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
    }
    expect(thingAt('/layouts/0/surfaces/2/height')).toBe('surface-2');
  });

  test('that hang over the desk and carry nothing hide nothing', () => {
    const pens = viewOf('top', source(), 'true').items.flatMap((item) =>
      item.kind === 'outline' && /^surface-\d$/.test(item.id) ? [[item.id, item.pen, item.filled]] : [],
    );
    expect(pens).toEqual([
      ['surface-1', 'wide', true],
      ['surface-2', 'wide', true],
      ['surface-0', 'phantom', false],
    ]);
  });

  test('have dimensions that say the numbers of the project', () => {
    const found = (['top', 'side'] as const).flatMap((view) =>
      viewOf(view, source(), 'true').items.flatMap((item) =>
        item.kind === 'dimension' && item.subject === 'surface' ? [item] : [],
      ),
    );
    expect(found.map(({ input }) => input?.split('/').slice(-2).join('/')).sort()).toEqual(
      ['1/depth', '1/height', '1/width', '1/y', '2/depth', '2/height', '2/width', '2/y'],
    ); // prettier-ignore
    for (const { input, value, from, to, run } of found) {
      expect(value).toBe(valueAt(of, input ?? ''));
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
      expect(run === 'up' ? Math.abs(dy) : Math.hypot(dx, dy)).toBeCloseTo(value, 9);
    }
  });

  test('can be taken hold of, by numbers that the project has', () => {
    const made = source();
    const side = sideHandles(made, floorLevel(made.layout, 'true'), 1000);
    const handles = [...topHandles(made), ...side].filter(({ thing }) => thing.startsWith('surface'));
    expect(handles).toHaveLength(6);
    for (const { across, up } of handles) {
      for (const grip of [across, up]) expect(grip && valueAt(of, grip.input)).toBe(grip?.value);
    }
  });
});
