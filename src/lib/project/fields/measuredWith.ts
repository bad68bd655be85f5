import type { SureKey } from '$lib/project/sure.ts';
import type { Tool } from './readingKinds.ts';

/** Largest errors of tapes by their class: a + b for each metre begun, and c where one end is a hook, mm. Directive 2014/32/EU, annex on material measures. */
const TAPES = [
  { name: 'tape, class I', a: 0.1, b: 0.1, c: 0.1 },
  { name: 'tape, class II', a: 0.3, b: 0.2, c: 0.2 },
  { name: 'tape, class III', a: 0.6, b: 0.4, c: 0.3 },
] as const;

/** Half of the millimetre that a tape is read to. */
const READ_TO = 0.5;

/** How far a length by tape may be off, mm, for each class: its largest error with a hook, and what is lost in reading it. */
export const tapes = (length: number): readonly Tool[] =>
  TAPES.map(({ name, a, b, c }) => ({
    name,
    sure: Number((a + b * Math.max(1, Math.ceil(Math.abs(length) / 1000)) + c + READ_TO).toFixed(2)),
  }));

// What else a careful hand measures with: common practice, no source.
const rule = { name: 'steel rule', sure: 0.5 };
const caliper = { name: 'caliper', sure: 0.1 };
const catalogue = { name: 'catalogue', sure: 2 };
const estimate = { name: 'estimate', sure: 20 };

/**
 * What a measured value is measured with, the finest first, and how sure that commonly is: mm, degrees for the rake.
 *
 * @param length Of the value, mm: a longer one is less sure by tape.
 */
export function measuredWith(key: SureKey, length: number): readonly Tool[] {
  switch (key) {
    case 'baffleRake':
      return [
        { name: 'digital level', sure: 0.2 },
        { name: 'phone level', sure: 0.5 },
        { name: 'catalogue', sure: 0.5 },
        { name: 'estimate', sure: 3 },
      ];
    case 'thickness':
      return [{ name: 'caliper', sure: 0.05 }, { name: 'steel rule', sure: 0.5 }, { name: 'catalogue', sure: 0.3 }];
    // A body counts for more than the tape.
    case 'earHeight':
      return [{ name: 'tape', sure: 10 }, { name: 'by stature', sure: 40 }];
    case 'setback':
      return [{ name: 'tape', sure: 20 }, { name: 'estimate', sure: 60 }];
    case 'headOffset':
      return [{ name: 'tape', sure: 10 }, { name: 'estimate', sure: 30 }];
    case 'speakerWidth':
    case 'speakerHeight':
    case 'speakerDepth':
    case 'driverHeight':
    case 'driverOffset':
      return [caliper, rule, ...tapes(length), catalogue, { ...estimate, sure: 5 }];
    default:
      return [rule, ...tapes(length), estimate];
  }
} // prettier-ignore
