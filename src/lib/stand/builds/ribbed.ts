import { asFineMm, asTyped, needs, onPage, says } from '$lib/project/sentence.ts';
import type { Piece, Sanding, StandBody } from '$lib/stand/body.ts';
import { boardNamed, taperOf, type BuildRequest } from '$lib/stand/buildRequest.ts';
import { cornerReliefFor, type CornerRelief } from '$lib/stand/cornerRelief.ts';
import { coverOf, NO_SKIN } from '$lib/stand/cover.ts';
import { buildTotalsOf } from '$lib/stand/buildTotals.ts';
import { standSurfaceOf } from '$lib/stand/standSurfaceOf.ts';
import { gathered } from '$lib/stand/pointMasses.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { shownDown, SLACK } from '$lib/stand/slack.ts';
import { step, type Some, type Step } from '$lib/stand/step.ts';
import { present, widthOf } from '$lib/stand/widths.ts';
import type { Build } from './build.ts';
import { crossRibs, type CrossRib } from './crossRibs.ts';
import { finishSteps } from './finishSteps.ts';
import { profileRibs } from './profileRibs.ts';
import { ribPlan, ribsOf, type RibPlan } from './ribPlan.ts';
import { sandingOf } from './sections.ts';
import { skinPieces } from './skinPieces.ts';

export const ribbed: Build = {
  name: 'ribbed',
  label: 'crossing ribs',
  description: 'ribs halved into each other',
  details: ['ribs'],
  body: ribbedBody,
};

/**
 * Two or three ribs with the stand's profile, cross ribs between them with halving joints, a top and front skin where
 * wished. Profile ribs are slotted from above and cross ribs from below, each to half the cross rib's height. Cross ribs
 * are as high as the lower of their two faces allows: nothing of them stands above the slope.
 */
function ribbedBody(request: BuildRequest): Outcome<StandBody> {
  const { settings, speaker, board } = request;
  const refused = refusal(settings);
  if (refused) return refused;
  const ribs = ribsOf(settings);
  const skin = ribs.skin === null ? null : boardNamed(request, ribs.skin);
  const width = settings.width ?? speaker.width;
  const surface = standSurfaceOf(request, width, skin ? { top: skin.thickness, front: skin.thickness } : NO_SKIN);
  if (!surface.ok) return surface;
  const side = coverOf(settings).side;
  const wood = width - 2 * side;
  if (wood <= SLACK) {
    return noAnswer(
      '/stand/veneer',
      needs(says`a veneer under half the stand’s width of ${shownDown(width)}`, asTyped(settings.veneer)),
    );
  }
  const { beside, reach } = cornerReliefFor(request.shop.tools.router.bit);
  const cut = { taper: taperOf(request, board), beside };
  const planned = ribPlan(ribs, surface.value, wood, board.thickness, cut, settings.minimumEdge);
  if (!planned.ok) return planned;
  const crosses = crossRibs(request, surface.value, planned.value, wood);
  if (!crosses.ok) return crosses;
  const profiles = profileRibs(request, surface.value, planned.value, crosses.value);
  if (!profiles.ok) return profiles;
  const skins = skin ? skinPieces(request, surface.value, skin, wood) : { pieces: [], pointMasses: [] };

  const pieces = [...profiles.value.pieces, ...crosses.value.map(({ piece }) => piece), ...skins.pieces];
  const total = gathered([
    ...profiles.value.pointMasses,
    ...crosses.value.map(({ pointMass }) => pointMass),
    ...skins.pointMasses,
  ]);
  const widths = present([
    { what: 'rib span', each: wood, count: 1 },
    { what: 'veneer', each: side, count: 2 },
  ]);
  const [first] = profiles.value.shapes;
  if (!first) throw new Error('there are at least two ribs');
  const finished = widthOf(widths);
  const sanding = sandingOf(surface.value, board.thickness);
  return built({
    build: 'ribbed',
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
    layers: ribs.count,
    stock: board.name,
    thickness: board.thickness,
    frontHeight: surface.value.frontHeight,
    rearHeight: surface.value.rearHeight,
    sliceArea: first.area,
    ...total,
    pieces,
    printed: [],
    blocks: [],
    joints: [
      {
        between: 'halving joints',
        count: ribs.count * ribs.cross,
        area: jointArea(board.thickness, crosses.value, reach(planned.value.slot)),
      },
    ],
    sanding,
    steps: stepsOf(request, planned.value, pieces, sanding),
    notes: first.notes,
    figures: buildTotalsOf(pieces, [], [], total.mass),
  });
}

function refusal({ recess, ribs, stop, base }: BuildRequest['settings']): Outcome<never> | null {
  if (recess) {
    return noAnswer(
      '/stand/recess',
      onPage(
        'expected no recess in the ribbed build, whose ribs cannot hold a mat, got one',
        'The ribbed build takes no recess: its ribs cannot hold a mat',
      ),
    );
  }
  if (!ribs?.skin) return null;
  if (stop)
    return noAnswer(
      '/stand/stop',
      onPage(
        'expected no stop under a top skin, got one: glue a strip onto the skin instead',
        'No stop goes under a top skin: glue a strip onto the skin instead',
      ),
    );
  if (base !== 'turned') {
    return noAnswer(
      '/stand/ribs/skin',
      onPage(
        'expected no skin on a base square to the desk, got one: its edges would all be compound',
        'A base square to the desk takes no skin: its edges would all be compound',
      ),
    );
  }
  return null;
}

/**
 * Both cheeks of both slots and their floors, on one rib, on average; in each corner a relief takes so much of its edges.
 */
function jointArea(
  thickness: number,
  crosses: readonly CrossRib[],
  { floor, wall }: ReturnType<CornerRelief['reach']>,
): number {
  const halves = crosses.flatMap((cross) => cross.halves);
  const half = halves.reduce((sum, one) => sum + one, 0) / halves.length;
  return 4 * thickness * Math.max(0, half - wall) + Math.max(0, thickness - 2 * floor) ** 2;
}

function stepsOf(
  { settings, board }: BuildRequest,
  plan: RibPlan,
  pieces: readonly Piece[],
  sanding: Sanding | null,
): readonly Step[] {
  const all = pieces.map(({ name, quantity }): Some => ({ name, count: quantity }));
  const skinned = all.some(({ name }) => name === 'top-skin');
  const numbered = all.some(({ name }) => name === 'rib-1');
  return [
    step(
      { act: 'cut', pieces: all },
      `Cut one rib and one cross rib and try their joint: the slots are {slot} wide for wood {thickness} thick. Then cut the other ribs${skinned ? ' and the skins' : ''}.`,
      { slot: asFineMm(plan.slot), thickness: asFineMm(board.thickness) },
    ),
    step(
      {
        act: 'interlock',
        ribs: all.filter(({ name }) => name.startsWith('rib')),
        crosses: all.filter(({ name }) => name.startsWith('cross-rib')),
      },
      `Stand the ribs on a flat board, slots up, all fronts the same way${numbered ? ', rib 1 inboard' : ''}. Lower the cross ribs into them, slots down, cross rib 1 in front${
        numbered ? ', each with its higher end at the higher side' : ''
      }, until all of them stand on the board.`,
    ),
    step(
      { act: 'glue', parts: ['ribs'] },
      'Check that ribs and cross ribs are square to each other, then run thin glue into the joints; leave it on the board until it is dry.',
    ),
    ...(sanding
      ? [
          step(
            { act: 'sand', to: sanding.face ?? 'flush' },
            `Sand the ribs’ tops to the slope. Stop when you just reach the top edge of each rib’s ${sanding.face ?? 'higher'} face: only those edges are right as cut.`,
          ),
        ]
      : []),
    ...(skinned
      ? [
          step(
            { act: 'glue', parts: ['front-skin', 'top-skin'] },
            'Glue the front skin on and plane its top edge to the slope; glue the top skin over it and plane its ends flush with the front and the rear.',
          ),
        ]
      : []),
    ...finishSteps(settings),
  ];
}
