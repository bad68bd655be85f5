import type { Plan } from '$lib/solution/document.ts';
import type { Layout, SideName, Speaker } from '$lib/project/project.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import { screenFromSide } from './screenOutline.ts';
import { driversOn } from '$lib/layout/place.ts';
import { asStood } from '$lib/project/stood.ts';
import { boxOf } from './box.ts';
import { cabinetItems } from './cabinetItems.ts';
import { driverItems } from './driverItems.ts';
import { extentOf } from './extent.ts';
import { fanFromSide } from './fanItems.ts';
import { headFromSide } from './headItems.ts';
import { fromRight } from './projection.ts';
import { axisItem, reflectionItems, sightItems } from './rayItems.ts';
import { floorLevel, roomFromSide, type Floor } from './roomFromSide.ts';
import { sidesAlike } from './sidesAlike.ts';
import { sideDimensions } from './sideDimensions.ts';
import { standFromSide } from './standItems.ts';
import { seenFromSide } from './surfaceItems.ts';
import type { Item, View } from './view.ts';

/** How far the wall is drawn above everything else, mm. */
const WALL_ABOVE = 40;

/** The desk from its right-hand end, with the chosen side's loudspeaker. Later items lie over earlier ones. */
export function sideView(
  given: Speaker,
  layout: Layout,
  layoutIndex: number,
  plan: Plan,
  side: SideName,
  floor: Floor,
): View {
  const stood = asStood(given);
  const speaker = stood.laid ? { ...stood, drivers: driversOn(stood, side) } : stood;
  const head = [...fanFromSide(plan, side), ...headFromSide(plan)];
  const box = [
    ...standFromSide(side, plan.sides[side], plan.stand[side]),
    ...cabinetItems(side, plan.sides[side], fromRight),
    ...driverItems(side, plan.sides[side], speaker, fromRight),
  ];
  const [left, , right, top] = boxOf(
    [...head, ...box]
      .flatMap((item) => (item.kind === 'outline' ? item.points : []))
      .concat(
        layout.monitors.map((monitor) => {
          const [, , right, top] = boxOf(screenFromSide(monitor));
          return [right, top] as const;
        }),
      )
      .concat(
        layout.surfaces.flatMap((surface) => {
          const { left, right, top } = seenFromSide(layout, surface);
          return [[left, top] as const, [right, top] as const];
        }),
      ),
  );
  const span = [left, Math.max(right, deskShape(layout.desk).depth)] as const;
  const things: Item[] = [
    ...roomFromSide(layout, floor, span, top + WALL_ABOVE),
    ...head,
    ...box,
    ...reflectionItems(side, plan, fromRight),
    ...sightItems(side, plan, fromRight),
    axisItem(side, plan.sides[side], fromRight),
  ];
  return {
    name: sidesAlike(plan) ? 'Left and right side' : side === 'left' ? 'Left side' : 'Right side',
    items: [...things, ...sideDimensions(speaker, layout, layoutIndex, plan, side, floorLevel(layout, floor))],
    extent: extentOf(things),
  };
}
