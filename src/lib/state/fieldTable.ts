import { ranges, type Range } from '$lib/project/ranges.ts';
import { displayOptions } from './displayChoice.ts';
import type { ChoiceField, Field, NumberField, SwitchField, TextField } from './field.ts';

/** What one press of an arrow key adds, by the range's unit. */
const steps: Readonly<Record<string, number>> = {
  mm: 1,
  '°': 0.5,
  kg: 0.1,
  Hz: 50,
  '°C': 1,
  'kg/m³': 10,
  'mm/s': 1,
  'mm³/s': 0.5,
};

const number = (label: string, range: Range, help: string, more: Partial<NumberField> = {}): NumberField => ({
  kind: 'number',
  label,
  range,
  help,
  step: range.whole ? 1 : (steps[range.unit] ?? 0.05),
  ...more,
});
const text = (label: string, help: string): TextField => ({ kind: 'text', label, help });
const choice = (label: string, help: string, options: ChoiceField['options'] = []): ChoiceField => ({
  kind: 'choice',
  label,
  help,
  options,
});
const onOff = (label: string, help: string): SwitchField => ({ kind: 'switch', label, help });

/** For what is a few millimetres, or a fraction of one. */
const fine = { step: 0.1 };
const finest = { step: 0.05 };

const speaker = {
  '/speaker/width': number('Width', ranges.speakerWidth, 'outside, side to side'),
  '/speaker/height': number('Height', ranges.speakerHeight, 'outside, bottom to top'),
  '/speaker/depth': number('Depth', ranges.speakerDepth, 'along the bottom, front edge to back'),
  '/speaker/baffleRake': number('Baffle rake', ranges.baffleRake, 'how far the baffle leans back'),
  '/speaker/mass': number('Mass', ranges.mass, 'of one cabinet; may stay empty', { empty: 'not known' }),
  '/speaker/mirrored': onOff('Mirrored pair', 'off: two cabinets that are the same, not left and right'),
  '/speaker/centreOfMass': onOff('Balance point known', 'off: the middle of the box'),
  '/speaker/centreOfMass/depth': number(
    'Balance, from the front',
    ranges.centreOfMass,
    'balance it on a rod to find out',
  ),
  '/speaker/centreOfMass/height': number(
    'Balance, over the bottom',
    ranges.centreOfMass,
    'lay it on its back to find out',
  ),
  '/speaker/drivers/*/name': text('Name', 'one of its own'),
  '/speaker/drivers/*/role': choice('Kind', 'what it plays', [
    ['tweeter', 'tweeter'],
    ['midrange', 'midrange'],
    ['woofer', 'woofer'],
    ['full-range', 'full-range'],
  ]),
  '/speaker/drivers/*/diameter': number('Diameter', ranges.driverDiameter, 'of the whole rim, on the baffle'),
  '/speaker/drivers/*/height': number('Centre height', ranges.driverHeight, 'up the baffle from its bottom edge'),
  '/speaker/drivers/*/offset': number('Centre offset', ranges.driverOffset, 'from the middle; plus is inboard'),
  '/speaker/drivers/*/acousticDepth': number(
    'Acoustic depth',
    ranges.acousticDepth,
    'its source, behind the baffle’s face',
  ),
  '/speaker/crossovers/*/between/0': choice('Upper driver', 'plays above the crossover'),
  '/speaker/crossovers/*/between/1': choice('Lower driver', 'plays below the crossover'),
  '/speaker/crossovers/*/frequency': number('Frequency', ranges.crossoverFrequency, 'where the two are equally loud'),
  '/speaker/crossovers/*/alignment': choice('Alignment', 'how the two meet at the crossover', [
    ['in-phase', 'in phase'],
    ['quadrature', 'a quarter turn apart'],
  ]),
  '/speaker/designPoint': onOff('Design point known', 'where the maker lined the drivers up'),
  '/speaker/designPoint/driver': choice('On the axis of', 'the driver at whose height'),
  '/speaker/designPoint/distance': number('From the baffle', ranges.designDistance, 'often 1 m', { step: 50 }),
} as const satisfies Record<string, Field>;

const desk = {
  '/layouts/*/desk/width': number('Width', ranges.deskWidth, 'side to side'),
  '/layouts/*/desk/depth': number('Depth', ranges.deskDepth, 'front edge to back edge'),
  '/layouts/*/desk/height': number('Height', ranges.deskHeight, 'floor to the desk’s top face'),
  '/layouts/*/desk/wallGap': number('Gap to the wall', ranges.wallGap, 'back edge to the wall; empty: no wall near', {
    empty: 'no wall',
  }),
  '/layouts/*/monitors/*/x': number('Middle, sideways', ranges.monitorX, 'from the desk’s middle; plus is right'),
  '/layouts/*/monitors/*/y': number('Face, from the edge', ranges.monitorY, 'desk’s front edge to the screen'),
  '/layouts/*/monitors/*/width': number('Width', ranges.monitorWidth, 'outside, side to side'),
  '/layouts/*/monitors/*/height': number('Height', ranges.monitorHeight, 'of the panel, without its foot'),
  '/layouts/*/monitors/*/bottom': number(
    'Bottom over the desk',
    ranges.monitorBottom,
    'desk to the panel’s lower edge',
  ),
  '/layouts/*/monitors/*/depth': number('Depth', ranges.monitorDepth, 'face to back'),
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

/** Who sits there, where nobody measured the height of their ears. */
const person = {
  '/layouts/*/listener/earHeightFrom': onOff('Ear height not measured', 'estimate it from the person'),
  '/layouts/*/listener/earHeightFrom/sex': choice('Person', 'whose measures count', [
    ['not-said', 'not said'],
    ['man', 'man'],
    ['woman', 'woman'],
  ]),
  '/layouts/*/listener/earHeightFrom/stature': number('Body height', ranges.stature, 'standing, without shoes', {
    empty: 'not known',
  }),
  '/layouts/*/listener/earHeightFrom/percentile': number(
    'Percentile',
    ranges.percentile,
    'when the height is not known',
  ),
  '/layouts/*/listener/earHeightFrom/seat': number('Seat', ranges.seatHeight, 'over the floor, pressed down', {
    empty: 'one that fits',
  }),
  '/layouts/*/listener/earHeightFrom/slump': number('Slump', ranges.slump, '0 is bolt upright'),
  '/layouts/*/listener/earHeightFrom/shoes': number('Heels', ranges.shoes, 'of the shoes', { empty: 'usual ones' }),
} as const satisfies Record<string, Field>;

const listener = {
  '/layouts/*/listener/earHeight': number('Ear height', ranges.earHeight, 'floor to ear, sitting as you listen'),
  '/layouts/*/listener/setback': number('Head from the edge', ranges.setback, 'desk’s front edge back to the ears'),
  '/layouts/*/listener/offset': number('Head off the middle', ranges.listenerOffset, 'sideways; plus is right'),
  '/layouts/*/listener/headWidth': number('Head width', ranges.headWidth, 'ear to ear, over the face'),
  '/layouts/*/listener/postures/*/name': text('Name', 'another way you sit'),
  '/layouts/*/listener/postures/*/earHeight': number('Ear height', ranges.earHeight, 'floor to ear'),
  '/layouts/*/listener/postures/*/setback': number(
    'Head from the edge',
    ranges.setback,
    'desk’s front edge back to the ears',
  ),
  '/layouts/*/air/temperature': number('Temperature', ranges.temperature, 'sets the speed of sound'),
} as const satisfies Record<string, Field>;

const mark = 'under the middle of the front bottom edge';

const aim = {
  '/layouts/*/placement/left/x': number('Left, sideways', ranges.markX, 'from the desk’s middle; minus is left'),
  '/layouts/*/placement/left/y': number('Left, from the edge', ranges.markY, mark),
  '/layouts/*/placement/right/x': number('Right, sideways', ranges.markX, 'from the desk’s middle; plus is right'),
  '/layouts/*/placement/right/y': number('Right, from the edge', ranges.markY, mark),
  '/layouts/*/aim/through': choice('Axis leaves from', 'what is pointed at you'),
  '/layouts/*/aim/through/between/0': choice('First driver', 'where the fraction is 0'),
  '/layouts/*/aim/through/between/1': choice('Second driver', 'where the fraction is 1'),
  '/layouts/*/aim/through/fraction': number('Fraction', ranges.fraction, 'how far from the first to the second'),
  '/layouts/*/aim/toe': choice('Toe', 'which way the fronts turn', [
    ['to-head', 'to the head'],
    ['to-ear', 'to the nearer ear'],
    ['behind-head', 'to meet behind the head'],
    ['straight', 'straight ahead'],
    ['as-set', 'as set'],
  ]),
  '/layouts/*/aim/toe/distance': number('Behind the head', ranges.behindHead, 'where the two axes meet'),
  '/layouts/*/aim/toe/degrees': number('Toe angle', ranges.toe, 'plus turns the fronts to the middle'),
  '/layouts/*/aim/tilt': choice('Tilt', 'what meets the ear’s height', [
    ['tilt-to-ear', 'tilt to the ear'],
    ['lift-to-ear', 'lift to the ear'],
    ['as-set', 'as set'],
  ]),
  '/layouts/*/aim/tilt/degrees': number('Tilt angle', ranges.tilt, 'plus raises the front'),
} as const satisfies Record<string, Field>;

const stand = {
  '/layouts/*/stand/lift': number('Lift', ranges.lift, 'desk to the cabinet’s lowest edge'),
  '/layouts/*/stand/build': choice('Build', 'how it is made', [
    ['stacked', 'stacked slices'],
    ['skinned', 'printed core between cheeks'],
    ['ribbed', 'ribs that cross'],
    ['solid', 'one block of wood'],
  ]),
  '/layouts/*/stand/base': choice('Base', 'how it lies on the desk', [
    ['turned', 'turned with the cabinet'],
    ['square-to-desk', 'square to the desk'],
  ]),
  '/layouts/*/stand/stock': choice('Cut from', 'which board'),
  '/layouts/*/stand/width': number('Finished width', ranges.standWidth, 'empty: as wide as the cabinet', {
    empty: 'the cabinet’s',
  }),
  '/layouts/*/stand/frontMargin': number('Beyond the front', ranges.standMargin, 'along the slope'),
  '/layouts/*/stand/rearMargin': number('Beyond the back', ranges.standMargin, 'along the slope'),
  '/layouts/*/stand/ends': choice('Ends', 'how front and back are cut', [
    ['plumb', 'plumb'],
    ['square', 'square to the slope'],
  ]),
  '/layouts/*/stand/minimumEdge': number('Thinnest edge', ranges.minimumEdge, 'less chars and breaks', fine),
  '/layouts/*/stand/stop': onOff('Stop', 'a lip at the low end that holds the cabinet'),
  '/layouts/*/stand/stop/height': number('Stop height', ranges.stopHeight, 'over the slope'),
  '/layouts/*/stand/stop/thickness': number('Stop thickness', ranges.stopThickness, 'along the slope'),
  '/layouts/*/stand/rods': onOff('Rods', 'line the slices up while they are glued'),
  '/layouts/*/stand/rods/diameter': number('Rod diameter', ranges.rodDiameter, 'measured', fine),
  '/layouts/*/stand/rods/count': number('Rods in each stand', ranges.rodCount, 'two keep slices from turning'),
  '/layouts/*/stand/rods/clearance': number('Hole over rod', ranges.rodClearance, 'added to the diameter', finest),
  '/layouts/*/stand/rods/edge': number('Wood round a hole', ranges.rodEdge, 'least distance to the edge', fine),
  '/layouts/*/stand/friction': number('Friction', ranges.friction, 'rise over run of the slope at which it slips'),
  '/layouts/*/stand/feet': number('Feet', ranges.feet, 'height under the stand', fine),
  '/layouts/*/stand/pad': number('Pad', ranges.pad, 'thickness under the cabinet', fine),
  '/layouts/*/stand/veneer': number('Veneer', ranges.veneer, 'thickness', fine),
  '/layouts/*/stand/glue': number('Glue line', ranges.glue, 'thickness of each joint', finest),
  '/layouts/*/stand/veneerFaces/sides': onOff('Veneer on the sides', 'both of them'),
  '/layouts/*/stand/veneerFaces/front': onOff('Veneer on the front', 'the end towards you'),
  '/layouts/*/stand/veneerFaces/rear': onOff('Veneer on the rear', 'the end towards the wall'),
  '/layouts/*/stand/veneerFaces/top': onOff('Veneer on the top', 'the slope, and the stop’s faces'),
  '/layouts/*/stand/veneerFaces/base': onOff('Veneer on the base', 'under the stand'),
} as const satisfies Record<string, Field>;

const details = {
  '/layouts/*/stand/corner': number('Corner radius', ranges.cornerRadius, 'seen from the side; less at a thin end', {
    empty: 'sharp',
    ...fine,
  }),
  '/layouts/*/stand/relief': onOff('Relief windows', 'hollows that save wood and weight'),
  '/layouts/*/stand/relief/web': number('Web round windows', ranges.reliefWeb, 'wood left between and around'),
  '/layouts/*/stand/relief/corner': number('Window corners', ranges.cornerRadius, 'radius; sharp ones tear', fine),
  '/layouts/*/stand/cheeks': onOff('Cheeks as set', 'outer layers, of another board if you like'),
  '/layouts/*/stand/cheeks/stock': choice('Cheeks from', 'which board'),
  '/layouts/*/stand/cheeks/count': number('Cheeks on each side', ranges.cheekCount, 'one over the other'),
  '/layouts/*/stand/ribs': onOff('Ribs as set', 'off: two ribs, three cross ribs'),
  '/layouts/*/stand/ribs/count': number('Ribs', ranges.ribCount, 'that carry the slope'),
  '/layouts/*/stand/ribs/cross': number('Cross ribs', ranges.crossCount, 'across the width'),
  '/layouts/*/stand/ribs/fit': number('Play in a slot', ranges.ribFit, 'over the measured thickness', finest),
  '/layouts/*/stand/ribs/inset': number('Beyond the outer ribs', ranges.ribInset, 'how far cross ribs reach'),
  '/layouts/*/stand/ribs/skin': choice('Top and front skin', 'which thin board'),
  '/layouts/*/stand/pockets': onOff('Pockets', 'in the core, for screws or ballast'),
  '/layouts/*/stand/pockets/count': number('Pockets in each stand', ranges.pocketCount, 'along the middle'),
  '/layouts/*/stand/pockets/diameter': number('Pocket diameter', ranges.pocketDiameter, 'of each', fine),
  '/layouts/*/stand/pockets/depth': number('Pocket depth', ranges.pocketDepth, 'into the core', fine),
  '/layouts/*/stand/cable': onOff('Cable slot', 'in the base, across the width'),
  '/layouts/*/stand/cable/width': number('Slot width', ranges.cableSize, 'of the widest plug, or the cable'),
  '/layouts/*/stand/cable/depth': number('Slot depth', ranges.cableSize, 'up from the base'),
  '/layouts/*/stand/cable/fromRear': number('Slot, from the rear', ranges.cablePlace, 'rear end to the slot’s middle'),
  '/layouts/*/stand/recess': onOff('Anti-slip recess', 'for a mat let into the wood'),
  '/layouts/*/stand/recess/face': choice('Recess in', 'where the mat lies', [
    ['base', 'the base'],
    ['top', 'the top'],
  ]),
  '/layouts/*/stand/recess/depth': number('Recess depth', ranges.recessDepth, 'less than the mat is thick', fine),
  '/layouts/*/stand/recess/border': number('Wood round the recess', ranges.recessBorder, 'at front and rear'),
} as const satisfies Record<string, Field>;

const shop = {
  '/stock/*/name': text('Name', 'as you call the board'),
  '/stock/*/thickness': number('Thickness', ranges.thickness, 'measured, not as sold', finest),
  '/stock/*/sheet/width': number('Sheet width', ranges.sheetSide, 'what the machine takes'),
  '/stock/*/sheet/height': number('Sheet height', ranges.sheetSide, 'what the machine takes'),
  '/stock/*/density': number('Density', ranges.density, 'for the stand’s mass'),
  '/stock/*/kerf': number('Kerf in it', ranges.kerf, 'from the coupon', { empty: 'the cutter’s', ...finest }),
  '/stock/*/taper': number('Taper in it', ranges.taper, 'from the coupon; each side', {
    empty: 'the cutter’s',
    ...fine,
  }),
  '/stock/*/grain': choice('Grain', 'which way parts may lie', [
    ['none', 'none: parts turn freely'],
    ['along', 'along the sheet’s width'],
  ]),
  '/stock/*/sheets': number('Sheets at hand', ranges.sheetCount, 'whole ones', { empty: 'enough' }),
  '/stock/*/price': number('Price of a sheet', ranges.price, 'in your currency', { empty: 'not known', step: 1 }),
  '/stock/*/solidPrice': number('Price as solid wood', ranges.solidPrice, 'of a cubic metre, for a solid block', {
    empty: 'not known',
    step: 10,
  }),
  '/stock/*/feed': onOff('Speeds known', 'for the time that the cut takes'),
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
  '/cutter/colours': onOff('A colour for each layer', 'as your machine’s driver tells them apart'),
  '/cutter/colours/outside': text('Cuts outside', 'round the parts'),
  '/cutter/colours/inside': text('Cuts inside', 'holes and slots'),
  '/cutter/colours/mark': text('Marks', 'engraved, not cut through'),
  '/printer': onOff('Printer as set', 'off: a common bed, clearance and filament'),
  '/printer/bed/x': number('Bed width', ranges.bedSide, 'what a print may take'),
  '/printer/bed/y': number('Bed depth', ranges.bedSide, 'what a print may take'),
  '/printer/bed/z': number('Print height', ranges.bedSide, 'what a print may take'),
  '/printer/clearance': number('Play round a key', ranges.keyClearance, 'between halves of a core', finest),
  '/printer/density': number('Filament density', ranges.density, 'as its maker says'),
  '/printer/fill': number('Share filled', ranges.fill, 'of the volume, walls included; 1 is solid'),
  '/printer/rate': number('Print rate', ranges.printRate, 'plastic laid down', { empty: 'not known' }),
  '/printer/price': number('Price of a kilogram', ranges.price, 'of filament', { empty: 'not known', step: 1 }),
} as const satisfies Record<string, Field>;

/** How far a measured value may be off, to both sides. */
const sure = {
  '/sure/deskWidth': number('Width, ±', ranges.sure, 'a tape laid flat'),
  '/sure/deskDepth': number('Depth, ±', ranges.sure, 'a tape laid flat'),
  '/sure/deskHeight': number('Height, ±', ranges.sure, 'a tape stood upright'),
  '/sure/wallGap': number('Gap, ±', ranges.sure, 'skirting and cables are in the way'),
  '/sure/earHeight': number('Ear height, ±', ranges.sure, 'people sink and stretch by 10 mm'),
  '/sure/setback': number('Head from the edge, ±', ranges.sure, 'chairs roll by 20 mm and more'),
  '/sure/headOffset': number('Head off the middle, ±', ranges.sure, 'nobody sits to the millimetre'),
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

const project = {
  '/title': text('Project', 'stands in the title block'),
  '/display': choice('Lengths in', 'on the page and in print; files stay in mm', displayOptions),
  '/layouts/*/name': text('Layout', 'this desk, this seat'),
} as const satisfies Record<string, Field>;

/** Every input of a project, by its pointer with `*` for a place in a list. */
export const fieldTable: Readonly<Record<string, Field>> = {
  ...project,
  ...speaker,
  ...desk,
  ...room,
  ...listener,
  ...person,
  ...aim,
  ...stand,
  ...details,
  ...shop,
  ...sure,
};
