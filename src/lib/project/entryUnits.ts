import type { Range } from './range.ts';
import { MM_PER_INCH } from './units.ts';

/** What a field asks for: decides which units may be typed. */
export type Quantity = 'length' | 'angle' | 'frequency' | 'mass' | 'temperature' | 'density' | 'number';

/** A unit that may be typed: a value in it, times `factor`, plus `offset`, is the value in the project's unit. */
export interface EntryUnit {
  /** The first is the one that messages name; all are matched without regard to case, the longest first. */
  readonly names: readonly [string, ...string[]];
  readonly factor: number;
  /** Where the scale's zero lies elsewhere: such a value can be negated, but not added up or multiplied. */
  readonly offset?: number;
  /** Units of one family may follow each other, the larger first: `1′ 6″`, `12° 30′`. */
  readonly family?: string;
}

const INCH_MARKS = ['"', '″', '”', '“', "''", '′′', '’’'] as const;
const FOOT_MARKS = ["'", '′', '’'] as const;

const MM_PER_FOOT = 12 * MM_PER_INCH;
/** Exact since 1959. */
const KG_PER_POUND = 0.45359237;
const CUBIC_METRES_PER_CUBIC_FOOT = (MM_PER_FOOT / 1000) ** 3;
/** 0 °F in °C, and 0 K. */
const ZERO_FAHRENHEIT = (-32 * 5) / 9;
const ZERO_KELVIN = -273.15;

/** Every unit of a quantity; the first one is the project's own. */
export const entryUnits: Readonly<Record<Quantity, readonly EntryUnit[]>> = {
  length: [
    { names: ['mm'], factor: 1, family: 'metric' },
    { names: ['cm'], factor: 10, family: 'metric' },
    { names: ['m'], factor: 1000, family: 'metric' },
    { names: ['in', 'in.', 'inch', 'inches', ...INCH_MARKS], factor: MM_PER_INCH, family: 'feet' },
    { names: ['ft', 'ft.', 'foot', 'feet', ...FOOT_MARKS], factor: MM_PER_FOOT, family: 'feet' },
  ],
  angle: [
    { names: ['°', 'deg', 'degree', 'degrees', 'º'], factor: 1, family: 'turn' },
    { names: ['′', "'", '’', 'arcmin'], factor: 1 / 60, family: 'turn' },
    { names: ['″', '"', '”', "''", '′′', '’’', 'arcsec'], factor: 1 / 3600, family: 'turn' },
    { names: ['rad'], factor: 180 / Math.PI },
  ],
  frequency: [
    { names: ['Hz'], factor: 1 },
    { names: ['kHz', 'k'], factor: 1000 },
  ],
  mass: [
    { names: ['kg'], factor: 1, family: 'metric' },
    { names: ['g'], factor: 1 / 1000, family: 'metric' },
    { names: ['lb', 'lb.', 'lbs'], factor: KG_PER_POUND, family: 'pounds' },
    { names: ['oz', 'oz.'], factor: KG_PER_POUND / 16, family: 'pounds' },
  ],
  temperature: [
    { names: ['°C', 'C', '℃', '°'], factor: 1, offset: 0 },
    { names: ['°F', 'F', '℉'], factor: 5 / 9, offset: ZERO_FAHRENHEIT },
    { names: ['K'], factor: 1, offset: ZERO_KELVIN },
  ],
  density: [
    { names: ['kg/m³', 'kg/m3', 'kg/m^3'], factor: 1 },
    { names: ['g/cm³', 'g/cm3', 'g/cm^3'], factor: 1000 },
    { names: ['lb/ft³', 'lb/ft3', 'lb/ft^3'], factor: KG_PER_POUND / CUBIC_METRES_PER_CUBIC_FOOT },
  ],
  number: [],
};

const byUnit: Readonly<Record<string, Quantity>> = {
  mm: 'length',
  '°': 'angle',
  Hz: 'frequency',
  kg: 'mass',
  '°C': 'temperature',
  'kg/m³': 'density',
};

/** What a range asks for, told by its unit. */
export const quantityOf = (range: Range): Quantity => byUnit[range.unit] ?? 'number';

const nouns: Readonly<Record<Quantity, string>> = {
  length: 'a length',
  angle: 'an angle',
  frequency: 'a frequency',
  mass: 'a mass',
  temperature: 'a temperature',
  density: 'a density',
  number: 'a number',
};

/** The quantity with its article. */
export const nounOf = (quantity: Quantity): string => nouns[quantity];

/** The units as a message lists them: `mm, cm, m, in or ft`. */
export function unitList(quantity: Quantity): string {
  const names = entryUnits[quantity].map(({ names: [name] }) => name);
  return names.length === 0 ? 'no unit' : [names.slice(0, -1).join(', '), names.at(-1)].filter(Boolean).join(' or ');
}

interface Spelling {
  readonly spelling: string;
  readonly unit: EntryUnit;
}

const spellings = new Map<Quantity, readonly Spelling[]>();

function spellingsOf(quantity: Quantity): readonly Spelling[] {
  const known = spellings.get(quantity);
  if (known) return known;
  const all = entryUnits[quantity]
    .flatMap((unit) => unit.names.map((name) => ({ spelling: name.toLowerCase(), unit })))
    .sort((a, b) => b.spelling.length - a.spelling.length);
  spellings.set(quantity, all);
  return all;
}

/** A letter that goes on after a unit's name makes it another word; an x is a multiplication sign. */
const GOES_ON = /^(?!x)\p{L}/iu;

/** The longest unit that the text begins with; null where it begins with none. */
export function unitAt(text: string, quantity: Quantity): { readonly unit: EntryUnit; readonly length: number } | null {
  for (const { spelling, unit } of spellingsOf(quantity)) {
    const length = spelling.length;
    if (text.slice(0, length).toLowerCase() !== spelling) continue;
    if (/\p{L}$/u.test(spelling) && GOES_ON.test(text.slice(length))) continue;
    return { unit, length };
  }
  return null;
}
