import { angle, choice, length, named, position, type Span } from './kinds.ts';
import { ROOM } from './desk.ts';

const height: Span = [-200, 2500, 'under the desk’s top on a hanging stand; a studio stand'];
const doubt: Span = [0.01, 500, 'from a micrometer to a guess'];
const doubtAngle: Span = [0.01, 45, 'from an inclinometer to a guess'];
const reach: Span = [-10000, 15000, ROOM];

const lengthDoubt = length('Sure to', 'half the span in which it lies, nineteen times of twenty', doubt);
const angleDoubt = angle('Sure to', 'half the span in which it lies, nineteen times of twenty', doubtAngle);

/** What can be read of a finished stand and the cabinet on it: the numbers of each kind of reading. */
export const reading = {
  height: { value: length('Height', 'over the surface that the stand is on', height), sure: lengthDoubt },
  angle: { value: angle('Angle', 'as read', [-90, 90, 'a quarter turn']), sure: angleDoubt },
  rise: {
    value: length('Rise', 'how much higher the front is', [-1000, 1000, 'the height of a studio cabinet']),
    run: length('Run', 'level, between the two places', [10, 2000, 'from a matchbox to the deepest cabinet']),
    sure: lengthDoubt,
  },
  place: {
    x: position('Sideways', 'from the desk’s middle; plus is right', reach),
    y: position('From the edge', 'desk’s front edge back to it', reach),
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
    x: position('Spot, sideways', 'on a card at the head; plus is right', reach),
    z: position('Spot, height', 'over the surface', [-2000, 5000, ROOM]),
    sure: lengthDoubt,
  },
};
