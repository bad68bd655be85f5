import type { Point } from '$lib/geometry/point.ts';
import { arrowhead } from './arrowhead.ts';
import { textWidth, type DimensionStyle } from './dimensionStyle.ts';
import type { DrawnDimension, DrawnText } from './drawnDimension.ts';
import { direction, offset } from './paperVector.ts';
import { toPaper, type Place } from './place.ts';
import type { AngleDimension } from './view.ts';

/** Least radius of an arc on the paper, in arrow lengths: smaller ones are blots. */
const LEAST_RADIUS = 3.2;
const ROOM_INSIDE = 2.6;
const TAIL = 0.8;
/** Largest turn of one straight piece of an arc, radians: 1.5°, four thousandths of a millimetre at a radius of 50 mm. */
const PIECE = Math.PI / 120;
/** Height of figures as a share of the text size: what a text takes up square to its line. */
const FIGURE_HEIGHT = 0.73;
/** Where text beside an arc stands, the sine over which it hangs from its middle instead of an end. */
const SIDEWAYS = 0.35;
/** Legs nearer to level than this (sine of the angle) let text run either way. */
const SLANT = 0.1;

/** Direction on the paper of an angle counted counter-clockwise. */
const ray = (angle: number): Point => [Math.cos(angle), -Math.sin(angle)];

const arc = (corner: Point, radius: number, from: number, to: number): Point[] => {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / PIECE));
  return Array.from({ length: pieces + 1 }, (_, i) => offset(corner, ray(from + ((to - from) * i) / pieces), radius));
};

const anchorOf = (x: number, least: number): DrawnText['anchor'] =>
  x > least ? 'start' : x < -least ? 'end' : 'middle';

/**
 * An angle's text stands level, outside the arc, on the side of the corner it lies on. `away`: the horizontal part of the
 * way off the leg it stands beyond, 0 when it stands between: text runs that way, off the leg and not along it.
 */
function levelText(
  text: string,
  corner: Point,
  angle: number,
  radius: number,
  { away, anchor: asked }: { readonly away: number; readonly anchor: AngleDimension['anchor'] },
  style: DimensionStyle,
): DrawnText {
  const [x, y] = ray(angle);
  const anchor = asked ?? (Math.abs(away) > SLANT ? anchorOf(away, SLANT) : anchorOf(x, SIDEWAYS));
  const half = (FIGURE_HEIGHT * style.textSize) / 2;
  const out = radius + 1.5 * style.textGap + (anchor === 'middle' || asked ? half : 0);
  const [px, py] = offset(corner, [x, y], out);
  const clear = asked ? (asked === 'start' ? 1 : -1) * style.textGap : 0;
  return { text, at: [px + clear, py + half], turn: 0, anchor };
}

/**
 * An angle dimension on the paper: legs, arc, arrows and its text, level and outside the arc. Where the opening is too
 * narrow for the text, it stands beyond a leg.
 */
export function angleLine(
  dimension: AngleDimension,
  place: Place,
  style: DimensionStyle,
  text: string,
): DrawnDimension {
  const corner = toPaper(place, dimension.corner);
  const radius = Math.max(dimension.radius * place.scale, LEAST_RADIUS * style.arrow);
  const { from, to, legs = 'both', beyond } = dimension;
  const sweep = to - from;
  const inside = radius * sweep >= ROOM_INSIDE * style.arrow;
  const tail = ((1 + TAIL) * style.arrow) / radius;
  const [start, end] = inside ? [from, to] : [from - tail, to + tail];
  /** An arrow flies along the chord of its own length, so that its tail sits on the arc. */
  const arrowAt = (angle: number, back: number) => {
    const tip = offset(corner, ray(angle), radius);
    return arrowhead(tip, direction(offset(corner, ray(angle + back), radius), tip), style);
  };
  const chord = style.arrow / radius;
  const height = FIGURE_HEIGHT * style.textSize;
  const opening = 2 * (radius + textWidth(text, style) / 2) * Math.sin(Math.min(sweep, Math.PI) / 2);
  const open = opening >= height + 4 * style.textGap;
  const middle = from + sweep * (dimension.textAt ?? 0.5);
  const clear = (0.5 * height + 2 * style.textGap) / radius;
  const between = open && !beyond;
  const aside = beyond === 'from' ? start - clear : end + clear;
  const away = between ? 0 : beyond === 'from' ? Math.sin(from) : -Math.sin(to);
  const leg = (angle: number): readonly Point[] => [corner, offset(corner, ray(angle), radius + style.overrun)];
  return {
    extensions: [
      ...(legs === 'both' || legs === 'from' ? [leg(from)] : []),
      ...(legs === 'both' || legs === 'to' ? [leg(to)] : []),
    ],
    lines: [arc(corner, radius, start, end)],
    arrows: [arrowAt(from, inside ? chord : -chord), arrowAt(to, inside ? -chord : chord)],
    text: levelText(text, corner, between ? middle : aside, radius, { away, anchor: dimension.anchor }, style),
  };
}
