import type { Point } from '$lib/geometry/point.ts';
import { fromMillimetres, toMillimetres, type LengthUnit } from '$lib/project/units.ts';
import { textWidth, type DimensionStyle } from './dimensionStyle.ts';
import type { Pane } from './pane.ts';
import type { Zoom } from './place.ts';
import { scaleText } from './scaleText.ts';
import type { Frame } from './sheetLayout.ts';
import { views, type ViewName } from './views.ts';

/** What stands at the head of a view: what it is called, and a bar to read its scale by. */
export interface Caption {
  readonly key: ViewName;
  readonly text: string;
  /** Start of the text's base line. */
  readonly at: Point;
  /** Null where there is no room for it. */
  readonly bar: ScaleBar | null;
}

/** A stretch of the paper that is so long in truth. */
export interface ScaleBar {
  /** Left end. */
  readonly from: Point;
  /** Paper units. */
  readonly length: number;
  readonly text: string;
  /** Start of the text's base line. */
  readonly at: Point;
}

/** Height of the line at the head of a view, in text sizes, and where its base line is. */
const HEAD = 1.9;
const BASE = 1.25;
/** From the edges of the view's room, in text sizes. */
const INSET = 0.7;
/** A bar takes this share of its view's width at the most. */
const BAR_SHARE = 0.15;
/** First figures of the lengths that bars are made of. */
const FIGURES = [5, 2, 1] as const;
/** A length along the axes of an isometric view is drawn so much shorter (ISO 5456-3). */
const ISOMETRIC = Math.sqrt(2 / 3);

/** The greatest round length, mm, that is no longer than the room. */
function roundLength(mm: number, unit: LengthUnit): number {
  const most = fromMillimetres(mm, unit);
  const power = 10 ** Math.floor(Math.log10(most));
  const figure = FIGURES.find((one) => one * power <= most * (1 + Number.EPSILON)) ?? 1;
  return toMillimetres(figure * power, unit);
}

/** The heads of a sheet's views as it is looked at. `panes`: with their places on the enlarged paper. */
export function captionsOf(
  panes: readonly Pane[],
  { k, x, y }: Zoom,
  style: DimensionStyle,
  unit: LengthUnit,
): Caption[] {
  return panes
    .filter(({ headed }) => headed)
    .map(({ key, view, place, frame }) => {
      const { textSize } = style;
      const scale = key === 'stand' ? ISOMETRIC * place.scale : place.scale;
      const length = roundLength(Math.max(1, (BAR_SHARE * frame.width * k) / scale), unit);
      const measured = `${Number(fromMillimetres(length, unit).toPrecision(6))}\u202f${unit}`;
      const paperRatio = style.fineness === 'paper' ? [`${measured}, ${scaleText(place.scale / style.unit)}`] : [];
      const left = k * frame.left + x + INSET * textSize;
      const right = k * (frame.left + frame.width) + x - INSET * textSize;
      const base = k * frame.top + y + BASE * textSize;
      const bars = [...paperRatio, measured].map((says): ScaleBar => {
        const words = right - textWidth(says, style);
        const from = words - INSET * textSize - length * scale;
        return { from: [from, base - 0.3 * textSize], length: length * scale, text: says, at: [words, base] };
      });
      const bar = bars.find(({ from }) => from[0] >= left) ?? null;
      const fits = (name: string): boolean =>
        left + textWidth(name, style) + INSET * textSize <= (bar?.from[0] ?? right);
      const text = [view.name, views[key].name].find(fits) ?? '';
      return { key, text, at: [left, base], bar };
    });
}

/** The frame of a view without the line at its head, where it has one. */
export function belowCaption({ frame, headed }: Pick<Pane, 'frame' | 'headed'>, { textSize }: DimensionStyle): Frame {
  if (!headed) return frame;
  const taken = Math.min(frame.height, HEAD * textSize);
  return { ...frame, top: frame.top + taken, height: frame.height - taken };
}
