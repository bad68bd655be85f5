import { dimensionStyle, type DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import type { Place } from '$lib/drawing/place.ts';
import type { Figure, WordedDimension } from './figure.ts';

/** Where a figure lies on its piece of paper, in pixels of the paper. */
export interface FigureFit {
  readonly width: number;
  readonly height: number;
  readonly place: Place;
}

/** Rows stand closer than on a sheet: a figure has one or two. */
export const figureStyle: DimensionStyle = { ...dimensionStyle(3.4, 16), first: 26, step: 26, narrow: 1, wide: 2 };

const WIDTH = 480;
const MOST_HEIGHT = 340;
const BORDER = 10;

/** The paper round a figure: as wide as all figures, as high as the figure asks for, and no higher than a phone has room. */
export function figureFit({ extent, dimensions }: Figure, width = WIDTH, mostHeight = MOST_HEIGHT): FigureFit {
  const [left, bottom, right, top] = extent;
  const room = {
    left: rowsRoom(dimensions, 'up', -1),
    right: rowsRoom(dimensions, 'up', 1),
    top: rowsRoom(dimensions, 'across', 1),
    bottom: rowsRoom(dimensions, 'across', -1),
  };
  const [across, up] = [right - left, top - bottom];
  const scale = Math.min((width - room.left - room.right) / across, (mostHeight - room.top - room.bottom) / up);
  const spare = width - room.left - room.right - scale * across;
  const height = scale * up + room.top + room.bottom;
  return {
    width,
    height: Math.round(height),
    place: { scale, origin: [room.left + spare / 2 - scale * left, room.top + scale * top] },
  };
}

/** Room for the rows on one side of the extent; a dimension with a base of its own lies within it. */
function rowsRoom(dimensions: readonly WordedDimension[], run: 'across' | 'up', side: 1 | -1): number {
  const { first, step, textSize } = figureStyle;
  const rows = dimensions.flatMap(({ line }) =>
    line.kind === 'dimension' && line.run === run && line.row * side > 0 && line.base === undefined
      ? [Math.abs(line.row)]
      : [],
  );
  const most = Math.max(0, ...rows);
  return BORDER + (most === 0 ? 0 : first + (most - 1) * step + textSize / 2);
}
