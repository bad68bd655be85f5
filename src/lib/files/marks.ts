import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import { boxOf, type Box } from '$lib/drawing/box.ts';

/** What is on a sheet of paper, ready to be written down: paper mm, y down, colours as they are printed. */
export type Mark = LineMark | CircleMark | TextMark;

interface Drawn {
  /** Line width, mm; 0 for none. */
  readonly width: number;
  /** Dashes and gaps in turn, mm. */
  readonly dashes?: readonly number[];
  /** Colour of the area; none where nothing is said. */
  readonly fill?: string;
}

export interface LineMark extends Drawn {
  readonly kind: 'line';
  readonly points: readonly Point[];
  readonly closed: boolean;
}

export interface CircleMark extends Drawn {
  readonly kind: 'circle';
  readonly centre: Point;
  readonly radius: number;
}

export interface TextMark {
  readonly kind: 'text';
  readonly text: string;
  /** On the base line. */
  readonly at: Point;
  /** Degrees clockwise; default 0. */
  readonly turn?: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Height of the font, mm; capitals are about 0.72 of it. */
  readonly size: number;
}

/** Room a character of a text is given along its line, as a share of the font's height: more than most of any script need. */
const ADVANCE = 0.62;
/** How far a line of text reaches below its base line and above it, likewise. */
const BELOW = 0.25;
const ABOVE = 0.8;

export const textRoom = (text: string, size: number): number => [...text].length * size * ADVANCE;

/** The box round marks with their line widths; texts count with the room they are given. */
export const marksBox = (marks: readonly Mark[]): Box => boxOf(marks.flatMap(cornersOf));

function cornersOf(mark: Mark): Point[] {
  switch (mark.kind) {
    case 'line':
      return mark.points.flatMap((point) => around(point, mark.width / 2));
    case 'circle':
      return around(mark.centre, mark.radius + mark.width / 2);
    case 'text':
      return textCorners(mark);
  }
}

const around = ([x, y]: Point, by: number): Point[] => [
  [x - by, y - by],
  [x + by, y + by],
];

function textCorners({ text, at, turn = 0, anchor, size }: TextMark): Point[] {
  const room = textRoom(text, size);
  const start = { start: 0, middle: -room / 2, end: -room }[anchor];
  const [cos, sin] = [Math.cos(radians(turn)), Math.sin(radians(turn))];
  return [start, start + room].flatMap((x) =>
    [-ABOVE * size, BELOW * size].map((y): Point => [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos]),
  );
}

const moved = ([x, y]: Point, [dx, dy]: Point): Point => [x + dx, y + dy];

/** The marks elsewhere on the sheet. */
export const moveMarks = (marks: readonly Mark[], by: Point): Mark[] =>
  marks.map((mark) => {
    if (mark.kind === 'line') return { ...mark, points: mark.points.map((point) => moved(point, by)) };
    if (mark.kind === 'circle') return { ...mark, centre: moved(mark.centre, by) };
    return { ...mark, at: moved(mark.at, by) };
  });

export const line = (points: readonly Point[], width: number): LineMark => ({
  kind: 'line',
  points,
  closed: false,
  width,
});

const LEAST_SIZE = 2.5;

/** A text no longer than its room: set smaller, down to 2.5 mm, then cut with an ellipsis. */
export function fittedText(mark: TextMark, room: number): TextMark {
  const size = Math.max(
    Math.min(LEAST_SIZE, mark.size),
    Math.min(mark.size, (mark.size * room) / textRoom(mark.text, mark.size)),
  );
  if (textRoom(mark.text, size) <= room * (1 + Number.EPSILON * 4)) return { ...mark, size };
  const kept = Math.max(0, Math.floor(room / (size * ADVANCE)) - 1);
  return { ...mark, size, text: `${[...mark.text].slice(0, kept).join('').trimEnd()}…` };
}
