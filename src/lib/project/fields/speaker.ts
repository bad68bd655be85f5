import { asMm, says } from '$lib/project/sentence.ts';
import { angle, choice, frequency, length, mass, named, onOff, part, position, text, type Span } from './kinds.ts';

const insideTheBox: Span = [0, 3000, 'inside the cabinet'];

/** Where the cabinet balances. */
export const centreOfMass = {
  depth: length('Balance, from the front', 'balance it on a rod to find out', insideTheBox),
  height: length('Balance, over the bottom', 'lay it on its back to find out', insideTheBox),
};

/** Where the drivers arrive in step. */
export const designRule = choice('Design point', 'where the drivers arrive in step', [
  ['maker', 'assumed: on the tweeter’s axis'],
  ['measured', 'a known point'],
  ['none', 'not known'],
]);

/** Where they are known to be lined up. */
export const designPoint = {
  driver: named('On the axis of', 'the driver at whose height'),
  distance: length(
    'From the baffle',
    says`often ${asMm(1000)}`,
    [50, 20000, 'from headphones on a stand to a hall; most makers measure at 1 or 2 m'],
    { step: 50, start: 1000 },
  ),
};

export const speaker = {
  width: length('Width', 'outside, side to side', [
    20,
    3000,
    'from a single small driver to the largest cabinet a desk or a low table carries',
  ]),
  height: length('Height', 'outside, bottom to top', [20, 3000, 'as for the width']),
  depth: length('Depth', 'along the bottom, front edge to back', [20, 3000, 'as for the width']),
  baffleRake: angle(
    'Baffle rake',
    'how far the baffle leans back',
    [-30, 45, 'steeper baffles point at the desk or the ceiling'],
    { default: 0, term: 'rake' },
  ),
  lying: choice(
    'Stands',
    'sizes and drivers stay as of an upright one',
    [
      ['upright', 'upright'],
      ['tweeter-inboard', 'on its side, top inboard'],
      ['tweeter-outboard', 'on its side, top outboard'],
    ],
    { default: 'upright' },
  ),
  rearClearance: length(
    'Room behind the back',
    'for a plug, its cable or a port; kept from walls',
    [0, 500, 'from a back without terminals to a port in half a metre of free air'],
    { default: 40 },
  ),
  mass: mass('Mass', 'of one cabinet; may stay empty', [0.01, 200, 'what a person can put on a desk, with margin'], {
    default: null,
    empty: 'not known',
  }),
  mirrored: onOff('Mirror-image cabinets', 'off: two cabinets that are the same, not left and right', true, {
    term: 'mirrored',
  }),
  centreOfMass: part('Balance point known', 'off: the middle of the cabinet', centreOfMass, { term: 'balance' }),
  designPoint: designRule,
};

export const driver = {
  name: text('Name', 'one of its own'),
  role: choice('Kind', 'what it plays', [
    ['tweeter', 'tweeter'],
    ['midrange', 'midrange'],
    ['woofer', 'woofer'],
    ['full-range', 'full-range'],
  ]),
  diameter: length('Rim diameter', 'of the whole rim, on the baffle', [
    3,
    1000,
    'from an earphone-sized tweeter to the largest woofer made',
  ]),
  /** Of the dome or cone within the rim, which sends the sound out. */
  radiating: length(
    'Radiating diameter',
    'of the dome, or the cone with half its surround',
    [1, 1000, 'from the dome of an earphone to the largest cone made'],
    { default: null, empty: 'estimated', term: 'radiating' },
  ),
  height: length('Centre height', 'up the baffle from its bottom edge', [0, 5000, 'along the largest raked baffle']),
  offset: position('Centre offset', 'from the middle; plus is inboard', [-1500, 1500, 'half the widest baffle'], {
    default: 0,
  }),
  acousticDepth: position(
    'Acoustic depth',
    'its source, behind the baffle’s face',
    [-300, 1500, 'a horn lies deep behind the face; a proud dome a little in front'],
    { default: 0, term: 'acoustic-depth' },
  ),
};

export const crossover = {
  between: {
    0: named('Upper driver', 'plays above the crossover'),
    1: named('Lower driver', 'plays below the crossover'),
  },
  frequency: frequency('Frequency', 'where the two are equally loud', [20, 20000, 'the range of hearing'], {
    start: 2500,
    term: 'crossover',
  }),
  alignment: choice(
    'Alignment',
    'how the two meet at the crossover',
    [
      ['in-phase', 'in phase'],
      ['quadrature', 'in quadrature (90°)'],
    ],
    { default: 'in-phase', term: 'meeting' },
  ),
};
