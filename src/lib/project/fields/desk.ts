import { fraction, length, position, text, temperature, type Span } from './kinds.ts';

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

export const desk = {
  width: length('Width', 'side to side', [200, 10000, 'from a shelf to a studio wall']),
  depth: length('Depth', 'front edge to back edge', [100, 5000, 'from a shelf to a double desk']),
  height: length('Height', 'floor to the desk’s top face', [
    150,
    2000,
    'from a floor table to a standing desk, with margin',
  ]),
  wallGap: length('Gap to the wall', 'back edge to the wall; empty: no wall near', [0, 10000, ROOM], {
    default: null,
    empty: 'no wall',
  }),
};

const sideWall: Span = [100, 20000, ROOM];
const absorption: Span = [0, 1, '0 sends all the energy back, 1 none of it (random incidence)'];

/** Side walls from the desk's middle, the ceiling over the floor. */
export const room = {
  leftWall: length('Wall at the left', 'from the desk’s middle', sideWall, { default: null, empty: 'no wall' }),
  rightWall: length('Wall at the right', 'from the desk’s middle', sideWall, { default: null, empty: 'no wall' }),
  ceiling: length('Ceiling', 'over the floor', [300, 20000, 'from under a bunk bed to a hall, over the floor'], {
    default: null,
    empty: 'none near',
  }),
  absorption: {
    desk: fraction('Desk absorbs', '0: all comes back, as from a hard plate', absorption, { default: 0 }),
    wall: fraction('Wall behind absorbs', 'share of the energy, 0 to 1', absorption, { default: 0 }),
    sides: fraction('Side walls absorb', 'share of the energy, 0 to 1', absorption, { default: 0 }),
    ceiling: fraction('Ceiling absorbs', 'share of the energy, 0 to 1', absorption, { default: 0 }),
  },
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
};
