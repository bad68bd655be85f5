import type { Point, Vec3 } from '$lib/geometry/point.ts';
import { headIn, posturesServed } from '$lib/layout/ears.ts';
import { sideNames, type Layout, type SideName } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import { headOutlineFromAbove, headOutlineFromSide } from './headItems.ts';
import { fromAbove, fromRight, type Projection } from './projection.ts';
import type { Item, Label } from './view.ts';

/** The heads that the aim serves beside the seat's, from above, thin and with their names, and the ways to them from both loudspeakers. */
export const fanFromAbove = (plan: Plan): Item[] => fan(plan, fromAbove, headOutlineFromAbove, sideNames, BESIDE);

/** The same from the side, with the ways from one loudspeaker. */
export const fanFromSide = (plan: Plan, side: SideName): Item[] =>
  fan(plan, fromRight, headOutlineFromSide, [side], OVER);

/** Where the name of a head stands: to its left, or over its crown, mm from its middle and text sizes. */
const BESIDE = { from: [-80, 0], shift: [-0.3, 0.35], anchor: 'end' } as const;
const OVER = { from: [0, 145], shift: [0, -0.25], anchor: 'middle' } as const;

function fan(
  plan: Plan,
  projection: Projection,
  outlineOf: (plan: Plan, head: Vec3) => Item[],
  sides: readonly SideName[],
  name: Pick<Label, 'anchor' | 'shift'> & { readonly from: Point },
): Item[] {
  // From above, the two loudspeakers meet a head in one place.
  return servedHeads(plan.layout, sides[0] ?? 'right').flatMap(({ name: text, head }, index): Item[] => {
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
        at: [at[0] + name.from[0], at[1] + name.from[1]],
        shift: name.shift ?? [0, 0],
        text,
        anchor: name.anchor,
      },
    ];
  });
}

export const servedHeads = (
  layout: Layout,
  side: SideName,
): readonly { readonly name: string; readonly head: Vec3 }[] =>
  posturesServed(layout).map((posture) => ({ name: posture.name, head: headIn(posture, layout, side) }));
