import { polygonPath } from '$lib/geometry/contour.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import { apart } from '$lib/geometry/plane.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Block, StandBody } from '$lib/stand/body.ts';
import type { Commission } from '$lib/stand/commission.ts';
import { bareTop } from '$lib/stand/bareTop.ts';
import { coverOf } from '$lib/stand/cover.ts';
import { figuresOf } from '$lib/stand/figures.ts';
import type { Ground } from '$lib/stand/ground.ts';
import { groundOf } from '$lib/stand/groundOf.ts';
import { gathered, type Lump } from '$lib/stand/lumps.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { shapeOf, type Shape } from '$lib/stand/shape.ts';
import { shownDown, SLACK } from '$lib/stand/slack.ts';
import { present, widthOf } from '$lib/stand/widths.ts';
import { asTyped, says } from '$lib/project/sentence.ts';
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
function solidBody(commission: Commission): Outcome<StandBody> {
  const { settings, speaker, board } = commission;
  const width = settings.width ?? speaker.width;
  const ground = groundOf(commission, width);
  if (!ground.ok) return ground;
  const side = coverOf(settings).side;
  const wood = width - 2 * side;
  if (wood <= SLACK) {
    return noAnswer(
      '/stand/veneer',
      says`expected a veneer under half the stand’s width of ${shownDown(width)}, got ${asTyped(settings.veneer)}`,
    );
  }
  const shapes = [0, -wood / 2, wood / 2].map((across) => sideShape(ground.value, across, settings));
  const [shape, inboard, outboard] = shapes;
  if (!shape || !inboard || !outboard) throw new Error('a block has a middle and two sides');
  if (!shape.ok) return shape;
  if (!inboard.ok) return inboard;
  if (!outboard.ok) return outboard;
  const { stance, shop } = commission;
  const block: Block = {
    ...blankOf(ground.value, wood, shape.value),
    cuts: blockCuts(ground.value, wood, stance.side, shop.tools),
    templates: blockTemplates(ground.value, wood, stance.side, {
      inboard: inboard.value.outside,
      outboard: outboard.value.outside,
    }),
  };
  const stop = stopStrip(commission, ground.value, wood);
  const blocks = [block, ...(stop ? [stop.block] : [])];
  const middle = ground.value.at(0, ...shape.value.centre);
  const lumps: Lump[] = [
    { volume: block.volume, density: board.density, at: leaned(ground.value, shape.value, wood) ?? middle },
    ...(stop ? [{ volume: stop.block.volume, density: board.density, at: stop.at }] : []),
  ];
  const total = gathered(lumps);
  const widths = present([
    { what: 'block', each: wood, count: 1 },
    { what: 'veneer', each: side, count: 2 },
  ]);
  const finished = widthOf(widths);
  return built({
    build: 'solid',
    base: settings.base,
    profile: ground.value.outline,
    footprint: ground.value.footprint(finished),
    contact: ground.value.contact(finished),
    slice: ground.value.section(0).slice,
    rods: [],
    rodEdge: null,
    width: finished,
    widthAsked: width,
    leftOver: width - finished,
    widths,
    layers: 1,
    stock: board.name,
    thickness: wood,
    frontHeight: ground.value.frontHeight,
    rearHeight: ground.value.rearHeight,
    sliceArea: shape.value.area,
    ...total,
    pieces: [],
    printed: [],
    blocks,
    joints: stop ? [{ between: 'stop and block', count: 1, area: wood * stop.block.blank.length }] : [],
    sanding: null,
    steps: solidSteps(commission, block, stop),
    notes: shape.value.notes,
    figures: figuresOf([], [], blocks, total.mass),
  });
}

/** The block as it is seen at one place across its width. */
function sideShape(ground: Ground, across: number, settings: Commission['settings']): Outcome<Shape> {
  const section = ground.section(across);
  const { core } = section;
  // A stop's strip stands beside the recess.
  return shapeOf({ slice: core, core, bare: bareTop(section), rods: [] }, settings, { relieved: false });
}

/** Across the width the sections change evenly, so the middle one's area times the width is the volume. */
function blankOf(ground: Ground, wood: number, shape: Shape): Omit<Block, 'cuts' | 'templates'> {
  const ends = [-wood / 2, wood / 2].flatMap((across) => ground.section(across).core.map(([u]) => u));
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const heights = [-wood / 2, wood / 2].flatMap((a) => [ground.top(a, from), ground.top(a, to)]);
  const blank = { length: to - from, width: wood, height: Math.max(...heights) - ground.base };
  const blankVolume = blank.length * blank.width * blank.height;
  const volume = shape.area * wood;
  return { name: 'block', blank, blankVolume, volume, waste: blankVolume - volume };
}

/**
 * Where the middle of a compound wedge is: the higher side weighs more. Null where the sections are all alike. Of heights
 * that change by g a millimetre across a width w, the area's first moment across is g · run · w³ / 12; that of the
 * height follows from the square of the heights.
 */
function leaned(ground: Ground, shape: Shape, wood: number) {
  const { across } = ground.slope;
  if (across === 0) return null;
  const [front = [0, 0], rear = [0, 0]] = ground.section(0).core;
  const run = rear[0] - front[0];
  const volume = shape.area * wood;
  const spread = (run * wood ** 3) / 12;
  const aside = (across * spread) / volume;
  const higher = (across ** 2 * spread) / (2 * volume);
  return ground.at(aside, shape.centre[0], shape.centre[1] + higher);
}

/** The stop's wood as a strip; null without a stop. */
function stopStrip({ settings }: Commission, ground: Ground, wood: number): (StopStrip & Pick<Lump, 'at'>) | null {
  if (!settings.stop) return null;
  const section = ground.section(0);
  const { slice, core } = section;
  const [whole, bare] = [momentsOf(polygonPath(slice)), momentsOf(polygonPath(core))];
  const area = whole.area - bare.area;
  const middle = (axis: 0 | 1): number => (whole.area * whole.centre[axis] - bare.area * bare.centre[axis]) / area;
  const [bareRear, bareFront] = bareTop(section);
  const [, , topRear = bareRear, topFront = bareFront] = core;
  const blank = {
    length: topLength(slice, ground),
    width: wood,
    height: settings.stop.height + settings.pad,
  };
  const volume = blank.length * blank.width * blank.height;
  return {
    at: ground.at(0, middle(0), middle(1)),
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
function topLength(slice: readonly Point[], { top }: Ground): number {
  const over = ([u, z]: Point): number => z - top(0, u);
  const [a = [0, 0], b = a] = [...slice].sort((p, q) => over(q) - over(p));
  return apart(a, b);
}
