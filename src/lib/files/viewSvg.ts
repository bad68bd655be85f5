import type { Box } from '$lib/drawing/box.ts';
import { closeRows } from '$lib/drawing/rows.ts';
import { scaleText } from '$lib/drawing/scaleText.ts';
import { movePrimitives, primitivesBox, type Primitive } from '$lib/drawing/primitive.ts';
import type { View } from '$lib/drawing/view.ts';
import { HATCH_GAP, viewPrimitives, type ViewPrimitives } from '$lib/drawing/viewPrimitives.ts';
import { failure, success, type Result } from '$lib/project/fault.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { HATCH, primitiveSvg } from './primitiveSvg.ts';
import {
  bothWays,
  frameOf,
  printScales,
  printSheets,
  type PrintScale,
  type SheetName,
  type SheetSize,
} from './printSheet.ts';
import type { ProjectionAngle } from './projectionSymbol.ts';
import { PRINTED } from './scaledView.ts';
import { SCALE_BAR, scaleBar } from './scaleBar.ts';
import { TITLE_BLOCK, titleBlock } from './titleBlock.ts';
import { xmlText } from './xml.ts';

export interface PrintOptions {
  readonly sheet: SheetName;
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

/** Border line of a sheet, mm (ISO 5457, from memory). */
const BORDER_LINE = 0.7;
/** Least distance of the drawing from the border and the title block, mm. */
const CLEAR = 5;

/**
 * One view as an SVG document to print: a sheet of paper in true mm at a standard scale, with its dimensions, a title block
 * and a bar to check the print by. Lettering is text, so that every script can be read, found and copied; it names fonts that
 * most machines have, and is given room enough for any of them. Refused when the view does not fit the sheet at the scale, or
 * at any.
 */
export function viewSvg(view: View, options: PrintOptions): Result<string> {
  const closed = closeRows(view);
  const wanted = options.scale === undefined ? printScales : [options.scale];
  for (const scale of wanted) {
    const place = { scale: 1 / scale, origin: [0, 0] } as const;
    const drawn = viewPrimitives(closed, { place, style: PRINTED }, options.display);
    const sheet = roomiest(drawn, options.sheet);
    if (sheet) return success(document(closed, drawn, scale, sheet, options));
  }
  return failure({ pointer: '', message: refusal(closed, options) });
}

function refusal(view: View, { sheet, scale }: PrintOptions): string {
  if (scale === undefined)
    return `expected a view that fits ${sheet} at 1:${printScales.at(-1)}: choose a larger sheet`;
  return `expected a smaller scale or a larger sheet than ${sheet} for “${view.name}”, got 1:${scale}`;
}

/** Where everything goes on a sheet. */
interface Sheet extends SheetSize {
  readonly frame: Box;
  readonly title: Box;
  readonly bar: readonly [number, number];
  /** What is left for the view. */
  readonly room: Box;
}

function sheetOf(size: SheetSize): Sheet {
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
function roomiest(drawn: ViewPrimitives, name: SheetName): Sheet | null {
  const [left, top, right, bottom] = primitivesBox([...drawn.things, ...drawn.dimensions]);
  const spare = ({ room }: Sheet): number =>
    Math.min(room[2] - room[0] - (right - left), room[3] - room[1] - (bottom - top));
  const [upright, onSide] = bothWays(printSheets[name]).map(sheetOf);
  const best = upright && onSide && (spare(onSide) > spare(upright) ? onSide : upright);
  return best && spare(best) >= 0 ? best : null;
}

function document(view: View, drawn: ViewPrimitives, scale: PrintScale, sheet: Sheet, options: PrintOptions): string {
  const { title, layout, date, display, angle = 'third' } = options;
  const [left, top, right, bottom] = primitivesBox([...drawn.things, ...drawn.dimensions]);
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
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `  <title>${xmlText(`${title}, ${layout}: ${view.name}`)}</title>`,
    `  <desc>${xmlText(`Scale ${ratio}. Print at 100 %.`)}</desc>`,
    ...hatching,
    `  <rect width="${width}" height="${height}" fill="#ffffff"/>`,
    ...group('view', movePrimitives(drawn.things, by)),
    ...group('dimensions', movePrimitives(drawn.dimensions, by)),
    ...group('scale-bar', scaleBar(sheet.bar, scale, display)),
    ...group('title-block', block),
    ...group('border', [border]),
    '</svg>',
    '',
  ].join('\n');
}

const corners = ([left, top, right, bottom]: Box) =>
  [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ] as const;

/** Fonts that most machines have, after the page's own. */
const FONTS = "B612, 'DejaVu Sans', Verdana, 'Helvetica Neue', Arial, sans-serif";

const group = (id: string, primitives: readonly Primitive[]): string[] => [
  `  <g id="${id}" fill="none" stroke="#000000" stroke-linejoin="round" font-family="${FONTS}">`,
  ...primitives.map((primitive) => `    ${primitiveSvg(primitive, id)}`),
  '  </g>',
];

const hatching: readonly string[] = [
  '  <defs>',
  `    <pattern id="${HATCH}" width="${HATCH_GAP}" height="${HATCH_GAP}" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">`,
  `      <path d="M ${HATCH_GAP / 2} 0 V ${HATCH_GAP}" stroke="#000000" stroke-width="${PRINTED.narrow}"/>`,
  '    </pattern>',
  '  </defs>',
];
