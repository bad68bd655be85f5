import { axisHeight, axisLimit, turnToEars, type AxisLimit } from '$lib/acoustics/axisLimit.ts';
import { HEAD_LIMITS } from '$lib/acoustics/headHearing.ts';
import { degrees } from '$lib/geometry/angle.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { sideNames } from '$lib/project/project.ts';
import type { Finding } from '$lib/plan/document.ts';
import type { PlacedCheck } from './check.ts';
import { degreesText, frequencyText, mmText } from './say.ts';

/** Steepest axis of a reference loudspeaker, degrees (from memory). */
const STEEPEST = 10;

/** An axis that comes from well above or below. */
export const inclination: PlacedCheck = ({ poses }) =>
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
        source: 'modelled on ITU-R BS.1116',
      },
    ];
  });

/** An axis that passes beside the head. */
export const axisMiss: PlacedCheck = ({ poses, layout, head }) =>
  sideNames.flatMap((side) => {
    const aside = missAside(poses[side], head);
    const limit = layout.listener.headWidth / 2;
    // An axis through the ear is as far from the middle of the head as the limit itself, give or take rounding.
    if (aside <= limit * (1 + 1e-9)) return [];
    return [
      {
        code: 'axis-misses-head',
        level: 'caution' as const,
        side,
        text: `The ${side} axis passes ${mmText(aside)} beside the middle of the head, outside it. Let the toe aim at the head or the ear, or change the angle that is set.`,
        value: aside,
        limit,
        unit: 'mm',
        source: 'half the head width',
      },
    ];
  });

/** How far the axis passes beside the middle of the head, seen from above, mm. */
function missAside({ aimedPoint, forward }: Pose, head: Vec3): number {
  const across = (head.x - aimedPoint.x) * forward.y - (head.y - aimedPoint.y) * forward.x;
  return Math.abs(across) / Math.hypot(forward.x, forward.y);
}

/**
 * What drivers may turn against each other between the axis and the ears, degrees, before that is told where their line-up
 * is not known: 30° costs 3 dB of a sum in quadrature that was lined up on the axis. Rule of thumb.
 */
const TOLD_TURN = 30;

/** An axis that passes over or under the ears by more than the beam and, where it is known, the crossover's lobe allow. */
export const axisTooHigh: PlacedCheck = ({ poses, speaker, head, speedOfSound }) =>
  sideNames.flatMap((side): Finding[] => {
    const pose = poses[side];
    const found = axisHeight(pose, head);
    if (!found) return [];
    const limit = axisLimit(speaker, pose, head, speedOfSound);
    const turned = turnToEars(speaker, pose, head, speedOfSound);
    const angle = degrees(Math.abs(found.angle));
    const passes = `The ${side} axis passes ${mmText(Math.abs(found.height))} or ${degreesText(angle)} ${found.angle > 0 ? 'over' : 'under'} the ears`;
    if (limit) {
      const unknown = turned ? ` What the crossover does there is not known: ${NO_LINE_UP}.` : '';
      return [
        {
          code: 'axis-misses-ears',
          level: 'caution',
          side,
          text: `${passes}; up to ${mmText(Math.abs(limit.height))} or ${degreesText(degrees(Math.abs(limit.angle)))} it still sounds as on the axis, for ${limitedBy(limit)}.${unknown} Let the tilt follow the ear, or change the angle that is set.`,
          value: angle,
          limit: degrees(Math.abs(limit.angle)),
          unit: '°',
          source:
            limit.by.what === 'beam'
              ? HEAD_LIMITS.treble.source
              : `a loss of ${HEAD_LIMITS.crossover.limit} dB: rule of thumb`,
        },
      ];
    }
    if (!turned || degrees(turned.turn) <= TOLD_TURN) return [];
    const [upper, lower] = turned.between;
    return [
      {
        code: 'lobe-unknown',
        level: 'note',
        side,
        text: `${passes}. On the way there ${upper} and ${lower} turn by ${degreesText(degrees(turned.turn))} against each other at ${frequencyText(turned.frequency)}, where they meet; whether their sum loses or gains by that is not known: ${NO_LINE_UP}. A design point would tell.`,
        value: degrees(turned.turn),
        limit: TOLD_TURN,
        unit: '°',
        source: 'rule of thumb',
      },
    ];
  });

const NO_LINE_UP = 'nobody said where the drivers were lined up';

function limitedBy({ by }: AxisLimit): string {
  if (by.what === 'beam') return `the beam of the ${by.driver} at ${frequencyText(by.frequency)}`;
  const [upper, lower] = by.between;
  return `${upper} and ${lower} where they meet, at ${frequencyText(by.frequency)}`;
}
