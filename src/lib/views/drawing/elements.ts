import type { Fill, LinePrimitive, Part, Primitive, TextPrimitive } from '$lib/drawing/primitive.ts';
import { lineData } from './pathData.ts';

/** What a screen draws of primitives: an element each, but lines of one kind are one path. Paper units. */
export type Element = PathElement | CircleElement | TextElement;

interface Look {
  readonly width: number;
  /** Undefined for a continuous line. */
  readonly dashes: string | undefined;
  readonly fill: Fill | undefined;
}

interface PathElement extends Look {
  readonly kind: 'path';
  readonly d: string;
  readonly part: Part | undefined;
}

interface CircleElement extends Look {
  readonly kind: 'circle';
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

interface TextElement {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly anchor: TextPrimitive['anchor'];
  /** Undefined for a level one. */
  readonly turn: string | undefined;
  readonly text: string;
}

export function elementsOf(primitives: readonly Primitive[]): Element[] {
  const elements: Element[] = [];
  let before: Primitive | null = null;
  for (const primitive of primitives) {
    const last = elements.at(-1);
    if (last?.kind === 'path' && primitive.kind === 'line' && before?.kind === 'line' && isOneWith(before, primitive)) {
      elements[elements.length - 1] = { ...last, d: last.d + lineData(primitive) };
    } else elements.push(elementOf(primitive));
    before = primitive;
  }
  return elements;
}

/** How an element is turned about its own point. */
export const turnAbout = (turn: number, x: number, y: number): string | undefined =>
  turn === 0 ? undefined : `rotate(${turn} ${x} ${y})`;

function elementOf(primitive: Primitive): Element {
  switch (primitive.kind) {
    case 'line':
      return {
        kind: 'path',
        d: lineData(primitive),
        ...lookOf(primitive),
        part: primitive.part,
      };
    case 'circle': {
      const [x, y] = primitive.centre;
      return { kind: 'circle', x, y, radius: primitive.radius, ...lookOf(primitive) };
    }
    case 'text': {
      const { at, size, anchor, text, turn = 0 } = primitive;
      const [x, y] = at;
      return { kind: 'text', x, y, size, anchor, turn: turnAbout(turn, x, y), text };
    }
  }
}

const lookOf = ({ width, dashes = [], fill }: Pick<LinePrimitive, 'width' | 'dashes' | 'fill'>): Look => ({
  width,
  dashes: dashes.length > 0 ? dashes.join(' ') : undefined,
  fill,
});

/** Bare lines that look alike, and areas of ink: what of them is drawn first does not show. */
const isOneWith = (one: LinePrimitive, other: LinePrimitive): boolean =>
  one.part === other.part &&
  one.width === other.width &&
  one.dashes === other.dashes &&
  one.fill === other.fill &&
  (one.fill === undefined || (one.fill === 'ink' && one.width === 0));
