import { FINE, FINEST, board, choice, count, friction, length, named, onOff, part, type Span } from './kinds.ts';
import { startOf } from './starts.ts';

const margin: Span = [0, 1000, 'a stand that reaches further is furniture'];
const radius: Span = [0, 200, 'from sharp to a drum'];
const cableSize: Span = [1, 200, 'from a bare wire to a bundle of plugs'];
const slipping: Span = [0.01, 2, 'smooth pine was measured at 0.12; soft rubber passes 1'];

/** A lip at the low end. */
export const stop = {
  height: length('Stop height', 'over the slope', [1, 500, 'a lip that holds, not a wall'], { start: 8 }),
  thickness: length('Stop thickness', 'along the slope', [1, 200, 'a lip that holds, not a wall'], { start: 6 }),
};

const veneerFaces = {
  top: onOff('Veneer on the top', 'the slope, and the stop’s faces', true),
  front: onOff('Veneer on the front', 'the end towards you', true),
  rear: onOff('Veneer on the rear', 'the end towards the wall', true),
  sides: onOff('Veneer on the sides', 'both of them', true),
  base: onOff('Veneer on the base', 'under the stand', false),
};

export const rods = {
  diameter: length('Rod diameter', 'measured', [1, 60, 'from a pin to a broom handle'], { default: 6, step: FINE }),
  count: count('Rods in each stand', 'two keep slices from turning', [2, 8, 'two keep slices from turning'], {
    default: 2,
  }),
  clearance: length('Rod-hole clearance', 'added to the diameter', [0, 3, 'a looser rod does not line anything up'], {
    default: 0.1,
    step: FINEST,
    term: 'rod-clearance',
  }),
  edge: length(
    'Edge distance',
    'least wood from a rod hole to the edge',
    [0.5, 200, 'wood left between hole and edge'],
    {
      default: 2,
      step: FINE,
    },
  ),
};

export const relief = {
  web: length(
    'Web round windows',
    'wood left between and around',
    [1, 200, 'wood left round a window; thinner breaks when it is glued'],
    { default: 8 },
  ),
  corner: length('Window corners', 'radius; sharp ones tear', radius, { default: 3, step: FINE }),
};

/** So many on each side. */
export const cheeks = {
  stock: board('Cheeks from', 'which board', 'the stand’s own board'),
  count: count('Cheeks on each side', 'one over the other', [1, 20, 'outer layers on each side'], { default: 1 }),
};

/** As they start: common practice, no source. */
export const ribs = {
  count: count('Ribs', 'that carry the slope', [2, 3, 'one under each side, one in the middle'], { default: 2 }),
  cross: count('Cross ribs', 'across the width', [2, 12, 'two keep the ribs upright'], { default: 3 }),
  fit: length('Slot clearance', 'over the measured thickness', [0, 2, 'a looser slot rattles'], {
    default: 0.1,
    step: FINEST,
  }),
  inset: length(
    'Cross-rib overhang',
    'past the outer ribs',
    [0, 500, 'how far cross ribs reach beyond the outer ribs'],
    { default: 10 },
  ),
  skin: board('Top and front skin', 'which thin board', 'no skin'),
};

export const pockets = {
  count: count('Pockets in each stand', 'along the middle', [1, 12, 'more would leave no core'], { start: 2 }),
  diameter: length('Pocket diameter', 'of each', [1, 100, 'from a screw to a can of ballast'], {
    start: 8,
    step: FINE,
  }),
  depth: length('Pocket depth', 'into the core', [0.5, 1000, 'from a screw’s head to a deep core'], {
    start: 20,
    step: FINE,
  }),
};

/** A slot in the base, across the width. */
export const cable = {
  width: length('Slot width', 'of the widest plug, or the cable', cableSize, { start: 10 }),
  depth: length('Slot depth', 'up from the base', cableSize, { start: 6 }),
  fromRear: length('Slot, from the rear', 'rear end to the slot’s middle', [0, 3000, 'along the base'], { start: 60 }),
};

export const recess = {
  face: choice(
    'Recess in',
    'where the mat lies',
    [
      ['top', 'the top'],
      ['base', 'the base'],
    ],
    { default: 'base' },
  ),
  depth: length('Recess depth', 'less than the mat is thick', [0.1, 20, 'a mat let into the wood, not a tray'], {
    start: 0.8,
    step: FINE,
  }),
  border: length('Recess border', 'at front and rear', [0, 500, 'wood left round the mat'], {
    default: 5,
    start: 8,
  }),
};

export const stand = {
  lift: length(
    'Lift',
    'desk to the cabinet’s lowest edge; on the desk only',
    [0, 1500, 'from the desk to a tall pedestal'],
    {
      term: 'lift',
    },
  ),
  build: named('Build', 'how it is made', 'slice'),
  base: choice(
    'Base',
    'how it lies on the desk',
    [
      ['turned', 'turned with the cabinet'],
      ['square-to-desk', 'square to the desk'],
    ],
    { default: 'turned' },
  ),
  stock: board('Cut from', 'which board', 'the first board'),
  width: length('Finished width', 'empty: as wide as the cabinet', [3, 3000, 'as the widest cabinet'], {
    default: null,
    empty: 'cabinet’s',
  }),
  frontMargin: length('Front overhang', 'along the slope', margin, { default: 0, term: 'profile' }),
  rearMargin: length('Rear overhang', 'along the slope', margin, { default: 0 }),
  ends: choice(
    'Ends',
    'how front and back are cut',
    [
      ['plumb', 'plumb'],
      ['square', 'square to the slope'],
    ],
    { default: 'plumb', term: 'ends' },
  ),
  minimumEdge: length('Thinnest edge', 'less chars and breaks', [0.5, 200, 'thinner edges char and break'], {
    default: 3,
    step: FINE,
    term: 'minimum-edge',
  }),
  stop: part('Stop', 'a lip at the low end that holds the cabinet', stop, { term: 'stop' }),
  /** Of the bare faces, cabinet on stand and stand on desk: the least that it may be, and the most. */
  friction: friction('Least friction', 'rise over run of the slope at which it slips', slipping, {
    default: 0.3,
    term: 'friction',
  }),
  frictionMost: friction('Most friction', 'empty: as dry wood on wood', slipping, { default: null, empty: '0.75' }),
  feet: length('Feet', 'height under the stand', [0, 200, 'rubber buttons to tall spikes'], {
    default: 0,
    step: FINE,
  }),
  /** Where nobody measured it, feet count as bare faces, and so does a pad. */
  feetFriction: friction('Friction of the feet', 'on this desk', slipping, { default: null, empty: 'not known' }),
  pad: length('Pad', 'thickness under the cabinet', [0, 100, 'a cork sheet to a foam block'], {
    default: 0,
    step: FINE,
    term: 'pad',
  }),
  padFriction: friction('Friction of the pad', 'measure it: rubber and cork vary', slipping, {
    default: null,
    empty: 'not known',
    term: 'friction',
  }),
  veneer: length('Veneer', 'thickness', [0, 10, 'trade veneer runs from 0.3 to 6 mm'], {
    default: 0,
    step: FINE,
    term: 'veneer',
  }),
  veneerFaces,
  glue: length('Glue line, assumed', 'each joint, until one is measured', [0, 2, 'a film to a gap-filling bed'], {
    default: 0,
    step: FINEST,
    term: 'glue',
  }),
  rods: {
    ...part('Rods', 'line the slices up while they are glued', rods, { term: 'rods' }),
    default: startOf(rods),
  },
  relief: part('Relief windows', 'hollows that save wood and weight', relief),
  cheeks: part('Custom cheeks', 'outer layers, of another board if you like', cheeks),
  pockets: part('Pockets', 'in the core, for screws or ballast', pockets),
  ribs: part('Custom ribs', 'off: two ribs, three cross ribs', ribs),
  corner: length('Corner radius', 'seen from the side; less at a thin end', radius, {
    default: null,
    empty: 'sharp',
    step: FINE,
  }),
  cable: part('Cable slot', 'in the base, across the width', cable),
  recess: part('Anti-slip recess', 'for a mat let into the wood', recess),
};
