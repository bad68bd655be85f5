/** The numbers a project may hold: one table for the schema, the messages and the form. */
export interface Range {
  /** What the number is, with its article: `a length`. */
  readonly what: string;
  readonly min: number;
  readonly max: number;
  /** `mm`, `°`, `kg`, `Hz`, `°C`, `kg/m³`, or empty for a bare number. */
  readonly unit: string;
  /** Why the range ends where it does. */
  readonly why: string;
  readonly whole?: boolean;
}

const length = (min: number, max: number, why: string): Range => ({ what: 'a length', min, max, unit: 'mm', why });
const place = (min: number, max: number, why: string): Range => ({ what: 'a position', min, max, unit: 'mm', why });
const angle = (min: number, max: number, why: string): Range => ({ what: 'an angle', min, max, unit: '°', why });

const room = 'a room of 6 m on each side of the desk, with margin';

export const ranges = {
  speakerWidth: length(20, 3000, 'from a single small driver to the largest box a desk or a low table carries'),
  speakerHeight: length(20, 3000, 'as for the width'),
  speakerDepth: length(20, 3000, 'as for the width'),
  baffleRake: angle(-30, 45, 'steeper baffles point at the desk or the ceiling'),
  mass: { what: 'a mass', min: 0.01, max: 200, unit: 'kg', why: 'what a person can put on a desk, with margin' },
  centreOfMass: length(0, 3000, 'inside the box'),
  driverDiameter: length(3, 1000, 'from an earphone-sized tweeter to the largest woofer made'),
  driverHeight: length(0, 5000, 'along the largest raked baffle'),
  driverOffset: place(-1500, 1500, 'half the widest baffle'),
  designDistance: length(50, 20000, 'from headphones on a stand to a hall; most makers measure at 1 or 2 m'),
  acousticDepth: place(-300, 1500, 'a horn lies deep behind the face; a proud dome a little in front'),
  crossoverFrequency: { what: 'a frequency', min: 20, max: 20000, unit: 'Hz', why: 'the range of hearing' },
  thickness: length(0.2, 100, 'from a veneer to a block; thinner would ask for thousands of slices'),
  sheetSide: length(20, 5000, 'from an offcut to the largest trade sheet'),
  density: { what: 'a density', min: 20, max: 9000, unit: 'kg/m³', why: 'from foam to brass' },
  kerf: { ...length(0, 6, 'no kerf for a knife; 6 mm for a router or a table saw'), what: 'a width' },
  taper: angle(0, 10, 'more than 10° from plumb is a bevel, not a taper'),
  spacing: length(0, 100, 'a gap wider than a hand wastes the sheet'),
  sheetMargin: length(0, 500, 'a clamping border'),
  temperature: { what: 'a temperature', min: -30, max: 60, unit: '°C', why: 'where ISO 9613-1 air is still a room' },
  deskWidth: length(200, 10000, 'from a shelf to a studio wall'),
  deskDepth: length(100, 5000, 'from a shelf to a double desk'),
  deskHeight: length(150, 2000, 'from a floor table to a standing desk, with margin'),
  wallGap: length(0, 10000, room),
  sideWall: length(100, 20000, room),
  ceiling: length(300, 20000, 'from under a bunk bed to a hall, over the floor'),
  absorption: {
    what: 'a fraction',
    min: 0,
    max: 1,
    unit: '',
    why: '0 sends all the energy back, 1 none of it (random incidence)',
  },
  monitorX: place(-10000, 10000, room),
  monitorY: place(-5000, 15000, room),
  monitorWidth: length(20, 10000, 'from a meter to a video wall'),
  monitorHeight: length(20, 5000, 'from a meter to a video wall'),
  monitorBottom: length(0, 5000, 'standing on the desk or hung above it'),
  monitorDepth: length(0, 500, 'a thin panel to an old tube'),
  listenerOffset: place(-6000, 6000, room),
  setback: place(-3000, 6000, 'negative when leaning over the desk; a studio chair 6 m away'),
  earHeight: length(200, 2500, 'from sitting on the floor to a tall person standing on a step'),
  headWidth: length(
    80,
    250,
    'ANSUR II head breadth is 140 to 163 mm from P5 to P95; a child or a dummy head with margin',
  ),
  stature: length(1000, 2300, 'from a child to the tallest adults'),
  percentile: {
    what: 'a percentile',
    min: 1,
    max: 99,
    unit: '',
    why: 'the survey says little about the last hundredth',
  },
  seatHeight: length(100, 1200, 'from a cushion on the floor to a bar stool'),
  slump: length(0, 200, 'from bolt upright to deep in the chair'),
  shoes: length(0, 150, 'from bare feet to the highest heel'),
  markX: place(-10000, 10000, room),
  markY: place(-5000, 15000, room),
  fraction: { what: 'a fraction', min: 0, max: 1, unit: '', why: '0 is the first driver, 1 the second' },
  toe: angle(-90, 90, 'a quarter turn faces the other loudspeaker'),
  behindHead: length(0, 10000, room),
  tilt: angle(-60, 60, 'a steeper cabinet lies on its back or its face'),
  lift: length(0, 1500, 'from the desk to a tall pedestal'),
  standWidth: length(3, 3000, 'as the widest cabinet'),
  standMargin: length(0, 1000, 'a stand that reaches further is furniture'),
  stopHeight: length(1, 500, 'a lip that holds, not a wall'),
  stopThickness: length(1, 200, 'a lip that holds, not a wall'),
  minimumEdge: length(0.5, 200, 'thinner edges char and break'),
  rodDiameter: length(1, 60, 'from a pin to a broom handle'),
  rodCount: { what: 'a whole number', min: 2, max: 8, unit: '', why: 'two keep slices from turning', whole: true },
  rodClearance: length(0, 3, 'a looser rod does not line anything up'),
  rodEdge: length(0.5, 200, 'wood left between hole and edge'),
  feet: length(0, 200, 'rubber buttons to tall spikes'),
  pad: length(0, 100, 'a cork sheet to a foam block'),
  veneer: length(0, 10, 'trade veneer runs from 0.3 to 6 mm'),
  sure: length(0, 500, 'from a gauge block to a guess'),
  sureAngle: angle(0, 45, 'from a clinometer to a guess'),
  friction: {
    what: 'a coefficient of friction',
    min: 0.01,
    max: 2,
    unit: '',
    why: 'smooth pine was measured at 0.12; soft rubber passes 1',
  },
  glue: length(0, 2, 'a film to a gap-filling bed'),
  reliefWeb: length(1, 200, 'wood left round a window; thinner breaks when it is glued'),
  cornerRadius: length(0, 200, 'from sharp to a drum'),
  cheekCount: { what: 'a whole number', min: 1, max: 20, unit: '', why: 'outer layers on each side', whole: true },
  ribCount: {
    what: 'a whole number',
    min: 2,
    max: 3,
    unit: '',
    why: 'one under each side, one in the middle',
    whole: true,
  },
  crossCount: { what: 'a whole number', min: 2, max: 12, unit: '', why: 'two keep the ribs upright', whole: true },
  ribFit: length(0, 2, 'a looser slot rattles'),
  ribInset: length(0, 500, 'how far cross ribs reach beyond the outer ribs'),
  cableSize: length(1, 200, 'from a bare wire to a bundle of plugs'),
  cablePlace: length(0, 3000, 'along the base'),
  recessDepth: length(0.1, 20, 'a mat let into the wood, not a tray'),
  recessBorder: length(0, 500, 'wood left round the mat'),
  pocketCount: { what: 'a whole number', min: 1, max: 12, unit: '', why: 'more would leave no core', whole: true },
  pocketDiameter: length(1, 100, 'from a screw to a can of ballast'),
  pocketDepth: length(0.5, 1000, 'from a screw’s head to a deep core'),
  bedSide: length(20, 2000, 'from the smallest printer to an industrial one'),
  keyClearance: length(0, 2, 'a looser key aligns nothing'),
  fill: { what: 'a fraction', min: 0.02, max: 1, unit: '', why: 'share of a print that is plastic, walls included' },
  price: { what: 'a price', min: 0, max: 1e6, unit: '', why: 'in any currency' },
  feed: { what: 'a speed', min: 0.01, max: 10000, unit: 'mm/s', why: 'from a fretsaw to a fast engraving beam' },
  sheetCount: {
    what: 'a whole number',
    min: 0,
    max: 500,
    unit: '',
    why: 'none where there are only offcuts; more than 500 nobody cuts',
    whole: true,
  },
  offcutCount: { what: 'a whole number', min: 1, max: 100, unit: '', why: 'pieces of one size', whole: true },
  sheetNumber: {
    what: 'a whole number',
    min: 1,
    max: 2000,
    unit: '',
    why: 'sheets and offcuts count from 1',
    whole: true,
  },
  onSheet: place(-5000, 10000, 'a turned part’s origin may lie off the largest sheet'),
  seed: { what: 'a whole number', min: 0, max: 4294967295, unit: '', why: '32 bits', whole: true },
  printRate: { what: 'a rate', min: 0.1, max: 1000, unit: 'mm³/s', why: 'from a fine nozzle to a coarse one' },
} as const satisfies Record<string, Range>;

/** What was expected, in words: `a length over 0 mm` for a value that misses a positive range below zero. */
export function expectation(range: Range, value: unknown): string {
  const unit = range.unit === '°' ? '°' : range.unit && ` ${range.unit}`;
  if (range.min > 0 && typeof value === 'number' && value <= 0) return `${range.what} over 0${unit}`;
  return `${range.what} from ${range.min} to ${range.max}${unit}`;
}
