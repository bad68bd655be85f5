import { edgesOf, type Edge } from '$lib/geometry/edge.ts';
import type { Circle, Path } from '$lib/geometry/contour.ts';
import { asFineMm, needs, says } from '$lib/project/sentence.ts';
import type { Piece } from './body.ts';
import { noAnswer, type Outcome } from './outcome.ts';
import { SLACK } from './slack.ts';

/** Two edges that turn less than this, radians, run on: rounding of their ends. */
const RUNS_ON = 1e-6;

/**
 * Why a router's bit cannot cut the pieces, whose inner corners are relieved where there is room; null where it can. A round
 * bit leaves its own radius in every inner corner, and finds no way into what is narrower than itself.
 *
 * @param bit Its diameter, mm.
 */
export function routerFault(
  pieces: readonly Pick<Piece, 'name' | 'outside' | 'inside'>[],
  bit: number,
): Outcome<never> | null {
  for (const { name, outside, inside } of pieces) {
    for (const contour of [outside, ...inside]) {
      const radius = innerRadius(contour);
      if (radius >= bit / 2 - SLACK) continue;
      const found = radius === 0 ? 'a sharp one without room for its relief' : says`a radius of ${asFineMm(radius)}`;
      return noAnswer(
        '/stand/build',
        needs(
          says`inner corners of at least the router bit’s radius of ${asFineMm(bit / 2)}`,
          says`${found} in part "${name}"`,
          'use a smaller bit, larger radii, wider slots or none, or a cutter with a beam or blade',
        ),
      );
    }
  }
  return null;
}

/** The least radius that a bit has to cut from within: 0 for a sharp inner corner, infinite where there is none. */
function innerRadius(contour: Path | Circle): number {
  if (contour.kind === 'circle') return contour.radius;
  const edges = edgesOf(contour);
  // Material lies on the left of a contour, so what turns right is an inner corner.
  const radii = edges.flatMap((edge, i) => [
    ...(edge.kind === 'arc' && edge.sweep < 0 ? [edge.radius] : []),
    ...(turn(edge, edges[(i + 1) % edges.length] ?? edge) < -RUNS_ON ? [0] : []),
  ]);
  return Math.min(Infinity, ...radii);
}

/** From the heading at the end of one edge to that at the start of the next, radians, positive to the left. */
function turn(before: Edge, after: Edge): number {
  const difference = headingAt(after, 'start') - headingAt(before, 'end');
  return Math.atan2(Math.sin(difference), Math.cos(difference));
}

function headingAt(edge: Edge, at: 'start' | 'end'): number {
  if (edge.kind === 'straight') return Math.atan2(edge.end[1] - edge.start[1], edge.end[0] - edge.start[0]);
  const [x, y] = edge[at];
  return Math.atan2(y - edge.centre[1], x - edge.centre[0]) + (Math.sign(edge.sweep) * Math.PI) / 2;
}
