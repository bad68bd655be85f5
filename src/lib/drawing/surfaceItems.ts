import type { Point } from '$lib/geometry/point.ts';
import { sideNames, type Layout, type Surface } from '$lib/project/project.ts';
import { FLOOR, footCorners, surfaceCorners } from '$lib/project/surface.ts';
import { boxOf, rectangle } from './box.ts';
import { inputsOf } from './inputs.ts';
import { linear } from './makeDimension.ts';
import { fromAbove } from './projection.ts';
import type { Dimension, Item, Outline } from './view.ts';

/** Breadth of a floor stand's column and of a riser's legs, and height of a base, as drawn, mm: hints, not measures. */
const COLUMN = 60;
const BASE = 20;

interface Listed {
  readonly surface: Surface;
  readonly index: number;
}

const listed = ({ surfaces }: Layout): Listed[] => surfaces.map((surface, index) => ({ surface, index }));

const carries = ({ placement }: Layout, { name }: Surface): boolean =>
  sideNames.some((side) => placement[side].on === name);

const outline = (id: string, points: readonly Point[], rest: Partial<Outline> = {}): Outline => ({
  kind: 'outline',
  id,
  subject: 'surface',
  pen: 'wide',
  points,
  closed: true,
  filled: true,
  ...rest,
});

/**
 * Surfaces from above, those under the desk's top or those over it. One that hangs over the desk and carries nothing is a line
 * only, so that what is under it stays to be seen.
 */
export const surfacesFromAbove = (layout: Layout, where: 'under the desk' | 'over it'): Item[] =>
  listed(layout)
    .filter(({ surface }) => surface.height <= layout.desk.height === (where === 'under the desk'))
    .sort((a, b) => a.surface.height - b.surface.height)
    .flatMap(({ surface, index }): Item[] => {
      const bare = where === 'over it' && !carries(layout, surface);
      const plate = outline(`surface-${index}`, surfaceCorners(surface), bare ? { pen: 'phantom', filled: false } : {});
      return surface.on === 'wall' || surface.foot === null
        ? [plate]
        : [plate, outline(`surface-${index}-foot`, footCorners(surface), { pen: 'hidden', filled: false })];
    });

/** Their names, in the corner by the front edge's left end. */
export const surfaceLabels = (layout: Layout): Item[] =>
  listed(layout).map(({ surface, index }) => ({
    kind: 'label',
    id: `surface-${index}-label`,
    subject: 'surface',
    at: surfaceCorners(surface)[0] ?? [0, 0],
    shift: [0.4, -0.75],
    text: surface.name,
    anchor: 'start',
    rank: 2,
  }));

/** Surfaces from the side, with what carries them as a hint. `ground`: where the floor is drawn. */
export const surfacesFromSide = (layout: Layout, ground: number): Item[] =>
  listed(layout).flatMap(({ surface, index }): Item[] => {
    const { left, right, top, bottom } = seenFromSide(layout, surface);
    const pen = carries(layout, surface) ? 'wide' : 'phantom';
    const plate = outline(`surface-${index}`, rectangle([left, bottom, right, top]), { pen });
    if (surface.on === 'wall') return [plate];
    const floor = surface.on === 'desk' ? 0 : ground;
    const [footLeft, , footRight] = boxOf(footCorners(surface).map(([x, y]): Point => [y, x]));
    const middle = (footLeft + footRight) / 2;
    const base = Math.min(BASE, Math.max(0, bottom - floor) / 2);
    return [
      outline(`surface-${index}-column`, rectangle([middle - COLUMN / 2, floor, middle + COLUMN / 2, bottom]), {
        pen: 'narrow',
      }),
      outline(`surface-${index}-foot`, rectangle([footLeft, floor, footRight, floor + base]), { pen: 'narrow' }),
      plate,
    ];
  });

/** Where a plate lies on the side view. */
export function seenFromSide({ desk }: Layout, surface: Surface) {
  const [left, , right] = boxOf(surfaceCorners(surface).map(([x, y]): Point => [y, x]));
  const top = surface.height - desk.height;
  return { left, right, top, bottom: top - surface.thickness };
}

/** Whether something stands so low that the way down to the floor cannot be shortened. `clear`: from where on it can, mm. */
export const reachesDown = (layout: Layout, clear: number): boolean =>
  sideNames.some((side) => layout.placement[side].on === FLOOR) ||
  layout.surfaces.some((surface) => seenFromSide(layout, surface).bottom < clear);

/** Sizes and places of the surfaces that carry a loudspeaker, on the top view. */
export const surfaceSizes = (layout: Layout, layoutIndex: number): Dimension[] =>
  listed(layout)
    .filter(({ surface }) => carries(layout, surface))
    .flatMap(({ surface, index }) => {
      const [frontLeft, frontRight, rearRight] = surfaceCorners(surface);
      if (!frontLeft || !frontRight || !rearRight) return [];
      const { name, x, y, width, depth } = surface;
      const at = (key: string): string => inputsOf(layout, layoutIndex).at('surfaces', index, key);
      const common = { subject: 'surface', rank: 2 } as const;
      return [
        linear({
          ...common,
          id: `surface-${index}-depth`,
          from: frontRight,
          to: rearRight,
          run: 'aligned',
          row: -1,
          value: depth,
          name: `depth of ${name}`,
          input: at('depth'),
        }),
        linear({
          ...common,
          id: `surface-${index}-width`,
          from: frontLeft,
          to: frontRight,
          run: 'aligned',
          row: -1,
          value: width,
          name: `width of ${name}`,
          input: at('width'),
          rank: 3,
        }),
        linear({
          ...common,
          id: `surface-${index}-y`,
          from: [x, 0],
          to: [x, y],
          run: 'up',
          row: 0,
          value: Math.abs(y),
          inputSign: y < 0 ? -1 : 1,
          name: `desk’s front edge to the front of ${name}`,
          input: at('y'),
        }),
      ];
    });

/** Heights of the surfaces over the floor, on the side view. `ground`: where the floor is drawn. */
export const surfaceHeights = (layout: Layout, layoutIndex: number, ground: number): Dimension[] =>
  listed(layout)
    .filter(({ surface }) => carries(layout, surface))
    .map(({ surface, index }) => {
      const { right, top } = seenFromSide(layout, surface);
      return linear({
        id: `surface-${index}-height`,
        subject: 'surface',
        from: [right, ground],
        to: [right, top],
        run: 'up',
        row: 1,
        value: surface.height,
        name: `${surface.name} over the floor`,
        input: inputsOf(layout, layoutIndex).at('surfaces', index, 'height'),
        rank: 2,
      });
    });

/** From above, the middle of a plate. */
export const middleFromAbove = (surface: Surface): Point => {
  const [[x, y] = [0, 0], , [toX, toY] = [0, 0]] = surfaceCorners(surface);
  return fromAbove.flat({ x: (x + toX) / 2, y: (y + toY) / 2, z: 0 });
};
