import type { Primitive, TextPrimitive } from '$lib/drawing/primitive.ts';
import { svgPath } from '$lib/drawing/svgPath.ts';
import { fixed } from './number.ts';
import { HATCH_GAP } from '$lib/drawing/viewPrimitives.ts';
import { printedFill } from './printedFill.ts';
import { PRINTED } from './scaledView.ts';
import type { ViewSheet } from './viewSheet.ts';
import { xmlText } from './xml.ts';

/** Id of the pattern for hatched areas. */
const HATCH = 'hatch';

/** Fonts that most machines have, after the page's own. */
const FONTS = "B612, 'DejaVu Sans', Verdana, 'Helvetica Neue', Arial, sans-serif";

/**
 * The sheet as an SVG document in true mm. Lettering is text, so that every script can be read, found and copied; it names
 * fonts that most machines have, and is given room enough for any of them.
 *
 * @throws RangeError naming the group for a place or a size that is not finite.
 */
export const sheetSvg = ({ width, height, title, about, groups }: ViewSheet): string =>
  [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `  <title>${xmlText(title)}</title>`,
    `  <desc>${xmlText(about)}</desc>`,
    ...hatching,
    `  <rect width="${width}" height="${height}" fill="#ffffff"/>`,
    ...groups.flatMap(({ id, primitives }) => [
      `  <g id="${id}" fill="none" stroke="#000000" stroke-linejoin="round" font-family="${FONTS}">`,
      ...primitives.map((primitive) => `    ${primitiveSvg(primitive, id)}`),
      '  </g>',
    ]),
    '</svg>',
    '',
  ].join('\n');

const hatching: readonly string[] = [
  '  <defs>',
  `    <pattern id="${HATCH}" width="${HATCH_GAP}" height="${HATCH_GAP}" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">`,
  `      <path d="M ${HATCH_GAP / 2} 0 V ${HATCH_GAP}" stroke="#000000" stroke-width="${PRINTED.narrow}"/>`,
  '    </pattern>',
  '  </defs>',
];

/** One element, within a group that draws black lines and fills nothing. */
function primitiveSvg(primitive: Primitive, owner: string): string {
  const number = (value: number): string => fixed(value, owner);
  if (primitive.kind === 'text') return textSvg(primitive, number);
  const look = lookOf(primitive, number);
  if (primitive.kind === 'circle') {
    const [x, y] = primitive.centre;
    return `<circle cx="${number(x)}" cy="${number(y)}" r="${number(primitive.radius)}"${look}/>`;
  }
  return `<path d="${svgPath(primitive, number)}"${look}/>`;
}

/** Line width, dashes and fill. */
function lookOf(
  { width, dashes = [], fill }: Exclude<Primitive, TextPrimitive>,
  number: (value: number) => string,
): string {
  const colour = printedFill(fill, `url(#${HATCH})`);
  return [
    colour === undefined ? '' : ` fill="${colour}"`,
    width === 0 ? ' stroke="none"' : ` stroke-width="${number(width)}"`,
    dashes.length === 0 ? '' : ` stroke-dasharray="${dashes.map(number).join(' ')}"`,
  ].join('');
}

function textSvg(
  { text, at: [x, y], turn = 0, anchor, size }: TextPrimitive,
  number: (value: number) => string,
): string {
  const place = `x="${number(x)}" y="${number(y)}"`;
  const turned = turn === 0 ? '' : ` transform="rotate(${number(turn)} ${number(x)} ${number(y)})"`;
  const anchored = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
  return `<text ${place}${turned}${anchored} font-size="${number(size)}" fill="#000000" stroke="none">${xmlText(text)}</text>`;
}
