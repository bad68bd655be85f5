import type { Plan, StandPlan } from '$lib/plan/document.ts';
import { extruded, type Body } from '$lib/workshop/body.ts';
import type { Part } from '$lib/workshop/part.ts';

/**
 * What to print of the stands, each body that differs once. Of a skinned stand its core; of a stack of slices that are all
 * alike the whole stand in one piece, instead of gluing it up: the outline of its layers, rod holes and all, as wide as
 * the stand. Lying on its side, as a printer would build it. Of other builds nothing.
 */
export function standBodies({ stand, parts }: Plan): Body[] {
  const [left, right] = [bodiesOf(stand.left, parts), bodiesOf(stand.right, parts)];
  if (JSON.stringify(left) === JSON.stringify(right)) return left;
  return [...named(left, 'left'), ...named(right, 'right')];
}

function bodiesOf({ build, sanding, part, width, printed }: StandPlan, parts: readonly Part[]): Body[] {
  if (printed.length > 0)
    return printed.map(({ name, levels, roof }) => (roof ? { name, levels, roof } : { name, levels }));
  const slice = build === 'stacked' && sanding === null ? parts.find(({ name }) => name === part) : undefined;
  return slice ? [extruded('stand', slice, width)] : [];
}

const named = (bodies: readonly Body[], side: string): Body[] =>
  bodies.map((body) => ({ ...body, name: `${body.name} ${side}` }));
