import { degrees } from '$lib/geometry/angle.ts';
import { degreesText } from './say.ts';
import type { PlacedCheck } from './check.ts';

const STANDARD = 60;
/** Deviations up to which the triangle passes without a word, and up to which it is only noted. Degrees. */
const PASSES = 5;
const NOTED = 15;

/** The angle that the pair subtends at the head against the 60° of a stereo triangle. */
export const triangleAngle: PlacedCheck = ({ triangle }) => {
  const angle = degrees(triangle.angle);
  const off = Math.abs(angle - STANDARD);
  if (off <= PASSES) return [];
  const advice =
    angle > STANDARD ? 'move the marks together or sit further back' : 'move the marks apart or sit closer';
  return [
    {
      code: 'triangle-angle',
      level: off <= NOTED ? 'note' : 'caution',
      text: `The loudspeakers stand ${degreesText(angle)} apart as the head sees them; a stereo triangle has ${STANDARD}°. To come nearer, ${advice}.`,
      value: angle,
      limit: STANDARD,
      unit: '°',
      source: `60° modelled on ITU-R BS.775; ±${PASSES}° and ±${NOTED}° rule of thumb`,
    },
  ];
};
