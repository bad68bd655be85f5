import { describe, expect, it } from 'vitest';
import { dimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { dimensionText, spokenDimension } from '$lib/drawing/dimensionText.ts';
import { spokenHandle } from '$lib/drawing/handleText.ts';
import { toPaper, type Place } from '$lib/drawing/place.ts';
import { detailed, handlesOf, redrawn, sheetOf } from '$lib/drawing/sheet.ts';
import type { SheetSource } from '$lib/drawing/sheetSource.ts';
import { steadyPanes, type DrawnPane } from '$lib/drawing/steady.ts';
import { thingPrimitives } from '$lib/drawing/viewPrimitives.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { dimensionOnPaper } from '$lib/views/drawing/dimensionOnPaper.ts';
import { elementsOf, type Element } from '$lib/views/drawing/elements.ts';
import { handleOnPaper } from '$lib/views/drawing/handleOnPaper.ts';
import { onPaper } from '$lib/views/drawing/onPaper.ts';
import { scene, type Difference } from '../../drawing/scene.ts';

const style = dimensionStyle(4);
const place: Place = { scale: 0.5, origin: [100, 200] };
const sourceOf = (difference: Difference): SheetSource => ({ ...scene(difference), layoutIndex: 0, side: 'right' });
const first = sourceOf({});
const display: LengthDisplay = first.project.display;
const sheet = sheetOf(first, 'all', { left: 0, top: 0, width: 1000, height: 660 }, style);
const panesOf = (source: SheetSource): DrawnPane[] =>
  detailed(redrawn(source, sheet), 1, style).map((pane) => ({ ...pane, handles: handlesOf(pane, source, sheet) }));

const elementsOfOne = (item: Parameters<typeof thingPrimitives>[0]): readonly Element[] =>
  elementsOf(thingPrimitives(item, { place, style }));

describe('elements', () => {
  it('put a circle at its place and in its scale', () => {
    const round = { kind: 'round', id: 'a', subject: 'driver', pen: 'wide', centre: [10, 20], radius: 6 } as const;
    expect(elementsOfOne({ ...round, filled: true })).toMatchObject([
      {
        kind: 'circle',
        x: 100 + 0.5 * 10,
        y: 200 - 0.5 * 20,
        radius: 0.5 * 6,
        width: style.wide,
        fill: 'driver',
        dashes: undefined,
      },
    ]);
  });

  it('close a closed outline, leave an open one open, and dash what is hidden', () => {
    const points = [[0, 0], [10, 0], [10, 20]] as const; // prettier-ignore
    const outline = { kind: 'outline', id: 'a', subject: 'stand', points, filled: false } as const;
    const [closed] = elementsOfOne({ ...outline, pen: 'hidden', closed: true });
    const [open] = elementsOfOne({ ...outline, pen: 'wide', closed: false });
    if (closed?.kind !== 'path' || open?.kind !== 'path') throw new Error('expected paths');
    expect(closed.d).toBe(`${open.d}Z`);
    expect(closed.dashes).toMatch(/^[\d.]+( [\d.]+)+$/);
    expect(open.dashes).toBeUndefined();
  });

  it('are one path for lines that look alike, and never for areas that lie on each other', () => {
    const line = (width: number, fill?: 'desk') =>
      ({ kind: 'line', points: [[0, 0], [1, 2]], closed: true, width, ...(fill ? { fill } : {}) }) as const; // prettier-ignore
    expect(elementsOf([line(1), line(1), line(2)])).toMatchObject([
      { d: 'M0 0L1 2ZM0 0L1 2Z', width: 1 },
      { d: 'M0 0L1 2Z', width: 2 },
    ]);
    expect(elementsOf([line(1, 'desk'), line(1, 'desk')])).toHaveLength(2);
  });
});

describe('dimensionOnPaper and handleOnPaper', () => {
  it('say what the dimension says, with room to be pressed', () => {
    for (const { view, place: at } of panesOf(first)) {
      for (const item of view.items) {
        if (item.kind !== 'dimension' && item.kind !== 'angle') continue;
        const drawn = dimensionOnPaper(item, view.extent, { place: at, style }, display);
        expect(drawn.elements.at(-1)).toMatchObject({ kind: 'text', text: dimensionText(item, display) });
        const parts = drawn.elements.flatMap((element) => (element.kind === 'path' ? [element.part] : []));
        // An arc may stand on legs that are there already; every other has its line and its arrows in one path each.
        expect(parts.filter((part) => part !== 'extension')).toEqual(['line', 'arrow']);
        expect(drawn.touch.spoken).toBe(spokenDimension(item, display));
        // WCAG 2.2, target size: 24 px.
        expect(Math.min(drawn.touch.target.width, drawn.touch.target.height)).toBeGreaterThanOrEqual(24);
      }
    }
  });

  it('say what the handle says, where it is', () => {
    const handles = panesOf(first).flatMap((pane) => pane.handles.map((handle) => ({ handle, at: pane.place })));
    expect(handles.length).toBeGreaterThan(0);
    for (const { handle, at } of handles) {
      const drawn = handleOnPaper(handle, at, display);
      expect(drawn.at).toEqual(toPaper(at, handle.at));
      expect(drawn.touch.spoken).toBe(spokenHandle(handle, display));
      expect(drawn.body.endsWith('Z')).toBe(!drawn.isEdge);
      expect(drawn.way).toBe(handle.across && handle.up ? 'both' : handle.across ? 'across' : 'up');
    }
  });
});

describe('onPaper', () => {
  const before = panesOf(first);
  const drawn = onPaper([], before, style, display, 'right');

  it('gives the very views again for the very same', () => {
    const again = onPaper(drawn, before, style, display, 'right');
    expect(again.map((pane, index) => pane === drawn[index])).toEqual(drawn.map(() => true));
  });

  it('keeps what has not changed and is otherwise as if drawn for the first time', () => {
    const after = steadyPanes(before, panesOf(sourceOf({ right: { x: 430, y: 270 } })));
    const next = onPaper(drawn, after, style, display, 'right');
    expect(next).toEqual(onPaper([], after, style, display, 'right'));
    const kept = next[0]?.shapes.filter((shape) => drawn[0]?.shapes.includes(shape)) ?? [];
    expect(kept.some(({ subject }) => subject === 'desk')).toBe(true);
  });

  it('lets what is pressed and heard wait while the numbers move, and catches up when they rest', () => {
    const after = steadyPanes(before, panesOf(sourceOf({ right: { x: 430, y: 270 } })));
    const moving = onPaper(drawn, after, style, display, 'right', true);
    const fresh = onPaper([], after, style, display, 'right');
    const parts = ['handles', 'dimensions'] as const;
    for (const part of parts) {
      const [old, now, full] = [drawn, moving, fresh].map((panes) => panes.flatMap((pane) => [...pane[part]]));
      // What is seen is of now.
      const seen = (list: typeof now): unknown => list?.map((one) => ({ ...one, touch: null }));
      expect(seen(now)).toEqual(seen(full));
      const touches = (list: typeof now) => new Map(list?.map(({ view, id, touch }) => [`${view} ${id}`, touch]));
      const [was, is] = [touches(old), touches(now)];
      for (const [id, touch] of was) if (is.has(id)) expect(is.get(id)).toEqual(touch);
      expect(is).not.toEqual(touches(full));
    }
    expect(onPaper(moving, after, style, display, 'right', true).map((pane, i) => pane === moving[i])).not.toContain(
      false,
    );
    expect(onPaper(moving, after, style, display, 'right')).toEqual(fresh);
  });
});
