import type { DxfWriter, LWPolylineVertex } from '@tarikjabiri/dxf';
import type { Contour } from '$lib/geometry/contour.ts';
import type { LayerColours } from '$lib/project/project.ts';
import { layerColours } from '$lib/project/layerColours.ts';
import { onGrid } from './grid.ts';
import { indexColour } from './indexColour.ts';
import { fixed } from './number.ts';
import { colourOf, layerNames, type Plate } from './plate.ts';

/** A bulge holds a half turn as exactly as any other; beyond it the chord shrinks and rounding bites. */
const WIDEST_ARC = Math.PI;

/** $MEASUREMENT 1: metric. */
const METRIC = 1;

/**
 * The plate as a DXF document (2007 format) in mm: layers `engrave`, `inside`, `outside`, paths as LWPOLYLINE with
 * bulges, circles as CIRCLE. The library is fetched on first use. The same plate always gives the same text.
 *
 * @param colours by layer, as true colours and as the nearest of the 255 indexed ones; default `layerColours`.
 * @throws RangeError naming the plate when a number is not finite or a contour has no length.
 */
export async function dxfFile(plate: Plate, colours: LayerColours | null = null): Promise<string> {
  const { DxfWriter, Units } = await import('@tarikjabiri/dxf');
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: METRIC });
  dxf.setVariable('$LASTSAVEDBY', { 1: 'Wedgewright' });
  dxf.setVariable('$EXTMIN', { 10: 0, 20: 0, 30: 0 });
  dxf.setVariable('$EXTMAX', { 10: plate.width, 20: plate.height, 30: 0 });
  for (const layer of layerNames) {
    addLayer(dxf, layer, colourOf(colours ?? layerColours, layer));
    for (const contour of plate.layers[layer]) draw(dxf, layer, onGrid(contour, WIDEST_ARC, `${plate.name}, ${layer}`));
  }
  return plain(dxf.stringify(), plate.name);
}

function addLayer(dxf: DxfWriter, name: string, colour: string): void {
  const layer = dxf.addLayer(name, indexColour(colour), 'Continuous');
  layer.trueColor = parseInt(colour.slice(1), 16);
}

function draw(dxf: DxfWriter, layerName: string, contour: Contour): void {
  if (contour.kind === 'circle') {
    const [x, y] = contour.centre;
    dxf.addCircle({ x, y, z: 0 }, contour.radius, { layerName });
    return;
  }
  const vertices = contour.vertices.map(({ x, y, bulge }): LWPolylineVertex => {
    return bulge === 0 ? { point: { x, y } } : { point: { x, y }, bulge };
  });
  dxf.addLWPolyline(vertices, { layerName, flags: contour.closed ? 1 : 0 });
}

/**
 * Decimals of lengths, mm, and of bulges: far finer than anything is cut, and coarser than what two engines make of the same
 * sine, so that they write the same. With six, a bulge could come back as its arc's complement.
 */
const LENGTH_DECIMALS = 8;
const BULGE_DECIMALS = 12;
const BULGE = 42;

/** The library's text with every real number free of exponents and float dust. */
function plain(text: string, owner: string): string {
  const lines = text.split('\n');
  const tidy = lines.map((line, index) => {
    const code = Number(lines[index - 1]);
    if (index % 2 === 0 || !isReal(code)) return line;
    return fixed(Number(line), owner, code === BULGE ? BULGE_DECIMALS : LENGTH_DECIMALS);
  });
  return `${tidy.join('\n')}\n`;
}

/** Group codes that hold real numbers (DXF reference, from memory). */
const isReal = (code: number): boolean =>
  (code >= 10 && code <= 59) || (code >= 110 && code <= 149) || (code >= 210 && code <= 239);
