import { degrees } from '$lib/geometry/angle.ts';
import type { Balance } from '$lib/stand/balance.ts';
import { stopLoad } from '$lib/stand/sliding.ts';
import type { Span } from '$lib/stand/span.ts';
import { GRAVITY, type EdgeName } from '$lib/stand/tipping.ts';
import type { BalancePlan } from './document.ts';

/** One side's balance as the plan's document has it: angles to degrees, and why a number is missing. */
export function balancePlan(balance: Balance, mass: number | null): BalancePlan {
  const { cabinet, wood, joint, base, contact, survives, weakest, push, slide, grip, verdict } = balance;
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
      friction: slide.friction.least,
      frictionMost: slide.friction.most,
      by: grip.cabinet.by,
      frictionNeeded: slide.frictionNeeded,
      frictionAngle: degrees(slide.frictionAngle),
      margin: degrees(slide.margin),
      survives: inDegrees(slide.survives),
      stop: slide.stop,
      stopLoad: mass === null ? null : stopLoad(slide, mass * GRAVITY),
    },
    verdict: { ...verdict, holds: inDegrees(verdict.holds) },
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
