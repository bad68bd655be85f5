import type { Plan, StandPlan } from '$lib/solution/document.ts';
import { bareWidth } from '$lib/solution/glueUp.ts';
import { extruded, type Body } from '$lib/workshop/body.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Part } from '$lib/workshop/part.ts';

/** A body to print. */
export interface StandBody {
  readonly body: Body;
  /** How many of it the left stand takes, the right one, and both together. */
  readonly left: number;
  readonly right: number;
  readonly quantity: number;
  /** What it is, in words. */
  readonly what: string;
}

/**
 * What to print of the stands, each body that differs once. Of a skinned stand its core; of a stack of slices that are all
 * alike the whole stand in one piece, instead of gluing it up: the outline of its layers, rod holes and all, as wide as
 * they are with their glue, for veneer goes on that too. Lying on its side, as a printer would build it. Of other builds nothing.
 */
export function standBodies({ stand, parts }: Pick<Plan, 'stand' | 'parts'>): StandBody[] {
  const [left, right] = [bodiesOf(stand.left, parts), bodiesOf(stand.right, parts)];
  if (JSON.stringify(left) === JSON.stringify(right)) {
    return left.map(({ quantity, ...one }) => ({ ...one, left: quantity, right: quantity, quantity: 2 * quantity }));
  }
  return [...ofSide(left, 'left'), ...ofSide(right, 'right')];
}

/** What one stand takes. */
type OfStand = Pick<StandBody, 'body' | 'quantity' | 'what'>;

function bodiesOf(stand: StandPlan, parts: readonly Part[]): OfStand[] {
  const { build, sanding, part, printed } = stand;
  if (printed.length > 0) {
    return printed.map(({ name, levels, roof, quantity }) => ({
      body: roof ? { name, levels, roof } : { name, levels },
      quantity,
      what: name === 'core' ? 'Printed core' : `Printed core, part ${name}`,
    }));
  }
  const slice = build === 'stacked' && sanding === null ? parts.find(({ name }) => name === part) : undefined;
  if (!slice) return [];
  const body = extruded('stand', slice, bareWidth(stand));
  return [{ body, quantity: 1, what: 'Whole stand in one piece, instead of slices' }];
}

const ofSide = (bodies: readonly OfStand[], side: SideName): StandBody[] =>
  bodies.map(({ body, quantity, what }) => ({
    body: { ...body, name: `${body.name} ${side}` },
    left: side === 'left' ? quantity : 0,
    right: side === 'right' ? quantity : 0,
    quantity,
    what,
  }));
