import { degrees } from '$lib/geometry/angle.ts';
import { sideNames } from '$lib/project/project.ts';
import type { Check } from './check.ts';
import { degreesText, mmText } from './say.ts';

/** Steepest axis of a reference loudspeaker, degrees. */
const STEEPEST = 10;

/** An axis that comes from well above or below. */
export const inclination: Check = ({ poses }) =>
  sideNames.flatMap((side) => {
    const angle = degrees(poses[side].elevation);
    if (Math.abs(angle) <= STEEPEST) return [];
    return [
      {
        code: 'inclination',
        level: 'note' as const,
        side,
        text: `The ${side} axis ${angle > 0 ? 'rises' : 'falls'} ${degreesText(Math.abs(angle))} towards the ear; ${STEEPEST}° is the most in a reference listening room. A ${angle > 0 ? 'higher' : 'lower'} stand or a seat further away flattens it.`,
        value: Math.abs(angle),
        limit: STEEPEST,
        unit: '°',
        source: 'modelled on ITU-R BS.1116, from memory',
      },
    ];
  });

/** An axis that passes outside the head. */
export const axisMiss: Check = ({ poses, layout }) =>
  sideNames.flatMap((side) => {
    const { miss } = poses[side];
    const limit = layout.listener.headWidth / 2;
    // An axis through the ear is as far from the middle of the head as the limit itself, give or take rounding.
    if (miss <= limit * (1 + 1e-9)) return [];
    return [
      {
        code: 'axis-misses-head',
        level: 'caution' as const,
        side,
        text: `The ${side} axis passes the middle of the head at ${mmText(miss)}, outside it. Let toe or tilt aim at the ear, or change the angle that is set.`,
        value: miss,
        limit,
        unit: 'mm',
        source: 'half the head width',
      },
    ];
  });
