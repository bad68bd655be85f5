import { polygonPath, type Path } from '$lib/geometry/contour.ts';
import { mirrored } from '$lib/geometry/mirrored.ts';
import { moved } from '$lib/geometry/moved.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Template } from '$lib/stand/body.ts';
import type { StandSurface } from '$lib/stand/standSurface.ts';

/**
 * A template for each face of the block that shows a line, as it is seen from outside: printed side up, it lies on its face
 * as it is.
 *
 * @param sides The outlines of the inboard and the outboard side, front at the left: as both are seen from the listener's
 *   right.
 */
export function blockTemplates(
  surface: StandSurface,
  wood: number,
  side: SideName,
  sides: { readonly inboard: Path; readonly outboard: Path },
): readonly Template[] {
  const places = surface.section(0).core.map(([u]) => u);
  const [from, to] = [Math.min(...places), Math.max(...places)];
  const onSides = (['inboard', 'outboard'] as const).map((face): Template => {
    const seenFromRight = (face === 'outboard') === (side === 'right');
    return {
      face: `${face} side`,
      // Where the blank's corner is: rounded corners do not reach it.
      outline: seenFromRight
        ? moved(sides[face], [-from, -surface.base])
        : moved(mirrored(sides[face]), [to, -surface.base]),
      ends: seenFromRight ? ['front', 'rear'] : ['rear', 'front'],
    };
  });
  return surface.slope.across === 0 ? onSides : [...onSides, ...endTemplates(surface, wood, side)];
}

/** Front and rear end; their sides fall, so that the slope's line lies askew on them. */
function endTemplates(surface: StandSurface, wood: number, side: SideName): readonly Template[] {
  const [front = [0, 0], rear = [0, 0]] = surface.section(0).core;
  return [{ face: 'front', u: front[0] } as const, { face: 'rear', u: rear[0] } as const].map(
    ({ face, u }): Template => {
      // Outboard is to the right of whoever looks at the right stand from the front.
      const outboardRight = (face === 'front') === (side === 'right');
      const [left, right] = outboardRight ? [-wood / 2, wood / 2] : [wood / 2, -wood / 2];
      return {
        face,
        outline: polygonPath([
          [0, 0],
          [wood, 0],
          [wood, surface.top(right, u) - surface.base],
          [0, surface.top(left, u) - surface.base],
        ]),
        ends: outboardRight ? ['inboard', 'outboard'] : ['outboard', 'inboard'],
      };
    },
  );
}
