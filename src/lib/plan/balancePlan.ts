import { degrees } from '$lib/geometry/angle.ts';
import type { StandSettings } from '$lib/project/project.ts';
import type { Balance, Span } from '$lib/stand/balance.ts';
import { stopLoad } from '$lib/stand/sliding.ts';
import { GRAVITY, type EdgeName } from '$lib/stand/tipping.ts';
import type { BalancePlan } from './document.ts';

/** One side's balance as the plan's document has it: angles to degrees, and why a number is missing. */
export function balancePlan(balance: Balance, { friction, stop }: StandSettings, mass: number | null): BalancePlan {
  const { cabinet, wood, joint, base, contact, survives, weakest, push, slide } = balance;
  return {
    cabinet,
    wood: wood.centre,
    joint: joint && joint.centre,
    mass: joint && joint.mass,
    base: onEdges(base, ({ margin, angle }) => ({ margin, angle: inDegrees(angle) })),
    contact: onEdges(contact, ({ margin, angle }) => ({ margin, angle: degrees(angle) })),
    survives: inDegrees(survives),
    weakest,
    push,
    slide: {
      slope: degrees(slide.slope),
      friction,
      frictionNeeded: slide.frictionNeeded,
      frictionAngle: degrees(slide.frictionAngle),
      margin: degrees(slide.margin),
      stop: stop !== null,
      stopLoad: mass === null ? null : stopLoad(slide, mass * GRAVITY),
    },
    missing: mass === null ? 'the cabinet’s mass is not given: pushes and the joint centre of mass need it' : null,
  };
}

const inDegrees = ({ least, most }: Span): Span => ({ least: degrees(least), most: degrees(most) });

const onEdges = <From, To>(edges: Readonly<Record<EdgeName, From>>, map: (from: From) => To): Record<EdgeName, To> => ({
  front: map(edges.front),
  rear: map(edges.rear),
  inboard: map(edges.inboard),
  outboard: map(edges.outboard),
});
