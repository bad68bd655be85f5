import { FINE, FINEST, angle, choice, colour, count, density, fraction, length, minutes, part, price, rate, width, type Span } from './kinds.ts'; // prettier-ignore
import { DENSITY, KERF, PRICE, TAPER } from './stock.ts';

/**
 * What a machine's driver tells the layers apart by. No pure red, blue or black, which drivers give meanings to; each stands
 * out by 3:1 or more on white and on black (WCAG 2.2, 1.4.11), and no two are equally light, so that they differ in grey too.
 */
export const colours = {
  outside: colour('Cuts outside', 'round the parts', '#8038c2'),
  inside: colour('Cuts inside', 'holes and slots', '#0c7a80'),
  mark: colour('Engraving', 'lettering and centre lines, not cut through', '#b9771f'),
};

export const cutter = {
  kerf: width('Kerf', 'width that the cut removes', KERF, { default: 0.2, step: FINEST, term: 'kerf' }),
  taper: angle('Taper', 'of the cut edge from plumb, each side', TAPER, { default: 0, step: FINE, term: 'taper' }),
  spacing: length('Between parts', 'least gap on the sheet', [0, 100, 'a gap wider than a hand wastes the sheet'], {
    default: 2,
    step: FINE,
    term: 'spacing',
  }),
  margin: length('Sheet margin', 'kept free round the sheet', [0, 500, 'a clamping border'], { default: 5 }),
  colours: part('Your own layer colours', 'as your machine’s driver wants; off: our own colours', colours),
};

const bedSide: Span = [20, 2000, 'from the smallest printer to an industrial one'];

/**
 * A bed of 220 × 220 × 250 mm and 0.2 mm round a key are common practice, no source. PLA weighs 1240 kg/m³ (Scientific
 * Reports 2022, s41598-022-22520-6). A print counts as solid until its fill is set: an upper bound of its mass.
 */
export const printer = {
  bed: {
    x: length('Bed width', 'what a print may take', bedSide, { start: 220 }),
    y: length('Bed depth', 'what a print may take', bedSide, { start: 220 }),
    z: length('Print height', 'what a print may take', bedSide, { start: 250 }),
  },
  clearance: length('Key clearance', 'between halves of a core', [0, 2, 'a looser key aligns nothing'], {
    default: 0.2,
    step: FINEST,
  }),
  density: density('Filament density', 'as its maker says', DENSITY, { default: 1240 }),
  fill: fraction(
    'Infill, with walls',
    'share of the volume that is plastic; 1 is solid',
    [0.02, 1, 'share of a print that is plastic, walls included'],
    { default: 1 },
  ),
  rate: rate(
    'Flow rate',
    'plastic laid down, in mm³/s as slicers have it',
    [0.1, 1000, 'from a fine nozzle to a coarse one'],
    { default: null, empty: 'not known' },
  ),
  price: price('Price of a kilogram', 'of filament', PRICE, { default: null, empty: 'not known' }),
};

const cutDepth: Span = [5, 1000, 'from a hobby saw to the tallest band saw'];
const tilt: Span = [0, 60, 'blades and tables tilt to 45°, a few to 60°'];
const tabSize: Span = [0.5, 50, 'a tab holds, and is cut away by hand'];

export const bandSaw = {
  height: length('Height under the guides', 'the deepest cut it takes', cutDepth, { start: 150 }),
  tiltsMost: angle('Its table tilts at most', 'from square', tilt, { default: 45 }),
};

/** Left on the outlines, so that parts stay in their sheet. */
export const tab = {
  width: length('Tab width', 'along the outline', tabSize, { start: 6, step: FINE }),
  height: length('Tab height', 'left over the bed', tabSize, { start: 1.5, step: FINE }),
};

/**
 * The workshop that is reckoned with until its owner says otherwise: a table saw of the common size, no band saw, sheets
 * not cut by a router, nothing known of the glue. A blade of 250 mm (10 in) passes some 80 mm (3⅛ in) and tilts to 45°, to
 * the left on most saws: common practice, no source.
 */
export const shop = {
  saw: {
    depth: length('Saw cuts at most', 'table saw, blade up and square', cutDepth, { default: 80 }),
    tiltsMost: angle('Blade tilts at most', 'from square', tilt, { default: 45 }),
    tilts: choice(
      'Blade tilts to the',
      'as you stand before the saw',
      [
        ['left', 'left'],
        ['right', 'right'],
      ],
      { default: 'left' },
    ),
  },
  bandSaw: part('Band saw', 'for cuts deeper than the table saw’s', bandSaw),
  router: {
    bit: length(
      'Router bit',
      'diameter, where a router cuts the sheets',
      [0.5, 25, 'from an engraving bit to a surfacing one'],
      { default: null, empty: 'no router', step: FINE },
    ),
    tab: part('Holding tabs', 'keep parts in the sheet until they are cut free', tab),
  },
  glue: {
    line: length(
      'Glue line, measured',
      'one joint, measured on a glued pack',
      [0, 2, 'from a dry stack to a gap-filling bed'],
      { default: null, empty: 'not known', step: FINEST },
    ),
    open: minutes(
      'Open time',
      'from spreading to clamping; see the bottle',
      [1, 240, 'from quick contact glue to slow epoxy'],
      { default: null, empty: 'not known' },
    ),
    clamp: minutes('Clamp time', 'see the bottle', [1, 2880, 'two days for bent or stressed work'], {
      default: null,
      empty: 'not known',
      step: 5,
    }),
    clamps: count('Clamps', 'for one glue-up', [1, 200, 'what a workshop has'], { default: null, empty: 'not known' }),
    opening: length(
      'Clamps open to',
      'between their jaws; the narrowest',
      [20, 3000, 'from a small screw clamp to the longest bars'],
      { default: null, empty: 'not known', step: 10 },
    ),
  },
};
