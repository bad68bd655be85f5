import type { Drawn } from '$lib/drawing/batch.ts';
import type { DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { labelText } from '$lib/drawing/labelText.ts';
import { penStroke } from '$lib/drawing/pens.ts';
import { toPaper, type Place } from '$lib/drawing/place.ts';
import type { Item, Label, Pen, Subject } from '$lib/drawing/view.ts';
import { linesData, pathData } from './pathData.ts';

interface Common {
  readonly id: string;
  /** What it is a picture of: the first, where several lines are one. */
  readonly item: Item;
  readonly subject: Subject;
}

/** How a line is drawn, px. */
interface Stroked {
  readonly width: number;
  /** Undefined for a continuous line. */
  readonly dashes: string | undefined;
}

/** What a screen draws for one item, in px on the sheet. */
export type ShapeOnPaper =
  | (Common &
      Stroked & { readonly kind: 'path'; readonly d: string; readonly filled: boolean; readonly hatched: boolean })
  | (Common &
      Stroked & {
        readonly kind: 'circle';
        readonly x: number;
        readonly y: number;
        readonly radius: number;
        readonly filled: boolean;
      })
  | (Common & {
      readonly kind: 'label';
      readonly x: number;
      readonly y: number;
      readonly size: number;
      readonly anchor: Label['anchor'];
      readonly text: string;
    })
  | (Common & { readonly kind: 'cross'; readonly d: string; readonly width: number })
  | (Common & {
      readonly kind: 'spot';
      readonly dot: boolean;
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly width: number;
    });

/** Half the length of a cross's arms, and the radii of a dot and a ring, paper mm. */
const ARM = 1.3;
const DOT = 0.45;
const RING = 0.8;

export function shapeOnPaper(drawn: Drawn, place: Place, style: DimensionStyle): ShapeOnPaper {
  const item = drawn.kind === 'lines' ? drawn.first : drawn;
  const common = { id: drawn.id, item, subject: item.subject };
  switch (drawn.kind) {
    case 'lines': {
      const d = linesData(drawn.lines.map((line) => line.map((point) => toPaper(place, point))));
      return { ...common, ...strokeOf(drawn.first.pen, style), kind: 'path', d, filled: false, hatched: false };
    }
    case 'outline': {
      const { pen, points, closed, filled, hatched = false } = drawn;
      const d = pathData(
        points.map((point) => toPaper(place, point)),
        closed,
      );
      return { ...common, ...strokeOf(pen, style), kind: 'path', d, filled, hatched };
    }
    case 'round': {
      const { pen, centre, radius, filled } = drawn;
      const [x, y] = toPaper(place, centre);
      return { ...common, ...strokeOf(pen, style), kind: 'circle', x, y, radius: radius * place.scale, filled };
    }
    case 'label': {
      const { at, anchor } = labelText(drawn, place, style);
      return { ...common, kind: 'label', x: at[0], y: at[1], size: style.textSize, anchor, text: drawn.text };
    }
    case 'spot': {
      const [x, y] = toPaper(place, drawn.at);
      const width = style.narrow;
      if (drawn.mark === 'cross') {
        const arm = ARM * style.unit;
        const d = linesData([
          [
            [x - arm, y],
            [x + arm, y],
          ],
          [
            [x, y - arm],
            [x, y + arm],
          ],
        ]);
        return { ...common, kind: 'cross', d, width };
      }
      const dot = drawn.mark === 'dot';
      return { ...common, kind: 'spot', dot, x, y, radius: (dot ? DOT : RING) * style.unit, width };
    }
  }
}

function strokeOf(pen: Pen, style: DimensionStyle): Stroked {
  const { width, dashes } = penStroke(pen, style);
  return { width, dashes: dashes.length > 0 ? dashes.join(' ') : undefined };
}
