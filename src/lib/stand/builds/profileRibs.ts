import { openPath } from '$lib/geometry/contour.ts';
import type { Piece } from '$lib/stand/body.ts';
import type { BuildRequest } from '$lib/stand/buildRequest.ts';
import type { StandSurface } from '$lib/stand/standSurface.ts';
import type { PointMass } from '$lib/stand/pointMasses.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { shapeOf, type Shape } from '$lib/stand/shape.ts';
import { shownDown, shownUp, SLACK } from '$lib/stand/slack.ts';
import { asTyped, needs, says } from '$lib/project/sentence.ts';
import type { CrossRib } from './crossRibs.ts';
import type { RibPlan } from './ribPlan.ts';
import { SAME } from './same.ts';
import { sandedMass } from './sections.ts';

export interface Profiles {
  readonly pieces: readonly Piece[];
  readonly pointMasses: readonly PointMass[];
  readonly shapes: readonly Shape[];
}

/** Ribs with the stand's profile, slotted from above, each cut to the height of its higher face. */
export function profileRibs(
  { settings, board, shop }: BuildRequest,
  surface: StandSurface,
  plan: RibPlan,
  crosses: readonly CrossRib[],
): Outcome<Profiles> {
  const clash = slotClash(settings, surface, plan);
  if (clash) return clash;
  const alike = Math.abs(surface.slope.across) * Math.abs((plan.ribs.at(-1) ?? 0) - (plan.ribs[0] ?? 0)) <= SAME;
  const pieces: Piece[] = [];
  const pointMasses: PointMass[] = [];
  const shapes: Shape[] = [];
  for (const [i, across] of plan.ribs.entries()) {
    const [from, to] = [across - board.thickness / 2, across + board.thickness / 2];
    const layer = { ...surface.layer(from, to), rods: [] };
    const high = surface.slope.across > 0 ? to : from;
    const slots = crosses.map(({ at, halves }) => {
      const [front, rear] = [at - plan.slot / 2, at + plan.slot / 2];
      const floor = surface.base + (halves[i] ?? 0);
      const mouth = [
        [rear, surface.top(high, rear)],
        [front, surface.top(high, front)],
      ] as const;
      return {
        mouth,
        floor: [
          [rear, floor],
          [front, floor],
        ] as const,
      };
    });
    const shape = shapeOf(layer, settings, { relieved: false, slots, bit: shop.tools.router.bit });
    if (!shape.ok) return shape;
    shapes.push(shape.value);
    const { outside } = shape.value;
    pointMasses.push(sandedMass(surface, { from, to }, board, 1, shape.value));
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
          [at, surface.base + CLEAR],
          [at, surface.base + Math.max(CLEAR, (halves[i] ?? 0) - CLEAR)],
        ]),
      ),
    });
  }
  return built({ pieces, pointMasses, shapes });
}

/** Centre lines end this far from what they point at, mm, so that a mark never becomes a cut. */
const CLEAR = 1;

/** A cable slot needs wood between it and every cross rib's slot. */
function slotClash(
  { cable, minimumEdge }: BuildRequest['settings'],
  surface: StandSurface,
  plan: RibPlan,
): Outcome<never> | null {
  if (!cable) return null;
  const rear = surface.section(0).core[1]?.[0] ?? 0;
  const middle = rear - cable.fromRear;
  const near = Math.min(...plan.crosses.map((at) => Math.abs(at - middle) - cable.width / 2 - plan.slot / 2));
  return near >= minimumEdge - SLACK
    ? null
    : noAnswer(
        '/stand/cable/fromRear',
        needs(
          says`a cable slot ${asTyped(minimumEdge)} clear of the cross ribs`,
          shownDown(near),
          says`move it by ${shownUp(minimumEdge - near)} or more`,
        ),
      );
}
