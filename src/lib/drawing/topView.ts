import type { Plan } from '$lib/solution/document.ts';
import { sideNames, type Layout, type Speaker } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import { cabinetItems } from './cabinetItems.ts';
import { driverItems } from './driverItems.ts';
import { extentOf } from './extent.ts';
import { fanFromAbove } from './fanItems.ts';
import { headFromAbove } from './headItems.ts';
import { fromAbove } from './projection.ts';
import { axisItem, reflectionItems, sightItems, triangleItem } from './rayItems.ts';
import { roomFromAbove } from './roomFromAbove.ts';
import { standFromAbove, standUnderCabinet } from './standItems.ts';
import { topDimensions } from './topDimensions.ts';
import { roomLabels, cabinetLabels } from './topLabels.ts';
import type { Item, View } from './view.ts';

/**
 * The desk from above, as the listener sits at it: they at the bottom, the loudspeakers beyond. Later items lie over earlier ones.
 * `layoutIndex`: the layout's place in the project, for the dimensions' pointers.
 */
export function topView(given: Speaker, layout: Layout, layoutIndex: number, plan: Plan): View {
  const speaker = asStood(given);
  const things: Item[] = [
    ...roomFromAbove(layout),
    triangleItem(plan, fromAbove),
    ...sideNames.flatMap((side) => [
      standFromAbove(side, plan.stand[side]),
      ...cabinetItems(side, plan.sides[side], fromAbove),
      ...driverItems(side, plan.sides[side], speaker, fromAbove),
      standUnderCabinet(side, plan.stand[side]),
    ]),
    ...fanFromAbove(plan),
    ...headFromAbove(plan),
    ...sideNames.flatMap((side) => [
      ...reflectionItems(side, plan, fromAbove),
      ...sightItems(side, plan, fromAbove),
      axisItem(side, plan.sides[side], fromAbove),
    ]),
  ];
  return {
    name: 'Plan, as seen from the chair',
    items: [
      ...things,
      ...roomLabels(layout),
      ...cabinetLabels(plan),
      ...topDimensions(speaker, layout, layoutIndex, plan),
    ],
    extent: extentOf(things),
  };
}
