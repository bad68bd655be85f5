import { circle, polygonPath, type Circle, type Path } from '$lib/geometry/contour.ts';
import { edgesOf } from '$lib/geometry/edge.ts';
import { pointGap } from '$lib/geometry/edgeGap.ts';
import { edgeExtent } from '$lib/geometry/extent.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import { notched } from '$lib/geometry/notch.ts';
import type { Point } from '$lib/geometry/point.ts';
import { roundCorners } from '$lib/geometry/roundCorners.ts';
import type { StandSettings } from '$lib/project/project.ts';
import { asTyped, needs, says, type Words } from '$lib/project/sentence.ts';
import { cornerReliefFor, type CornerRelief } from './cornerRelief.ts';
import { openedSlice, type Opened, type Stretch } from './openings.ts';
import type { Layer } from './layer.ts';
import { built, noAnswer, type Outcome } from './outcome.ts';
import { reliefWindows } from './relief.ts';
import type { RodHole } from './rods.ts';
import { shownDown, SLACK } from './slack.ts';

/** A layer as it is cut, in the profile's axes. */
export interface Shape {
  /** Counter-clockwise, with true arcs. */
  readonly outside: Path;
  readonly holes: readonly Circle[];
  /** Clockwise. */
  readonly windows: readonly Path[];
  /** Least wood between a rod hole's rim and the outside; null without rods. */
  readonly rodEdge: number | null;
  /** Of the outside's rounded corners, mm; 0 for sharp ones. */
  readonly radius: number;
  /** Of wood, mm², and its middle. */
  readonly area: number;
  readonly centre: Point;
  readonly notes: readonly Words[];
}

/** What else a layer has. */
export interface ShapeOptions {
  /** Whether it has the relief windows; or the windows themselves, where another layer has found them. */
  readonly relieved: boolean | readonly Path[];
  /** Stretches that windows leave whole besides the rods'. */
  readonly kept?: readonly Stretch[];
  /** Slots into edges of the slice, each a mouth and the floor between its ends. */
  readonly slots?: readonly { readonly mouth: readonly [Point, Point]; readonly floor: readonly Point[] }[];
  /** Diameter of the router's bit that cuts it, mm: its sharp inner corners are relieved. None by default. */
  readonly bit?: number | null;
}

/**
 * A layer with all its details: cable slot, recess, rounded corners, rod holes and, if wished, relief windows. No answer
 * where a detail finds no room, or comes nearer to a rod than the rods' least edge.
 */
export function shapeOf(layer: Layer, settings: StandSettings, options: ShapeOptions): Outcome<Shape> {
  const relief = cornerReliefFor(options.bit ?? null);
  const opened = openedSlice(layer, settings, relief);
  if (!opened.ok) return opened;
  const points = slotted(opened.value.points, options.slots ?? []);
  const drawn = settings.corner === null ? sharp(points) : rounded(layer.slice, points, settings.corner);
  const { radius } = drawn;
  const path = relief.relieved(drawn.path);
  const bare = settings.corner === null && points === layer.slice && path === drawn.path && layer.rodEdge !== undefined;
  const rodEdge = bare ? (layer.rodEdge ?? null) : woodRound(layer.rods, path);
  const least = settings.rods?.edge ?? 0;
  if (rodEdge !== null && rodEdge < least - SLACK) return tooNear(rodEdge, least, settings);
  const windows =
    typeof options.relieved === 'object'
      ? options.relieved
      : options.relieved
        ? windowsIn(layer, path, settings, opened.value, options.kept ?? [], relief)
        : [];
  const holes = layer.rods.map(({ u, z, diameter }) => circle([u, z], diameter / 2));
  const { area, centre } = momentsOf(path, [...holes, ...windows]);
  return built({
    outside: path,
    holes,
    windows,
    rodEdge,
    radius,
    area,
    centre,
    notes: [
      ...(settings.corner !== null && radius < settings.corner - SLACK
        ? [
            says`The corners have a radius of ${shownDown(radius)}, not ${asTyped(settings.corner)}: ${tightest(layer.slice, radius, settings.corner)} has room for no more.`,
          ]
        : []),
      ...relief.notes(
        path !== drawn.path,
        options.relieved === true &&
          windows.length > 0 &&
          settings.relief !== null &&
          relief.windowCorner(settings.relief.corner) !== settings.relief.corner,
      ),
      ...(options.relieved === true && settings.relief && windows.length === 0
        ? [says`There are no windows: webs of ${asTyped(settings.relief.web)} leave them no room.`]
        : []),
    ],
  });
}

function slotted(points: readonly Point[], slots: NonNullable<ShapeOptions['slots']>): readonly Point[] {
  return slots.reduce((left, { mouth, floor }) => {
    const cut = notched(left, mouth, floor);
    if (!cut) throw new Error('a slot’s mouth lies on an edge of the slice');
    return cut;
  }, points);
}

const sharp = (points: readonly Point[]) => ({ path: polygonPath(points), radius: 0 });

/** The slice's own corners, not those of its openings. */
const rounded = (slice: readonly Point[], points: readonly Point[], radius: number) =>
  roundCorners(points, radius, (i) => points[i] !== undefined && slice.includes(points[i]));

/** What of a slice limits the radius of its corners: an end, or what an opening leaves of an edge. */
const tightest = (slice: readonly Point[], radius: number, asked: number): string =>
  roundCorners(slice, asked, () => true).radius > radius + SLACK
    ? 'the wood beside a recess or a slot'
    : 'the thin end';

const windowsIn = (
  { core, rods }: Layer,
  outside: Path,
  { relief }: StandSettings,
  { slot, taken }: Opened,
  kept: readonly Stretch[],
  { bite, beside, windowCorner }: CornerRelief,
): readonly Path[] => {
  if (!relief) return [];
  return reliefWindows(
    core,
    outside,
    { ...relief, corner: windowCorner(relief.corner) },
    // The inner corners of stop, recess and slot are square: their relief takes no more.
    taken.map((some) => some + bite),
    [
      ...rods.map(({ u, diameter }) => ({ from: u - diameter / 2, to: u + diameter / 2 })),
      ...(slot ? [{ from: slot.from - beside(slot.to - slot.from), to: slot.to + beside(slot.to - slot.from) }] : []),
      ...kept,
    ],
  );
};

/** mm. Far above the rounding of a box's corners: an edge whose box is further off than this over the least is not measured. */
const CLEAR = 1e-6;

/** Least wood between the holes' rims and a path, mm; null without holes. */
function woodRound(rods: readonly RodHole[], path: Path): number | null {
  if (rods.length === 0) return null;
  const edges = edgesOf(path).map((edge) => ({ edge, box: edgeExtent(edge) }));
  let least = Infinity;
  for (const { u, z, diameter } of rods) {
    for (const { edge, box } of edges) {
      const off = Math.max(box.left - u, u - box.right, box.bottom - z, z - box.top);
      if (off - diameter / 2 > least + CLEAR) continue;
      least = Math.min(least, pointGap([u, z], edge) - diameter / 2);
    }
  }
  return least;
}

function tooNear(rodEdge: number, least: number, { cable, recess }: StandSettings): Outcome<never> {
  const [pointer, what] = cable
    ? ['/stand/cable', 'a cable slot']
    : recess
      ? ['/stand/recess', 'a recess']
      : ['/stand/corner', 'corners'];
  const found = rodEdge < 0 ? 'one that meets a hole' : shownDown(rodEdge);
  return noAnswer(
    pointer,
    needs(
      says`${what} with ${asTyped(least)} of wood to every rod hole`,
      found,
      'make it smaller, move it, or use thinner rods',
    ),
  );
}
