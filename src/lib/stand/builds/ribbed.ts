import { openPath, polygonPath } from '$lib/geometry/contour.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import { notched } from '$lib/geometry/notch.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Piece, StandBody } from '$lib/stand/body.ts';
import { boardNamed, taperOf, type Commission } from '$lib/stand/commission.ts';
import { coverOf, NO_SKIN } from '$lib/stand/cover.ts';
import { figuresOf } from '$lib/stand/figures.ts';
import { groundOf, type Ground } from '$lib/stand/ground.ts';
import { leftOut } from '$lib/stand/leftOut.ts';
import { gathered, type Lump } from '$lib/stand/lumps.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { shapeOf, type Shape } from '$lib/stand/shape.ts';
import { shown, shownDown, shownUp, SLACK } from '$lib/stand/slack.ts';
import { present, widthOf } from '$lib/stand/widths.ts';
import { finishSteps } from './finishSteps.ts';
import { ribPlan, ribsOf, type RibPlan } from './ribPlan.ts';
import { skinPieces } from './skinPieces.ts';

/** Sections whose heights differ by less than this, mm, are cut as one: files are written to 0.001 mm. */
const SAME = 1e-6;

/**
 * Two or three ribs with the stand's profile, cross ribs between them with halving joints, a top and front skin where
 * wished. Profile ribs are slotted from above and cross ribs from below, each to half the cross rib's height. Cross ribs
 * are as high as the lower of their two faces allows: nothing of them stands above the slope.
 */
export function buildRibbed(commission: Commission): Outcome<StandBody> {
  const { settings, speaker, board } = commission;
  const refused = refusal(settings);
  if (refused) return refused;
  const ribs = ribsOf(settings);
  const skin = ribs.skin === null ? null : boardNamed(commission, ribs.skin);
  const width = settings.width ?? speaker.width;
  const ground = groundOf(commission, width, skin ? { top: skin.thickness, front: skin.thickness } : NO_SKIN);
  if (!ground.ok) return ground;
  const side = coverOf(settings).side;
  const wood = width - 2 * side;
  if (wood <= SLACK) {
    return noAnswer(
      '/stand/veneer',
      `expected a veneer under half the stand’s width of ${shownDown(width)} mm, got ${settings.veneer} mm`,
    );
  }
  const planned = ribPlan(ribs, ground.value, wood, board.thickness, taperOf(commission, board), settings.minimumEdge);
  if (!planned.ok) return planned;
  const crosses = crossRibs(commission, ground.value, planned.value, wood);
  if (!crosses.ok) return crosses;
  const profiles = profileRibs(commission, ground.value, planned.value, crosses.value);
  if (!profiles.ok) return profiles;
  const skins = skin ? skinPieces(commission, skin, wood) : { pieces: [], lumps: [] };

  const pieces = [...profiles.value.pieces, ...crosses.value.map(({ piece }) => piece), ...skins.pieces];
  const total = gathered([...profiles.value.lumps, ...crosses.value.map(({ lump }) => lump), ...skins.lumps]);
  const widths = present([
    { what: 'rib span', each: wood, count: 1 },
    { what: 'veneer', each: side, count: 2 },
  ]);
  const [first] = profiles.value.shapes;
  if (!first) throw new Error('there are at least two ribs');
  const finished = widthOf(widths);
  return built({
    build: 'ribbed',
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
    layers: ribs.count,
    stock: board.name,
    thickness: board.thickness,
    frontHeight: ground.value.frontHeight,
    rearHeight: ground.value.rearHeight,
    sliceArea: first.area,
    ...total,
    pieces,
    printed: [],
    blocks: [],
    joints: [
      { between: 'halving joints', count: ribs.count * ribs.cross, area: jointArea(board.thickness, crosses.value) },
    ],
    sanding: sandingOf(ground.value, board.thickness),
    steps: stepsOf(commission, planned.value, skin !== null),
    notes: [...first.notes, ...leftOut(settings, ['relief', 'cheeks', 'pockets', 'rods'])],
    figures: figuresOf(pieces, [], [], total.mass),
  });
}

function refusal({ recess, ribs, stop, base }: Commission['settings']): Outcome<never> | null {
  if (recess) {
    return noAnswer('/stand/recess', 'expected no recess in the ribbed build, whose ribs cannot hold a mat, got one');
  }
  if (!ribs?.skin) return null;
  if (stop)
    return noAnswer('/stand/stop', 'expected no stop under a top skin, got one: glue a strip onto the skin instead');
  if (base !== 'turned') {
    return noAnswer(
      '/stand/ribs/skin',
      'expected no skin on a base square to the desk, got one: its edges would all be compound',
    );
  }
  return null;
}

interface CrossRib {
  readonly at: number;
  /** Half its height at each profile rib: where the slots of both meet. */
  readonly halves: readonly number[];
  readonly piece: Piece;
  readonly lump: Lump;
}

function crossRibs(
  { settings, board }: Commission,
  ground: Ground,
  plan: RibPlan,
  wood: number,
): Outcome<readonly CrossRib[]> {
  const made: CrossRib[] = [];
  for (const [i, at] of plan.crosses.entries()) {
    // The face under the lower part of the slope.
    const face = at + (ground.slope.along < 0 ? 1 : -1) * (board.thickness / 2);
    const height = (across: number): number => ground.top(across, face) - ground.base;
    const halves = plan.ribs.map((across) => height(across) / 2);
    const lowest = Math.min(height(-wood / 2), height(wood / 2), ...halves);
    if (lowest < settings.minimumEdge - SLACK) {
      return noAnswer(
        '/stand/ribs',
        `expected cross ribs with ${settings.minimumEdge} mm of wood left at each slot, got ${shownDown(lowest)} mm: raise the lift by ${shownUp(2 * (settings.minimumEdge - lowest))} mm or use fewer cross ribs`,
      );
    }
    const bar: Point[] = [
      [0, 0],
      [wood, 0],
      [wood, height(wood / 2)],
      [0, height(-wood / 2)],
    ];
    const points = plan.ribs.reduce<readonly Point[]>((left, across, rib) => {
      const [from, to] = [across + wood / 2 - plan.slot / 2, across + wood / 2 + plan.slot / 2];
      const half = halves[rib] ?? 0;
      const cut = notched(
        left,
        [
          [from, 0],
          [to, 0],
        ],
        [
          [from, half],
          [to, half],
        ],
      );
      if (!cut) throw new Error('a slot lies on the cross rib’s base');
      return cut;
    }, bar);
    const outside = polygonPath(points);
    const { area, centre } = momentsOf(outside);
    made.push({
      at,
      halves,
      piece: {
        name: `cross-rib-${i + 1}`,
        stock: board.name,
        thickness: board.thickness,
        quantity: 1,
        outside,
        inside: [],
        fromSide: false,
        lines: [],
      },
      lump: {
        volume: area * board.thickness,
        density: board.density,
        at: ground.at(centre[0] - wood / 2, at, ground.base + centre[1]),
      },
    });
  }
  return built(made);
}

interface Profiles {
  readonly pieces: readonly Piece[];
  readonly lumps: readonly Lump[];
  readonly shapes: readonly Shape[];
}

function profileRibs(
  { settings, board }: Commission,
  ground: Ground,
  plan: RibPlan,
  crosses: readonly CrossRib[],
): Outcome<Profiles> {
  const clash = slotClash(settings, ground, plan);
  if (clash) return clash;
  const alike = Math.abs(ground.slope.across) * Math.abs((plan.ribs.at(-1) ?? 0) - (plan.ribs[0] ?? 0)) <= SAME;
  const pieces: Piece[] = [];
  const lumps: Lump[] = [];
  const shapes: Shape[] = [];
  for (const [i, across] of plan.ribs.entries()) {
    const [from, to] = [across - board.thickness / 2, across + board.thickness / 2];
    const layer = { ...ground.layer(from, to), rods: [] };
    const high = ground.slope.across > 0 ? to : from;
    const slots = crosses.map(({ at, halves }) => {
      const [front, rear] = [at - plan.slot / 2, at + plan.slot / 2];
      const floor = ground.base + (halves[i] ?? 0);
      const mouth = [
        [rear, ground.top(high, rear)],
        [front, ground.top(high, front)],
      ] as const;
      return {
        mouth,
        floor: [
          [rear, floor],
          [front, floor],
        ] as const,
      };
    });
    const shape = shapeOf(layer, settings, { relieved: false, slots });
    if (!shape.ok) return shape;
    shapes.push(shape.value);
    const { outside, area, centre } = shape.value;
    lumps.push({ volume: area * board.thickness, density: board.density, at: ground.at(across, ...centre) });
    if (alike && i > 0) continue;
    pieces.push({
      name: alike ? 'rib' : `rib-${i + 1}`,
      stock: board.name,
      thickness: board.thickness,
      quantity: alike ? plan.ribs.length : 1,
      outside,
      inside: [],
      fromSide: true,
      lines: crosses.map(({ at, halves }) =>
        openPath([
          [at, ground.base + CLEAR],
          [at, ground.base + Math.max(CLEAR, (halves[i] ?? 0) - CLEAR)],
        ]),
      ),
    });
  }
  return built({ pieces, lumps, shapes });
}

/** Centre lines end this far from what they point at, mm, so that a mark never becomes a cut. */
const CLEAR = 1;

/** A cable slot needs wood between it and every cross rib's slot. */
function slotClash(
  { cable, minimumEdge }: Commission['settings'],
  ground: Ground,
  plan: RibPlan,
): Outcome<never> | null {
  if (!cable) return null;
  const rear = ground.section(0).core[1]?.[0] ?? 0;
  const middle = rear - cable.fromRear;
  const near = Math.min(...plan.crosses.map((at) => Math.abs(at - middle) - cable.width / 2 - plan.slot / 2));
  return near >= minimumEdge - SLACK
    ? null
    : noAnswer(
        '/stand/cable/fromRear',
        `expected a cable slot ${minimumEdge} mm clear of the cross ribs, got ${shownDown(near)} mm: move it by ${shownUp(minimumEdge - near)} mm or more`,
      );
}

/** Both cheeks of the slot and its floor, on one rib, on average. */
function jointArea(thickness: number, crosses: readonly CrossRib[]): number {
  const halves = crosses.flatMap((cross) => cross.halves);
  return 4 * thickness * (halves.reduce((sum, half) => sum + half, 0) / halves.length) + thickness ** 2;
}

function sandingOf({ slope }: Ground, thickness: number): StandBody['sanding'] {
  const height = Math.abs(slope.across) * thickness;
  return height <= SAME ? null : { height, face: slope.across > 0 ? 'outboard' : 'inboard' };
}

function stepsOf({ settings, board }: Commission, plan: RibPlan, skinned: boolean): readonly string[] {
  return [
    `Cut the ribs; try one joint first: the slots are ${shown(plan.slot, 2)} mm wide for wood of ${shown(board.thickness, 2)} mm.`,
    'Stand the profile ribs up with their slots on top, the stand’s front the same way.',
    'Lower the cross ribs into them, 1 in front, slots down, until all bases stand on the board.',
    'Check the corners for square, then run thin glue into the joints.',
    ...(settings.base === 'turned'
      ? []
      : ['Sand the ribs’ tops to the slope: only the higher edge of each is right as cut.']),
    ...(skinned ? ['Glue the front skin on, then the top skin over its edge; plane the edges to the slope.'] : []),
    ...finishSteps(settings),
  ];
}
