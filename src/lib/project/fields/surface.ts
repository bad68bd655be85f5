import { ROOM } from './desk.ts';
import { bearing, choice, length, mass, part, position, text, type Span } from './kinds.ts';

const side: Span = [20, 10000, 'from a bracket under one loudspeaker to a shelf along a studio wall'];

/** What of a riser or a floor stand stands on the desk or the floor. */
export const foot = {
  width: length('Base, width', 'side to side, as the plate is turned', side, { start: 300 }),
  depth: length('Base, depth', 'front to back; its middle is under the plate’s', side, { start: 300 }),
  mass: mass('Mass', 'of plate, column and base together', [0, 200, 'from weightless to a pillar of stone'], {
    default: null,
    empty: 'weightless',
  }),
};

/**
 * A level plate beside the desk's top that a stand may be put on: a shelf, a riser, the plate of a floor stand. `x` and `y`
 * are the middle of its front edge; `height` is its top's over the floor.
 */
export const surface = {
  name: text('Name', 'to tell it from the others'),
  on: choice(
    'Carried by',
    'a riser goes up and down with a sit-stand desk',
    [
      ['wall', 'a wall or brackets'],
      ['desk', 'the desk: a riser'],
      ['floor', 'the floor: a floor stand'],
    ],
    { default: 'wall' },
  ),
  x: position('Middle, sideways', 'of its front edge, from the desk’s middle; plus is right', [-10000, 10000, ROOM], {
    default: 0,
  }),
  y: position('Front, from the edge', 'desk’s front edge to the middle of its front edge', [-5000, 15000, ROOM]),
  width: length('Width', 'side to side', side, { start: 1200 }),
  depth: length('Depth', 'front to back', side, { start: 240 }),
  turn: bearing('Turn', 'where its back looks: 0 ahead, plus to the right', [-180, 180, 'all round, seen from above'], {
    default: 0,
  }),
  height: length('Height', 'floor to its top', [0, 5000, 'from the floor to under a high ceiling'], { start: 1180 }),
  thickness: length('Thickness', 'of the plate', [1, 500, 'from sheet metal to a box'], { default: 18 }),
  foot: part('Base of stated size', 'off: as large as its plate, and weightless', foot),
};
