import { circle, polygonPath, type Contour } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import {
  contourPrimitive,
  flipPrimitives,
  line,
  movePrimitives,
  primitivesBox,
  type Primitive,
} from '$lib/drawing/primitive.ts';
import { lengthWithUnit } from '$lib/project/lengthText.ts';
import type { LengthUnit } from '$lib/project/units.ts';
import { MARGIN } from './paper.ts';
import { layerNames, type LayerName, type Plate } from './plate.ts';
import type { PdfPage } from './pdf/content.ts';
import { words } from './pdf/words.ts';
import { OVERLAP, stepOf, tileName, type Tiling } from './tiling.ts';

/** Widths of lines, mm, from the series of technical drawings: what is cut twice as heavy as what helps. */
const PENS: Readonly<Record<LayerName, number>> = { outside: 0.25, inside: 0.25, engrave: 0.18 };
const FINE = 0.13;
const DASHES = [2, 1.5];

const LETTER = 3;
const SMALL = 2.5;

/**
 * The plate at full size over the tiles, one page each, column by column within each row from the top left, after a page
 * with the square where there is no room for it beside the drawing.
 *
 * The square comes once, because one print has one scale; every tile also says how large its frame must be, so that a
 * page printed again by itself can be checked.
 */
export function templatePages(plate: Plate, tiling: Tiling, unit: LengthUnit): PdfPage[] {
  const tiles: PdfPage[] = [];
  for (let row = 0; row < tiling.rows; row += 1) {
    for (let column = 0; column < tiling.columns; column += 1) tiles.push(tilePage(plate, tiling, unit, column, row));
  }
  return tiling.square ? tiles : [coverPage(plate, tiling, unit), ...tiles];
}

/** With y up, as all that is drawn here until it is turned over onto its page. */
const rectangle = (x: number, y: number, width: number, height: number): Primitive =>
  contourPrimitive(polygonPath([[x, y], [x + width, y], [x + width, y + height], [x, y + height]]), FINE); // prettier-ignore

function tilePage(plate: Plate, tiling: Tiling, unit: LengthUnit, column: number, row: number): PdfPage {
  const { page, frame, origin, square } = tiling;
  const step = stepOf(tiling);
  // From the tiles' common frame, which begins at the lowest, leftmost tile, to the page.
  const [x, y] = [MARGIN - column * step.width, MARGIN - (tiling.rows - 1 - row) * step.height];
  const drawn = layerNames.flatMap((layer) =>
    plate.layers[layer].map((contour) => contourPrimitive(contour, PENS[layer])),
  );
  const shown = [
    ...movePrimitives(drawn, [x + origin[0], y + origin[1]]),
    ...movePrimitives(joinMarks(tiling), [x, y]),
  ];
  return {
    ...page,
    primitives: flipPrimitives(
      [
        rectangle(MARGIN, MARGIN, frame.width, frame.height),
        ...header(plate, tiling, unit, tileName(column, row)),
        ...(square ? checkSquare(MARGIN + square[0], MARGIN + square[1], tiling.side, unit) : []),
      ],
      page.height,
    ),
    within: {
      x: MARGIN,
      y: page.height - MARGIN - frame.height,
      ...frame,
      primitives: flipPrimitives(
        shown.filter((one) => meetsFrame(one, tiling)),
        page.height,
      ),
    },
  };
}

/** Said the other way round so that what is no number stays, and is refused when it is drawn. */
function meetsFrame(primitive: Primitive, { frame }: Tiling): boolean {
  const [left, bottom, right, top] = primitivesBox([primitive]);
  const isBeside = left > MARGIN + frame.width || right < MARGIN;
  return !(isBeside || bottom > MARGIN + frame.height || top < MARGIN);
}

function header(plate: Plate, { page, frame }: Tiling, unit: LengthUnit, name: string): Primitive[] {
  const top = page.height - MARGIN;
  const size = `${length(frame.width, unit)} × ${length(frame.height, unit)}`;
  return [
    words(name, { height: LETTER * 1.5, x: page.width - MARGIN, y: top - 6.5, anchor: 'end' }, 20),
    words(plate.name, { height: LETTER, x: MARGIN, y: top - 4, anchor: 'start' }, frame.width - 25),
    words(
      `Print at 100 %. This frame must measure ${size}.`,
      { height: SMALL, x: MARGIN, y: top - 9, anchor: 'start' },
      frame.width - 25,
    ),
  ];
}

/** What a ruler checks: decimals in inches too, for a page is no round fraction of them. */
const length = (mm: number, unit: LengthUnit): string => lengthWithUnit(mm, { length: unit, fraction: null });

function checkSquare(x: number, y: number, side: number, unit: LengthUnit): Primitive[] {
  const middle = { x: x + side / 2, anchor: 'middle' } as const;
  return [
    rectangle(x, y, side, side),
    words(
      `Print at 100 %, measure the square: ${length(side, unit)} each way`,
      { ...middle, height: SMALL, y: y + side / 2 },
      side - 10,
    ),
  ];
}

/** In the tiles' common frame, so that both pages of a join show the same: its middle, crosses to lay on each other, names. */
function joinMarks(tiling: Tiling): Primitive[] {
  const { frame, columns, rows } = tiling;
  const step = stepOf(tiling);
  const joins: Primitive[] = [];
  for (let row = 0; row < rows; row += 1) {
    const bottom = (rows - 1 - row) * step.height;
    for (let column = 0; column < columns; column += 1) {
      const left = column * step.width;
      const here = tileName(column, row);
      if (column + 1 < columns) {
        const x = left + step.width + OVERLAP / 2;
        const crosses = [1, 3].map((quarter) => [x, bottom + (frame.height * quarter) / 4] as const);
        joins.push(dashed([x, bottom], [x, bottom + frame.height]), ...crosses.flatMap(target));
        joins.push(joinName(`${here}–${tileName(column + 1, row)}`, x, bottom + frame.height / 2));
      }
      if (row + 1 < rows) {
        const y = bottom + OVERLAP / 2;
        const crosses = [1, 3].map((quarter) => [left + (frame.width * quarter) / 4, y] as const);
        joins.push(dashed([left, y], [left + frame.width, y]), ...crosses.flatMap(target));
        joins.push(joinName(`${here}–${tileName(column, row + 1)}`, left + frame.width / 2, y));
      }
    }
  }
  return joins;
}

const dashed = (from: Point, to: Point): Primitive => ({ ...line([from, to], FINE), dashes: DASHES });

/** A cross in a ring, within the overlap. */
function target([x, y]: Point): Primitive[] {
  const reach = OVERLAP * 0.4;
  return [
    { kind: 'circle', centre: [x, y], radius: reach / 2, width: FINE },
    line([[x - reach, y], [x + reach, y]], FINE), // prettier-ignore
    line([[x, y - reach], [x, y + reach]], FINE), // prettier-ignore
  ];
}

const joinName = (text: string, x: number, y: number): Primitive =>
  words(text, { height: SMALL * 0.8, x, y: y + 0.5, anchor: 'middle' }, OVERLAP - 1);

/** Title, square, and a small picture of how the tiles join. */
function coverPage(plate: Plate, tiling: Tiling, unit: LengthUnit): PdfPage {
  const { page, columns, rows, side } = tiling;
  const [left, top, room] = [MARGIN, page.height - MARGIN, page.width - 2 * MARGIN];
  const say = (text: string, height: number, y: number): Primitive =>
    words(text, { height, x: left, y, anchor: 'start' }, room);
  const square = top - 20 - side;
  const last = tileName(columns - 1, rows - 1);
  const tiles = columns * rows === 1 ? 'The drawing is on the next page.' : `Join ${tileName(0, 0)} to ${last}: lay the ringed crosses on each other, cut or fold along the dashed lines.`; // prettier-ignore
  const drawn = [
    say(plate.name, LETTER * 1.5, top - 6),
    say(tiles, SMALL, top - 13),
    ...checkSquare(left, square, side, unit),
    ...(columns * rows === 1 ? [] : tileMap(tiling, plate)),
  ];
  return { ...page, primitives: flipPrimitives(drawn, page.height), within: null };
}

/** Beside the square on a lying page, below it on an upright one. */
function tileMap(tiling: Tiling, plate: Plate): Primitive[] {
  const { page, columns, rows, frame, origin, side } = tiling;
  const lies = page.width > page.height;
  const top = page.height - MARGIN - 20;
  const room = lies
    ? { x: MARGIN + side + 10, top, width: page.width - 2 * MARGIN - side - 10, height: top - MARGIN }
    : { x: MARGIN, top: top - side - 10, width: page.width - 2 * MARGIN, height: top - side - 10 - MARGIN };
  const step = stepOf(tiling);
  const whole = { width: (columns - 1) * step.width + frame.width, height: (rows - 1) * step.height + frame.height };
  const scale = Math.min(room.width / whole.width, room.height / whole.height, 0.5);
  const at = (x: number, y: number): readonly [number, number] => [
    room.x + x * scale,
    room.top - (whole.height - y) * scale,
  ];
  const tiles: Primitive[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const [x, y] = at(column * step.width, (rows - 1 - row) * step.height);
      const [width, height] = [frame.width * scale, frame.height * scale];
      tiles.push(rectangle(x, y, width, height));
      const place = { height: SMALL, x: x + 1.5, y: y + height - SMALL - 1.5, anchor: 'start' } as const;
      tiles.push(words(tileName(column, row), place, width * 0.6));
    }
  }
  const drawn = plate.layers.outside.map((contour) => contourPrimitive(scaled(contour, scale), FINE));
  return [...tiles, ...movePrimitives(drawn, at(origin[0], origin[1]))];
}

function scaled(contour: Contour, factor: number): Contour {
  if (contour.kind === 'circle') {
    const [x, y] = contour.centre;
    return circle([x * factor, y * factor], contour.radius * factor);
  }
  const vertices = contour.vertices.map(({ x, y, bulge }) => ({ x: x * factor, y: y * factor, bulge }));
  return { ...contour, vertices };
}
