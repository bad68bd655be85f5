import type { jsPDF } from 'jspdf';
import { edgesOf, pointAt, type ArcEdge } from '$lib/geometry/edge.ts';
import { checksum } from './checksum.ts';
import type { Contour } from '$lib/geometry/contour.ts';
import type { Stroke, StrokePage } from './stroke.ts';

/** Of a point (1/72 inch): a third of a nanometre. */
const DECIMALS = 6;

/** A fixed time with a fixed zone, so that the same pages always give the same bytes. */
const MADE = "D:19800101000000+00'00'";

/** An eighth of a turn as one curve strays from the arc by 4 millionths of its radius (computed); a quarter by 270. */
const WIDEST_CURVE = Math.PI / 4;

/**
 * The pages as a PDF document, black on white only: no fonts, so nothing depends on what a reader has. It asks readers not to
 * scale when printing; not all of them listen. The library is fetched on first use.
 *
 * @throws RangeError naming the title when a length is not finite.
 */
export async function strokePdf(title: string, pages: readonly StrokePage[]): Promise<Uint8Array> {
  refuseEndless(title, pages);
  const { jsPDF } = await import('jspdf');
  const [first, ...rest] = pages;
  if (!first) throw new RangeError(`${title}: expected pages, got none`);
  const pdf = new jsPDF({
    unit: 'mm',
    ...formatOf(first),
    compress: true,
    putOnlyUsedFonts: true,
    floatPrecision: DECIMALS,
  });
  pdf.setCreationDate(MADE);
  pdf.setFileId(fileId(title, pages));
  pdf.setProperties({ title, creator: 'Wedgewright' });
  pdf.viewerPreferences({ PrintScaling: 'None' });
  drawPage(pdf, first);
  for (const page of rest) {
    const { format, orientation } = formatOf(page);
    pdf.addPage(format, orientation);
    drawPage(pdf, page);
  }
  return new Uint8Array(pdf.output('arraybuffer'));
}

interface Format {
  readonly format: number[];
  readonly orientation: 'landscape' | 'portrait';
}

const formatOf = ({ width, height }: StrokePage): Format => ({
  format: [width, height],
  orientation: width > height ? 'landscape' : 'portrait',
});

/** Different pages, different ids: readers keep what they know of a document by it. */
function fileId(title: string, pages: readonly StrokePage[]): string {
  const bytes = new TextEncoder().encode(JSON.stringify([title, pages]));
  const part = checksum(bytes).toString(16).padStart(8, '0').toUpperCase();
  return part.repeat(4);
}

function refuseEndless(title: string, pages: readonly StrokePage[]): void {
  const refuse = (...numbers: readonly number[]): void => {
    const bad = numbers.find((value) => !Number.isFinite(value));
    if (bad !== undefined) throw new RangeError(`${title}: expected finite lengths, got ${bad}`);
  };
  for (const { strokes, within } of pages) {
    for (const { contour } of [...strokes, ...(within?.strokes ?? [])]) {
      if (contour.kind === 'circle') refuse(...contour.centre, contour.radius);
      else for (const { x, y, bulge } of contour.vertices) if (!Number.isFinite(x + y + bulge)) refuse(x, y, bulge);
    }
  }
}

function drawPage(pdf: jsPDF, { height, strokes, within }: StrokePage): void {
  pdf.setLineCap('round');
  pdf.setLineJoin('round');
  for (const stroke of strokes) draw(pdf, stroke, height);
  if (!within) return;
  pdf.saveGraphicsState();
  pdf.rect(within.x, height - within.y - within.height, within.width, within.height, null);
  pdf.clip();
  pdf.discardPath();
  for (const stroke of within.strokes) draw(pdf, stroke, height);
  pdf.restoreGraphicsState();
}

function draw(pdf: jsPDF, { contour, width, dash, fill }: Stroke, pageHeight: number): void {
  const edges = edgesOf(contour);
  const [first] = edges;
  if (!first) return;
  pdf.setLineWidth(width);
  if (dash) pdf.setLineDashPattern([...dash], 0);
  pdf.moveTo(first.start[0], pageHeight - first.start[1]);
  for (const edge of edges) {
    if (edge.kind === 'arc') curves(pdf, edge, pageHeight);
    else pdf.lineTo(edge.end[0], pageHeight - edge.end[1]);
  }
  if (isClosed(contour)) pdf.close();
  paint(pdf, width, fill);
  if (dash) pdf.setLineDashPattern([], 0);
}

function paint(pdf: jsPDF, width: number, fill: Stroke['fill']): void {
  if (fill === undefined) {
    pdf.stroke();
    return;
  }
  pdf.setFillColor(fill === 'paper' ? '#ffffff' : '#000000');
  if (width === 0) pdf.fill();
  else pdf.fillStroke();
}

const isClosed = (contour: Contour): boolean => contour.kind === 'circle' || contour.closed;

/** The arc as cubic curves that share its ends, directions and middles. */
function curves(pdf: jsPDF, arc: ArcEdge, pageHeight: number): void {
  const count = Math.ceil(Math.abs(arc.sweep) / WIDEST_CURVE);
  const handle = (4 / 3) * Math.tan(arc.sweep / count / 4);
  for (let i = 0; i < count; i += 1) {
    const from = pointAt(arc, i / count);
    const to = i + 1 === count ? arc.end : pointAt(arc, (i + 1) / count);
    const [fx, fy] = [from[0] - arc.centre[0], from[1] - arc.centre[1]];
    const [tx, ty] = [to[0] - arc.centre[0], to[1] - arc.centre[1]];
    pdf.curveTo(
      from[0] - handle * fy,
      pageHeight - (from[1] + handle * fx),
      to[0] + handle * ty,
      pageHeight - (to[1] - handle * tx),
      to[0],
      pageHeight - to[1],
    );
  }
}
