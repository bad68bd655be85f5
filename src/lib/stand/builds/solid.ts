import { polygonPath } from '$lib/geometry/contour.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import type { Point } from '$lib/geometry/point.ts';
import { asMm } from '$lib/project/sentence.ts';
import type { Block, StandBody } from '$lib/stand/body.ts';
import type { Commission } from '$lib/stand/commission.ts';
import { coverOf } from '$lib/stand/cover.ts';
import { figuresOf } from '$lib/stand/figures.ts';
import { groundOf, type Ground } from '$lib/stand/ground.ts';
import { leftOut } from '$lib/stand/leftOut.ts';
import { gathered, type Lump } from '$lib/stand/lumps.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { shapeOf, type Shape } from '$lib/stand/shape.ts';
import { shownDown, SLACK } from '$lib/stand/slack.ts';
import { step, type Step } from '$lib/stand/step.ts';
import { present, widthOf } from '$lib/stand/widths.ts';
import { blockCuts } from './blockCuts.ts';
import { finishSteps } from './finishSteps.ts';

/** One block of solid wood, sawn to the slope; a stop is a strip of its own. The stand's stock gives its density. */
export function buildSolid(commission: Commission): Outcome<StandBody> {
  const { settings, speaker, board } = commission;
  const width = settings.width ?? speaker.width;
  const ground = groundOf(commission, width);
  if (!ground.ok) return ground;
  const side = coverOf(settings).side;
  const wood = width - 2 * side;
  if (wood <= SLACK) {
    return noAnswer(
      '/stand/veneer',
      `expected a veneer under half the stand’s width of ${shownDown(width)} mm, got ${settings.veneer} mm`,
    );
  }
  const { core } = ground.value.section(0);
  const shape = shapeOf({ slice: core, core, rods: [] }, settings, { relieved: false });
  if (!shape.ok) return shape;
  const block = wedgeBlock(ground.value, shape.value, wood);
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
    steps: stepsOf(commission, block, stop?.block ?? null),
    notes: [...shape.value.notes, ...leftOut(settings, ['relief', 'cheeks', 'ribs', 'pockets'])],
    figures: figuresOf([], [], blocks, total.mass),
  });
}

/** Across the width the sections change evenly, so the middle one's area times the width is the volume. */
function wedgeBlock(ground: Ground, shape: Shape, wood: number): Block {
  const [inboard, outboard] = [ground.section(-wood / 2).core, ground.section(wood / 2).core];
  const ends = [...inboard, ...outboard].map(([u]) => u);
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const heights = [-wood / 2, wood / 2].flatMap((a) => [ground.top(a, from), ground.top(a, to)]);
  const blank = { length: to - from, width: wood, height: Math.max(...heights) - ground.base };
  const blankVolume = blank.length * blank.width * blank.height;
  const volume = shape.area * wood;
  return {
    name: 'block',
    blank,
    blankVolume,
    volume,
    waste: blankVolume - volume,
    cuts: blockCuts(ground, wood, { from, to }),
    templates: [
      ...(ground.slope.across === 0
        ? [{ face: 'both sides', outline: standing(inboard) }]
        : [
            { face: 'inboard side', outline: standing(inboard) },
            { face: 'outboard side', outline: standing(outboard) },
            { face: 'front', outline: endFace(ground, wood, inboard[0]?.[0] ?? 0) },
            { face: 'rear', outline: endFace(ground, wood, inboard[1]?.[0] ?? 0) },
          ]),
    ],
  };
}

/** Moved to have its lower left at the origin. */
function standing(points: readonly Point[]): readonly Point[] {
  const [left, low] = [Math.min(...points.map(([u]) => u)), Math.min(...points.map(([, z]) => z))];
  return points.map(([u, z]): Point => [u - left, z - low]);
}

/** An end from outside the desk's front, inboard at the left. */
const endFace = (ground: Ground, wood: number, u: number): readonly Point[] => [
  [0, 0],
  [wood, 0],
  [wood, ground.top(wood / 2, u) - ground.base],
  [0, ground.top(-wood / 2, u) - ground.base],
];

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

/** The stop's wood as a strip to glue on; null without a stop. */
function stopStrip({ settings }: Commission, ground: Ground, wood: number): { block: Block; at: Lump['at'] } | null {
  if (!settings.stop) return null;
  const { slice, core } = ground.section(0);
  const [whole, bare] = [momentsOf(polygonPath(slice)), momentsOf(polygonPath(core))];
  const area = whole.area - bare.area;
  const middle = (axis: 0 | 1): number => (whole.area * whole.centre[axis] - bare.area * bare.centre[axis]) / area;
  const veneer = coverOf(settings).top;
  const size = { length: settings.stop.thickness - 2 * veneer, height: settings.stop.height + settings.pad };
  const volume = area * wood;
  const blankVolume = Math.max(volume, size.length * size.height * wood);
  return {
    at: ground.at(0, middle(0), middle(1)),
    block: {
      name: 'stop',
      blank: { ...size, width: wood },
      blankVolume,
      volume,
      waste: blankVolume - volume,
      cuts: [],
      templates: [],
    },
  };
}

function stepsOf({ settings }: Commission, block: Block, stop: Block | null): readonly Step[] {
  const { blank, cuts, name } = block;
  return [
    step(
      { act: 'square-up', block: name },
      'Square up a blank of {long} × {wide} × {high}, front to rear, across and high.',
      { long: asMm(blank.length), wide: asMm(blank.width), high: asMm(blank.height) },
    ),
    step({ act: 'template', block: name }, 'Glue the paper templates on; they show where the slope runs.'),
    ...cuts.map(({ template, quantities }, cut) => step({ act: 'saw', block: name, cut }, template, quantities)),
    step({ act: 'plane', block: name }, 'Plane or sand the slope flat to the templates’ lines.'),
    ...(settings.cable || settings.recess
      ? [step({ act: 'mill' }, 'Mill the slot or recess into it with a router and a fence.')]
      : []),
    ...(settings.corner !== null ? [step({ act: 'round' }, 'Round the corners as the template shows.')] : []),
    ...(stop
      ? [step({ act: 'glue', parts: [stop.name] }, 'Glue the stop’s strip onto the low end, square to the slope.')]
      : []),
    ...finishSteps(settings),
  ];
}
