import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimensionLine } from '$lib/drawing/dimensionLine.ts';
import { dimensionStyle, screenStyle } from '$lib/drawing/dimensionStyle.ts';
import { dimensionText, spokenDimension } from '$lib/drawing/dimensionText.ts';
import { toPaper, zoomed } from '$lib/drawing/place.ts';
import { inRow } from '$lib/drawing/rows.ts';
import { scaleText } from '$lib/drawing/scaleText.ts';
import { roomsOf, severalFit, shownOf } from '$lib/drawing/rooms.ts';
import { detailed, redrawn, sheetOf, type Sheet } from '$lib/drawing/sheet.ts';
import type { Pane } from '$lib/drawing/pane.ts';
import type { Frame } from '$lib/drawing/sheetLayout.ts';
import { scenes } from './arbitraries.ts';
import { scene, type Scene } from './scene.ts';
import { runs } from '../runs.ts';

const style = screenStyle(1000);
/** Float dust of places on a sheet of some thousand px. */
const DUST = 1e-9;
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
  it('leaves out a close-up whose room would hold its dimensions and nothing else, and gives the room to the other', () => {
    // A printed page of 176 × 170 mm in CSS px, as the style sheet has it.
    const mm = 96 / 25.4;
    const page: Frame = { left: 0, top: 0, width: 176 * mm, height: 170 * mm };
    fc.assert(
      fc.property(scenes, (made) => {
        const printed = sheetOf({ ...made, layoutIndex: 0, side: 'right' }, 'all', page, dimensionStyle(mm)).panes;
        expect(printed.map(({ key }) => key)).toEqual(['top', 'side', 'stand']);
        for (const { place, view, frame } of printed) {
          expect(place.scale).toBeGreaterThan(mm / 200);
          const [left] = toPaper(place, [view.extent[0], view.extent[3]]);
          expect(left).toBeGreaterThanOrEqual(frame.left);
        }
        const [, side, stand] = printed;
        expect(stand?.frame.width).toBeCloseTo(side?.frame.width ?? NaN, 9);
      }),
      { numRuns: runs(40) },
    );
  });

  it('draws the plan as one sits: x to the right, y up the page, the listener at the bottom', () => {
    fc.assert(
      fc.property(scenes, frames, (made, frame) => {
        const [top] = panesAt(made, frame);
        if (top?.key !== 'top') throw new Error('expected the plan first');
        const at = (name: string): readonly number[] => {
          const item = top.view.items.find(({ id }) => id === name);
          if (item?.kind !== 'outline') throw new Error(`no ${name}`);
          const points = item.points.map((point) => toPaper(top.place, point));
          return [0, 1].map((axis) => points.reduce((sum, point) => sum + (point[axis] ?? NaN), 0) / points.length);
        };
        const [left, right, head, wall] = ['cabinet-left', 'cabinet-right', 'head', 'desk'].map(at);
        expect(left?.[0]).toBeLessThan(right?.[0] ?? NaN);
        expect(head?.[1]).toBeGreaterThan(Math.max(left?.[1] ?? NaN, right?.[1] ?? NaN));
        expect(head?.[1]).toBeGreaterThan(wall?.[1] ?? NaN);
      }),
      { numRuns: runs(40) },
    );
  });

  it('keeps each view and its rows of dimensions inside a room of its own', () => {
    fc.assert(
      fc.property(scenes, frames, (made, frame) => {
        const panes = panesAt(made, frame);
        for (const { view, place, frame: room } of panes) {
          const [left, up] = toPaper(place, [view.extent[0], view.extent[3]]);
          const [right, down] = toPaper(place, [view.extent[2], view.extent[1]]);
          const tips = view.items.filter(inRow).flatMap((item) => {
            const drawn = dimensionLine(item, place, view.extent, style, dimensionText(item, 'mm'));
            return drawn.arrows.map(([tip]) => tip);
          });
          expect(Math.min(left, ...tips.map(([x]) => x))).toBeGreaterThanOrEqual(room.left);
          expect(Math.max(right, ...tips.map(([x]) => x))).toBeLessThanOrEqual(room.left + room.width);
          expect(Math.min(up, ...tips.map(([, y]) => y))).toBeGreaterThanOrEqual(room.top);
          expect(Math.max(down, ...tips.map(([, y]) => y))).toBeLessThanOrEqual(room.top + room.height);
        }
        for (const [index, { frame: a }] of panes.entries())
          for (const { frame: b } of panes.slice(index + 1))
            expect(
              a.left + a.width <= b.left + DUST ||
                b.left + b.width <= a.left + DUST ||
                a.top + a.height <= b.top + DUST ||
                b.top + b.height <= a.top + DUST,
            ).toBe(true);
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

  it('shows what has room: one view on a phone, plan and side view on a tablet, four on a desk’s screen', () => {
    const keys = (width: number, height: number): readonly string[] => {
      const [frame, sized] = [{ left: 0, top: 0, width, height }, screenStyle(width)];
      return roomsOf(shownOf(null, severalFit(frame, sized)), frame, sized).rooms.map(({ key }) => key);
    };
    expect(keys(390, 340)).toEqual(['top']);
    expect(keys(768, 406)).toEqual(['top', 'side']);
    expect(keys(1000, 600)).toEqual(['top', 'side', 'front', 'stand']);
    expect([shownOf(null, true), shownOf('side', true), shownOf('top', false)]).toEqual(['all', 'side', 'top']);
    expect([shownOf(null, false), shownOf('all', false)]).toEqual(['top', 'top']);
  });

  it('draws the demo’s plan at no less than 0.34 px and its side view at 0.27 px a millimetre on a sheet 1000 × 600', () => {
    const { panes } = sheet(scene(), { left: 0, top: 0, width: 1000, height: 600 });
    const [top, side] = panes.map(({ place }) => place.scale);
    expect(top).toBeGreaterThan(0.34);
    expect(side).toBeGreaterThan(0.27);
    const phone = { left: 0, top: 0, width: 390, height: 347 };
    const [alone] = sheetOf({ ...scene(), layoutIndex: 0, side: 'right' }, 'top', phone, screenStyle(390)).panes;
    // As wide as the phone but for 56 px: a row of dimensions, and what is taken hold of at the other edge.
    expect(alone?.place.scale).toBeGreaterThan((390 - 56) / 1400);
    const large = sheet(scene(), { left: 0, top: 0, width: 1490, height: 1134 }).panes.map(({ place }) => place.scale);
    expect(large[0]).toBeGreaterThan(0.55);
    expect(large[1]).toBeGreaterThan(0.43);
  });

  it('gives a mark’s distance beside the cabinet in a narrow room, where the desk is bare, and outside the desk elsewhere', () => {
    const rowsOf = (made: Scene, width: number) => {
      const [frame, sized] = [{ left: 0, top: 0, width, height: 347 }, screenStyle(width)];
      const source = { ...made, layoutIndex: 0, side: 'right' } as const;
      return detailed(sheetOf(source, 'top', frame, sized), 1, sized).flatMap(({ view }) =>
        view.items.flatMap((item) =>
          item.kind === 'dimension' && item.input?.endsWith('right/y') ? [inRow(item)] : [],
        ),
      );
    };
    expect([rowsOf(scene(), 390), rowsOf(scene(), 700)]).toEqual([[false], [true]]);
    const atTheEdge = scene({ left: { x: -600, y: 300 }, right: { x: 600, y: 300 } });
    expect([rowsOf(atTheEdge, 390), rowsOf(atTheEdge, 700)]).toEqual([[true], [true]]);
  });

  it('stays finite in a frame of no size', () => {
    const { panes } = sheet(scene(), { left: 0, top: 0, width: 0, height: 0 });
    for (const { place } of panes) {
      expect(place.scale).toBeGreaterThan(0);
      expect(place.origin.every(Number.isFinite)).toBe(true);
    }
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
    expect(dimensionText({ ...dimension, input: '/layouts/0/desk/outline/depth' }, 'mm')).toBe('700');
  });

  it('shows no digit of a result that a tape cannot carry, tenths on paper, and all that somebody gave', () => {
    const result = { ...dimension, value: 928.66 };
    expect(dimensionText(result, 'mm', 'screen')).toBe('(929)');
    expect(dimensionText(result, 'mm', 'paper')).toBe('(928.7)');
    expect(dimensionText({ ...result, value: 928.5, input: '/a' }, 'mm', 'screen')).toBe('928.5');
    expect(dimensionText({ ...result, each: true }, 'mm', 'screen')).toBe('(929)\u00a0each');
  });

  it('reads as name, value and unit', () => {
    expect(spokenDimension(dimension, 'mm')).toBe('desk depth: 700 millimetres');
    expect(spokenDimension({ ...dimension, value: 25.4 }, 'in')).toBe('desk depth: 1.00 inches');
    const angle = { kind: 'angle', id: 'a', subject: 'axis', corner: [0, 0], from: 0, to: 1, radius: 1 } as const;
    expect(spokenDimension({ ...angle, value: 41.855, name: 'toe' }, 'mm')).toBe('toe: 41.9 degrees');
  });

  it('writes scales with two figures', () => {
    expect([1 / 14.2, 1 / 5.24, 1, 3].map(scaleText)).toEqual(['1:14', '1:5.2', '1:1', '3:1']);
  });
});

describe('another layout laid over a sheet', () => {
  it('is in every view that it differs in, within it, and takes no text away', () => {
    const [own, other] = [scene(), scene({ right: { x: 277, y: 300 }, left: { x: -277, y: 300 }, earHeight: 1300 })];
    const frame = { left: 0, top: 0, width: 1000, height: 900 };
    const source = { ...own, layoutIndex: 0, side: 'right' as const };
    const bare = sheetOf(source, 'all', frame, style);
    const both = sheetOf({ ...source, over: other.plan }, 'all', frame, style);
    const laid = both.panes.map(({ key, view }) => [key, view.items.filter(({ subject }) => subject === 'other').length] as const); // prettier-ignore
    const counts = new Map(laid);
    expect(counts.get('top')).toBeGreaterThanOrEqual(4);
    expect(counts.get('side')).toBeGreaterThanOrEqual(4);
    expect(counts.get('stand')).toBeGreaterThan(0);
    const texts = ({ panes }: Sheet) =>
      panes.map(({ view }) => view.items.filter(({ kind }) => kind === 'dimension' || kind === 'angle').map(({ id }) => id)); // prettier-ignore
    expect(texts(both)).toEqual(texts(bare));
    expect(sheetOf({ ...source, over: null }, 'all', frame, style)).toEqual(bare);
    expect(sheetOf({ ...source, over: own.plan }, 'all', frame, style)).toEqual(bare);
  });
});
