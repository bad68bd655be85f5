import * as v from 'valibot';
import * as aims from './fields/aim.ts';
import { built as aboutReadings, reading as readings, recorded } from './fields/built.ts';
import { arrangement as numbers } from './fields/arrangement.ts';
import * as desks from './fields/desk.ts';
import { heard as listening, heardCurve } from './fields/heard.ts';
import { leaf, leaves } from './fields/leaf.ts';
import * as listeners from './fields/listener.ts';
import * as machines from './fields/machines.ts';
import * as speakers from './fields/speaker.ts';
import * as stands from './fields/stand.ts';
import { startOf } from './fields/starts.ts';
import * as stocks from './fields/stock.ts';
import { sure } from './fields/sure.ts';
import * as plates from './fields/surface.ts';
import { countedValues, type CountedKind } from './counted.ts';
import { got } from './got.ts';
import {
  ALL_CELLS,
  LEAST_CELLS,
  MOST_CORNERS,
  MOST_HEARD,
  MOST_LAYOUTS,
  MOST_LOCKED,
  MOST_POSTURES,
  MOST_READINGS,
  MOST_RECORDS,
  MOST_SURFACES,
  MOST_WALLS,
} from './limits.ts';
import { exactly, flag, list, name, numberOf, oneKindOf, orNull, pair, quantity, record, word } from './rules.ts';

/**
 * How the project file is put together. What a value may be, and what it is where the file does not say, stands with its
 * field in `fields/`.
 */

/** The version this code writes. Older files are migrated, newer ones refused. */
export const VERSION = 2;
export const FORMAT = 'wedgewright/project';

const optional = v.optional;

/** Something that is there or not, and is not where the file does not say. */
const orNone = <Input, Output>(schema: v.GenericSchema<Input, Output>) => optional(orNull(schema), null);

/** Which counted values the user entered; left out where all of them are the user's own. */
const entered = (kind: CountedKind) =>
  optional(list('names of measured values', word<string>(countedValues[kind]), 0, countedValues[kind].length));

const wordsOf = (options: readonly (readonly [word: string, label: string])[]) => options.map(([word]) => word);

const crossover = record({
  between: pair('driver names'),
  frequency: leaf(speakers.crossover.frequency),
  alignment: leaf(speakers.crossover.alignment),
  entered: entered('crossover'),
});

const driver = record({ ...leaves(speakers.driver), entered: entered('driver') });

/** Where the drivers arrive in step: assumed of a maker, known, or not known. */
const designPoint = oneKindOf('rule', wordsOf(speakers.designRule.options), [
  record({ rule: v.literal('maker') }),
  record({ rule: v.literal('measured'), ...leaves(speakers.designPoint) }),
  record({ rule: v.literal('none') }),
]);

const speaker = record({
  width: leaf(speakers.speaker.width),
  height: leaf(speakers.speaker.height),
  depth: leaf(speakers.speaker.depth),
  baffleRake: leaf(speakers.speaker.baffleRake),
  lying: leaf(speakers.speaker.lying),
  rearClearance: leaf(speakers.speaker.rearClearance),
  mass: leaf(speakers.speaker.mass),
  mirrored: leaf(speakers.speaker.mirrored),
  centreOfMass: orNone(record(leaves(speakers.centreOfMass))),
  drivers: list('drivers', driver, 1, 8),
  crossovers: optional(list('crossovers', crossover, 0, 8), []),
  designPoint: optional(designPoint, { rule: 'maker' }),
  entered: entered('speaker'),
});

const stock = record({
  name: name(),
  thickness: leaf(stocks.stock.thickness),
  sheet: record(leaves(stocks.stock.sheet)),
  density: leaf(stocks.stock.density),
  // What the beam does in this stock; null: as the cutter has it.
  kerf: leaf(stocks.stock.kerf),
  taper: leaf(stocks.stock.taper),
  // Null: not known.
  feed: orNone(record(leaves(stocks.feed))),
  // Of one sheet, in any currency.
  price: leaf(stocks.stock.price),
  // Of a cubic metre of the same wood, solid, for a block; in the same currency.
  solidPrice: leaf(stocks.stock.solidPrice),
  grain: leaf(stocks.stock.grain),
  sheets: leaf(stocks.stock.sheets),
  // Pieces left from other work: used before a whole sheet is.
  offcuts: optional(list('offcuts', record(leaves(stocks.offcut)), 0, 20), []),
  entered: entered('stock'),
});

const { printer: printing, cutter: cutting, shop: working } = machines;

// Null: a common bed, clearance and filament; see `printerOf`.
const printer = record({
  bed: optional(record(leaves(printing.bed)), startOf(printing.bed)),
  clearance: leaf(printing.clearance),
  density: leaf(printing.density),
  fill: leaf(printing.fill),
  rate: leaf(printing.rate),
  // Of a kilogram of filament, in any currency.
  price: leaf(printing.price),
});

const cutter = record({
  kerf: leaf(cutting.kerf),
  taper: leaf(cutting.taper),
  spacing: leaf(cutting.spacing),
  margin: leaf(cutting.margin),
  // Null: colours of this program's own.
  colours: orNone(record(leaves(machines.colours))),
});

const router = record({
  // Null: sheets are cut by something else than a router's bit.
  bit: leaf(working.router.bit),
  tab: orNone(record(leaves(machines.tab))),
});

const shop = record({
  // What the blade cuts at most: square to the table, and tilted from that; and to which side it tilts, seen from the front.
  saw: optional(record(leaves(working.saw)), startOf(working.saw)),
  // Height under its guides, and how far its table tilts.
  bandSaw: orNone(record(leaves(machines.bandSaw))),
  router: optional(router, startOf(working.router)),
  glue: optional(record(leaves(working.glue)), startOf(working.glue)),
});

// Null where there is no ceiling near.
const room = record({
  walls: optional(list('walls', record(leaves(desks.wall)), 0, MOST_WALLS), []),
  ceiling: orNone(record(leaves(desks.ceiling))),
});

const place = { x: leaf(desks.outlinePoint[0]), y: leaf(desks.outlinePoint[1]) };

/** `[x, y]`, or `[x, y, bulge]` where an arc leaves the corner: the tangent of a quarter of its angle, plus to the outside. */
const corner = v.union(
  [v.strictTuple([place.x, place.y]), v.strictTuple([place.x, place.y, leaf(desks.outlinePoint[2])])],
  (issue) => `expected a corner as [x, y] or [x, y, bulge], got ${got(issue.input)}`,
);

/** The shape of a desk's top. */
export const outlineSchema = oneKindOf('rule', wordsOf(desks.outlineRule.options), [
  record({ rule: v.literal('rectangle'), ...leaves(desks.outlines.rectangle) }),
  record({ rule: v.literal('bowed'), ...leaves(desks.outlines.bowed) }),
  record({ rule: v.literal('corner'), ...leaves(desks.outlines.corner) }),
  record({
    rule: v.literal('l'),
    width: leaf(desks.outlines.l.width),
    depth: leaf(desks.outlines.l.depth),
    return: record(leaves(desks.outlines.l.return)),
  }),
  record({ rule: v.literal('outline'), points: list('corners', corner, 2, MOST_CORNERS) }),
]);

const posture = record({
  name: name(),
  setback: leaf(listeners.posture.setback),
  earHeight: leaf(listeners.posture.earHeight),
  // From the seat.
  offset: leaf(listeners.posture.offset),
  // Null: as the layout has it.
  deskHeight: leaf(listeners.posture.deskHeight),
  weight: leaf(listeners.posture.weight),
});

const listener = record({
  offset: leaf(listeners.listener.offset),
  setback: leaf(listeners.listener.setback),
  earHeight: leaf(listeners.listener.earHeight),
  earHeightFrom: orNone(record(leaves(listeners.person))),
  headWidth: leaf(listeners.listener.headWidth),
  postures: optional(list('postures', posture, 0, MOST_POSTURES), []),
});

const toe = oneKindOf('rule', wordsOf(aims.aim.toe.options), [
  record({ rule: v.literal('to-head') }),
  record({ rule: v.literal('to-ear') }),
  record({ rule: v.literal('behind-head'), distance: leaf(aims.toe.distance) }),
  record({ rule: v.literal('straight') }),
  record({ rule: v.literal('as-set'), degrees: leaf(aims.toe.degrees) }),
]);

const tilt = oneKindOf('rule', wordsOf(aims.aim.tilt.options), [
  record({ rule: v.literal('tilt-to-ear') }),
  record({ rule: v.literal('lift-to-ear'), degrees: leaf(aims.tilt.degrees) }),
  record({ rule: v.literal('as-set'), degrees: leaf(aims.tilt.degrees) }),
]);

/** The rules of an aim, by their keys in it. */
export const aimRules = { toe, tilt };

/** Who else an aim serves beside the seat, and what of all the angles is least. */
const over = record({
  postures: v.union(
    [v.literal('all'), list('posture names', name(), 0, MOST_POSTURES)],
    (issue) => `expected "all" or a list of 0 to ${MOST_POSTURES} posture names, got ${got(issue.input)}`,
  ),
  by: leaf(aims.over.by),
});

const aim = record({
  through: v.union(
    [name(), record({ between: pair('driver names'), fraction: leaf(aims.through.fraction) })],
    (issue) => `expected the name of a driver or an object with between and fraction, got ${got(issue.input)}`,
  ),
  toe: optional(toe, { rule: 'to-head' }),
  tilt: optional(tilt, { rule: 'tilt-to-ear' }),
  // Null: for the seat alone.
  over: orNone(over),
});

const { stand: standing } = stands;

const stand = record({
  lift: optional(leaf(standing.lift)),
  build: optional(word(['stacked', 'skinned', 'ribbed', 'solid']), 'stacked'),
  base: leaf(standing.base),
  stock: leaf(standing.stock),
  width: leaf(standing.width),
  frontMargin: leaf(standing.frontMargin),
  rearMargin: leaf(standing.rearMargin),
  ends: leaf(standing.ends),
  stop: orNone(record(leaves(stands.stop))),
  minimumEdge: leaf(standing.minimumEdge),
  rods: optional(orNull(record(leaves(stands.rods))), startOf(stands.rods)),
  feet: leaf(standing.feet),
  pad: leaf(standing.pad),
  veneer: leaf(standing.veneer),
  veneerFaces: optional(record(leaves(standing.veneerFaces)), startOf(standing.veneerFaces)),
  glue: leaf(standing.glue),
  // The rest of the body; null for none, or for what the build takes by itself.
  corner: leaf(standing.corner),
  relief: orNone(record(leaves(stands.relief))),
  cheeks: orNone(record(leaves(stands.cheeks))),
  ribs: orNone(record(leaves(stands.ribs))),
  pockets: orNone(record(leaves(stands.pockets))),
  cable: orNone(record(leaves(stands.cable))),
  recess: orNone(record(leaves(stands.recess))),
  // Of the bare faces, cabinet on stand and stand on desk: the least that it may be, and the most; null for what is measured of dry wood.
  friction: leaf(standing.friction),
  frictionMost: leaf(standing.frictionMost),
  // Of the pad, and of the feet; null where nobody measured it: then they count as bare faces.
  padFriction: leaf(standing.padFriction),
  feetFriction: leaf(standing.feetFriction),
});

/** One part held where somebody put it: on a numbered sheet of its stock, or on one of the stock's offcuts. */
const locked = record({
  part: name(),
  sheet: quantity(numbers.sheet),
  offcut: optional(flag(), false),
  // Where the part's own origin lies, from the sheet's lower left.
  x: quantity(numbers.place),
  y: quantity(numbers.place),
  turn: optional(numberOf([0, 90, 180, 270]), 0),
});

const arrangement = record({
  // The same seed gives the same sheets.
  seed: optional(quantity(numbers.seed), 1),
  locked: optional(list('locked parts', locked, 0, MOST_LOCKED), []),
});

/** The readings that are one height over the surface, and those that are one angle. */
const HEIGHTS = ['front-height', 'rear-height', 'inboard-height', 'outboard-height'] as const;
const ANGLES = ['slope', 'lean', 'toe'] as const;

const reading = oneKindOf(
  'what',
  [...HEIGHTS, ...ANGLES, 'rise', 'mark', 'corner', 'driver-height', 'spot'],
  [
    record({ what: v.picklist(HEIGHTS), ...leaves(readings.height) }),
    record({ what: v.picklist(ANGLES), ...leaves(readings.angle) }),
    record({ what: v.literal('rise'), ...leaves(readings.rise) }),
    record({ what: v.literal('mark'), ...leaves(readings.place) }),
    record({ what: v.literal('corner'), which: leaf(readings.corner), ...leaves(readings.place) }),
    record({ what: v.literal('driver-height'), driver: leaf(readings.driver), ...leaves(readings.height) }),
    record({ what: v.literal('spot'), on: leaf(readings.light), ...leaves(readings.spot) }),
  ],
);

const readingsOf = optional(list('readings', reading, 0, MOST_READINGS), []);

const builtSide = record({ readings: readingsOf });

const dateAndNote = {
  // As the person writes it: no clock of this program's.
  date: optional(orNull(leaf(aboutReadings.date)), null),
  note: optional(orNull(leaf(aboutReadings.note)), null),
};

/** What was done to a stand after it was read. */
const act = oneKindOf(
  'act',
  ['shim', 'turn', 'move', 'leave'],
  [
    record({ act: v.literal('shim'), ...leaves(recorded.card) }),
    record({ act: v.literal('turn'), ...leaves(recorded.turn) }),
    record({ act: v.literal('move'), ...leaves(recorded.move) }),
    record({ act: v.literal('leave') }),
  ],
);

/** One stand as it was read once, for what it was made then, where its axis passed the head of then, and what was done. */
const recordOf = record({
  side: word(['left', 'right']),
  ...dateAndNote,
  readings: readingsOf,
  stand: record(leaves(recorded.stand)),
  // Null where the readings did not say.
  pass: orNone(record(leaves(recorded.pass))),
  done: optional(list('things done', act, 0, 4), []),
});

/** A measured response, on the grid of all curves here. */
const heardOne = record({
  name: leaf(listening.name),
  of: leaf(listening.of),
  at: leaf(listening.at),
  smoothed: leaf(listening.smoothed),
  moved: optional(record(leaves(listening.moved)), startOf(listening.moved)),
  curve: record({
    from: leaf(heardCurve.from),
    step: leaf(heardCurve.step),
    // Mean power of the cells from there up.
    levels: list('levels', quantity(heardCurve.level), LEAST_CELLS, ALL_CELLS),
  }),
});

// What was read of the finished stands; null until somebody reads them.
const built = record({
  ...dateAndNote,
  sides: record({ left: builtSide, right: builtSide }),
  // Oldest first; a layout that changes leaves it as it is.
  record: optional(list('records', recordOf, 0, MOST_RECORDS), []),
  heard: optional(list('measured responses', heardOne, 0, MOST_HEARD), []),
});

const monitor = record({ ...leaves(desks.monitor), entered: entered('monitor') });

const surface = record({
  name: name(),
  on: leaf(plates.surface.on),
  x: leaf(plates.surface.x),
  y: leaf(plates.surface.y),
  width: leaf(plates.surface.width),
  depth: leaf(plates.surface.depth),
  turn: leaf(plates.surface.turn),
  height: leaf(plates.surface.height),
  thickness: leaf(plates.surface.thickness),
  // Of a riser or floor stand; null: as large as its plate, and weightless.
  foot: orNone(record(leaves(plates.foot))),
});

const layout = record({
  name: name(),
  air: optional(record(leaves(desks.air)), startOf(desks.air)),
  desk: record({ ...leaves(desks.desk), outline: outlineSchema }),
  room: optional(room, { walls: [], ceiling: null }),
  surfaces: optional(list('surfaces', surface, 0, MOST_SURFACES), []),
  monitors: optional(list('monitors', monitor, 0, 8), []),
  listener,
  placement: record({ left: record(leaves(aims.placement.left)), right: record(leaves(aims.placement.right)) }),
  aim,
  stand,
  // How the parts lie on their sheets; null: as found from the first seed.
  arrangement: orNone(arrangement),
  built: orNone(built),
  entered: entered('layout'),
});

const display = record({
  length: optional(word(['mm', 'in']), 'mm'),
  /** Inches as fractions of this denominator; null for decimals. Nothing in the file changes with it. */
  fraction: orNone(numberOf([8, 16, 32, 64])),
});

/** The project file of version 2. Parsing fills every default in. */
export const projectSchema = record({
  format: exactly(FORMAT),
  version: exactly(VERSION),
  title: optional(name(), 'Untitled'),
  // Whether it began as the program's own example.
  example: optional(flag(), false),
  display: optional(display, { length: 'mm', fraction: null }),
  speaker,
  stock: list('stocks', stock, 1, 40),
  cutter: optional(cutter, startOf(cutting)),
  printer: orNone(printer),
  // The machines and the glue that the steps of work reckon with.
  shop: optional(shop, startOf(working)),
  // Half the width of the span in which a measured value lies, so that tolerances can be worked out.
  sure: optional(record(leaves(sure)), startOf(sure)),
  layouts: list('layouts', layout, 1, MOST_LAYOUTS),
});
