import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '$lib/geometry/point.ts';
import { captionsOf } from '$lib/drawing/captions.ts';
import { dimensionStyle, screenStyle, type DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { dimensionText } from '$lib/drawing/dimensionText.ts';
import { labelText } from '$lib/drawing/labelText.ts';
import type { Pane, Shown } from '$lib/drawing/pane.ts';
import { severalFit, shownOf } from '$lib/drawing/rooms.ts';
import { detailed, sheetOf, textsPlaced } from '$lib/drawing/sheet.ts';
import { dimensionOn, dimensionPrimitives, isDimension, thingPrimitives } from '$lib/drawing/viewPrimitives.ts';
import type { SideName } from '$lib/project/project.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { scenes } from './arbitraries.ts';
import { scene, type Scene } from './scene.ts';
import { boxed, meet, meeting, type Text } from './textBoxes.ts';
import { runs } from '../runs.ts';

const WHOLE = { k: 1, x: 0, y: 0 };
/** A CSS millimetre, px. */
const MM = 96 / 25.4;

const displays: readonly LengthDisplay[] = [
  { length: 'mm', fraction: null },
  { length: 'in', fraction: null },
  { length: 'in', fraction: 16 },
  { length: 'in', fraction: 64 },
];
const asked: readonly Shown[] = ['all', 'top', 'side', 'front', 'stand'];
const sides: readonly SideName[] = ['left', 'right'];

interface Drawn {
  readonly texts: readonly Text[];
  /** Every straight piece of every line, with whose it is. */
  readonly lines: readonly (Text & { readonly owner: string })[];
}

const pieces = (owner: string, points: readonly Point[], closed: boolean): Drawn['lines'] =>
  points.flatMap((point, index) => {
    const next = points[index + 1] ?? (closed ? points[0] : undefined);
    return next ? [{ id: `line of ${owner}`, owner, corners: [point, next] }] : [];
  });

/** Everything of a view as it stands on the paper, by the primitives that screen, SVG and PDF draw. */
function drawnOf({ key, view, place }: Pane, style: DimensionStyle, display: LengthDisplay): Drawn {
  const paper = { place, style };
  const all = view.items.map((item): Drawn => {
    const owner = `${key}: ${item.id}`;
    if (item.kind === 'label') return { texts: [boxed(owner, labelText(item, place, style), style)], lines: [] };
    const primitives = isDimension(item)
      ? dimensionPrimitives(dimensionOn(item, view.extent, paper, display), style)
      : thingPrimitives(item, paper);
    return {
      texts: primitives.flatMap((one) => (one.kind === 'text' ? [boxed(owner, { turn: 0, ...one }, style)] : [])),
      lines: primitives.flatMap((one) => (one.kind === 'line' ? pieces(owner, one.points, one.closed) : [])),
    };
  });
  return { texts: all.flatMap(({ texts }) => texts), lines: all.flatMap(({ lines }) => lines) };
}

function panesOf(made: Scene, shown: Shown, side: SideName, size: Size, style: DimensionStyle, display: LengthDisplay) {
  const frame = { left: 0, top: 0, ...size };
  const source = { ...made, layoutIndex: 0, side };
  const sheet = sheetOf(source, shownOf(shown, severalFit(frame, style)), frame, style);
  return textsPlaced(detailed(sheet, 1, style), WHOLE, style, display);
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Whatever text meets a line that is not its own, or another text. */
function faults(panes: readonly Pane[], style: DimensionStyle, display: LengthDisplay): string[] {
  const drawn = panes.map((pane) => drawnOf(pane, style, display));
  const texts = drawn.flatMap((one) => one.texts);
  const lines = drawn.flatMap((one) => one.lines);
  const captions = captionsOf(panes, WHOLE, style, display.length).flatMap(({ key, text, at, bar }) => [
    boxed(`caption of ${key}`, { text, at, turn: 0, anchor: 'start' }, style),
    ...(bar ? [boxed(`bar of ${key}`, { text: bar.text, at: bar.at, turn: 0, anchor: 'start' }, style)] : []),
  ]);
  return [
    ...meeting([...texts, ...captions]),
    ...[...texts, ...captions].flatMap((text) =>
      lines
        .filter(({ owner, corners }) => owner !== text.id && meet(text.corners, corners))
        .map(({ id }) => `${text.id} and ${id}`),
    ),
  ];
}

/** The drawing's room on the page, px, from the smallest window (320) to a large screen (2560). */
const sizes: fc.Arbitrary<Size> = fc.oneof(
  fc.record({ width: fc.integer({ min: 320, max: 560 }), height: fc.integer({ min: 260, max: 480 }) }),
  fc.record({ width: fc.integer({ min: 560, max: 1100 }), height: fc.integer({ min: 300, max: 760 }) }),
  fc.record({ width: fc.integer({ min: 700, max: 1700 }), height: fc.integer({ min: 480, max: 1250 }) }),
);

describe('no text of a drawing meets another text, or a line that is not its own', () => {
  test('of random projects, on a screen of any size', () => {
    let texts = 0;
    fc.assert(
      fc.property(
        scenes,
        sizes,
        fc.constantFrom(...asked),
        fc.constantFrom(...sides),
        fc.constantFrom(...displays),
        (made, size, shown, side, display) => {
          const style = screenStyle(size.width);
          const panes = panesOf(made, shown, side, size, style, display);
          texts += panes.flatMap((pane) => drawnOf(pane, style, display).texts).length;
          expect(faults(panes, style, display)).toEqual([]);
        },
      ),
      { numRuns: runs(120) },
    );
    // Nothing is gained by leaving everything out.
    expect(texts).toBeGreaterThan(runs(120) * 4);
  });

  /** The room that the first page gives the drawing in a window, px: half the window is one at 200 % zoom. */
  test.each([
    ['a window of 320 × 640', 320, 288],
    ['a window of 390 × 844', 390, 347],
    ['the same on its side', 844, 264],
    ['a window of 768 × 1024', 768, 406],
    ['a window of 1440 × 900', 986, 594],
    ['the same at 200 %', 720, 324],
    ['a window of 2560 × 1440', 1490, 1134],
    ['the same at 200 %', 826, 414],
    ['the printed page', 176 * MM, 170 * MM],
  ] as const)('of the demo, in %s', (_, width, height) => {
    for (const shown of asked) {
      const style = width === 176 * MM ? dimensionStyle(MM) : screenStyle(width);
      for (const display of displays)
        expect(faults(panesOf(scene(), shown, 'right', { width, height }, style, display), style, display)).toEqual([]);
    }
  });
});

test('a desk’s screen shows every size of the demo that is typed there, and toe, tilt and angle', () => {
  const style = screenStyle(1000);
  const display = { length: 'mm', fraction: null } as const;
  const texts = panesOf(scene(), 'all', 'right', { width: 1000, height: 600 }, style, display).flatMap(({ view }) =>
    view.items.filter(isDimension).map((item) => dimensionText(item, display, 'screen')),
  );
  const each = '\u00a0each';
  expect(texts.sort()).toEqual(
    ['120', '700', '180', `300${each}`, `430${each}`, '1400', '1180', '735', '12', '165', '270', '205', '95']
      .concat(['(83.7°)', '(41.9°)', '(14.7°)'])
      .sort(),
  );
});
