import { radians } from '$lib/geometry/angle.ts';
import { circle, openPath, polygonPath } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Primitive } from '$lib/drawing/primitive.ts';
import { words, type Stroke } from '$lib/files/stroke.ts';

/** Capitals are this share of a text mark’s size high. */
const CAPITAL = 0.72;
const HAIR = 0.13;

/**
 * A mark as strokes on a page. Tints become the paper’s white, which hides what was drawn before as the tint does;
 * hatching becomes an outline; lettering becomes strokes.
 *
 * @param page height of the page, whose y runs up: marks run down.
 */
export function markStrokes(mark: Primitive, page: number): Stroke[] {
  const up = ([x, y]: Point): Point => [x, page - y];
  switch (mark.kind) {
    case 'text': {
      const [x, y] = up(mark.at);
      const place = { height: CAPITAL * mark.size, x, y, anchor: mark.anchor, turn: -radians(mark.turn ?? 0) };
      return words(mark.text, place, Infinity);
    }
    case 'circle':
      return [{ contour: circle(up(mark.centre), mark.radius), ...look(mark) }];
    case 'line':
      return [{ contour: (mark.closed ? polygonPath : openPath)(mark.points.map(up)), ...look(mark) }];
  }
}

function look({ width, dashes, fill }: Exclude<Primitive, { kind: 'text' }>): Omit<Stroke, 'contour'> {
  const hatched = fill === 'hatch';
  return {
    width: hatched ? HAIR : width,
    ...(dashes && dashes.length > 0 ? { dash: dashes } : {}),
    ...(fill === undefined || hatched ? {} : { fill: fill === 'ink' ? ('ink' as const) : ('paper' as const) }),
  };
}
