import type { PlacedCheck } from './check.ts';
import { decibelText, microsecondsText } from './say.ts';

/** Most time between the two channels, µs. */
const MOST_TIME = 100;
/** Most level between the two sides, dB. */
const MOST_LEVEL = 0.5;

const MICROSECONDS_PER_MM = 1000;

/** Sound from the nearer loudspeaker comes sooner. */
export const timeBalance: PlacedCheck = ({ triangle, speedOfSound }) => {
  const time = ((triangle.leftDistance - triangle.rightDistance) / speedOfSound) * MICROSECONDS_PER_MM;
  if (Math.abs(time) <= MOST_TIME) return [];
  return [
    {
      code: 'time-difference',
      level: 'caution',
      text: `The ${time > 0 ? 'right' : 'left'} loudspeaker is heard ${microsecondsText(Math.abs(time))} sooner: the image leans to that side. Sit in the middle, or move one mark until both are as far from the head.`,
      value: Math.abs(time),
      limit: MOST_TIME,
      unit: 'µs',
      source: 'modelled on ITU-R BS.1116',
    },
  ];
};

/** Sound from the nearer loudspeaker is louder, by spreading alone. */
export const levelBalance: PlacedCheck = ({ triangle }) => {
  const level = 20 * Math.log10(triangle.leftDistance / triangle.rightDistance);
  if (Math.abs(level) <= MOST_LEVEL) return [];
  return [
    {
      code: 'level-difference',
      level: 'caution',
      text: `The ${level > 0 ? 'right' : 'left'} loudspeaker is ${decibelText(Math.abs(level))} louder at the head for being nearer. Turn it down by as much, or move one mark until both are as far from the head.`,
      value: Math.abs(level),
      limit: MOST_LEVEL,
      unit: 'dB',
      source: 'rule of thumb',
    },
  ];
};
