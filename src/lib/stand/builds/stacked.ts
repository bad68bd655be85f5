import type { Path } from '$lib/geometry/contour.ts';
import type { Board, Piece, StandBody } from '$lib/stand/body.ts';
import { boardNamed, taperOf, type BuildRequest } from '$lib/stand/buildRequest.ts';
import { coverOf } from '$lib/stand/cover.ts';
import { buildTotalsOf } from '$lib/stand/buildTotals.ts';
import type { StandSurface, Section } from '$lib/stand/standSurface.ts';
import { standSurfaceOf } from '$lib/stand/standSurfaceOf.ts';
import { stackOf, type Stack } from '$lib/stand/layers.ts';
import { gathered, type PointMass } from '$lib/stand/pointMasses.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { rodRow, type RodRow } from '$lib/stand/rods.ts';
import { shapeOf, type Shape } from '$lib/stand/shape.ts';
import { asFineMm, needs, says, type Sentence } from '$lib/project/sentence.ts';
import type { Build } from './build.ts';
import { isAlike, lowestSection, sandedMass, sandingOf } from './sections.ts';
import { stackedSteps } from './stackedSteps.ts';

/** Slices that all differ beyond this number are a puzzle, not a stand. */
const MOST_DIFFERENT = 400;

export const stacked: Build = {
  name: 'stacked',
  label: 'stacked slices',
  description: 'slices glued across the width',
  details: ['rods', 'relief', 'cheeks'],
  body: stackedBody,
};

/**
 * Slices glued across the width, outer cheeks of another stock where wished. Turned with the cabinet they are all alike;
 * with the base square to the desk each is cut at the face under the higher part of the slope.
 */
function stackedBody(request: BuildRequest): Outcome<StandBody> {
  const { speaker, settings, board } = request;
  const cheek = settings.cheeks ? boardNamed(request, settings.cheeks.stock) : null;
  const stack = stackOf(settings.width ?? speaker.width, board.thickness, settings.glue, coverOf(settings).side, {
    thickness: cheek?.thickness ?? 0,
    count: settings.cheeks?.count ?? 0,
  });
  if (!stack.ok) return stack;
  const surface = standSurfaceOf(request, stack.value.width);
  if (!surface.ok) return surface;
  const row = rodsFor(surface.value, stack.value.width, settings);
  if (!row.ok) return row;
  const alike = isAlike(surface.value, stack.value.width);
  const groups = groupsOf(request, stack.value, cheek, alike);
  if (groups.length > MOST_DIFFERENT) {
    return noAnswer(
      '/stand/base',
      needs(
        says`at most ${MOST_DIFFERENT} slices that all differ`,
        groups.length,
        'use thicker stock, a narrower stand or a turned base',
      ),
    );
  }
  const cut = cutLayers(request, surface.value, groups, row.value, alike);
  return cut.ok ? built(assembled(request, stack.value, surface.value, row.value, cut.value)) : cut;
}

/** Rods go through every layer, so the lowest section has to hold them. */
function rodsFor(surface: StandSurface, width: number, settings: BuildRequest['settings']): Outcome<RodRow | null> {
  if (!settings.rods) return built(null);
  return rodRow(settings.rods, lowestSection(surface, width));
}

/** Layers that are one part: all of a kind where they are alike, else one each. */
interface Group {
  readonly name: string;
  readonly board: Board;
  readonly kind: 'slice' | 'cheek';
  readonly quantity: number;
  /** What it is cut between, across; symmetric about the middle for a group of several. */
  readonly from: number;
  readonly to: number;
}

function groupsOf(
  { settings, board }: BuildRequest,
  { layers, width }: Stack,
  cheek: Board | null,
  alike: boolean,
): Group[] {
  const outer = settings.cheeks?.count ?? 0;
  const half = width / 2 - coverOf(settings).side;
  if (alike) {
    const slices: Group = { name: 'slice', board, kind: 'slice', quantity: layers, from: -half, to: half };
    if (!cheek) return [slices];
    return [slices, { name: 'cheek', board: cheek, kind: 'cheek', quantity: 2 * outer, from: -half, to: half }];
  }
  const total = layers + 2 * outer;
  let from = -half;
  return Array.from({ length: total }, (_, i): Group => {
    const kind = cheek && (i < outer || i >= total - outer) ? 'cheek' : 'slice';
    const of = kind === 'cheek' && cheek ? cheek : board;
    const name = `${kind}-${String(i + 1).padStart(String(total).length, '0')}`;
    const group = { name, board: of, kind, quantity: 1, from, to: from + of.thickness } as const;
    from = group.to + settings.glue;
    return group;
  });
}

interface CutLayers {
  readonly pieces: readonly Piece[];
  readonly pointMasses: readonly PointMass[];
  /** Of the lowest layer, and the lowest section of all. */
  readonly shape: Shape;
  readonly lowest: Section;
}

function cutLayers(
  { settings, shop }: BuildRequest,
  surface: StandSurface,
  groups: readonly Group[],
  row: RodRow | null,
  alike: boolean,
): Outcome<CutLayers> {
  const [first, last] = [groups[0], groups.at(-1)];
  if (!first || !last) throw new Error('a stack has at least one layer');
  const rods = row?.holes ?? [];
  const lowest = surface.slope.across > 0 ? first : last;
  const shapeAt = ({ from, to, kind }: Group, corner: number | null, relieved: true | readonly Path[]) => {
    const layer = { ...surface.layer(from, to), rods };
    return shapeOf(
      alike ? { ...layer, rodEdge: row?.edge ?? null } : layer,
      corner === settings.corner ? settings : { ...settings, corner },
      { relieved: kind === 'slice' && relieved, bit: shop.tools.router.bit },
    );
  };
  const low = shapeAt({ ...lowest, kind: 'slice' }, settings.corner, true);
  if (!low.ok) return low;
  // What is left of the lowest layer, once it is sanded, has the web over its windows, which run through all layers.
  const lowestOfAll = surface.section(surface.slope.across > 0 ? lowest.from : lowest.to);
  const left =
    alike || settings.relief === null
      ? low
      : shapeOf({ ...lowestOfAll, rods }, settings, { relieved: true, bit: shop.tools.router.bit });
  if (!left.ok) return left;
  // All layers have the corners of the lowest one, and the web is measured from those.
  const corner = settings.corner === null ? null : left.value.radius;
  const pieces: Piece[] = [];
  const pointMasses: PointMass[] = [];
  for (const group of groups) {
    const made = alike && group.kind === 'slice' ? low : shapeAt(group, corner, left.value.windows);
    if (!made.ok) return made;
    pieces.push(pieceOf(group, made.value));
    pointMasses.push(sandedMass(surface, group, group.board, group.quantity, made.value));
  }
  return built({
    pieces,
    pointMasses,
    shape: low.value,
    lowest: lowestOfAll,
  });
}

const pieceOf = ({ name, board, quantity }: Group, { outside, holes, windows }: Shape): Piece => ({
  name,
  stock: board.name,
  thickness: board.thickness,
  quantity,
  outside,
  inside: [...holes, ...windows],
  fromSide: true,
  lines: [],
});

function assembled(
  request: BuildRequest,
  stack: Stack,
  surface: StandSurface,
  row: RodRow | null,
  { pieces, pointMasses, shape, lowest }: CutLayers,
): StandBody {
  const { settings, board } = request;
  const { volume, mass, centre } = gathered(pointMasses);
  const joints = pieces.reduce((sum, { quantity }) => sum + quantity, 0) - 1;
  const sanding = sandingOf(surface, board.thickness + settings.glue);
  return {
    build: 'stacked',
    base: settings.base,
    profile: surface.outline,
    footprint: surface.footprint(stack.width),
    contact: surface.contact(stack.width),
    slice: lowest.slice,
    rods: row?.holes ?? [],
    rodEdge: shape.rodEdge,
    width: stack.width,
    widthAsked: stack.widthAsked,
    leftOver: stack.leftOver,
    widths: stack.widths,
    layers: stack.layers,
    stock: board.name,
    thickness: board.thickness,
    frontHeight: surface.frontHeight,
    rearHeight: surface.rearHeight,
    sliceArea: shape.area,
    volume,
    mass,
    centre,
    pieces,
    printed: [],
    blocks: [],
    joints: joints > 0 ? [{ between: 'layers', count: joints, area: shape.area }] : [],
    sanding,
    steps: stackedSteps(request, stack, pieces, sanding),
    notes: [...shape.notes, ...steppedJoints(request)],
    figures: buildTotalsOf(pieces, [], [], mass),
  };
}

/** A step smaller than this, mm, is lost in the sanding. */
const LEAST_STEP = 0.01;

/**
 * What leaning cut edges do to the stack. A slice fits with its base down and its front to the front in one way only, so
 * all have the beam's face on the same side, and every joint has the whole step.
 */
function steppedJoints(request: BuildRequest): readonly Sentence[] {
  const { board, settings } = request;
  const step = board.thickness * Math.tan(taperOf(request, board));
  return step < LEAST_STEP
    ? []
    : [
        says`The cut edges lean: every joint of the stack has a step of ${asFineMm(step)}. Sand the outside flush once it is glued${settings.rods ? '; ream the rod holes before, through the dry stack, if a rod binds' : ''}.`,
      ];
}
