import type { StandSettings } from '$lib/project/project.ts';
import { asCount, asFineMm, asTyped, distinct, needs, says, type Words } from '$lib/project/sentence.ts';
import { coverOf } from '$lib/stand/cover.ts';
import { boardNamed, type BuildRequest } from '$lib/stand/buildRequest.ts';
import type { Board, Piece, Sanding, StandBody, WidthLayer } from '$lib/stand/body.ts';
import { buildTotalsOf } from '$lib/stand/buildTotals.ts';
import type { StandSurface, Section } from '$lib/stand/standSurface.ts';
import { standSurfaceOf } from '$lib/stand/standSurfaceOf.ts';
import { gathered, type PointMass } from '$lib/stand/pointMasses.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { rodRow } from '$lib/stand/rods.ts';
import { shapeOf, type Shape } from '$lib/stand/shape.ts';
import type { Layer } from '$lib/stand/layer.ts';
import { shownDown, SLACK } from '$lib/stand/slack.ts';
import { step, type Some, type Step } from '$lib/stand/step.ts';
import { present, widthOf } from '$lib/stand/widths.ts';
import type { Build } from './build.ts';
import { finishSteps } from './finishSteps.ts';
import { printedCore, type Core, type CoreRequest, type Outsides } from './printedCore.ts';
import { isAlike, lowestSection, sandedMass, sandingOf } from './sections.ts';

/** A core thinner than this is a sheet that warps: common practice, no source. mm. */
const THINNEST_CORE = 2;

export const skinned: Build = {
  name: 'skinned',
  label: 'printed core between cheeks',
  description: 'a printed core between cheeks',
  details: ['rods', 'relief', 'cheeks', 'pockets'],
  prints: true,
  body: skinnedBody,
};

/**
 * A printed core between cheeks of thin board, veneer over all. The core takes up what cheeks, glue and veneer leave of the
 * width, so the finished width is the one asked for. With the base square to the desk the core's top is printed to the
 * compound slope, and each cheek is cut at its face under the higher part of it.
 */
function skinnedBody(request: BuildRequest): Outcome<StandBody> {
  const { settings, speaker } = request;
  const cheek = boardNamed(request, settings.cheeks?.stock ?? null);
  const count = 2 * (settings.cheeks?.count ?? 1);
  const asked = settings.width ?? speaker.width;
  const veneer = coverOf(settings).side;
  const core = asked - 2 * veneer - count * (cheek.thickness + settings.glue);
  if (core < THINNEST_CORE) {
    return noAnswer(
      '/stand/width',
      needs(
        says`a width that leaves ${asTyped(THINNEST_CORE)} for the core`,
        says`${shownDown(asked)} less ${count} cheeks of ${asTyped(cheek.thickness)}, ${count} glue lines of ${asTyped(settings.glue)} and veneer of ${asTyped(veneer)} on ${veneer > 0 ? 'both sides' : 'no side'}`,
        says`${shownDown(core)} are left`,
      ),
    );
  }
  const surface = standSurfaceOf(request, asked);
  if (!surface.ok) return surface;
  const section = lowestSection(surface.value, asked - 2 * veneer);
  const row = settings.rods ? rodRow(settings.rods, section) : built(null);
  if (!row.ok) return row;
  const layer = { ...section, rods: row.value?.holes ?? [], rodEdge: row.value?.edge ?? null };
  const closed = shapeOf(layer, settings, { relieved: false });
  if (!closed.ok) return closed;
  const cheeks = cheeksOf(request, surface.value, { board: cheek, count, layer, closed: closed.value, core });
  if (!cheeks.ok) return cheeks;
  const outsides = coreOutsides(request, surface.value, layer, closed.value, core);
  if (!outsides.ok) return outsides;
  const onRight = request.stance.side === 'right';
  const coreRequest: CoreRequest = {
    request,
    layer,
    shape: closed.value,
    thickness: core,
    outsides: outsides.value,
    sides: onRight ? ['inboard', 'outboard'] : ['outboard', 'inboard'],
  };
  const printed = printedCore(coreRequest);
  if (!printed.ok) return printed;

  const { pieces } = cheeks.value;
  const { bodies, open, volume, centre, rise, notes } = printed.value;
  const { printer } = request.shop;
  const total = gathered([
    ...cheeks.value.pointMasses,
    { volume, density: printer.density * printer.fill, at: surface.value.at(onRight ? rise : -rise, ...centre) },
  ]);
  const widths: readonly WidthLayer[] = present([
    { what: 'core', each: core, count: 1 },
    { what: 'cheek', each: cheek.thickness, count },
    { what: 'glue', each: settings.glue, count },
    { what: 'veneer', each: veneer, count: 2 },
  ]);
  const width = widthOf(widths);
  const sanding = sandingOf(surface.value, cheek.thickness + settings.glue);
  return built({
    build: 'skinned',
    base: settings.base,
    profile: surface.value.outline,
    footprint: surface.value.footprint(width),
    contact: surface.value.contact(width),
    slice: section.slice,
    rods: layer.rods,
    rodEdge: closed.value.rodEdge,
    width,
    widthAsked: asked,
    leftOver: asked - width,
    widths,
    layers: count,
    stock: cheek.name,
    thickness: cheek.thickness,
    frontHeight: surface.value.frontHeight,
    rearHeight: surface.value.rearHeight,
    sliceArea: closed.value.area,
    ...total,
    pieces,
    printed: bodies,
    blocks: [],
    joints: [
      { between: 'cheeks and core', count: 2, area: closed.value.area - open },
      ...(count > 2 ? [{ between: 'cheeks', count: count - 2, area: closed.value.area }] : []),
    ],
    sanding,
    steps: stepsOf(request, { core, cheeks: count, pieces, printed: printed.value, sanding }),
    notes: distinct([...closed.value.notes, ...cheeks.value.notes, ...notes]),
    figures: buildTotalsOf(pieces, bodies, [], total.mass),
  });
}

interface CheekRequest {
  readonly board: Board;
  /** On both sides together. */
  readonly count: number;
  /** The lowest layer, and its shape without windows. */
  readonly layer: Layer;
  readonly closed: Shape;
  /** The core's thickness, mm. */
  readonly core: number;
}

interface Cheeks {
  readonly pieces: readonly Piece[];
  readonly pointMasses: readonly PointMass[];
  readonly notes: readonly Words[];
}

/** The cheeks: all alike, or each cut for its own place, numbered from inboard. */
function cheeksOf(
  { settings, shop }: BuildRequest,
  surface: StandSurface,
  { board, count, layer, closed, core }: CheekRequest,
): Outcome<Cheeks> {
  const { bit } = shop.tools.router;
  const pitch = board.thickness + settings.glue;
  const half = core / 2 + (count / 2) * pitch;
  if (isAlike(surface, 2 * half)) {
    const shape = shapeOf(layer, settings, { relieved: false, bit });
    if (!shape.ok) return shape;
    const pointMass = sandedMass(surface, { from: -half, to: half }, board, count, shape.value);
    return built({
      pieces: [pieceOf('cheek', board, count, shape.value)],
      pointMasses: [pointMass],
      notes: shape.value.notes,
    });
  }
  const pieces: Piece[] = [];
  const pointMasses: PointMass[] = [];
  const notes: Words[] = [];
  for (let i = 0; i < count; i++) {
    const from = i < count / 2 ? -half + i * pitch : core / 2 + settings.glue + (i - count / 2) * pitch;
    const place = { from, to: from + board.thickness };
    const shape = shapeAt(settings, surface.layer(place.from, place.to), layer, closed, bit);
    if (!shape.ok) return shape;
    notes.push(...shape.value.notes);
    pieces.push(pieceOf(`cheek-${i + 1}`, board, 1, shape.value));
    pointMasses.push(sandedMass(surface, place, board, 1, shape.value));
  }
  return built({ pieces, pointMasses, notes });
}

/**
 * The core's outside on the bed and at its top. It lies on its side with the front at the left and its base towards
 * whoever looks at the bed, so what is up then is what is on the listener's right later.
 */
function coreOutsides(
  { settings, stance }: BuildRequest,
  surface: StandSurface,
  layer: Layer,
  closed: Shape,
  core: number,
): Outcome<Outsides> {
  if (isAlike(surface, core)) return built([closed.outside, closed.outside]);
  const up = stance.side === 'right' ? 1 : -1;
  const [floor, roof] = [-up, up].map((way) =>
    shapeAt(settings, surface.section((way * core) / 2), layer, closed, null),
  );
  if (!floor || !roof) throw new Error('a core has two faces');
  if (!floor.ok) return floor;
  return roof.ok ? built([floor.value.outside, roof.value.outside]) : roof;
}

/** mm. Rounded corners as large as the thin end allows leave so much of it straight, so that all sections have equal edges. */
const STRAIGHT = 0.01;

/** Another section with the lowest one's rods and corners. */
function shapeAt(
  settings: StandSettings,
  section: Section,
  { rods }: Layer,
  { radius }: Shape,
  bit: number | null,
): Outcome<Shape> {
  const { corner } = settings;
  const held = corner === null ? null : radius < corner - SLACK ? radius - STRAIGHT : corner;
  const own = { ...settings, corner: held !== null && held > 0 ? held : null };
  return shapeOf({ ...section, rods }, own, { relieved: false, bit });
}

const pieceOf = (name: string, board: Board, quantity: number, shape: Shape): Piece => ({
  name,
  stock: board.name,
  thickness: board.thickness,
  quantity,
  outside: shape.outside,
  inside: shape.holes,
  fromSide: true,
  lines: [],
});

interface Made {
  readonly core: number;
  readonly cheeks: number;
  readonly pieces: readonly Piece[];
  readonly printed: Core;
  readonly sanding: Sanding | null;
}

function stepsOf({ settings }: BuildRequest, { core, cheeks, pieces, printed, sanding }: Made): readonly Step[] {
  const { rods } = settings;
  const cut = pieces.map(({ name, quantity }): Some => ({ name, count: quantity }));
  return [
    step(
      { act: 'print', bodies: printed.bodies.map(({ name, quantity }) => ({ name, count: quantity })) },
      printed.key
        ? 'Print the two halves of the core, each lying on its side as its file has it.'
        : 'Print the core, lying on its side as its file has it.',
    ),
    ...(printed.key ? [printed.key] : []),
    step({ act: 'check' }, 'Measure the core: it should be {wide} wide. Sand or shim what differs.', {
      wide: asFineMm(core),
    }),
    ...(settings.pockets
      ? [
          step(
            { act: 'fill' },
            'Pack the pockets with screws or other ballast and close them with glue, flush with the core’s side.',
          ),
        ]
      : []),
    step(
      { act: 'cut', pieces: cut },
      `Cut {cheeks} cheeks${sanding ? ', numbered from inboard' : ''}; roughen the core’s sides with coarse paper.`,
      { cheeks: asCount(cheeks) },
    ),
    step(
      { act: 'stack', layers: inOrder(cut, cheeks) },
      `Lay core and cheeks together dry, all fronts the same way${sanding ? ', cheek 1 inboard' : ''}.`,
    ),
    ...(rods
      ? [
          step(
            { act: 'rod', count: rods.count, diameter: rods.diameter },
            `Try {rods} ${rods.count === 1 ? 'rod' : 'rods'} of {diameter} through core and cheeks; ream holes that bind.`,
            { rods: asCount(rods.count), diameter: asFineMm(rods.diameter) },
          ),
        ]
      : []),
    step(
      { act: 'glue', parts: cut.map(({ name }) => name) },
      [
        `Glue the cheeks on${rods ? ', lined up on the rods,' : ''} with an epoxy that holds on the plastic; clamp between flat boards.`,
        ...(settings.relief
          ? ['For ballast in the chambers glue one side first, and fill them before the other side closes them.']
          : []),
        ...(rods ? ['Cut the rods off flush when the glue is dry.'] : []),
      ].join(' '),
    ),
    sanding
      ? step(
          { act: 'sand', to: sanding.face ?? 'flush' },
          `Sand the cheeks’ tops down to the slope of the core’s top: each stands up to {height} above its neighbour, and only the top edge of its ${sanding.face ?? 'higher'} face is right as cut.`,
          { height: asFineMm(sanding.height) },
        )
      : step(
          { act: 'sand', to: 'flush' },
          'Sand the core’s edges flush with the cheeks, but leave the cheeks’ own edges: they carry the slope.',
        ),
    ...finishSteps(settings),
  ];
}

/** From inboard, the core in the middle; cheeks that are alike are half of them on each side. */
function inOrder(cheeks: readonly Some[], count: number): readonly Some[] {
  const core = { name: 'core', count: 1 };
  const [alike] = cheeks;
  if (cheeks.length === 1 && alike) {
    const half = { name: alike.name, count: count / 2 };
    return [half, core, half];
  }
  return [...cheeks.slice(0, count / 2), core, ...cheeks.slice(count / 2)];
}
