import { FINE, FINEST, angle, choice, count, density, length, part, price, speed, text, width, type Span } from './kinds.ts'; // prettier-ignore

/** Of a board; and of filament. */
export const DENSITY: Span = [20, 9000, 'from foam to brass'];
export const PRICE: Span = [0, 1e6, 'in any currency'];
/** Of the beam, in any stock. */
export const KERF: Span = [0, 13, 'no kerf for a knife; half an inch, 12.7 mm, for a router’s bit'];
export const TAPER: Span = [0, 10, 'more than 10° from plumb is a bevel, not a taper'];

const side: Span = [20, 5000, 'from an offcut to the largest trade sheet'];
const cutting: Span = [0.01, 10000, 'from a fretsaw to a fast engraving beam'];

/** Speeds of the cut, and of the marking. */
export const feed = {
  outside: speed('Speed, outside', 'round a part', cutting, { default: null, empty: 'not known' }),
  inside: speed('Speed, inside', 'holes and slots', cutting, { default: null, empty: 'not known' }),
  mark: speed('Speed, engraving', 'engraved lines', cutting, { default: null, empty: 'not known' }),
};

export const offcut = {
  width: length('Offcut width', 'used before a whole sheet', side, { start: 200 }),
  height: length('Offcut height', 'used before a whole sheet', side, { start: 150 }),
  count: count('Pieces of it', 'of this size', [1, 100, 'pieces of one size'], { default: 1 }),
};

export const stock = {
  name: text('Name', 'as you call the board'),
  thickness: length(
    'Thickness',
    'measured, not as sold',
    [0.2, 100, 'from a veneer to a block; thinner would ask for thousands of slices'],
    { start: 3, step: FINEST },
  ),
  sheet: {
    width: length('Sheet width', 'what the machine takes', side, { start: 600 }),
    height: length('Sheet height', 'what the machine takes', side, { start: 400 }),
  },
  /** Null: as many as it takes. */
  sheets: count(
    'Sheets at hand',
    'whole ones',
    [0, 500, 'none where there are only offcuts; more than 500 nobody cuts'],
    { default: null, empty: 'enough' },
  ),
  /** Along: parts keep their direction on the sheet, save for half turns. */
  grain: choice(
    'Grain',
    'which way parts may lie',
    [
      ['none', 'none: parts turn freely'],
      ['along', 'along the sheet’s width'],
    ],
    { default: 'none' },
  ),
  kerf: width('Kerf, this board', 'from the coupon', KERF, { default: null, empty: 'cutter’s', step: FINEST }),
  taper: angle('Taper, this board', 'from the coupon; each side', TAPER, {
    default: null,
    empty: 'cutter’s',
    step: FINE,
  }),
  density: density('Density', 'for the stand’s mass', DENSITY, { default: 750 }),
  price: price('Price of a sheet', 'in your currency', PRICE, { default: null, empty: 'not known' }),
  solidPrice: price(
    'Price as solid wood',
    'of a cubic metre or 424 board feet, for a solid block',
    [0, 1e9, 'of a cubic metre, as timber yards sell it, in any currency: from wood at hand to ebony in small coin'],
    { default: null, empty: 'not known', step: 10 },
  ),
  feed: part('Speeds known', 'for the cutting time; in mm/s, as machines are set', feed),
};
