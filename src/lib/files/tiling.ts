import { failure, success, type Result } from '$lib/project/fault.ts';
import { MM_PER_INCH } from '$lib/project/units.ts';
import { MARGIN, papers, type PaperName, type PaperSize } from './paper.ts';

/** How far neighbouring tiles show the same, mm. */
export const OVERLAP = 10;

/** Above each tile, for what the page says of itself, mm. */
const HEADER = 12;

/** Side of the square to measure, mm: round in the unit of those who print on that paper, 100 mm or 4 inches. */
export const squareOn: Readonly<Record<PaperName, number>> = { A4: 100, A3: 100, Letter: 4 * MM_PER_INCH };
/** White kept round it, mm, on both sides together. */
const SQUARE_WHITE = 6;

/** White kept round the drawing, mm: so that its lines are not taken for the frame. */
const RIM = 3;

/** More pages than this nobody joins; it bounds the work. */
export const MOST_PAGES = 100;

/** How a drawing is spread over pages. Lengths in mm. */
export interface Tiling {
  /** The page as printed, upright or lying. */
  readonly page: PaperSize;
  /** What a tile shows of the drawing. */
  readonly frame: PaperSize;
  readonly columns: number;
  readonly rows: number;
  /** Where the drawing's lower left comes to lie, from the lower left of the lowest, leftmost tile. */
  readonly origin: readonly [x: number, y: number];
  /** Side of the square to measure. */
  readonly side: number;
  /** Lower left of that square, on the one page's frame; null where a page of its own comes first. */
  readonly square: readonly [x: number, y: number] | null;
}

/** From one tile's edge to the same edge of the next, mm. */
export const stepOf = ({ frame }: Tiling): PaperSize => ({
  width: frame.width - OVERLAP,
  height: frame.height - OVERLAP,
});

export const pagesOf = ({ columns, rows, square }: Tiling): number => columns * rows + (square ? 0 : 1);

/**
 * The tiling with the fewest pages, upright rather than lying where both do. A drawing that leaves room for the square on
 * its one page needs no page before it.
 *
 * Refused where it would take more than `MOST_PAGES`.
 */
export function tilingOf(name: string, size: PaperSize, paper: PaperName): Result<Tiling> {
  const { width, height } = papers[paper];
  const [upright, lying] = [
    spread(size, { width, height }, squareOn[paper]),
    spread(size, { width: height, height: width }, squareOn[paper]),
  ];
  const best = pagesOf(lying) < pagesOf(upright) ? lying : upright;
  if (pagesOf(best) <= MOST_PAGES) return success(best);
  const message = `expected a template of at most ${MOST_PAGES} pages, got ${pagesOf(best)} of ${paper} for "${name}": mark it out by its numbers, or cut it from its DXF`;
  return failure({ pointer: '', message });
}

function spread({ width, height }: PaperSize, page: PaperSize, side: number): Tiling {
  const frame = { width: page.width - 2 * MARGIN, height: page.height - 2 * MARGIN - HEADER };
  const needed = { width: width + 2 * RIM, height: height + 2 * RIM };
  const columns = count(needed.width, frame.width);
  const rows = count(needed.height, frame.height);
  const square = columns * rows === 1 ? besides(needed, frame, side) : null;
  const span = (tiles: number, each: number): number => (tiles - 1) * (each - OVERLAP) + each;
  const origin = square
    ? ([RIM, RIM] as const)
    : ([(span(columns, frame.width) - width) / 2, (span(rows, frame.height) - height) / 2] as const);
  return { page, frame, columns, rows, origin, side, square };
}

const count = (needed: number, side: number): number => Math.max(1, Math.ceil((needed - OVERLAP) / (side - OVERLAP)));

/** Room for the square above or right of a drawing at the frame's lower left. */
function besides(drawn: PaperSize, frame: PaperSize, side: number): readonly [number, number] | null {
  const room = side + SQUARE_WHITE;
  const [right, top] = [frame.width - room, frame.height - room];
  const inset = SQUARE_WHITE / 2;
  return drawn.height <= top || drawn.width <= right ? [right + inset, top + inset] : null;
}

/** Column letters as spreadsheets count them: A…Z, AA, AB… and rows from 1 at the top. */
export function tileName(column: number, row: number): string {
  let letters = '';
  for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1) {
    letters = String.fromCharCode(65 + (rest % 26)) + letters;
  }
  return `${letters}${row + 1}`;
}
