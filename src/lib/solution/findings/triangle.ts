import { degrees } from '$lib/geometry/angle.ts';
import { asAngle } from '$lib/project/sentence.ts';
import type { PlacedCheck } from './check.ts';

/** The angle at the head that is wanted, and how far off it passes without a word, and is only noted. Degrees. */
export const TRIANGLE = { standard: 60, passes: 5, noted: 15 } as const;

/** The angle that the pair subtends at the head against the 60° of a stereo triangle. */
const triangleAngle: PlacedCheck = ({ triangle }) => {
  const angle = degrees(triangle.angle);
  const off = Math.abs(angle - TRIANGLE.standard);
  if (off <= TRIANGLE.passes) return [];
  return [
    {
      code: 'triangle-angle',
      level: off <= TRIANGLE.noted ? 'note' : 'caution',
      sides: [],
      subject: {},
      facts: {},
      quantities: { angle: asAngle(angle), standard: asAngle(TRIANGLE.standard) },
      value: angle,
      limit: TRIANGLE.standard,
      unit: '°',
      source: 'stereo-triangle',
    },
  ];
};

/** In the order in which they are told. */
export const triangleChecks: readonly PlacedCheck[] = [triangleAngle];
