/**
 * The numbers a project may hold: one table for the schema, the messages and the form. Why each range ends where it does:
 * `rangeReasons.ts`.
 */
export interface Range {
  /** What the number is, with its article: `a length`. */
  readonly what: string;
  readonly min: number;
  readonly max: number;
  /** `mm`, `°`, `kg`, `Hz`, `°C`, `kg/m³`, or empty for a bare number. */
  readonly unit: string;
  readonly whole?: boolean;
}

const length = (min: number, max: number): Range => ({ what: 'a length', min, max, unit: 'mm' });
const place = (min: number, max: number): Range => ({ what: 'a position', min, max, unit: 'mm' });
const angle = (min: number, max: number): Range => ({ what: 'an angle', min, max, unit: '°' });

export const ranges = {
  speakerWidth: length(20, 3000),
  speakerHeight: length(20, 3000),
  speakerDepth: length(20, 3000),
  baffleRake: angle(-30, 45),
  mass: { what: 'a mass', min: 0.01, max: 200, unit: 'kg' },
  centreOfMass: length(0, 3000),
  driverDiameter: length(3, 1000),
  radiatingDiameter: length(1, 1000),
  driverHeight: length(0, 5000),
  driverOffset: place(-1500, 1500),
  designDistance: length(50, 20000),
  acousticDepth: place(-300, 1500),
  crossoverFrequency: { what: 'a frequency', min: 20, max: 20000, unit: 'Hz' },
  thickness: length(0.2, 100),
  sheetSide: length(20, 5000),
  density: { what: 'a density', min: 20, max: 9000, unit: 'kg/m³' },
  kerf: { ...length(0, 13), what: 'a width' },
  taper: angle(0, 10),
  spacing: length(0, 100),
  sheetMargin: length(0, 500),
  temperature: { what: 'a temperature', min: -30, max: 60, unit: '°C' },
  deskWidth: length(200, 10000),
  deskDepth: length(100, 5000),
  deskHeight: length(150, 2000),
  wallGap: length(0, 10000),
  sideWall: length(100, 20000),
  ceiling: length(300, 20000),
  absorption: {
    what: 'a fraction',
    min: 0,
    max: 1,
    unit: '',
  },
  monitorX: place(-10000, 10000),
  monitorY: place(-5000, 15000),
  monitorWidth: length(20, 10000),
  monitorHeight: length(20, 5000),
  monitorBottom: length(0, 5000),
  monitorDepth: length(0, 500),
  listenerOffset: place(-6000, 6000),
  setback: place(-3000, 6000),
  earHeight: length(200, 2500),
  headWidth: length(80, 250),
  stature: length(1000, 2300),
  percentile: {
    what: 'a percentile',
    min: 1,
    max: 99,
    unit: '',
  },
  seatHeight: length(100, 1200),
  slump: length(0, 200),
  shoes: length(0, 150),
  markX: place(-10000, 10000),
  markY: place(-5000, 15000),
  fraction: { what: 'a fraction', min: 0, max: 1, unit: '' },
  toe: angle(-90, 90),
  behindHead: length(0, 10000),
  tilt: angle(-60, 60),
  lift: length(0, 1500),
  standWidth: length(3, 3000),
  standMargin: length(0, 1000),
  stopHeight: length(1, 500),
  stopThickness: length(1, 200),
  minimumEdge: length(0.5, 200),
  rodDiameter: length(1, 60),
  rodCount: { what: 'a whole number', min: 2, max: 8, unit: '', whole: true },
  rodClearance: length(0, 3),
  rodEdge: length(0.5, 200),
  feet: length(0, 200),
  pad: length(0, 100),
  veneer: length(0, 10),
  sure: length(0, 500),
  sureAngle: angle(0, 45),
  friction: {
    what: 'a coefficient of friction',
    min: 0.01,
    max: 2,
    unit: '',
  },
  glue: length(0, 2),
  reliefWeb: length(1, 200),
  cornerRadius: length(0, 200),
  cheekCount: { what: 'a whole number', min: 1, max: 20, unit: '', whole: true },
  ribCount: {
    what: 'a whole number',
    min: 2,
    max: 3,
    unit: '',
    whole: true,
  },
  crossCount: { what: 'a whole number', min: 2, max: 12, unit: '', whole: true },
  ribFit: length(0, 2),
  ribInset: length(0, 500),
  cableSize: length(1, 200),
  cablePlace: length(0, 3000),
  recessDepth: length(0.1, 20),
  recessBorder: length(0, 500),
  pocketCount: { what: 'a whole number', min: 1, max: 12, unit: '', whole: true },
  pocketDiameter: length(1, 100),
  pocketDepth: length(0.5, 1000),
  bedSide: length(20, 2000),
  keyClearance: length(0, 2),
  fill: { what: 'a fraction', min: 0.02, max: 1, unit: '' },
  price: { what: 'a price', min: 0, max: 1e6, unit: '' },
  solidPrice: { what: 'a price', min: 0, max: 1e9, unit: '' },
  feed: { what: 'a speed', min: 0.01, max: 10000, unit: 'mm/s' },
  sheetCount: {
    what: 'a whole number',
    min: 0,
    max: 500,
    unit: '',
    whole: true,
  },
  offcutCount: { what: 'a whole number', min: 1, max: 100, unit: '', whole: true },
  sheetNumber: {
    what: 'a whole number',
    min: 1,
    max: 2000,
    unit: '',
    whole: true,
  },
  onSheet: place(-5000, 10000),
  seed: { what: 'a whole number', min: 0, max: 4294967295, unit: '', whole: true },
  sawDepth: length(5, 1000),
  sawTilt: angle(0, 60),
  routerBit: length(0.5, 25),
  tabSize: length(0.5, 50),
  glueLine: length(0, 2),
  openTime: { what: 'a time', min: 1, max: 240, unit: 'min' },
  clampTime: { what: 'a time', min: 1, max: 2880, unit: 'min' },
  clampCount: { what: 'a whole number', min: 1, max: 200, unit: '', whole: true },
  clampOpening: length(20, 3000),
  printRate: { what: 'a rate', min: 0.1, max: 1000, unit: 'mm³/s' },
} as const satisfies Record<string, Range>;

/** What was expected, in words: `a length over 0 mm` for a value that misses a positive range below zero. */
export function expectation(range: Range, value: unknown): string {
  const unit = range.unit === '°' ? '°' : range.unit && ` ${range.unit}`;
  if (range.min > 0 && typeof value === 'number' && value <= 0) return `${range.what} over 0${unit}`;
  return `${range.what} from ${range.min} to ${range.max}${unit}`;
}
