import type { Contour, Vertex } from '$lib/geometry/contour.ts';
import type { LayerColours } from '$lib/project/project.ts';
import { layerColours } from '$lib/project/layerColours.ts';
import { onGrid } from './grid.ts';
import { fixed } from './number.ts';
import { colourOf, layerNames, type LayerName, type Plate } from './plate.ts';
import { xmlText } from './xml.ts';

/** About a thousandth of an inch: what cutting software takes for a line to follow, not to fill (common practice, no source). */
const HAIRLINE = 0.025;

/** Engraving is drawn wider: it is told apart without its colour too, and is not taken for a line to cut along. mm. */
const ENGRAVED = 0.1;

/** What each layer is for, for whoever points at it. */
const ABOUT: Readonly<Record<LayerName, string>> = {
  engrave: 'engrave: lettering and centre lines, not cut through',
  inside: 'inside: holes and slots',
  outside: 'outside: round the parts',
};

/**
 * SVG arcs name a radius, and readers work in single precision: the nearer an arc is to a half turn, the more a
 * radius's last digit moves it. Up to a quarter turn it does not matter.
 */
const WIDEST_ARC = Math.PI / 2;

/** Radii are derived, not placed: more digits than the grid keep them true to their arcs. */
const RADIUS_DECIMALS = 6;

/**
 * The plate as an SVG document in mm: one group a layer with its title, in cutting order, hairlines to cut along, coordinates really turned to y down
 * (no transform), arcs as arcs, circles as circles.
 *
 * @param colours of the layers' lines; default `layerColours`.
 * @throws RangeError naming the plate when a number is not finite or a contour has no length.
 */
export function svgFile(plate: Plate, colours: LayerColours | null = null): string {
  const width = fixed(plate.width, `${plate.name}, width`);
  const height = fixed(plate.height, `${plate.name}, height`);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `  <title>${xmlText(plate.name)}</title>`,
    ...layerNames.flatMap((layer) => group(plate, layer, colourOf(colours ?? layerColours, layer))),
    '</svg>',
    '',
  ].join('\n');
}

function group(plate: Plate, layer: LayerName, colour: string): string[] {
  const owner = `${plate.name}, ${layer}`;
  return [
    `  <g id="${layer}" fill="none" stroke="${xmlText(colour)}" stroke-width="${layer === 'engrave' ? ENGRAVED : HAIRLINE}">`,
    `    <title>${ABOUT[layer]}</title>`,
    ...plate.layers[layer].map((contour) => `    ${element(onGrid(contour, WIDEST_ARC, owner), plate.height, owner)}`),
    '  </g>',
  ];
}

function element(contour: Contour, plateHeight: number, owner: string): string {
  const across = (x: number): string => fixed(x, owner);
  const down = (y: number): string => fixed(plateHeight - y, owner);
  if (contour.kind === 'circle') {
    const [x, y] = contour.centre;
    return `<circle cx="${across(x)}" cy="${down(y)}" r="${fixed(contour.radius, owner)}"/>`;
  }
  const { vertices, closed } = contour;
  const [first] = vertices;
  if (!first) return '';
  const moves = vertices.flatMap((from, index) => {
    const to = vertices[index + 1] ?? (closed ? first : undefined);
    // A straight way back to the start is what Z draws.
    if (!to || (to === first && from.bulge === 0)) return [];
    return `${step(from, to, owner)} ${across(to.x)} ${down(to.y)}`;
  });
  return `<path d="M ${across(first.x)} ${down(first.y)} ${moves.join(' ')}${closed ? ' Z' : ''}"/>`;
}

/** The command up to its end point. With y down a counter-clockwise arc has sweep 0. */
function step(from: Vertex, to: Vertex, owner: string): string {
  const { bulge } = from;
  if (bulge === 0) return 'L';
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const radius = fixed((chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)), owner, RADIUS_DECIMALS);
  return `A ${radius} ${radius} 0 0 ${bulge > 0 ? 0 : 1}`;
}
