import { angle, bearing, choice, fraction, length, part, position, text, temperature, type Span } from './kinds.ts';

/** Of what stands or hangs round a desk. */
export const ROOM = 'a room of 6 m on each side of the desk, with margin';

export const layout = {
  name: text('Layout', 'this desk, this seat'),
};

export const air = {
  temperature: temperature(
    'Temperature',
    'sets the speed of sound',
    [-30, 60, 'where ISO 9613-1 air is still a room'],
    {
      default: 20,
    },
  ),
};

const absorption: Span = [0, 1, '0 sends all the energy back, 1 none of it (random incidence)'];

export const deskHeight: Span = [150, 2000, 'from a floor table to a standing desk, with margin'];

export const desk = {
  height: length('Height', 'floor to the desk’s top face', deskHeight),
  absorption: fraction('Desk absorbs', '0: all comes back, as from a hard plate', absorption, { default: 0 }),
};

const width = length('Width', 'side to side', [200, 10000, 'from a shelf to a studio wall']);
const depth = length('Depth', 'front edge to back edge', [100, 5000, 'from a shelf to a double desk']);

const wing: Span = [300, 10000, 'from a shelf to a studio wall'];
const wingDepth: Span = [100, 5000, 'from a shelf to a double desk'];

/** Sizes of the desk’s top by its shape. */
export const outlines = {
  rectangle: {
    width,
    depth,
    corner: length('Corner radius', 'of all four corners; 0: square', [0, 2500, 'up to half a round table'], {
      default: 0,
    }),
  },
  bowed: {
    width,
    depth,
    bow: position(
      'Bow',
      'rise of the front’s arc; plus towards you, minus away',
      [-2500, 2500, 'up to half a round table'],
      {
        start: 60,
      },
    ),
  },
  corner: {
    left: length('Left wing', 'from the corner along the left wall', wing, { start: 1400 }),
    right: length('Right wing', 'from the corner along the right wall', wing, { start: 1400 }),
    leftDepth: length('Left depth', 'wall to front edge', wingDepth, { start: 600 }),
    rightDepth: length('Right depth', 'wall to front edge', wingDepth, { start: 600 }),
    front: length(
      'Front',
      'the edge before the seat, across the corner',
      [100, 5000, 'from a seat’s width to a double desk'],
      {
        start: 600,
      },
    ),
  },
  l: {
    width,
    depth,
    return: {
      side: choice(
        'Return at',
        'the end that comes towards you',
        [
          ['left', 'the left'],
          ['right', 'the right'],
        ],
        { default: 'left' },
      ),
      width: length('Return, width', 'side to side', [100, 5000, 'from a shelf to a double desk'], { start: 600 }),
      length: length('Return, length', 'from the front edge towards you', [50, 8000, ROOM], { start: 700 }),
    },
  },
};

/** How a desk's top may be shaped. */
export const outlineRule = choice('Shape', 'as seen from above', [
  ['rectangle', 'rectangle'],
  ['bowed', 'bowed front'],
  ['corner', 'corner desk'],
  ['l', 'L'],
  ['outline', 'corner by corner'],
]);

/** A corner of a desk drawn corner by corner, by its places in the file’s list. */
export const outlinePoint = {
  0: position('Sideways', 'from the origin; plus is right', [-10000, 10000, ROOM]),
  1: position('Away', 'from the front edge; plus is away from you', [-10000, 10000, ROOM]),
  2: fraction('Bulge', 'of the edge to the next corner; 0: straight', [-1, 1, 'half a circle to either side'], {
    start: 0,
  }),
};

/**
 * A flat wall that runs on to both sides, from the floor to the ceiling. Its bearing is where it lies as seen from the
 * origin, its distance how far that is, square to it.
 */
export const wall = {
  name: text('Name', 'to tell it from the others'),
  bearing: bearing(
    'Bearing',
    '0 ahead, 90 right, −90 left, 180 behind the chair',
    [-180, 180, 'all round, seen from above'],
    { default: 0 },
  ),
  distance: length('Distance', 'square to it, from the middle of the desk’s front edge', [0, 20000, ROOM]),
  absorption: fraction('Absorbs', 'share of the energy, 0 to 1', absorption, { default: 0 }),
};

export const ceiling = {
  height: length('Ceiling height', 'over the floor', [300, 20000, 'from under a bunk bed to a hall, over the floor'], {
    start: 2500,
  }),
  absorption: fraction('Ceiling absorbs', 'share of the energy, 0 to 1', absorption, { default: 0 }),
};

/** The gap to the wall behind the desk, which is asked for before all others: of the file it is that wall’s distance. */
export const gap = length('Gap to the wall', 'back edge to the wall; empty: no wall near', [0, 10000, ROOM], {
  default: null,
  empty: 'no wall',
});

/** What the room has beside its walls. */
export const room = {
  ceiling: part('Ceiling', 'off: none near enough to matter', ceiling),
};

/** What a screen's width and height may be entered by instead: in no file. */
export const screenSize = {
  diagonal: length('Diagonal', 'of the picture: 27 in, 27 1/2 in; sets width and height', [
    30,
    11000,
    'as for width and height',
  ]),
  ratio: choice('Shape', 'width to height', [
    ['16:9', '16:9'],
    ['16:10', '16:10'],
    ['21:9', '21:9 (43:18)'],
    ['32:9', '32:9'],
    ['3:2', '3:2'],
    ['4:3', '4:3'],
    ['5:4', '5:4'],
  ]),
};

/** A new one is a common panel. */
export const monitor = {
  x: position('Middle, sideways', 'from the desk’s middle; plus is right', [-10000, 10000, ROOM], { default: 0 }),
  y: position('Face, from the edge', 'desk’s front edge to the screen', [-5000, 15000, ROOM]),
  width: length('Width', 'outside, side to side', [20, 10000, 'from a screen in the palm to a wall of screens'], {
    start: 540,
  }),
  height: length(
    'Height',
    'of the panel, without its foot',
    [20, 5000, 'from a screen in the palm to a wall of screens'],
    { start: 330 },
  ),
  bottom: length(
    'Bottom over the desk',
    'desk to the panel’s lower edge',
    [0, 5000, 'standing on the desk or hung above it'],
    { start: 100 },
  ),
  depth: length('Depth', 'face to back', [0, 500, 'a thin panel to an old tube'], { default: 40 }),
  turn: angle(
    'Turn',
    'about the middle of its lower edge; plus: to the right',
    [-90, 90, 'square to the desk’s front edge, to either side'],
    { default: 0 },
  ),
  lean: angle('Lean', 'about its lower edge; plus: back', [-45, 60, 'from hung over the head to lying on a slope'], {
    default: 0,
  }),
  curve: length(
    'Bend radius',
    'of a curved face, “1800R” is 1800; empty: flat',
    [200, 20000, 'from a bend round the head to one that nobody sees'],
    { default: null, empty: 'flat', step: 100 },
  ),
};
