import type { Box } from '$lib/drawing/box.ts';
import { closeRows, ofRank } from '$lib/drawing/rows.ts';
import { scaleText } from '$lib/drawing/scaleText.ts';
import { movePrimitives, type Primitive } from '$lib/drawing/primitive.ts';
import type { View } from '$lib/drawing/view.ts';
import { failure, success, type Result } from '$lib/project/fault.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { bothWays, papers, type PaperName, type PaperSize } from './paper.ts';
import { frameOf, printScales, type PrintScale } from './printSheet.ts';
import type { ProjectionAngle } from './projectionSymbol.ts';
import { viewAt, type ViewAt } from './scaledView.ts';
import { SCALE_BAR, scaleBar } from './scaleBar.ts';
import { TITLE_BLOCK, titleBlock } from './titleBlock.ts';

export interface PrintOptions {
  readonly sheet: PaperName;
  /** Real mm for each paper mm. The largest that fits where nothing is said. */
  readonly scale?: PrintScale;
  readonly display: LengthDisplay;
  /** For the title block; the caller knows the day and how it is written. */
  readonly title: string;
  readonly layout: string;
  readonly date: string;
  /** Default third angle, as the sheet on the page is laid out. */
  readonly angle?: ProjectionAngle;
}

/** A view on a sheet of paper, ready to be written: mm, y down. */
export interface ViewSheet extends PaperSize {
  readonly title: string;
  /** What else is to be known of it. */
  readonly about: string;
  readonly groups: readonly { readonly id: string; readonly primitives: readonly Primitive[] }[];
}

/** Border line of a sheet, mm (ISO 5457, from memory). */
const BORDER_LINE = 0.7;
/** Least distance of the drawing from the border and the title block, mm. */
const CLEAR = 5;

/**
 * One view to print: a sheet of paper in true mm at a standard scale, with its dimensions, a title block and a bar to check the
 * print by. Refused when the view does not fit the sheet at the scale, or at any.
 */
export function viewSheet(view: View, options: PrintOptions): Result<ViewSheet> {
  const closed = closeRows(ofRank(view, 4));
  const wanted = options.scale === undefined ? printScales : [options.scale];
  for (const scale of wanted) {
    const drawn = viewAt(closed, scale, options.display);
    const sheet = roomiest(drawn, options.sheet);
    if (sheet) return success(laidOut(closed, drawn, scale, sheet, options));
  }
  return failure({ pointer: '', message: refusal(closed, options) });
}

function refusal(view: View, { sheet, scale }: PrintOptions): string {
  if (scale === undefined)
    return `expected a view that fits ${sheet} at 1:${printScales.at(-1)}: choose a larger sheet`;
  return `expected a smaller scale or a larger sheet than ${sheet} for “${view.name}”, got 1:${scale}`;
}

/** Where everything goes on a sheet. */
interface Room extends PaperSize {
  readonly frame: Box;
  readonly title: Box;
  readonly bar: readonly [number, number];
  /** What is left for the view. */
  readonly room: Box;
}

function sheetOf(size: PaperSize): Room {
  const frame = frameOf(size);
  const [left, top, right, bottom] = frame;
  const width = Math.min(TITLE_BLOCK.width, right - left);
  const title: Box = [right - width, bottom - TITLE_BLOCK.height, right, bottom];
  const beside = title[0] - left >= SCALE_BAR.width + CLEAR;
  const barTop = (beside ? bottom : title[1]) - SCALE_BAR.height;
  return {
    ...size,
    frame,
    title,
    bar: [left + CLEAR, barTop - (beside ? CLEAR / 2 : 0)],
    room: [left + CLEAR, top + CLEAR, right - CLEAR, (beside ? title[1] : barTop) - CLEAR],
  };
}

/** The way round that leaves more spare room; null when the view fits neither. */
function roomiest({ box: [left, top, right, bottom] }: ViewAt, name: PaperName): Room | null {
  const spare = ({ room }: Room): number =>
    Math.min(room[2] - room[0] - (right - left), room[3] - room[1] - (bottom - top));
  const [upright, onSide] = bothWays(papers[name]).map(sheetOf);
  const best = upright && onSide && (spare(onSide) > spare(upright) ? onSide : upright);
  return best && spare(best) >= 0 ? best : null;
}

function laidOut(view: View, drawn: ViewAt, scale: PrintScale, sheet: Room, options: PrintOptions): ViewSheet {
  const { title, layout, date, display, angle = 'third' } = options;
  const [left, top, right, bottom] = drawn.box;
  const { room, frame, width, height } = sheet;
  const by = [(room[0] + room[2] - left - right) / 2, (room[1] + room[3] - top - bottom) / 2] as const;
  const ratio = scaleText(1 / scale);
  const block = titleBlock(sheet.title, {
    title,
    layout,
    date,
    angle,
    view: view.name,
    scale: ratio,
    lengths: display.length === 'mm' ? 'mm' : 'inches',
    sheet: options.sheet,
  });
  const border: Primitive = { kind: 'line', points: corners(frame), closed: true, width: BORDER_LINE };
  return {
    width,
    height,
    title: `${title}, ${layout}: ${view.name}`,
    about: `Scale ${ratio}. Print at 100 %.`,
    groups: [
      { id: 'view', primitives: movePrimitives(drawn.things, by) },
      { id: 'dimensions', primitives: movePrimitives(drawn.dimensions, by) },
      { id: 'scale-bar', primitives: scaleBar(sheet.bar, scale, display) },
      { id: 'title-block', primitives: block },
      { id: 'border', primitives: [border] },
    ],
  };
}

const corners = ([left, top, right, bottom]: Box) =>
  [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ] as const;
