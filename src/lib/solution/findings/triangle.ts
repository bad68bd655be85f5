import { degrees } from '$lib/geometry/angle.ts';
import { asAngle } from '$lib/project/sentence.ts';
import type { PlacedCheck } from './check.ts';

const STANDARD = 60;
/** Deviations up to which the triangle passes without a word, and up to which it is only noted. Degrees. */
const PASSES = 5;
const NOTED = 15;

/** The angle that the pair subtends at the head against the 60° of a stereo triangle. */
const triangleAngle: PlacedCheck = ({ triangle }) => {
  const angle = degrees(triangle.angle);
  const off = Math.abs(angle - STANDARD);
  if (off <= PASSES) return [];
  return [
    {
      code: 'triangle-angle',
      level: off <= NOTED ? 'note' : 'caution',
      sides: [],
      subject: {},
      facts: {},
      quantities: { angle: asAngle(angle), standard: asAngle(STANDARD) },
      value: angle,
      limit: STANDARD,
      unit: '°',
      source: 'stereo-triangle',
    },
  ];
};

/** In the order in which they are told. */
export const triangleChecks: readonly PlacedCheck[] = [triangleAngle];
