import type { Rgb } from '$lib/drawing/space/colour.ts';
import type { StillShape } from '$lib/drawing/space/still.ts';
import { svgPath } from '$lib/drawing/svgPath.ts';
import { fixed } from './number.ts';
import { xmlText } from './xml.ts';

/** What a still picture of the scene in space is written with, besides its shapes. px. */
export interface SpacePicture {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly about: string;
  readonly paper: Rgb;
}

/** The attributes of a shape: of the path that draws it, here and on the page. */
export function shapeLook({
  kind,
  paths,
  colour,
  width,
}: StillShape): Record<'d' | 'fill' | 'stroke' | 'stroke-width', string> {
  const paint = rgbText(colour);
  const closed = kind === 'area';
  return {
    d: paths.map((points) => svgPath({ points, closed }, (value) => fixed(value, 'the picture in space', 2))).join(''),
    fill: closed ? paint : 'none',
    stroke: paint,
    'stroke-width': `${width}`,
  };
}

/** A colour as style sheets and SVG write it. */
const rgbText = (colour: Rgb): string => `rgb(${colour.map((value) => Math.round(value)).join(' ')})`;

/**
 * A still picture as an SVG document.
 *
 * @throws RangeError for a place that is not finite.
 */
export const spaceSvg = (shapes: readonly StillShape[], { width, height, title, about, paper }: SpacePicture): string =>
  [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">`,
    `  <title>${xmlText(title)}</title>`,
    `  <desc>${xmlText(about)}</desc>`,
    `  <rect width="${width}" height="${height}" fill="${rgbText(paper)}"/>`,
    '  <g stroke-linecap="round" stroke-linejoin="round">',
    ...shapes.map((shape) => `    <path ${attributesText(shapeLook(shape))}/>`),
    '  </g>',
    '</svg>',
    '',
  ].join('\n');

const attributesText = (attributes: Readonly<Record<string, string>>): string =>
  Object.entries(attributes)
    .map(([name, value]) => `${name}="${value}"`)
    .join(' ');
