import { polygonPath } from '$lib/geometry/contour.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import { apart } from '$lib/geometry/plane.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Block, StandBody } from '$lib/stand/body.ts';
import type { BuildRequest } from '$lib/stand/buildRequest.ts';
import { bareTop } from '$lib/stand/bareTop.ts';
import { coverOf } from '$lib/stand/cover.ts';
import { buildTotalsOf } from '$lib/stand/buildTotals.ts';
import type { StandSurface } from '$lib/stand/standSurface.ts';
import { standSurfaceOf } from '$lib/stand/standSurfaceOf.ts';
import { gathered, type PointMass } from '$lib/stand/pointMasses.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { shapeOf, type Shape } from '$lib/stand/shape.ts';
import { shownDown, SLACK } from '$lib/stand/slack.ts';
import { present, widthOf } from '$lib/stand/widths.ts';
import { asTyped, needs, says } from '$lib/project/sentence.ts';
import type { Build } from './build.ts';
import { blockCuts } from './blockCuts.ts';
import { blockTemplates } from './blockTemplates.ts';
import { solidSteps, type StopStrip } from './solidSteps.ts';

export const solid: Build = {
  name: 'solid',
  label: 'solid block',
  description: 'one block of solid wood',
  details: [],
  body: solidBody,
};

/** One block of solid wood, sawn to the slope; a stop is a strip of its own. The stand's stock gives its density. */
function solidBody(request: BuildRequest): Outcome<StandBody> {
  const { settings, speaker, board } = request;
  const width = settings.width ?? speaker.width;
  const surface = standSurfaceOf(request, width);
  if (!surface.ok) return surface;
  const side = coverOf(settings).side;
  const wood = width - 2 * side;
  if (wood <= SLACK) {
    return noAnswer(
      '/stand/veneer',
      needs(says`a veneer under half the stand’s width of ${shownDown(width)}`, asTyped(settings.veneer)),
    );
  }
  const shapes = [0, -wood / 2, wood / 2].map((across) => sideShape(surface.value, across, settings));
  const [shape, inboard, outboard] = shapes;
  if (!shape || !inboard || !outboard) throw new Error('a block has a middle and two sides');
  if (!shape.ok) return shape;
  if (!inboard.ok) return inboard;
  if (!outboard.ok) return outboard;
  const { stance, shop } = request;
  const block: Block = {
    ...blankOf(surface.value, wood, shape.value),
    cuts: blockCuts(surface.value, wood, stance.side, shop.tools),
    templates: blockTemplates(surface.value, wood, stance.side, {
      inboard: inboard.value.outside,
      outboard: outboard.value.outside,
    }),
  };
  const stop = stopStrip(request, surface.value, wood);
  const blocks = [block, ...(stop ? [stop.block] : [])];
  const middle = surface.value.at(0, ...shape.value.centre);
  const pointMasses: PointMass[] = [
    { volume: block.volume, density: board.density, at: leaned(surface.value, shape.value, wood) ?? middle },
    ...(stop ? [{ volume: stop.block.volume, density: board.density, at: stop.at }] : []),
  ];
  const total = gathered(pointMasses);
  const widths = present([
    { what: 'block', each: wood, count: 1 },
    { what: 'veneer', each: side, count: 2 },
  ]);
  const finished = widthOf(widths);
  return built({
    build: 'solid',
    base: settings.base,
    profile: surface.value.outline,
    footprint: surface.value.footprint(finished),
    contact: surface.value.contact(finished),
    slice: surface.value.section(0).slice,
    rods: [],
    rodEdge: null,
    width: finished,
    widthAsked: width,
    leftOver: width - finished,
    widths,
    layers: 1,
    stock: board.name,
    thickness: wood,
    frontHeight: surface.value.frontHeight,
    rearHeight: surface.value.rearHeight,
    sliceArea: shape.value.area,
    ...total,
    pieces: [],
    printed: [],
    blocks,
    joints: stop ? [{ between: 'stop and block', count: 1, area: wood * stop.block.blank.length }] : [],
    sanding: null,
    steps: solidSteps(request, block, stop),
    notes: shape.value.notes,
    figures: buildTotalsOf([], [], blocks, total.mass),
  });
}

/** The block as it is seen at one place across its width. */
function sideShape(surface: StandSurface, across: number, settings: BuildRequest['settings']): Outcome<Shape> {
  const section = surface.section(across);
  const { core } = section;
  // A stop's strip stands beside the recess.
  return shapeOf({ slice: core, core, bare: bareTop(section), rods: [] }, settings, { relieved: false });
}

/** Across the width the sections change evenly, so the middle one's area times the width is the volume. */
function blankOf(surface: StandSurface, wood: number, shape: Shape): Omit<Block, 'cuts' | 'templates'> {
  const ends = [-wood / 2, wood / 2].flatMap((across) => surface.section(across).core.map(([u]) => u));
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const heights = [-wood / 2, wood / 2].flatMap((a) => [surface.top(a, from), surface.top(a, to)]);
  const blank = { length: to - from, width: wood, height: Math.max(...heights) - surface.base };
  const blankVolume = blank.length * blank.width * blank.height;
  const volume = shape.area * wood;
  return { name: 'block', blank, blankVolume, volume, waste: blankVolume - volume };
}

/**
 * Where the middle of a compound wedge is: the higher side weighs more. Null where the sections are all alike. Of heights
 * that change by g a millimetre across a width w, the area's first moment across is g · run · w³ / 12; that of the
 * height follows from the square of the heights.
 */
function leaned(surface: StandSurface, shape: Shape, wood: number) {
  const { across } = surface.slope;
  if (across === 0) return null;
  const [front = [0, 0], rear = [0, 0]] = surface.section(0).core;
  const run = rear[0] - front[0];
  const volume = shape.area * wood;
  const spread = (run * wood ** 3) / 12;
  const aside = (across * spread) / volume;
  const higher = (across ** 2 * spread) / (2 * volume);
  return surface.at(aside, shape.centre[0], shape.centre[1] + higher);
}

/** The stop's wood as a strip; null without a stop. */
function stopStrip(
  { settings }: BuildRequest,
  surface: StandSurface,
  wood: number,
): (StopStrip & Pick<PointMass, 'at'>) | null {
  if (!settings.stop) return null;
  const section = surface.section(0);
  const { slice, core } = section;
  const [whole, bare] = [momentsOf(polygonPath(slice)), momentsOf(polygonPath(core))];
  const area = whole.area - bare.area;
  const middle = (axis: 0 | 1): number => (whole.area * whole.centre[axis] - bare.area * bare.centre[axis]) / area;
  const [bareRear, bareFront] = bareTop(section);
  const [, , topRear = bareRear, topFront = bareFront] = core;
  const blank = {
    length: topLength(slice, surface),
    width: wood,
    height: settings.stop.height + settings.pad,
  };
  const volume = blank.length * blank.width * blank.height;
  return {
    at: surface.at(0, middle(0), middle(1)),
    // It stands at one end: at the other the bare slope reaches to its edge.
    from: apart(topRear, bareRear) + apart(topFront, bareFront),
    block: {
      name: 'stop',
      blank,
      blankVolume: volume,
      volume,
      waste: 0,
      cuts: [],
      templates: [],
    },
  };
}

/** Along the slope, of what stands highest over it: its two upper corners. */
function topLength(slice: readonly Point[], { top }: StandSurface): number {
  const over = ([u, z]: Point): number => z - top(0, u);
  const [a = [0, 0], b = a] = [...slice].sort((p, q) => over(q) - over(p));
  return apart(a, b);
}
