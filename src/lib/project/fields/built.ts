import { FINE, FINEST, angle, choice, length, named, position, text, type Span } from './kinds.ts';
import { ROOM } from './desk.ts';
import type { NumberField } from './field.ts';

const height: Span = [-200, 2500, 'under the desk’s top on a hanging stand; a studio stand'];
const doubt: Span = [0.01, 500, 'from a micrometer to a guess'];
const doubtAngle: Span = [0.01, 45, 'from an inclinometer to a guess'];
const reach: Span = [-10000, 15000, ROOM];
const rightAngle: Span = [-90, 90, 'a quarter turn'];

/** Nobody has read it yet: the line waits for it. */
const open = { default: null, empty: 'not read' } as const;

const NINETEEN = 'half the span it lies in, 19 times of 20';
const lengthDoubt = length('Sure to, ±', NINETEEN, doubt, { step: FINE });
const angleDoubt = angle('Sure to, ±', NINETEEN, doubtAngle, { step: FINE });

/** What can be read of a finished stand and the cabinet on it: the numbers of each kind of reading. */
export const reading = {
  height: { value: length('Height', 'over the surface that the stand is on', height, { ...open, step: FINE }), sure: lengthDoubt },
  angle: { value: angle('Angle', 'as read', rightAngle, { ...open, step: FINE }), sure: angleDoubt },
  rise: {
    value: length('Rise', 'how much higher the front is', [-1000, 1000, 'the height of a studio cabinet'], { ...open, step: FINE }),
    run: length('Run', 'level, between the two places', [10, 2000, 'from a matchbox to the deepest cabinet'], open),
    sure: lengthDoubt,
  },
  place: {
    x: position('Sideways', 'from the desk’s middle; plus is right', reach, open),
    y: position('From the edge', 'desk’s front edge back to it', reach, open),
    sure: lengthDoubt,
  },
  corner: choice('Corner', 'of the cabinet’s bottom, seen from above', [
    ['front-inboard', 'front, towards the middle'],
    ['front-outboard', 'front, away from the middle'],
    ['rear-inboard', 'rear, towards the middle'],
    ['rear-outboard', 'rear, away from the middle'],
  ]),
  driver: named('Driver', 'whose centre'),
  light: choice('Light', 'where it lies', [
    ['top', 'on top of the cabinet, along its depth'],
    ['baffle', 'square to the baffle, from the aimed point'],
  ]),
  spot: {
    x: position('Spot, sideways', 'from the desk’s middle, on a card at the head', reach, open),
    z: position('Spot, height', 'over the surface', [-2000, 5000, ROOM], open),
    sure: lengthDoubt,
  },
}; // prettier-ignore

const { height: heights, angle: angles } = reading;

/** The numbers of each kind of reading, by its word in the file. */
export const readingFields: Readonly<Record<string, Readonly<Record<string, NumberField>>>> = {
  'front-height': heights,
  'rear-height': heights,
  'inboard-height': heights,
  'outboard-height': heights,
  'driver-height': heights,
  slope: angles,
  lean: angles,
  toe: angles,
  rise: reading.rise,
  mark: reading.place,
  corner: reading.place,
  spot: reading.spot,
};

/** What is said of a set of readings as a whole. */
export const built = {
  date: text('Date', 'of these readings, as you write it'),
  note: text('Note', 'dry stack, glued, felt under the base …'),
};

const far: Span = [0, 20000, 'across a studio and back'];

/** What a record keeps of one stand: the program writes it, and nobody types over it. */
export const recorded = {
  stand: {
    tilt: angle('Tilt', 'that the stand was made for', rightAngle),
    toe: angle('Toe', 'that the stand was made for', rightAngle),
    lift: length('Lift', 'that the stand was made for', height),
  },
  pass: {
    right: position('Passed, sideways', 'from the head; plus is right', reach),
    over: position('Passed, height', 'from the head; plus is over it', reach),
    sure: length('Sure to, ±', '95 of 100, the way it is least sure', far),
  },
  card: {
    where: choice('Edge', 'of the cabinet’s bottom that was raised', [
      ['front', 'front edge'],
      ['rear', 'rear edge'],
    ]),
    by: length('Card', 'how thick', [0, 500, 'a book'], { step: FINEST }),
  },
  turn: { by: angle('Turn', 'plus is towards the middle', rightAngle) },
  move: {
    x: position('Move, sideways', 'plus is right', reach),
    y: position('Move, from the edge', 'plus is away from you', reach),
  },
};
