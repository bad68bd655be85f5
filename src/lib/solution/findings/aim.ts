import { axisHeight, axisLimit, turnToEars } from '$lib/acoustics/axisLimit.ts';
import { degrees } from '$lib/geometry/angle.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import { posturesServed } from '$lib/layout/ears.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { asAngle, asMm, asUnit } from '$lib/project/sentence.ts';
import { sideNames, type Layout } from '$lib/project/project.ts';
import type { Finding } from './finding.ts';
import type { PlacedCheck } from './check.ts';

/** Steepest axis of a reference loudspeaker, degrees (from memory). */
const STEEPEST = 10;

/** An axis that comes from well above or below. */
const inclination: PlacedCheck = ({ poses }) =>
  sideNames.flatMap((side): Finding[] => {
    const angle = degrees(poses[side].elevation);
    if (Math.abs(angle) <= STEEPEST) return [];
    return [
      {
        code: 'inclination',
        level: 'note',
        sides: [side],
        subject: {},
        facts: {},
        quantities: { angle: asAngle(angle), most: asAngle(STEEPEST) },
        value: Math.abs(angle),
        limit: STEEPEST,
        unit: '°',
        source: 'listening-room',
      },
    ];
  });

/** An axis that passes beside the head. */
const axisMiss: PlacedCheck = ({ poses, layout, head }) =>
  sideNames.flatMap((side): Finding[] => {
    const aside = missAside(poses[side], head);
    const limit = layout.listener.headWidth / 2;
    // An axis through the ear is as far from the middle of the head as the limit itself, give or take rounding.
    if (aside <= limit * (1 + 1e-9)) return [];
    return [
      {
        code: 'axis-misses-head',
        level: 'caution',
        sides: [side],
        subject: {},
        facts: { shared: isShared(layout) },
        quantities: { aside: asMm(aside) },
        value: aside,
        limit,
        unit: 'mm',
        source: 'head-width',
      },
    ];
  });

/** Whether other postures pull the aim away from the seat. */
const isShared = (layout: Layout): boolean => posturesServed(layout).length > 0;

/** How far the axis passes beside the middle of the head, seen from above, mm. */
export function missAside({ aimedPoint, forward }: Pick<Pose, 'aimedPoint' | 'forward'>, head: Vec3): number {
  const across = (head.x - aimedPoint.x) * forward.y - (head.y - aimedPoint.y) * forward.x;
  return Math.abs(across) / Math.hypot(forward.x, forward.y);
}

/**
 * What drivers may turn against each other between the axis and the ears, degrees, before that is told where their line-up
 * is not known: 30° costs 3 dB of a sum in quadrature that was lined up on the axis. Rule of thumb.
 */
const TOLD_TURN = 30;

/** An axis that passes over or under the ears by more than the beam and, where it is known, the crossover's lobe allow. */
const axisTooHigh: PlacedCheck = ({ poses, speaker, layout, head, speedOfSound }) =>
  sideNames.flatMap((side): Finding[] => {
    const pose = poses[side];
    const found = axisHeight(pose, head);
    if (!found) return [];
    const limit = axisLimit(speaker, pose, head, speedOfSound);
    const turned = turnToEars(speaker, pose, head, speedOfSound);
    const passes = { height: asMm(found.height), angle: asAngle(degrees(found.angle)) };
    if (limit) {
      return [
        {
          code: 'axis-misses-ears',
          level: 'caution',
          sides: [side],
          subject: {},
          facts: { by: limit.by, crossoverKnown: turned === null, shared: isShared(layout) },
          quantities: {
            ...passes,
            heightMost: asMm(limit.height),
            angleMost: asAngle(degrees(limit.angle)),
            frequency: asUnit(limit.by.frequency, 'Hz'),
          },
          value: degrees(Math.abs(found.angle)),
          limit: degrees(Math.abs(limit.angle)),
          unit: '°',
          source: limit.by.what === 'beam' ? 'head-treble' : 'crossover-loss',
        },
      ];
    }
    if (!turned || degrees(turned.turn) <= TOLD_TURN) return [];
    return [
      {
        code: 'lobe-unknown',
        level: 'note',
        sides: [side],
        subject: { between: turned.between },
        facts: {},
        quantities: { ...passes, turn: asAngle(degrees(turned.turn)), frequency: asUnit(turned.frequency, 'Hz') },
        value: degrees(turned.turn),
        limit: TOLD_TURN,
        unit: '°',
        source: 'rule-of-thumb',
      },
    ];
  });

/** What checks of the aim there are, in the order in which they are told. */
export const aimChecks: readonly PlacedCheck[] = [axisMiss, axisTooHigh, inclination];
