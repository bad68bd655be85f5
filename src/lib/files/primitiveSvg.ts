import type { Primitive, TextPrimitive } from '$lib/drawing/primitive.ts';
import { svgPath } from '$lib/drawing/svgPath.ts';
import { fixed } from './number.ts';
import { printedFill } from './printedFill.ts';
import { xmlText } from './xml.ts';

/** Id of the pattern for hatched areas. */
export const HATCH = 'hatch';

/**
 * A primitive as one SVG element, within a group that draws black lines and fills nothing.
 *
 * @param owner names the primitive's group in an error message.
 * @throws RangeError for a place or a size that is not finite.
 */
export function primitiveSvg(primitive: Primitive, owner: string): string {
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
