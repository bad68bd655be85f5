import { ranges } from '$lib/project/ranges.ts';
import { displayOptions } from './displayChoice.ts';
import type { Field } from './field.ts';
import { choice, fine, finest, number, onOff, text } from './fieldKinds.ts';

const project = {
  '/title': text('Project', 'stands in the title block'),
  '/display': choice('Lengths in', 'on the page and in print; files stay in mm', displayOptions),
  '/layouts/*/name': text('Layout', 'this desk, this seat'),
} as const satisfies Record<string, Field>;

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
  '/speaker/drivers/*/diameter': number('Rim diameter', ranges.driverDiameter, 'of the whole rim, on the baffle'),
  '/speaker/drivers/*/radiating': number(
    'Radiating diameter',
    ranges.radiatingDiameter,
    'of the dome, or the cone with half its surround',
    { empty: 'estimated' },
  ),
  '/speaker/drivers/*/height': number('Centre height', ranges.driverHeight, 'up the baffle from its bottom edge'),
  '/speaker/drivers/*/offset': number('Centre offset', ranges.driverOffset, 'from the middle; plus is inboard'),
  '/speaker/drivers/*/acousticDepth': number(
    'Acoustic depth',
    ranges.acousticDepth,
    'its source, behind the baffle’s face',
  ),
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
    empty: 'as it fits',
  }),
  '/layouts/*/listener/earHeightFrom/slump': number('Slump', ranges.slump, '0 is bolt upright'),
  '/layouts/*/listener/earHeightFrom/shoes': number('Heels', ranges.shoes, 'of the shoes', { empty: 'usual ones' }),
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
  '/layouts/*/stand/build': choice('Build', 'how it is made'),
  '/layouts/*/stand/base': choice('Base', 'how it lies on the desk', [
    ['turned', 'turned with the cabinet'],
    ['square-to-desk', 'square to the desk'],
  ]),
  '/layouts/*/stand/stock': choice('Cut from', 'which board'),
  '/layouts/*/stand/width': number('Finished width', ranges.standWidth, 'empty: as wide as the cabinet', {
    empty: 'cabinet’s',
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
  '/layouts/*/stand/friction': number(
    'Least friction',
    ranges.friction,
    'rise over run of the slope at which it slips',
  ),
  '/layouts/*/stand/frictionMost': number('Most friction', ranges.friction, 'empty: as dry wood on wood', {
    empty: '0.75',
  }),
  '/layouts/*/stand/padFriction': number('Friction of the pad', ranges.friction, 'measure it: rubber and cork vary', {
    empty: 'not known',
  }),
  '/layouts/*/stand/feetFriction': number('Friction of the feet', ranges.friction, 'on this desk', {
    empty: 'not known',
  }),
  '/layouts/*/stand/feet': number('Feet', ranges.feet, 'height under the stand', fine),
  '/layouts/*/stand/pad': number('Pad', ranges.pad, 'thickness under the cabinet', fine),
  '/layouts/*/stand/veneer': number('Veneer', ranges.veneer, 'thickness', fine),
  '/layouts/*/stand/glue': number('Glue line, assumed', ranges.glue, 'each joint, until one is measured', finest),
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

/** The inputs that a page shows, names or draws before anything more has been fetched; keys as in `fieldTable`. */
export const firstFields: Readonly<Record<string, Field>> = {
  ...project,
  ...speaker,
  ...desk,
  ...listener,
  ...person,
  ...aim,
  ...stand,
  ...details,
};
