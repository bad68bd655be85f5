import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '$lib/geometry/point.ts';
import { captionsOf } from '$lib/drawing/captions.ts';
import { dimensionStyle, type DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { dimensionText } from '$lib/drawing/dimensionText.ts';
import { drawDimension } from '$lib/drawing/drawDimension.ts';
import { labelText } from '$lib/drawing/labelText.ts';
import { toPaper } from '$lib/drawing/place.ts';
import { detailed, severalFit, sheetOf, shownOf } from '$lib/drawing/sheet.ts';
import type { Pane, Shown } from '$lib/drawing/pane.ts';
import type { SideName } from '$lib/project/project.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { scene } from './scene.ts';
import { boxed, meet, meeting, type Text } from './textBoxes.ts';
import { runs } from '../runs.ts';

/** Every text of the views on a sheet, where it stands. */
const textsOf = (panes: readonly Pane[], style: DimensionStyle, display: LengthDisplay): Text[] =>
  panes.flatMap(({ key, view, place }) =>
    view.items.flatMap((item): Text[] => {
      const id = `${key}: ${item.id}`;
      if (item.kind === 'label') return [boxed(id, labelText(item, place, style), style)];
      if (item.kind !== 'dimension' && item.kind !== 'angle') return [];
      const { text } = drawDimension(item, place, view.extent, style, dimensionText(item, display));
      return [boxed(`${id} ${text.text}`, text, style)];
    }),
  );

/** A CSS millimetre, px. */
const MM = 96 / 25.4;
const WHOLE = { k: 1, x: 0, y: 0 };

/** What the views are called, where it stands. */
const captionTexts = (panes: readonly Pane[], style: DimensionStyle): Text[] =>
  captionsOf(panes, WHOLE, style, MM).flatMap(({ key, anchor, lines }) =>
    lines.map(({ text, at }) => boxed(`${key}: ${text}`, { text, at, turn: 0, anchor }, style)),
  );

/** Every line of the views that stand beside those of the desk: outlines, and the dimension lines without extensions. */
const linesAside = (panes: readonly Pane[], style: DimensionStyle, display: LengthDisplay): Text[] =>
  panes.flatMap(({ key, view, place, corner }) =>
    corner === null
      ? []
      : view.items.flatMap((item) => {
          const on = (points: readonly Point[], closed: boolean): Text[] =>
            points.flatMap((point, index) => {
              const next = points[index + 1] ?? (closed ? points[0] : undefined);
              return next ? [{ id: `line of ${key}: ${item.id}`, corners: [point, next] }] : [];
            });
          if (item.kind === 'outline')
            return on(
              item.points.map((point) => toPaper(place, point)),
              item.closed,
            );
          if (item.kind !== 'dimension' && item.kind !== 'angle') return [];
          return drawDimension(item, place, view.extent, style, dimensionText(item, display)).lines.flatMap((line) =>
            on(line, false),
          );
        }),
  );

/** The drawing's room in the page at the widths of a phone, a tablet, a laptop, a sheet of A4 in print and a large screen, px; as `Sheet` draws it. */
const papers = {
  phone: { width: 390, height: 280, style: dimensionStyle(2.9, 12) },
  tablet: { width: 768, height: 360, style: dimensionStyle(MM) },
  laptop: { width: 990, height: 640, style: dimensionStyle(MM) },
  print: { width: 176 * MM, height: 170 * MM, style: dimensionStyle(MM) },
  large: { width: 1414, height: 1230, style: dimensionStyle(MM) },
} as const;
const displays: Readonly<Record<string, LengthDisplay>> = {
  mm: { length: 'mm', fraction: null },
  inches: { length: 'in', fraction: null },
  eighths: { length: 'in', fraction: 8 },
  sixteenths: { length: 'in', fraction: 16 },
  'thirty-seconds': { length: 'in', fraction: 32 },
  'sixty-fourths': { length: 'in', fraction: 64 },
};
const asked: readonly Shown[] = ['all', 'top', 'side', 'front', 'stand'];
const sides: readonly SideName[] = ['left', 'right'];

const { project, layout, plan } = scene();

describe('no text of the demo’s drawing stands on another', () => {
  const cases = Object.keys(papers).flatMap((paper) =>
    Object.keys(displays).map((display) => [paper, display] as const),
  );
  test.each(cases)('on a %s, in %s', (paper, unit) => {
    const { width, height, style } = papers[paper as keyof typeof papers];
    const display = displays[unit] ?? { length: 'mm', fraction: null };
    const frame = { left: 0, top: 0, width, height };
    for (const side of sides) {
      for (const wanted of asked) {
        const shown = shownOf(wanted, severalFit(frame, style));
        const sheet = sheetOf({ project, layout, layoutIndex: 0, plan, side }, shown, frame, style);
        const panes = detailed(sheet, 1, style);
        const texts = [...textsOf(panes, style, display), ...captionTexts(panes, style)];
        expect(texts.length).toBeGreaterThan(1);
        expect([side, shown, meeting(texts)]).toEqual([side, shown, []]);
      }
    }
  });
});

describe('what a view beside those of the desk is called stands clear of it', () => {
  test('on any paper from the size of the print on', () => {
    const style = dimensionStyle(MM);
    let beside = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 660, max: 2000 }),
        fc.integer({ min: 640, max: 1400 }),
        fc.constantFrom(...sides),
        fc.constantFrom(...Object.values(displays)),
        (width, height, side, display) => {
          const frame = { left: 0, top: 0, width, height };
          const sheet = sheetOf({ project, layout, layoutIndex: 0, plan, side }, 'all', frame, style);
          const panes = detailed(sheet, 1, style);
          if (panes.every(({ corner }) => corner === null)) return;
          beside += 1;
          const lines = linesAside(panes, style, display);
          expect(lines.length).toBeGreaterThan(10);
          const met = captionTexts(panes, style).flatMap((caption) =>
            lines.filter(({ corners }) => meet(caption.corners, corners)).map(({ id }) => `${caption.id} and ${id}`),
          );
          expect(met).toEqual([]);
        },
      ),
      { numRuns: runs(300) },
    );
    expect(beside).toBeGreaterThan(runs(300) / 3);
  });
});
