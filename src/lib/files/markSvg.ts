import type { Point } from '$lib/geometry/point.ts';
import type { Mark, TextMark } from './marks.ts';
import { fixed } from './number.ts';
import { xmlText } from './xml.ts';

/**
 * A mark as one SVG element, within a group that draws black lines and fills nothing.
 *
 * @param owner names the mark's group in an error message.
 * @throws RangeError for a place or a size that is not finite.
 */
export function markSvg(mark: Mark, owner: string): string {
  const number = (value: number): string => fixed(value, owner);
  if (mark.kind === 'text') return textSvg(mark, number);
  const look = lookOf(mark, number);
  if (mark.kind === 'circle') {
    const [x, y] = mark.centre;
    return `<circle cx="${number(x)}" cy="${number(y)}" r="${number(mark.radius)}"${look}/>`;
  }
  return `<path d="${pathData(mark.points, mark.closed, number)}"${look}/>`;
}

const pathData = (points: readonly Point[], closed: boolean, number: (value: number) => string): string =>
  `M ${points.map(([x, y]) => `${number(x)} ${number(y)}`).join(' L ')}${closed ? ' Z' : ''}`;

/** Line width, dashes and fill; a hatched area has its pattern for a fill. */
function lookOf({ width, dashes = [], fill }: Exclude<Mark, TextMark>, number: (value: number) => string): string {
  return [
    fill === undefined ? '' : ` fill="${fill}"`,
    width === 0 ? ' stroke="none"' : ` stroke-width="${number(width)}"`,
    dashes.length === 0 ? '' : ` stroke-dasharray="${dashes.map(number).join(' ')}"`,
  ].join('');
}

function textSvg({ text, at: [x, y], turn = 0, anchor, size }: TextMark, number: (value: number) => string): string {
  const place = `x="${number(x)}" y="${number(y)}"`;
  const turned = turn === 0 ? '' : ` transform="rotate(${number(turn)} ${number(x)} ${number(y)})"`;
  const anchored = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
  return `<text ${place}${turned}${anchored} font-size="${number(size)}" fill="#000000" stroke="none">${xmlText(text)}</text>`;
}
