import { choice, length, part, percentile, position, text, weight, type Span } from './kinds.ts';
import { deskHeight, ROOM } from './desk.ts';

const earHeight: Span = [200, 2500, 'from sitting on the floor to a tall person standing on a step'];
const setback: Span = [-3000, 6000, 'negative when leaning over the desk; a studio chair 6 m away'];

/** Who sits there, where nobody measured the height of their ears: a record only, the number used is `earHeight`. */
export const person = {
  sex: choice(
    'Person',
    'whose measures count',
    [
      ['man', 'man'],
      ['woman', 'woman'],
      ['not-said', 'not said'],
    ],
    { default: 'not-said' },
  ),
  stature: length('Body height', 'standing, without shoes', [1000, 2300, 'from a child to the tallest adults'], {
    default: null,
    empty: 'not known',
  }),
  percentile: percentile(
    'Percentile',
    'when the height is not known',
    [1, 99, 'the survey says little about the last hundredth'],
    { default: 50 },
  ),
  seat: length('Seat', 'over the floor, pressed down', [100, 1200, 'from a cushion on the floor to a bar stool'], {
    default: null,
    empty: 'as it fits',
  }),
  slump: length('Slump', '0 is bolt upright', [0, 200, 'from bolt upright to deep in the chair'], { default: 40 }),
  shoes: length('Heels', 'of the shoes', [0, 150, 'from bare feet to the highest heel'], {
    default: null,
    empty: 'usual ones',
  }),
};

export const listener = {
  earHeight: length('Ear height', 'floor to ear, sitting as you listen', earHeight),
  earHeightFrom: part('Ear height not measured', 'estimate it from the person', person),
  setback: position('Setback', 'desk’s front edge back to the ears', setback, { term: 'setback' }),
  offset: position('Head off the middle', 'sideways; plus is right', [-6000, 6000, ROOM], { default: 0 }),
  headWidth: length(
    'Head width',
    'ear to ear, over the face',
    [80, 250, 'ANSUR II head breadth is 140 to 163 mm from P5 to P95; a child or a dummy head with margin'],
    { default: 152 },
  ),
};

export const posture = {
  name: text('Name', 'another way you sit'),
  earHeight: length('Ear height', 'floor to ear', earHeight),
  setback: position('Setback', 'desk’s front edge back to the ears', setback),
  offset: position('Beside the seat', 'sideways from the seat; plus is right', [-6000, 6000, ROOM], { default: 0 }),
  deskHeight: length('Desk height', 'a sit-stand desk then; empty: as it is', deskHeight, {
    default: null,
    empty: 'as it is',
  }),
  weight: weight(
    'Weight',
    'how much it counts in a mean; the seat counts 1',
    [0.01, 100, 'a hundredth to a hundred times as much as the seat'],
    { default: 1 },
  ),
};
