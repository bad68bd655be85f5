import type { Shape } from './strokes.ts';

/** A mark that joins a letter: its shape centred on x = 0, in tenths of the letter height. */
export interface Accent {
  readonly where: 'above' | 'below';
  readonly shape: Shape;
}

const above = (width: number, strokes: string): Accent => ({ where: 'above', shape: [width, strokes] });
const below = (width: number, strokes: string): Accent => ({ where: 'below', shape: [width, strokes] });

/**
 * Accents by their combining character. Those above stand on y = 0 and stay under 2, those below hang from the
 * baseline and stay over −3.
 */
export const accents: ReadonlyMap<string, Accent> = new Map([
  ['\u0300', above(1.8, '-0.9,1.9 0.5,0')],
  ['\u0301', above(1.8, '-0.5,0 0.9,1.9')],
  ['\u0302', above(2.8, '-1.4,0 0,1.7 1.4,0')],
  ['\u0303', above(3.2, '-1.6,0.8@-100 0,0.8@100 1.6,0.8')],
  ['\u0304', above(2.8, '-1.4,0.7 1.4,0.7')],
  ['\u0306', above(2.8, '-1.4,1.5@150 1.4,1.5')],
  ['\u0307', above(0.8, '0,0.8,0.4')],
  ['\u0308', above(3, '-1.1,0.8,0.4; 1.1,0.8,0.4')],
  ['\u030a', above(2, '0,0.9,1')],
  ['\u030b', above(2.8, '-1.4,0 -0.5,1.9; 0.4,0 1.3,1.9')],
  ['\u030c', above(2.8, '-1.4,1.7 0,0 1.4,1.7')],
  ['\u0323', below(0.8, '0,-1.6,0.4')],
  ['\u0326', below(0.8, '0.4,-1 -0.3,-2.7')],
  ['\u0327', below(2.2, '0,0 0,-0.7 0.3,-0.7@-180 0.3,-2.3 -0.8,-2.3')],
  ['\u0328', below(2, '0.6,0@140 0.9,-2')],
]);

/** What letters with a tail have in place of a cedilla. */
export const turnedComma: Accent = above(1.4, '0.7,1.9 -0.3,0');

/** Letters tall enough that an accent stands on the capital height. */
export const isTall = (letter: string): boolean => /[A-Z0-9bdfhkltÆŒØŁĐßłđ]/u.test(letter);

/** Letters whose tail leaves no room below the baseline. */
export const hasTail = (letter: string): boolean => /[Qgjpqyȷ]/u.test(letter);
