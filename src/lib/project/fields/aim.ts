import { ROOM } from './desk.ts';
import type { ChoiceField } from './field.ts';
import { angle, choice, fraction, length, named, position, type Span } from './kinds.ts';

const sideways: Span = [-10000, 10000, ROOM];
const fromTheEdge: Span = [-5000, 15000, ROOM];
const mark = 'under the middle of the front bottom edge';

/** The desk, the floor, or the name of a surface. */
const carrier = (label: string): ChoiceField<string, string> => ({
  ...named(label, 'what carries its stand'),
  default: 'desk',
});

export const placement = {
  right: {
    x: position('Right, sideways', 'from the desk’s middle; plus is right', sideways, { term: 'mark' }),
    y: position('Right, from the edge', mark, fromTheEdge, { term: 'mark' }),
    on: carrier('Right, stands on'),
  },
  left: {
    x: position('Left, sideways', 'from the desk’s middle; minus is left', sideways),
    y: position('Left, from the edge', mark, fromTheEdge),
    on: carrier('Left, stands on'),
  },
};

export const aim = {
  through: named('Aimed point', 'what is pointed at you', 'aimed-point'),
  toe: choice(
    'Toe',
    'which way the fronts turn',
    [
      ['to-head', 'to the head'],
      ['to-ear', 'to the nearer ear'],
      ['behind-head', 'to meet behind the head'],
      ['straight', 'straight ahead'],
      ['as-set', 'as set'],
    ],
    { term: 'toe' },
  ),
  tilt: choice(
    'Tilt',
    'what meets the ear’s height',
    [
      ['tilt-to-ear', 'tilt to the ear'],
      ['lift-to-ear', 'lift to the ear'],
      ['as-set', 'as set'],
    ],
    { term: 'tilt' },
  ),
  over: choice('Aim is for', 'whose heads one aim has to serve', [
    ['seat', 'the seat alone'],
    ['all', 'every posture'],
    ['chosen', 'seat and some'],
  ]),
};

/** Of one aim for several heads. */
export const over = {
  postures: named('Postures', 'served beside the seat'),
  by: choice(
    'What is least',
    'of the angles between axis and heads',
    [
      ['worst', 'the largest of them'],
      ['mean', 'their weighted mean square'],
    ],
    { default: 'worst' },
  ),
};

/** Of a point between two drivers. */
export const through = {
  between: {
    0: named('First driver', 'where the fraction is 0'),
    1: named('Second driver', 'where the fraction is 1'),
  },
  fraction: fraction(
    'Fraction',
    'how far from the first to the second',
    [0, 1, '0 is the first driver, 1 the second'],
    {
      default: 0.5,
      term: 'aimed-point',
    },
  ),
};

export const toe = {
  distance: length('Behind the head', 'where the two axes meet', [0, 10000, ROOM], { start: 300 }),
  degrees: angle('Toe angle', 'plus turns the fronts to the middle', [
    -90,
    90,
    'a quarter turn faces the other loudspeaker',
  ]),
};

export const tilt = {
  degrees: angle('Tilt angle', 'plus raises the front', [-60, 60, 'a steeper cabinet lies on its back or its face']),
};
