import { coverOf } from '$lib/stand/cover.ts';
import { boardNamed, type Commission } from '$lib/stand/commission.ts';
import type { Piece, StandBody, WidthLayer } from '$lib/stand/body.ts';
import { figuresOf } from '$lib/stand/figures.ts';
import { groundOf } from '$lib/stand/ground.ts';
import { leftOut } from '$lib/stand/leftOut.ts';
import { gathered } from '$lib/stand/lumps.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { rodRow } from '$lib/stand/rods.ts';
import { shapeOf, type Shape } from '$lib/stand/shape.ts';
import { shown, shownDown } from '$lib/stand/slack.ts';
import { present, widthOf } from '$lib/stand/widths.ts';
import { finishSteps } from './finishSteps.ts';
import { printedCore, type CoreRequest } from './printedCore.ts';

/** A core thinner than this is a sheet that warps: common practice, no source. mm. */
const THINNEST_CORE = 2;

/**
 * A printed core between cheeks of thin board, veneer over all. The core takes up what cheeks, glue and veneer leave of the
 * width, so the finished width is the one asked for.
 */
export function buildSkinned(commission: Commission): Outcome<StandBody> {
  const { settings, speaker } = commission;
  if (settings.base !== 'turned') {
    return noAnswer(
      '/stand/base',
      'expected a turned base for the skinned build, whose core is printed as a prism, got one square to the desk',
    );
  }
  const cheek = boardNamed(commission, settings.cheeks?.stock ?? null);
  const count = 2 * (settings.cheeks?.count ?? 1);
  const asked = settings.width ?? speaker.width;
  const veneer = coverOf(settings).side;
  const core = asked - 2 * veneer - count * (cheek.thickness + settings.glue);
  if (core < THINNEST_CORE) {
    return noAnswer(
      '/stand/width',
      `expected a width that leaves ${THINNEST_CORE} mm for the core, got ${shownDown(asked)} mm less ${count} cheeks of ${cheek.thickness} mm, ${count} glue lines of ${settings.glue} mm and veneer of ${veneer} mm on ${veneer > 0 ? 'both sides' : 'no side'}: ${shownDown(core)} mm are left`,
    );
  }
  const ground = groundOf(commission, asked);
  if (!ground.ok) return ground;
  const section = ground.value.section(0);
  const row = settings.rods ? rodRow(settings.rods, section) : built(null);
  if (!row.ok) return row;
  const layer = { ...section, rods: row.value?.holes ?? [], rodEdge: row.value?.edge ?? null };
  const closed = shapeOf(layer, settings, { relieved: false });
  if (!closed.ok) return closed;
  const request: CoreRequest = { commission, layer, shape: closed.value, thickness: core };
  const printed = printedCore(request);
  if (!printed.ok) return printed;

  const pieces: Piece[] = [pieceOf(cheek, count, closed.value)];
  const { bodies, volume, centre, notes, key } = printed.value;
  const { printer } = commission.shop;
  const wood = closed.value.area * cheek.thickness * count;
  const total = gathered([
    { volume: wood, density: cheek.density, at: ground.value.at(0, ...closed.value.centre) },
    { volume, density: printer.density * printer.fill, at: ground.value.at(0, ...centre) },
  ]);
  const widths: readonly WidthLayer[] = present([
    { what: 'core', each: core, count: 1 },
    { what: 'cheek', each: cheek.thickness, count },
    { what: 'glue', each: settings.glue, count },
    { what: 'veneer', each: veneer, count: 2 },
  ]);
  const width = widthOf(widths);
  return built({
    build: 'skinned',
    base: settings.base,
    profile: ground.value.outline,
    footprint: ground.value.footprint(width),
    contact: null,
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
    frontHeight: ground.value.frontHeight,
    rearHeight: ground.value.rearHeight,
    sliceArea: closed.value.area,
    ...total,
    pieces,
    printed: bodies,
    blocks: [],
    joints: [{ between: 'cheeks and core', count, area: closed.value.area }],
    sanding: null,
    steps: stepsOf(commission, core, count, key),
    notes: [...closed.value.notes, ...notes, ...leftOut(settings, ['ribs'])],
    figures: figuresOf(pieces, bodies, [], total.mass),
  });
}

const pieceOf = (board: { name: string; thickness: number }, quantity: number, shape: Shape): Piece => ({
  name: 'cheek',
  stock: board.name,
  thickness: board.thickness,
  quantity,
  outside: shape.outside,
  inside: shape.holes,
  fromSide: true,
  lines: [],
});

function stepsOf({ settings }: Commission, core: number, cheeks: number, key: string | null): readonly string[] {
  return [
    `Print the core on its side; measure it: it should be ${shown(core, 2)} mm wide. Sand or shim what differs.`,
    ...(key ? [key] : []),
    ...(settings.pockets ? ['Put screws or ballast into the pockets and close them with glue.'] : []),
    ...(settings.relief
      ? ['Fill the chambers with ballast before the second cheek closes them, or leave them empty.']
      : []),
    `Cut ${cheeks} cheeks; roughen the core’s sides with coarse paper.`,
    ...(settings.rods
      ? [`Push ${settings.rods.count} rods of ${settings.rods.diameter} mm through core and cheeks to line them up.`]
      : []),
    'Glue the cheeks on with an epoxy or contact adhesive that holds on the plastic; clamp flat.',
    'Flush the edges to the cheeks, not to the core: the cheeks carry the slope.',
    ...finishSteps(settings),
  ];
}
