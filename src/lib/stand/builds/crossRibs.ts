import { polygonPath } from '$lib/geometry/contour.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import { notched } from '$lib/geometry/notch.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Piece } from '$lib/stand/body.ts';
import type { BuildRequest } from '$lib/stand/buildRequest.ts';
import { cornerReliefFor } from '$lib/stand/cornerRelief.ts';
import type { StandSurface } from '$lib/stand/standSurface.ts';
import type { PointMass } from '$lib/stand/pointMasses.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { shownDown, shownUp, SLACK } from '$lib/stand/slack.ts';
import { asTyped, needs, says } from '$lib/project/sentence.ts';
import type { RibPlan } from './ribPlan.ts';

export interface CrossRib {
  readonly at: number;
  /** Half its height at each profile rib: where the slots of both meet. */
  readonly halves: readonly number[];
  readonly piece: Piece;
  readonly pointMass: PointMass;
}

/** Cross ribs, slotted from below; no answer where a slot would leave less than the stand's least edge. */
export function crossRibs(
  { settings, board, shop }: BuildRequest,
  surface: StandSurface,
  plan: RibPlan,
  wood: number,
): Outcome<readonly CrossRib[]> {
  const relief = cornerReliefFor(shop.tools.router.bit);
  const made: CrossRib[] = [];
  for (const [i, at] of plan.crosses.entries()) {
    // The face under the lower part of the slope.
    const face = at + (surface.slope.along < 0 ? 1 : -1) * (board.thickness / 2);
    const height = (across: number): number => surface.top(across, face) - surface.base;
    const halves = plan.ribs.map((across) => height(across) / 2);
    const lowest = Math.min(height(-wood / 2), height(wood / 2), ...halves.map((half) => half - relief.bite));
    if (lowest < settings.minimumEdge - SLACK) {
      return noAnswer(
        '/stand/ribs',
        needs(
          says`cross ribs with ${asTyped(settings.minimumEdge)} of wood left at each slot`,
          shownDown(lowest),
          says`raise the lift by ${shownUp(2 * (settings.minimumEdge - lowest))} or use fewer cross ribs`,
        ),
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
    const outside = relief.relieved(polygonPath(points));
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
      pointMass: {
        volume: area * board.thickness,
        density: board.density,
        at: surface.at(centre[0] - wood / 2, at, surface.base + centre[1]),
      },
    });
  }
  return built(made);
}
