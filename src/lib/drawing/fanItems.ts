import type { Vec3 } from '$lib/geometry/point.ts';
import { headIn, posturesServed } from '$lib/layout/ears.ts';
import { sideNames, type Layout, type SideName } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import { headOutlineFromAbove, headOutlineFromSide } from './headItems.ts';
import { fromAbove, fromRight, type Projection } from './projection.ts';
import type { Item } from './view.ts';

/** The heads that the aim serves beside the seat's, from above, thin and with their names, and the ways to them from both loudspeakers. */
export const fanFromAbove = (plan: Plan): Item[] => fan(plan, fromAbove, headOutlineFromAbove, sideNames);

/** The same from the side, with the ways from one loudspeaker. */
export const fanFromSide = (plan: Plan, side: SideName): Item[] => fan(plan, fromRight, headOutlineFromSide, [side]);

function fan(
  plan: Plan,
  projection: Projection,
  outlineOf: (plan: Plan, head: Vec3) => Item[],
  sides: readonly SideName[],
): Item[] {
  return servedHeads(plan.layout).flatMap(({ name, head }, index): Item[] => {
    const at = projection.flat(head);
    return [
      ...sides.map((side): Item => ({
        kind: 'outline',
        id: `fan-${side}-${index}`,
        subject: 'sight',
        pen: 'sight',
        points: [projection.flat(plan.sides[side].aimedPoint), at],
        closed: false,
        filled: false,
      })),
      ...outlineOf(plan, head).map((item) => ({ ...item, id: `${item.id}-posture-${index}` })),
      {
        kind: 'label',
        id: `posture-${index}-label`,
        subject: 'head',
        at,
        shift: [-0.6, 0.35],
        text: name,
        anchor: 'end',
        rank: 2,
      },
    ];
  });
}

const servedHeads = (layout: Layout): readonly { readonly name: string; readonly head: Vec3 }[] =>
  posturesServed(layout).map((posture) => ({
    name: posture.name,
    head: headIn(posture, layout.listener, layout.desk),
  }));
