import { around, type Extent } from '$lib/geometry/extent.ts';
import type { Convex } from './convexPieces.ts';

/** A no-fit polygon made ready for many thousand questions. */
export interface Ready {
  /** Six numbers an edge: its outward normal (x, y), how far its line lies along it, its start (x, y), its length. */
  readonly edges: Float64Array;
  readonly box: Extent;
}

const STRIDE = 6;

/** The way by which a shape comes clear of another soonest: a unit vector. */
export interface Push {
  x: number;
  y: number;
}

/** `polygon`: convex, counter-clockwise. Edges without length are left out. */
export function ready(polygon: Convex): Ready {
  const edges = new Float64Array(STRIDE * polygon.length);
  let count = 0;
  let start = polygon.at(-1) ?? [0, 0];
  for (const end of polygon) {
    const [dx, dy] = [end[0] - start[0], end[1] - start[1]];
    const length = Math.sqrt(dx * dx + dy * dy);
    if (length > 0) {
      const [nx, ny] = [dy / length, -dx / length];
      edges.set([nx, ny, nx * start[0] + ny * start[1], start[0], start[1], length], count);
      count += STRIDE;
    }
    start = end;
  }
  return { edges: edges.subarray(0, count), box: around(polygon) };
}

/**
 * How far the second shape, moved to (x, y) from the first, is from being clear of it by `spacing`, mm; 0 when it is
 * clear. The shortest way out is written to `push`. Plain loops: nesting does little else.
 */
export function depthAt({ edges }: Ready, x: number, y: number, spacing: number, push: Push): number {
  let nearest = -Infinity;
  let at = 0;
  for (let i = 0; i < edges.length; i += STRIDE) {
    const off = (edges[i] ?? 0) * x + (edges[i + 1] ?? 0) * y - (edges[i + 2] ?? 0);
    if (off >= spacing) return 0;
    if (off > nearest) {
      nearest = off;
      at = i;
    }
  }
  if (nearest > 0) return outsideDepth(edges, x, y, spacing, push);
  push.x = edges[at] ?? 0;
  push.y = edges[at + 1] ?? 0;
  return spacing - nearest;
}

/** The same for a place outside the polygon and near it, where a corner may be what is nearest. */
function outsideDepth(edges: Float64Array, x: number, y: number, spacing: number, push: Push): number {
  let least = Infinity;
  for (let i = 0; i < edges.length; i += STRIDE) {
    const [nx, ny] = [edges[i] ?? 0, edges[i + 1] ?? 0];
    if (nx * x + ny * y - (edges[i + 2] ?? 0) <= 0) continue;
    const [fromX, fromY] = [x - (edges[i + 3] ?? 0), y - (edges[i + 4] ?? 0)];
    // Along the edge, which runs a quarter turn counter-clockwise of its normal.
    const along = Math.min(Math.max(nx * fromY - ny * fromX, 0), edges[i + 5] ?? 0);
    const [offX, offY] = [fromX + ny * along, fromY - nx * along];
    const gap = Math.sqrt(offX * offX + offY * offY);
    if (gap >= least) continue;
    least = gap;
    push.x = offX / gap;
    push.y = offY / gap;
  }
  return Math.max(0, spacing - least);
}
