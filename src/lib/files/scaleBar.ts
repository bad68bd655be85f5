import type { Point } from '$lib/geometry/point.ts';
import { rectangle } from '$lib/drawing/box.ts';
import { lengthWithUnit } from '$lib/project/lengthText.ts';
import { MM_PER_INCH, type LengthDisplay } from '$lib/project/units.ts';
import { line, type Primitive } from '$lib/drawing/primitive.ts';
import type { PrintScale } from './printSheet.ts';

const NARROW = 0.25;
const THICKNESS = 2;
const TEXT = 3;
const NOTE = 2.5;
/** Room for the bar with its numbers and its note, mm. */
export const SCALE_BAR = { width: 84, height: 13 };

/** True length of the bar on the paper and the number of its fields. */
const barOf = ({ length }: LengthDisplay): { readonly length: number; readonly fields: number } =>
  length === 'mm' ? { length: 50, fields: 5 } : { length: 2 * MM_PER_INCH, fields: 4 };

/**
 * A bar that is exactly 50 mm or 2 in long on the paper, in dark and light fields, with the real lengths of its ends; the note
 * tells how to find out whether a printer has shrunk the sheet. `corner`: upper left of its room.
 */
export function scaleBar([left, top]: Point, scale: PrintScale, display: LengthDisplay): Primitive[] {
  const { length, fields } = barOf(display);
  // Whole inches, so that eighths say them without decimals.
  const said = (mm: number): string => lengthWithUnit(mm, { length: display.length, fraction: 8 });
  const upper = top + TEXT + 1.4;
  const field = length / fields;
  const dark = Array.from({ length: fields }, (_, index) => index).filter((index) => index % 2 === 0);
  const label = (x: number, text: string): Primitive => ({
    kind: 'text',
    text,
    at: [x, top + TEXT],
    anchor: 'middle',
    size: TEXT,
  });
  return [
    label(left, '0'),
    label(left + length, said(length * scale)),
    ...dark.map((index): Primitive => ({
      kind: 'line',
      points: rectangle([left + index * field, upper, left + (index + 1) * field, upper + THICKNESS]),
      closed: true,
      width: 0,
      fill: 'ink',
    })),
    line(
      [
        [left, upper],
        [left + length, upper],
      ],
      NARROW,
    ),
    line(
      [
        [left, upper + THICKNESS],
        [left + length, upper + THICKNESS],
      ],
      NARROW,
    ),
    ...[left, left + length].map((x) =>
      line(
        [
          [x, upper - 0.8],
          [x, upper + THICKNESS + 0.8],
        ],
        NARROW,
      ),
    ),
    {
      kind: 'text',
      text: `The bar measures ${said(length)} on a sheet printed at 100 %`,
      at: [left, upper + THICKNESS + 1 + NOTE],
      anchor: 'start',
      size: NOTE,
    },
  ];
}
