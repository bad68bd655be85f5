import * as v from 'valibot';
import {
  colour,
  exactly,
  flag,
  list,
  name,
  numberOf,
  oneRuleOf,
  orNull,
  pair,
  quantity,
  record,
  word,
} from './rules.ts';
import { COMMON_SHOP } from './commonShop.ts';
import { got } from './got.ts';
import { MOST_LAYOUTS } from './limits.ts';
import { ranges } from './ranges.ts';
import { byTape } from './sure.ts';

/** The version this code writes. Older files are migrated, newer ones refused. */
export const VERSION = 1;
export const FORMAT = 'wedgewright/project';

/** The most parts of one layout that can be held in place by hand. */
const MOST_LOCKED = 500;

const q = quantity;
const optional = v.optional;

const driver = record({
  name: name(),
  role: word(['tweeter', 'midrange', 'woofer', 'full-range']),
  // Of the whole rim. The dome or cone within it sends the sound out; null: estimated, see `radiatingOf`.
  diameter: q(ranges.driverDiameter),
  radiating: optional(orNull(q(ranges.radiatingDiameter)), null),
  height: q(ranges.driverHeight),
  offset: optional(q(ranges.driverOffset), 0),
  acousticDepth: optional(q(ranges.acousticDepth), 0),
});

const crossover = record({
  between: pair('driver names'),
  frequency: q(ranges.crossoverFrequency),
  alignment: optional(word(['in-phase', 'quadrature']), 'in-phase'),
});

const speaker = record({
  width: q(ranges.speakerWidth),
  height: q(ranges.speakerHeight),
  depth: q(ranges.speakerDepth),
  baffleRake: optional(q(ranges.baffleRake), 0),
  mass: optional(orNull(q(ranges.mass)), null),
  mirrored: optional(flag(), true),
  centreOfMass: optional(orNull(record({ depth: q(ranges.centreOfMass), height: q(ranges.centreOfMass) })), null),
  drivers: list('drivers', driver, 1, 8),
  crossovers: optional(list('crossovers', crossover, 0, 8), []),
  // Where the maker lined the drivers up: on this driver's own axis, this far from the baffle. Null: not known.
  designPoint: optional(orNull(record({ driver: name(), distance: q(ranges.designDistance) })), null),
});

// Speeds of the cut, and of the marking; one that is null is not known.
const feed = record({
  outside: optional(orNull(q(ranges.feed)), null),
  inside: optional(orNull(q(ranges.feed)), null),
  mark: optional(orNull(q(ranges.feed)), null),
});

const offcut = record({
  width: q(ranges.sheetSide),
  height: q(ranges.sheetSide),
  count: optional(q(ranges.offcutCount), 1),
});

const stock = record({
  name: name(),
  thickness: q(ranges.thickness),
  sheet: record({ width: q(ranges.sheetSide), height: q(ranges.sheetSide) }),
  density: optional(q(ranges.density), 750),
  // What the beam does in this stock; null: as the cutter has it.
  kerf: optional(orNull(q(ranges.kerf)), null),
  taper: optional(orNull(q(ranges.taper)), null),
  feed: optional(orNull(feed), null),
  // Of one sheet, in any currency.
  price: optional(orNull(q(ranges.price)), null),
  // Of a cubic metre of the same wood, solid, for a block; in the same currency.
  solidPrice: optional(orNull(q(ranges.solidPrice)), null),
  // Along: parts keep their direction on the sheet, save for half turns.
  grain: optional(word(['none', 'along']), 'none'),
  // How many whole sheets there are; null: as many as it takes.
  sheets: optional(orNull(q(ranges.sheetCount)), null),
  // Pieces left from other work: used before a whole sheet is.
  offcuts: optional(list('offcuts', offcut, 0, 20), []),
});

// Null: a common bed, clearance and filament; see `printerOf`.
const printer = record({
  bed: optional(record({ x: q(ranges.bedSide), y: q(ranges.bedSide), z: q(ranges.bedSide) }), {
    x: 220,
    y: 220,
    z: 250,
  }),
  clearance: optional(q(ranges.keyClearance), 0.2),
  density: optional(q(ranges.density), 1240),
  fill: optional(q(ranges.fill), 1),
  rate: optional(orNull(q(ranges.printRate)), null),
  // Of a kilogram of filament, in any currency.
  price: optional(orNull(q(ranges.price)), null),
});

/** What a machine's driver tells the layers apart by. */
const colours = record({ outside: colour(), inside: colour(), mark: colour() });

const cutter = record({
  kerf: optional(q(ranges.kerf), 0.2),
  taper: optional(q(ranges.taper), 0),
  spacing: optional(q(ranges.spacing), 2),
  margin: optional(q(ranges.sheetMargin), 5),
  // Null: colours of this program's own.
  colours: optional(orNull(colours), null),
});

// What the blade cuts at most: square to the table, and tilted from that; and to which side it tilts, seen from the front.
const saw = record({
  depth: optional(q(ranges.sawDepth), COMMON_SHOP.saw.depth),
  tiltsMost: optional(q(ranges.sawTilt), COMMON_SHOP.saw.tiltsMost),
  tilts: optional(word(['left', 'right']), COMMON_SHOP.saw.tilts),
});
// Height under its guides, and how far its table tilts.
const bandSaw = record({
  height: q(ranges.sawDepth),
  tiltsMost: optional(q(ranges.sawTilt), 45),
});
// Left on the outlines, so that parts stay in their sheet.
const tab = record({ width: q(ranges.tabSize), height: q(ranges.tabSize) });
const router = record({
  // Null: sheets are cut by something else than a router's bit.
  bit: optional(orNull(q(ranges.routerBit)), COMMON_SHOP.router.bit),
  tab: optional(orNull(tab), COMMON_SHOP.router.tab),
});
const glue = record({
  // Of one joint, as measured on a glued pack; null: not measured.
  line: optional(orNull(q(ranges.glueLine)), COMMON_SHOP.glue.line),
  // From spreading to clamping, and in the clamps; null: not known.
  open: optional(orNull(q(ranges.openTime)), COMMON_SHOP.glue.open),
  clamp: optional(orNull(q(ranges.clampTime)), COMMON_SHOP.glue.clamp),
  // How many clamps there are.
  clamps: optional(orNull(q(ranges.clampCount)), COMMON_SHOP.glue.clamps),
  // How wide they open; null: not known.
  opening: optional(orNull(q(ranges.clampOpening)), COMMON_SHOP.glue.opening),
});
const shop = record({
  saw: optional(saw, COMMON_SHOP.saw),
  bandSaw: optional(orNull(bandSaw), COMMON_SHOP.bandSaw),
  router: optional(router, COMMON_SHOP.router),
  glue: optional(glue, COMMON_SHOP.glue),
});

const desk = record({
  width: q(ranges.deskWidth),
  depth: q(ranges.deskDepth),
  height: q(ranges.deskHeight),
  wallGap: optional(orNull(q(ranges.wallGap)), null),
});

const absorption = record({
  desk: optional(q(ranges.absorption), 0),
  wall: optional(q(ranges.absorption), 0),
  sides: optional(q(ranges.absorption), 0),
  ceiling: optional(q(ranges.absorption), 0),
});

// Side walls from the desk's middle, the ceiling over the floor; null where there is none near.
const room = record({
  leftWall: optional(orNull(q(ranges.sideWall)), null),
  rightWall: optional(orNull(q(ranges.sideWall)), null),
  ceiling: optional(orNull(q(ranges.ceiling)), null),
  absorption: optional(absorption, { desk: 0, wall: 0, sides: 0, ceiling: 0 }),
});

const monitor = record({
  x: optional(q(ranges.monitorX), 0),
  y: q(ranges.monitorY),
  width: q(ranges.monitorWidth),
  height: q(ranges.monitorHeight),
  bottom: q(ranges.monitorBottom),
  depth: optional(q(ranges.monitorDepth), 40),
});

const posture = record({ name: name(), setback: q(ranges.setback), earHeight: q(ranges.earHeight) });

/** How an ear height was found that nobody measured: a record only, the number used is `earHeight`. */
const earHeightFrom = record({
  sex: optional(word(['man', 'woman', 'not-said']), 'not-said'),
  stature: optional(orNull(q(ranges.stature)), null),
  percentile: optional(q(ranges.percentile), 50),
  seat: optional(orNull(q(ranges.seatHeight)), null),
  slump: optional(q(ranges.slump), 40),
  shoes: optional(orNull(q(ranges.shoes)), null),
});

const listener = record({
  offset: optional(q(ranges.listenerOffset), 0),
  setback: q(ranges.setback),
  earHeight: q(ranges.earHeight),
  earHeightFrom: optional(orNull(earHeightFrom), null),
  headWidth: optional(q(ranges.headWidth), 152),
  postures: optional(list('postures', posture, 0, 12), []),
});

const mark = record({ x: q(ranges.markX), y: q(ranges.markY) });

const toe = oneRuleOf(
  ['to-head', 'to-ear', 'behind-head', 'straight', 'as-set'],
  [
    record({ rule: v.literal('to-head') }),
    record({ rule: v.literal('to-ear') }),
    record({ rule: v.literal('behind-head'), distance: q(ranges.behindHead) }),
    record({ rule: v.literal('straight') }),
    record({ rule: v.literal('as-set'), degrees: q(ranges.toe) }),
  ],
);

const tilt = oneRuleOf(
  ['tilt-to-ear', 'lift-to-ear', 'as-set'],
  [
    record({ rule: v.literal('tilt-to-ear') }),
    record({ rule: v.literal('lift-to-ear'), degrees: q(ranges.tilt) }),
    record({ rule: v.literal('as-set'), degrees: q(ranges.tilt) }),
  ],
);

const aim = record({
  through: v.union(
    [
      name(),
      record({
        between: pair('driver names'),
        fraction: optional(q(ranges.fraction), 0.5),
      }),
    ],
    (issue) => `expected the name of a driver or an object with between and fraction, got ${got(issue.input)}`,
  ),
  toe: optional(toe, { rule: 'to-head' }),
  tilt: optional(tilt, { rule: 'tilt-to-ear' }),
});

const rods = record({
  diameter: optional(q(ranges.rodDiameter), 6),
  count: optional(q(ranges.rodCount), 2),
  clearance: optional(q(ranges.rodClearance), 0.1),
  edge: optional(q(ranges.rodEdge), 2),
});

const veneerFaces = record({
  top: optional(flag(), true),
  front: optional(flag(), true),
  rear: optional(flag(), true),
  sides: optional(flag(), true),
  base: optional(flag(), false),
});

const relief = record({ web: optional(q(ranges.reliefWeb), 8), corner: optional(q(ranges.cornerRadius), 3) });
// So many on each side, of another stock or of the stand's own.
const cheeks = record({ stock: optional(orNull(name()), null), count: optional(q(ranges.cheekCount), 1) });
const ribs = record({
  count: optional(q(ranges.ribCount), 2),
  cross: optional(q(ranges.crossCount), 3),
  fit: optional(q(ranges.ribFit), 0.1),
  inset: optional(q(ranges.ribInset), 10),
  // The stock of a top and front skin; null for none.
  skin: optional(orNull(name()), null),
});
const pockets = record({
  count: q(ranges.pocketCount),
  diameter: q(ranges.pocketDiameter),
  depth: q(ranges.pocketDepth),
});
// In the base, across the width; from the rear end to the slot's middle.
const cable = record({ width: q(ranges.cableSize), depth: q(ranges.cableSize), fromRear: q(ranges.cablePlace) });
const recess = record({
  face: optional(word(['top', 'base']), 'base'),
  depth: q(ranges.recessDepth),
  border: optional(q(ranges.recessBorder), 5),
});

const stand = record({
  lift: optional(q(ranges.lift)),
  build: optional(word(['stacked', 'skinned', 'ribbed', 'solid']), 'stacked'),
  base: optional(word(['turned', 'square-to-desk']), 'turned'),
  stock: optional(orNull(name()), null),
  width: optional(orNull(q(ranges.standWidth)), null),
  frontMargin: optional(q(ranges.standMargin), 0),
  rearMargin: optional(q(ranges.standMargin), 0),
  ends: optional(word(['plumb', 'square']), 'plumb'),
  stop: optional(orNull(record({ height: q(ranges.stopHeight), thickness: q(ranges.stopThickness) })), null),
  minimumEdge: optional(q(ranges.minimumEdge), 3),
  rods: optional(orNull(rods), { diameter: 6, count: 2, clearance: 0.1, edge: 2 }),
  feet: optional(q(ranges.feet), 0),
  pad: optional(q(ranges.pad), 0),
  veneer: optional(q(ranges.veneer), 0),
  veneerFaces: optional(veneerFaces, { top: true, front: true, rear: true, sides: true, base: false }),
  glue: optional(q(ranges.glue), 0),
  // The rest of the body; null for none, or for what the build takes by itself.
  corner: optional(orNull(q(ranges.cornerRadius)), null),
  relief: optional(orNull(relief), null),
  cheeks: optional(orNull(cheeks), null),
  ribs: optional(orNull(ribs), null),
  pockets: optional(orNull(pockets), null),
  cable: optional(orNull(cable), null),
  recess: optional(orNull(recess), null),
  // Of the bare faces, cabinet on stand and stand on desk: the least that it may be, and the most; null for what is measured of dry wood.
  friction: optional(q(ranges.friction), 0.3),
  frictionMost: optional(orNull(q(ranges.friction)), null),
  // Of the pad, and of the feet; null where nobody measured it: then they count as bare faces.
  padFriction: optional(orNull(q(ranges.friction)), null),
  feetFriction: optional(orNull(q(ranges.friction)), null),
});

/** One part held where somebody put it: on a numbered sheet of its stock, or on one of the stock's offcuts. */
const locked = record({
  part: name(),
  sheet: q(ranges.sheetNumber),
  offcut: optional(flag(), false),
  // Where the part's own origin lies, from the sheet's lower left.
  x: q(ranges.onSheet),
  y: q(ranges.onSheet),
  turn: optional(numberOf([0, 90, 180, 270]), 0),
});

const arrangement = record({
  // The same seed gives the same sheets.
  seed: optional(q(ranges.seed), 1),
  locked: optional(list('locked parts', locked, 0, MOST_LOCKED), []),
});

const layout = record({
  name: name(),
  air: optional(record({ temperature: optional(q(ranges.temperature), 20) }), { temperature: 20 }),
  desk,
  room: optional(room, {
    leftWall: null,
    rightWall: null,
    ceiling: null,
    absorption: { desk: 0, wall: 0, sides: 0, ceiling: 0 },
  }),
  monitors: optional(list('monitors', monitor, 0, 8), []),
  listener,
  placement: record({ left: mark, right: mark }),
  aim,
  stand,
  // How the parts lie on their sheets; null: as found from the first seed.
  arrangement: optional(orNull(arrangement), null),
});

const display = record({
  length: optional(word(['mm', 'in']), 'mm'),
  /** Inches as fractions of this denominator; null for decimals. Nothing in the file changes with it. */
  fraction: optional(orNull(numberOf([8, 16, 32, 64])), null),
});

// Half the width of the span in which a measured value lies, so that tolerances can be worked out.
const sure = record({
  deskWidth: optional(q(ranges.sure), byTape.deskWidth),
  deskDepth: optional(q(ranges.sure), byTape.deskDepth),
  deskHeight: optional(q(ranges.sure), byTape.deskHeight),
  wallGap: optional(q(ranges.sure), byTape.wallGap),
  earHeight: optional(q(ranges.sure), byTape.earHeight),
  setback: optional(q(ranges.sure), byTape.setback),
  headOffset: optional(q(ranges.sure), byTape.headOffset),
  monitor: optional(q(ranges.sure), byTape.monitor),
  speakerWidth: optional(q(ranges.sure), byTape.speakerWidth),
  speakerHeight: optional(q(ranges.sure), byTape.speakerHeight),
  speakerDepth: optional(q(ranges.sure), byTape.speakerDepth),
  baffleRake: optional(q(ranges.sureAngle), byTape.baffleRake),
  driverHeight: optional(q(ranges.sure), byTape.driverHeight),
  driverOffset: optional(q(ranges.sure), byTape.driverOffset),
  markX: optional(q(ranges.sure), byTape.markX),
  markY: optional(q(ranges.sure), byTape.markY),
  thickness: optional(q(ranges.sure), byTape.thickness),
});

/** The project file of version 1. Parsing fills every default in. */
export const projectSchema = record({
  format: exactly(FORMAT),
  version: exactly(VERSION),
  title: optional(name(), 'Untitled'),
  display: optional(display, { length: 'mm', fraction: null }),
  speaker,
  stock: list('stocks', stock, 1, 40),
  cutter: optional(cutter, { kerf: 0.2, taper: 0, spacing: 2, margin: 5, colours: null }),
  printer: optional(orNull(printer), null),
  // The machines and the glue that the steps of work reckon with.
  shop: optional(shop, COMMON_SHOP),
  sure: optional(sure, byTape),
  layouts: list('layouts', layout, 1, MOST_LAYOUTS),
});
