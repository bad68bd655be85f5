import { ranges } from '$lib/project/ranges.ts';
import type { Field } from './field.ts';
import { choice, fine, finest, number, onOff, text } from './fieldKinds.ts';

const crossovers = {
  '/speaker/crossovers/*/between/0': choice('Upper driver', 'plays above the crossover'),
  '/speaker/crossovers/*/between/1': choice('Lower driver', 'plays below the crossover'),
  '/speaker/crossovers/*/frequency': number('Frequency', ranges.crossoverFrequency, 'where the two are equally loud'),
  '/speaker/crossovers/*/alignment': choice('Alignment', 'how the two meet at the crossover', [
    ['in-phase', 'in phase'],
    ['quadrature', 'a quarter turn apart'],
  ]),
  '/speaker/designPoint': onOff('Design point known', 'where the maker lined the drivers up'),
  '/speaker/designPoint/driver': choice('On the axis of', 'the driver at whose height'),
  '/speaker/designPoint/distance': number('From the baffle', ranges.designDistance, 'often 1000 mm', { step: 50 }),
} as const satisfies Record<string, Field>;

const room = {
  '/layouts/*/room/leftWall': number('Wall at the left', ranges.sideWall, 'from the desk’s middle', {
    empty: 'no wall',
  }),
  '/layouts/*/room/rightWall': number('Wall at the right', ranges.sideWall, 'from the desk’s middle', {
    empty: 'no wall',
  }),
  '/layouts/*/room/ceiling': number('Ceiling', ranges.ceiling, 'over the floor', { empty: 'none near' }),
  '/layouts/*/room/absorption/desk': number('Desk absorbs', ranges.absorption, '0 all comes back, 1 nothing does'),
  '/layouts/*/room/absorption/wall': number('Wall behind absorbs', ranges.absorption, 'share of the energy, 0 to 1'),
  '/layouts/*/room/absorption/sides': number('Side walls absorb', ranges.absorption, 'share of the energy, 0 to 1'),
  '/layouts/*/room/absorption/ceiling': number('Ceiling absorbs', ranges.absorption, 'share of the energy, 0 to 1'),
} as const satisfies Record<string, Field>;

const shop = {
  '/stock/*/name': text('Name', 'as you call the board'),
  '/stock/*/thickness': number('Thickness', ranges.thickness, 'measured, not as sold', finest),
  '/stock/*/sheet/width': number('Sheet width', ranges.sheetSide, 'what the machine takes'),
  '/stock/*/sheet/height': number('Sheet height', ranges.sheetSide, 'what the machine takes'),
  '/stock/*/density': number('Density', ranges.density, 'for the stand’s mass'),
  '/stock/*/kerf': number('Kerf in it', ranges.kerf, 'from the coupon', { empty: 'cutter’s', ...finest }),
  '/stock/*/taper': number('Taper in it', ranges.taper, 'from the coupon; each side', {
    empty: 'cutter’s',
    ...fine,
  }),
  '/stock/*/grain': choice('Grain', 'which way parts may lie', [
    ['none', 'none: parts turn freely'],
    ['along', 'along the sheet’s width'],
  ]),
  '/stock/*/sheets': number('Sheets at hand', ranges.sheetCount, 'whole ones', { empty: 'enough' }),
  '/stock/*/price': number('Price of a sheet', ranges.price, 'in your currency', { empty: 'not known', step: 1 }),
  '/stock/*/solidPrice': number(
    'Price as solid wood',
    ranges.solidPrice,
    'of a cubic metre or 424 board feet, for a solid block',
    {
      empty: 'not known',
      step: 10,
    },
  ),
  '/stock/*/feed': onOff('Speeds known', 'for the cutting time; in mm/s, as machines are set'),
  '/stock/*/feed/outside': number('Speed, outside', ranges.feed, 'round a part', { empty: 'not known' }),
  '/stock/*/feed/inside': number('Speed, inside', ranges.feed, 'holes and slots', { empty: 'not known' }),
  '/stock/*/feed/mark': number('Speed, marks', ranges.feed, 'engraved lines', { empty: 'not known' }),
  '/stock/*/offcuts/*/width': number('Offcut width', ranges.sheetSide, 'used before a whole sheet'),
  '/stock/*/offcuts/*/height': number('Offcut height', ranges.sheetSide, 'used before a whole sheet'),
  '/stock/*/offcuts/*/count': number('Pieces of it', ranges.offcutCount, 'of this size'),
  '/cutter/kerf': number('Kerf', ranges.kerf, 'width that the cut removes', finest),
  '/cutter/taper': number('Taper', ranges.taper, 'of the cut edge from plumb, each side', fine),
  '/cutter/spacing': number('Between parts', ranges.spacing, 'least gap on the sheet', fine),
  '/cutter/margin': number('Sheet margin', ranges.sheetMargin, 'kept free round the sheet'),
  '/cutter/colours': onOff('Your own layer colours', 'as your machine’s driver wants; off: our own colours'),
  '/cutter/colours/outside': text('Cuts outside', 'round the parts'),
  '/cutter/colours/inside': text('Cuts inside', 'holes and slots'),
  '/cutter/colours/mark': text('Engraving', 'lettering and centre lines, not cut through'),
  '/printer': onOff('Printer as set', 'off: a common bed, clearance and filament'),
  '/printer/bed/x': number('Bed width', ranges.bedSide, 'what a print may take'),
  '/printer/bed/y': number('Bed depth', ranges.bedSide, 'what a print may take'),
  '/printer/bed/z': number('Print height', ranges.bedSide, 'what a print may take'),
  '/printer/clearance': number('Play round a key', ranges.keyClearance, 'between halves of a core', finest),
  '/printer/density': number('Filament density', ranges.density, 'as its maker says'),
  '/printer/fill': number('Share filled', ranges.fill, 'of the volume, walls included; 1 is solid'),
  '/printer/rate': number('Print rate', ranges.printRate, 'plastic laid down, in mm³/s as slicers have it', {
    empty: 'not known',
  }),
  '/printer/price': number('Price of a kilogram', ranges.price, 'of filament', { empty: 'not known', step: 1 }),
} as const satisfies Record<string, Field>;

/** The machines of the workshop, and its glue. */
const machines = {
  '/shop/saw/depth': number('Saw cuts at most', ranges.sawDepth, 'table saw, blade up and square'),
  '/shop/saw/tiltsMost': number('Blade tilts at most', ranges.sawTilt, 'from square'),
  '/shop/saw/tilts': choice('Blade tilts to the', 'as you stand before the saw', [
    ['left', 'left'],
    ['right', 'right'],
  ]),
  '/shop/bandSaw': onOff('Band saw', 'for cuts deeper than the table saw’s'),
  '/shop/bandSaw/height': number('Height under the guides', ranges.sawDepth, 'the deepest cut it takes'),
  '/shop/bandSaw/tiltsMost': number('Its table tilts at most', ranges.sawTilt, 'from square'),
  '/shop/router/bit': number('Router bit', ranges.routerBit, 'diameter, where a router cuts the sheets', {
    empty: 'no router',
    ...fine,
  }),
  '/shop/router/tab': onOff('Holding tabs', 'keep parts in the sheet until they are cut free'),
  '/shop/router/tab/width': number('Tab width', ranges.tabSize, 'along the outline', fine),
  '/shop/router/tab/height': number('Tab height', ranges.tabSize, 'left over the bed', fine),
  '/shop/glue/line': number('Glue line, measured', ranges.glueLine, 'one joint, measured on a glued pack', {
    empty: 'not known',
    ...finest,
  }),
  '/shop/glue/open': number('Open time', ranges.openTime, 'from spreading to clamping; see the bottle', {
    empty: 'not known',
    step: 1,
  }),
  '/shop/glue/clamp': number('Clamp time', ranges.clampTime, 'see the bottle', { empty: 'not known', step: 5 }),
  '/shop/glue/clamps': number('Clamps', ranges.clampCount, 'for one glue-up', { empty: 'not known' }),
  '/shop/glue/opening': number('Clamps open to', ranges.clampOpening, 'between their jaws; the narrowest', {
    empty: 'not known',
    step: 10,
  }),
} as const satisfies Record<string, Field>;

/** How far a measured value may be off, to both sides. */
const sure = {
  '/sure/deskWidth': number('Width, ±', ranges.sure, 'a tape laid flat'),
  '/sure/deskDepth': number('Depth, ±', ranges.sure, 'a tape laid flat'),
  '/sure/deskHeight': number('Height, ±', ranges.sure, 'a tape stood upright'),
  '/sure/wallGap': number('Gap, ±', ranges.sure, 'skirting and cables are in the way'),
  '/sure/earHeight': number('Ear height, ±', ranges.sure, 'people sink and stretch by 10 mm'),
  '/sure/setback': number('Head from the edge, ±', ranges.sure, 'chairs roll by 20 mm and more'),
  '/sure/headOffset': number('Head off the middle, ±', ranges.sure, 'nobody sits perfectly still'),
  '/sure/monitor': number('Screen, ±', ranges.sure, 'every number of it; only sight lines hang on it'),
  '/sure/speakerWidth': number('Width, ±', ranges.sure, 'a rule or a square'),
  '/sure/speakerHeight': number('Height, ±', ranges.sure, 'a rule or a square'),
  '/sure/speakerDepth': number('Depth, ±', ranges.sure, 'a rule or a square'),
  '/sure/baffleRake': number('Rake, ±', ranges.sureAngle, 'a phone laid on it shows half a degree', fine),
  '/sure/driverHeight': number('Centre height, ±', ranges.sure, 'half of rim bottom and rim top added up'),
  '/sure/driverOffset': number('Centre offset, ±', ranges.sure, 'half of the gaps left and right taken apart'),
  '/sure/markX': number('Sideways, ±', ranges.sure, 'a tape and a square'),
  '/sure/markY': number('From the edge, ±', ranges.sure, 'a tape and a square'),
  '/sure/thickness': number('Thickness, ±', ranges.sure, 'a calliper, in three places', finest),
} as const satisfies Record<string, Field>;

/** The inputs of groups that are folded at first, and of other pages; keys as in `fieldTable`. */
export const lateFields: Readonly<Record<string, Field>> = {
  ...crossovers,
  ...room,
  ...shop,
  ...machines,
  ...sure,
};
