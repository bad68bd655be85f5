import type { LengthDisplay } from '$lib/project/units.ts';
import type { Drawn, Lines } from './batch.ts';
import type { Box } from './box.ts';
import { dimensionText } from './dimensionText.ts';
import type { DimensionStyle } from './dimensionStyle.ts';
import { drawDimension } from './drawDimension.ts';
import type { DrawnDimension } from './drawnDimension.ts';
import { labelText } from './labelText.ts';
import { penStroke } from './pens.ts';
import { toPaper, type Place } from './place.ts';
import { line, type Primitive } from './primitive.ts';
import type { AngleDimension, Dimension, Item, Outline, Round, Spot, View } from './view.ts';

/** How a view is put on a paper. */
export interface Paper {
  readonly place: Place;
  readonly style: DimensionStyle;
}

/** A view on a paper. Dimensions apart, so that they lie over everything else. */
export interface ViewPrimitives {
  readonly things: readonly Primitive[];
  readonly dimensions: readonly Primitive[];
}

export const isDimension = (item: Item): item is Dimension | AngleDimension =>
  item.kind === 'dimension' || item.kind === 'angle';

export const viewPrimitives = (view: View, paper: Paper, display: LengthDisplay): ViewPrimitives => ({
  things: view.items.flatMap((item) => (isDimension(item) ? [] : thingPrimitives(item, paper))),
  dimensions: view.items
    .filter(isDimension)
    .flatMap((item) => dimensionPrimitives(dimensionOn(item, view.extent, paper, display), paper.style)),
});

/** What is drawn of one item that is no dimension, or of lines taken together. */
export function thingPrimitives(item: Drawn, { place, style }: Paper): Primitive[] {
  switch (item.kind) {
    case 'lines':
      return linesOf(item, { place, style });
    case 'outline':
      return outline(item, { place, style });
    case 'round':
      return [
        {
          kind: 'circle',
          centre: toPaper(place, item.centre),
          radius: item.radius * place.scale,
          ...strokeOf(item, style),
        },
      ];
    case 'spot':
      return spot(item, { place, style });
    case 'label': {
      const { text, at, anchor } = labelText(item, place, style);
      return [{ kind: 'text', text, at, anchor, size: style.textSize }];
    }
  }
}

/** A dimension with its number as the unit system writes it. `extent`: of its view. */
export const dimensionOn = (
  item: Dimension | AngleDimension,
  extent: Box,
  { place, style }: Paper,
  display: LengthDisplay,
): DrawnDimension => drawDimension(item, place, extent, style, dimensionText(item, display, style.fineness));

export const dimensionPrimitives = (
  { extensions, lines, arrows, text }: DrawnDimension,
  { narrow, textSize }: DimensionStyle,
): Primitive[] => [
  ...extensions.map((points): Primitive => ({ ...line(points, narrow), part: 'extension' })),
  ...lines.map((points): Primitive => ({ ...line(points, narrow), part: 'line' })),
  ...arrows.map((points): Primitive => ({ kind: 'line', points, closed: true, width: 0, fill: 'ink', part: 'arrow' })),
  { kind: 'text', ...text, size: textSize },
];

function strokeOf(
  { pen, filled, subject }: Outline | Round,
  style: DimensionStyle,
): Pick<Primitive & { kind: 'line' }, 'width' | 'dashes' | 'fill'> {
  return { ...penStroke(pen, style), ...(filled ? { fill: subject } : {}) };
}

/** Lines that look alike share what they look like. */
function linesOf({ first, lines }: Lines, { place, style }: Paper): Primitive[] {
  const { width, dashes } = penStroke(first.pen, style);
  return lines.map((points): Primitive => ({
    kind: 'line',
    points: points.map((point) => toPaper(place, point)),
    closed: false,
    width,
    dashes,
  }));
}

function outline(item: Outline, { place, style }: Paper): Primitive[] {
  const shape = {
    kind: 'line',
    points: item.points.map((point) => toPaper(place, point)),
    closed: item.closed,
  } as const;
  const stroke = strokeOf(item, style);
  if (!item.hatched) return [{ ...shape, ...stroke }];
  return [{ ...shape, ...stroke, width: item.filled ? 0 : stroke.width, fill: 'hatch' }];
}

/** Half the arm of a cross, and radii of a dot and a ring, paper mm. */
const ARM = 1.3;
const DOT = 0.6;
const RING = 0.9;

function spot({ at, mark }: Spot, { place, style }: Paper): Primitive[] {
  const [x, y] = toPaper(place, at);
  const { unit, narrow } = style;
  if (mark === 'dot') return [{ kind: 'circle', centre: [x, y], radius: DOT * unit, width: 0, fill: 'ink' }];
  if (mark === 'ring') return [{ kind: 'circle', centre: [x, y], radius: RING * unit, width: narrow, fill: 'paper' }];
  const arm = ARM * unit;
  return [
    line([[x - arm, y], [x + arm, y]], narrow), // prettier-ignore
    line([[x, y - arm], [x, y + arm]], narrow), // prettier-ignore
  ];
}

/** General hatching on any paper: narrow lines at 45°, so far apart, paper mm. */
export const HATCH_GAP = 2.4;
