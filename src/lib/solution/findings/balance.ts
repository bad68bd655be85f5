import type { PlacedCheck } from './check.ts';
import { asFineLevel, asUnit } from '$lib/project/sentence.ts';

/** Most time between the two channels, µs. */
const MOST_TIME = 100;
/** Most level between the two sides, dB. */
const MOST_LEVEL = 0.5;

const MICROSECONDS_PER_MM = 1000;

/** Sound from the nearer loudspeaker comes sooner. */
const timeBalance: PlacedCheck = ({ triangle, speedOfSound }) => {
  const time = ((triangle.leftDistance - triangle.rightDistance) / speedOfSound) * MICROSECONDS_PER_MM;
  if (Math.abs(time) <= MOST_TIME) return [];
  return [
    {
      code: 'time-difference',
      level: 'caution',
      sides: [],
      subject: {},
      facts: {},
      quantities: { time: asUnit(time, 'µs') },
      value: Math.abs(time),
      limit: MOST_TIME,
      unit: 'µs',
      source: 'listening-room',
    },
  ];
};

/** Sound from the nearer loudspeaker is louder, by spreading alone. */
const levelBalance: PlacedCheck = ({ triangle }) => {
  const level = 20 * Math.log10(triangle.leftDistance / triangle.rightDistance);
  if (Math.abs(level) <= MOST_LEVEL) return [];
  return [
    {
      code: 'level-difference',
      level: 'caution',
      sides: [],
      subject: {},
      facts: {},
      quantities: { level: asFineLevel(level) },
      value: Math.abs(level),
      limit: MOST_LEVEL,
      unit: 'dB',
      source: 'rule-of-thumb',
    },
  ];
};

/** In the order in which they are told. */
export const balanceChecks: readonly PlacedCheck[] = [timeBalance, levelBalance];
