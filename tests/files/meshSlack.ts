import { edgesOf } from '$lib/geometry/edge.ts';
import { CHORD_ERROR } from '$lib/files/ring.ts';
import type { Printed } from '$lib/stand/body.ts';

/**
 * mm³ by which a body's mesh may miss its volume: chords leave out two thirds of their sagitta along arcs at most, the grid a
 * micrometre along everything.
 */
export const meshSlack = ({ levels, roof }: Pick<Printed, 'levels' | 'roof'>): number =>
  levels.reduce((sum, { height, contours }) => {
    const strays = [...contours, ...(roof ? [roof] : [])]
      .flatMap((contour) => edgesOf(contour))
      .map((edge) => {
        return edge.kind === 'arc'
          ? edge.radius * Math.abs(edge.sweep) * ((2 / 3) * CHORD_ERROR * 1.01 + 0.001)
          : 0.001 * Math.hypot(edge.end[0] - edge.start[0], edge.end[1] - edge.start[1]);
      });
    return sum + height * strays.reduce((all, one) => all + one, 0);
  }, 0);
