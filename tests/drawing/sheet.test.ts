import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimensionLine } from '$lib/drawing/dimensionLine.ts';
import { dimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { dimensionText, spokenDimension } from '$lib/drawing/dimensionText.ts';
import { toPaper, zoomed } from '$lib/drawing/place.ts';
import { inRow } from '$lib/drawing/rows.ts';
import { scaleText } from '$lib/drawing/scaleText.ts';
import { detailed, redrawn, severalFit, sheetOf, shownOf, type Sheet } from '$lib/drawing/sheet.ts';
import type { Pane } from '$lib/drawing/pane.ts';
import type { Frame } from '$lib/drawing/sheetLayout.ts';
import { scenes } from './arbitraries.ts';
import { scene, type Scene } from './scene.ts';
import { runs } from '../runs.ts';

const style = dimensionStyle(4);
const frames: fc.Arbitrary<Frame> = fc.record({
  left: fc.constant(0),
  top: fc.constant(0),
  width: fc.integer({ min: 340, max: 2400 }),
  height: fc.integer({ min: 560, max: 1600 }),
});
const sheet = (made: Scene, frame: Frame): Sheet =>
  sheetOf({ ...made, layoutIndex: 0, side: 'right' }, 'all', frame, style);
const panesAt = (made: Scene, frame: Frame, zoom = 1): Pane[] => detailed(sheet(made, frame), zoom, style);

describe('sheetOf', () => {
  it('stands the top view over the side view: the same y at the same place, both at one scale (third angle)', () => {
    fc.assert(
      fc.property(scenes, frames, fc.integer({ min: -500, max: 1500 }), (made, frame, y) => {
        const [top, side] = panesAt(made, frame);
        if (!top || !side) throw new Error('expected two views');
        expect([top.key, side.key]).toEqual(['top', 'side']);
        expect(top.place.scale).toBe(side.place.scale);
        const [topX] = toPaper(top.place, [y, 123]);
        const [sideX] = toPaper(side.place, [y, -456]);
        expect(topX).toBeCloseTo(sideX, 9);
        const lowest = toPaper(top.place, [0, top.view.extent[1]])[1];
        const highest = toPaper(side.place, [0, side.view.extent[3]])[1];
        expect(highest).toBeGreaterThan(lowest);
      }),
      { numRuns: runs(40) },
    );
  });

  it('keeps the views and their rows of dimensions inside the frame, and the rows of the two views apart', () => {
    fc.assert(
      fc.property(scenes, frames, (made, frame) => {
        const spans = panesAt(made, frame).map(({ view, place }) => {
          const [left, up] = toPaper(place, [view.extent[0], view.extent[3]]);
          const [right, down] = toPaper(place, [view.extent[2], view.extent[1]]);
          expect(left).toBeGreaterThanOrEqual(0);
          expect(right).toBeLessThanOrEqual(frame.width);
          const levels = view.items.filter(inRow).flatMap((item) => {
            const drawn = dimensionLine(item, place, view.extent, style, dimensionText(item, 'mm'));
            return drawn.arrows.map(([tip]) => tip);
          });
          return {
            from: Math.min(up, ...levels.map(([, y]) => y)),
            to: Math.max(down, ...levels.map(([, y]) => y)),
          };
        });
        expect(Math.min(...spans.map(({ from }) => from))).toBeGreaterThanOrEqual(0);
        expect(Math.max(...spans.map(({ to }) => to))).toBeLessThanOrEqual(frame.height);
        expect((spans[1]?.from ?? NaN) - (spans[0]?.to ?? NaN)).toBeGreaterThan(8 * style.unit - 1e-9);
      }),
      { numRuns: runs(40) },
    );
  });

  it('gives each size once', () => {
    fc.assert(
      fc.property(scenes, frames, fc.constantFrom(1, 2, 8), (made, frame, zoom) => {
        const inputs = panesAt(made, frame, zoom).flatMap(({ view }) =>
          view.items.flatMap((item) => ('input' in item && item.input ? [item.input] : [])),
        );
        expect(new Set(inputs).size).toBe(inputs.length);
      }),
      { numRuns: runs(40) },
    );
  });

  it('adds detail when enlarged, and moves nothing', () => {
    const frame = { left: 0, top: 0, width: 900, height: 900 };
    const [far, near] = [panesAt(scene(), frame, 1), panesAt(scene(), frame, 8)];
    expect(near.map(({ place }) => place)).toEqual(far.map(({ place }) => place));
    const count = (panes: readonly Pane[]): number => panes.reduce((sum, { view }) => sum + view.items.length, 0);
    expect(count(near)).toBeGreaterThan(count(far));
  });

  it('shows one view at a time where both would be too small', () => {
    expect(severalFit({ left: 0, top: 0, width: 390, height: 300 }, dimensionStyle(2.9))).toBe(false);
    expect(severalFit({ left: 0, top: 0, width: 900, height: 800 }, style)).toBe(true);
    expect([shownOf(null, true), shownOf('side', true), shownOf('top', false)]).toEqual(['all', 'side', 'top']);
    expect([shownOf(null, false), shownOf('all', false)]).toEqual(['top', 'top']);
  });

  it('stays finite in a frame of no size', () => {
    const { panes } = sheet(scene(), { left: 0, top: 0, width: 0, height: 0 });
    for (const { place } of panes) {
      expect(place.scale).toBeGreaterThan(0);
      expect(place.origin.every(Number.isFinite)).toBe(true);
    }
  });

  it('shows the front of the cabinet and its stand beside a wide sheet’s views, clear of them', () => {
    const { panes } = sheet(scene(), { left: 0, top: 0, width: 1000, height: 660 });
    expect(panes.map(({ key }) => key)).toEqual(['top', 'side', 'front', 'stand']);
    const span = ({ view, place }: Pane) => ({
      left: toPaper(place, [view.extent[0], 0])[0],
      right: toPaper(place, [view.extent[2], 0])[0],
    });
    const [top, side, ...aside] = panes.map(span);
    for (const { left, right } of aside) {
      expect(left).toBeGreaterThan(Math.max(top?.right ?? Infinity, side?.right ?? Infinity));
      expect(right).toBeLessThan(1000);
    }
    expect(sheet(scene(), { left: 0, top: 0, width: 400, height: 700 }).panes.map(({ key }) => key)).toEqual([
      'top',
      'side',
    ]);
  });

  it('moves nothing when it is drawn again with other numbers', () => {
    const frame = { left: 0, top: 0, width: 1000, height: 660 };
    fc.assert(
      fc.property(scenes, scenes, (one, other) => {
        const before = sheet(one, frame);
        const after = redrawn({ ...other, layoutIndex: 0, side: 'right' }, before);
        expect(after.panes.map(({ key, place }) => ({ key, place }))).toEqual(
          before.panes.map(({ key, place }) => ({ key, place })),
        );
        const own = sheet(other, frame);
        expect(after.panes.find(({ key }) => key === 'top')?.view).toEqual(
          own.panes.find(({ key }) => key === 'top')?.view,
        );
      }),
      { numRuns: runs(15) },
    );
  });
});

describe('places', () => {
  it('enlarged and moved, lie where the enlarged and moved paper has them', () => {
    const number = fc.double({ min: -3000, max: 3000, noNaN: true });
    fc.assert(
      fc.property(number, number, fc.double({ min: 1, max: 24, noNaN: true }), number, (x, y, k, shift) => {
        const place = { scale: 0.3, origin: [120, 450] } as const;
        const [across, down] = toPaper(place, [x, y]);
        const [atX, atY] = toPaper(zoomed(place, { k, x: shift, y: -shift }), [x, y]);
        expect(atX).toBeCloseTo(k * across + shift, 6);
        expect(atY).toBeCloseTo(k * down - shift, 6);
      }),
    );
  });
});

describe('what dimensions say', () => {
  const dimension = {
    kind: 'dimension',
    id: 'd',
    subject: 'desk',
    from: [0, 0],
    to: [1, 0],
    run: 'across',
    row: 1,
    value: 700,
    name: 'desk depth',
  } as const;

  it('brackets results and leaves inputs bare', () => {
    expect(dimensionText(dimension, 'mm')).toBe('(700)');
    expect(dimensionText({ ...dimension, input: '/layouts/0/desk/depth' }, 'mm')).toBe('700');
  });

  it('reads as name, value and unit', () => {
    expect(spokenDimension(dimension, 'mm')).toBe('desk depth: 700 millimetres');
    expect(spokenDimension({ ...dimension, value: 25.4 }, 'in')).toBe('desk depth: 1.000 inches');
    const angle = { kind: 'angle', id: 'a', subject: 'axis', corner: [0, 0], from: 0, to: 1, radius: 1 } as const;
    expect(spokenDimension({ ...angle, value: 41.855, name: 'toe' }, 'mm')).toBe('toe: 41.85 degrees');
  });

  it('writes scales with two figures', () => {
    expect([1 / 14.2, 1 / 5.24, 1, 3].map(scaleText)).toEqual(['1:14', '1:5.2', '1:1', '3:1']);
  });
});
