import { dot, length, scale, vec3 } from '$lib/geometry/point.ts';
import type { Subject } from '$lib/drawing/view.ts';
import type { SpaceFace, SpaceLine } from './space.ts';

/** Red, green and blue, 0 to 255. */
export type Rgb = readonly [number, number, number];

/** The colours of the drawing. */
export interface Palette {
  /** What lies behind everything. */
  readonly paper: Rgb;
  /** Of areas and of lines. */
  readonly colours: Readonly<Record<Subject, { readonly tint: Rgb; readonly edge: Rgb }>>;
  /** Whether areas keep their one colour, as where the system gives the colours. */
  readonly unshaded: boolean;
}

/** From the upper left before the desk, as drawings are lit. */
const LIGHT = (() => {
  const towards = vec3(-0.4, -0.55, 0.73);
  return scale(towards, 1 / length(towards));
})();
/** How much of black a face turned straight away from the light takes. */
const SHADE = 0.3;
/** How much of the paper what is pale takes, areas and lines. */
const PALE_AREA = 0.65;
const PALE_LINE = 0.5;

const BLACK: Rgb = [0, 0, 0];

const mixed = ([r, g, b]: Rgb, [r2, g2, b2]: Rgb, share: number): Rgb => [
  r + (r2 - r) * share,
  g + (g2 - g) * share,
  b + (b2 - b) * share,
];

/** One colour a face: the drawing's tint, darker the further it is turned from the light. */
export function faceColour({ subject, normal, faint }: SpaceFace, { colours, paper, unshaded }: Palette): Rgb {
  const { tint } = colours[subject];
  const plain = faint ? mixed(tint, paper, PALE_AREA) : tint;
  return unshaded ? plain : mixed(plain, BLACK, (SHADE * (1 - dot(normal, LIGHT))) / 2);
}

export function lineColour({ subject, faint }: SpaceLine, { colours, paper }: Palette): Rgb {
  const { edge } = colours[subject];
  return faint ? mixed(edge, paper, PALE_LINE) : edge;
}
