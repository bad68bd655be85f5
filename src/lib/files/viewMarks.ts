import { angleLine } from '$lib/drawing/angleLine.ts';
import { signOf } from '$lib/drawing/diameter.ts';
import { dimensionLine } from '$lib/drawing/dimensionLine.ts';
import { dimensionText } from '$lib/drawing/dimensionText.ts';
import type { DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import type { DrawnDimension } from '$lib/drawing/drawnDimension.ts';
import { labelText } from '$lib/drawing/labelText.ts';
import { penStroke } from '$lib/drawing/pens.ts';
import { toPaper, type Place } from '$lib/drawing/place.ts';
import type { AngleDimension, Dimension, Item, Outline, Round, Spot, Subject, View } from '$lib/drawing/view.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Mark } from './marks.ts';

/** A view on the paper. Dimensions apart, so that they lie over everything else. */
export interface ViewMarks {
  readonly things: readonly Mark[];
  readonly dimensions: readonly Mark[];
}

/** How a view is put on paper. */
export interface Paper {
  readonly place: Place;
  readonly style: DimensionStyle;
  readonly display: LengthDisplay;
  /** Reference of the hatching for cut or neighbouring bodies. */
  readonly hatch: string;
}

/** The view by the same geometry as on the screen. */
export function viewMarks(view: View, paper: Paper): ViewMarks {
  const isDimension = (item: Item): item is Dimension | AngleDimension =>
    item.kind === 'dimension' || item.kind === 'angle';
  return {
    things: view.items.flatMap((item) => (isDimension(item) ? [] : thing(item, paper))),
    dimensions: view.items.filter(isDimension).flatMap((item) => dimension(item, view, paper)),
  };
}

/** Pale enough to write on, and to print on a printer without colours. Bodies without one hide nothing. */
const TINTS: Partial<Record<Subject, string>> = {
  desk: '#faf8f2',
  monitor: '#eef1f3',
  cabinet: '#f3f5f6',
  driver: '#e6eaec',
  stand: '#f6ecd8',
  head: '#ffffff',
};

function thing(item: Exclude<Item, Dimension | AngleDimension>, paper: Paper): Mark[] {
  const { place, style } = paper;
  switch (item.kind) {
    case 'outline':
      return outline(item, paper);
    case 'round':
      return [
        {
          kind: 'circle',
          centre: toPaper(place, item.centre),
          radius: item.radius * place.scale,
          ...drawn(item, style),
        },
      ];
    case 'spot':
      return spot(item, paper);
    case 'label': {
      const { text, at, anchor } = labelText(item, place, style);
      return [{ kind: 'text', text, at, anchor, size: style.textSize }];
    }
  }
}

function drawn(
  item: Outline | Round,
  style: DimensionStyle,
): Pick<Mark & { kind: 'line' }, 'width' | 'dashes' | 'fill'> {
  const { width, dashes } = penStroke(item.pen, style);
  const fill = item.filled ? TINTS[item.subject] : undefined;
  return { width, dashes, ...(fill === undefined ? {} : { fill }) };
}

function outline(item: Outline, { place, style, hatch }: Paper): Mark[] {
  const shape = {
    kind: 'line',
    points: item.points.map((point) => toPaper(place, point)),
    closed: item.closed,
  } as const;
  // A wall has no far side: its hatching ends without a line.
  if (item.hatched) return [{ ...shape, width: 0, fill: hatch }];
  return [{ ...shape, ...drawn(item, style) }];
}

/** Half the arm of a cross, and radii of a dot and a ring, paper mm. */
const ARM = 1.3;
const DOT = 0.6;
const RING = 0.9;

function spot({ at, mark }: Spot, { place, style }: Paper): Mark[] {
  const [x, y] = toPaper(place, at);
  const { unit, narrow } = style;
  if (mark === 'dot') return [{ kind: 'circle', centre: [x, y], radius: DOT * unit, width: 0, fill: '#000000' }];
  if (mark === 'ring') return [{ kind: 'circle', centre: [x, y], radius: RING * unit, width: narrow, fill: '#ffffff' }];
  const arm = ARM * unit;
  const cross = (dx: number, dy: number): Mark => ({
    kind: 'line',
    points: [
      [x - dx, y - dy],
      [x + dx, y + dy],
    ],
    closed: false,
    width: narrow,
  });
  return [cross(arm, 0), cross(0, arm)];
}

function dimension(item: Dimension | AngleDimension, view: View, { place, style, display }: Paper): Mark[] {
  const text = printedText(item, display);
  return item.kind === 'angle'
    ? dimensionMarks(angleLine(item, place, style, text), style)
    : dimensionMarks(dimensionLine(item, place, view.extent, style, text), style);
}

/** The number as the page shows it, a diameter's sign before its figures. */
const printedText = (item: Dimension | AngleDimension, display: LengthDisplay): string =>
  dimensionText(item, display).replace(/^\(?≈?/, (before) => `${before}${signOf(item)}`);

function dimensionMarks({ extensions, lines, arrows, text }: DrawnDimension, style: DimensionStyle): Mark[] {
  return [
    ...[...extensions, ...lines].map((points): Mark => ({ kind: 'line', points, closed: false, width: style.narrow })),
    ...arrows.map((points): Mark => ({ kind: 'line', points, closed: true, width: 0, fill: '#000000' })),
    { kind: 'text', ...text, size: style.textSize },
  ];
}
