import type { Box } from '$lib/drawing/box.ts';
import type { Point } from '$lib/geometry/point.ts';
import { fittedText, line, type Primitive } from '$lib/drawing/primitive.ts';
import { projectionSymbol, type ProjectionAngle } from './projectionSymbol.ts';

/** What a title block says. All of it is somebody's text. */
export interface Title {
  readonly title: string;
  readonly layout: string;
  readonly view: string;
  readonly scale: string;
  readonly lengths: string;
  readonly date: string;
  readonly sheet: string;
  readonly angle: ProjectionAngle;
}

/** At most so wide (ISO 7200, from memory), and so high, mm. */
export const TITLE_BLOCK = { width: 180, height: 26 };

const WIDE = 0.5;
const NARROW = 0.25;
const PAD = 2;
const CAPTION = 2.5;
const TEXT = 3.4;
const LARGE = 5;
/** Widths of the columns at the right: scale and lengths, date and sheet, symbol. */
const COLUMNS = [24, 27, 25] as const;
/** Of the names' room, what the layout takes; the view has the rest. */
const LAYOUT_SHARE = 0.45;

/** Title, layout and view at the left; then scale, date and the projection symbol. `box`: its place on the sheet. */
export function titleBlock([left, top, right, bottom]: Box, title: Title): Primitive[] {
  const middle = (top + bottom) / 2;
  const [scale, date, symbol] = COLUMNS;
  const edges = [right - symbol - date - scale, right - symbol - date, right - symbol] as const;
  const names = { left, right: edges[0] };
  const half = names.left + LAYOUT_SHARE * (names.right - names.left);
  const rule = (from: Point, to: Point, width: number): Primitive => line([from, to], width);
  return [
    { kind: 'line', points: [[left, top], [right, top], [right, bottom], [left, bottom]], closed: true, width: WIDE, fill: 'paper' }, // prettier-ignore
    rule([left, middle], [edges[2], middle], NARROW),
    rule([half, middle], [half, bottom], NARROW),
    ...edges.map((x) => rule([x, top], [x, bottom], NARROW)),
    ...cell('project', title.title, [left, top, names.right, middle], LARGE),
    ...cell('layout', title.layout, [left, middle, half, bottom], TEXT),
    ...cell('view', title.view, [half, middle, names.right, bottom], TEXT),
    ...cell('scale', title.scale, [edges[0], top, edges[1], middle], LARGE),
    ...cell('lengths in', title.lengths, [edges[0], middle, edges[1], bottom], TEXT),
    ...cell('date', title.date, [edges[1], top, edges[2], middle], TEXT),
    ...cell('sheet', title.sheet, [edges[1], middle, edges[2], bottom], TEXT),
    ...projectionSymbol([(edges[2] + right) / 2, middle], 7, title.angle),
  ];
}

/** A caption over its text. */
function cell(caption: string, text: string, [left, top, right, bottom]: Box, size: number): Primitive[] {
  const start = { kind: 'text', anchor: 'start' } as const;
  return [
    { ...start, text: caption, at: [left + PAD, top + PAD + 0.72 * CAPTION], size: CAPTION },
    fittedText({ ...start, text, at: [left + PAD, bottom - PAD - 0.5], size }, right - left - 2 * PAD),
  ];
}
