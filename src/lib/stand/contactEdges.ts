import { cross, dot, subtract, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { edgeNames, marginsOf, type Edge, type EdgeName } from './tipping.ts';

/**
 * The edges over which a cabinet tips that lies across its stand: of those of the common area that look the same way as
 * one of the cabinet's own sides, the one that gives way first. Where none looks that way, the cabinet's own edge.
 *
 * @param contact The common area from above, desk frame, counter-clockwise.
 * @param whole The cabinet's own edges.
 * @param centre The cabinet's centre of mass.
 */
export function contactEdgesOf(
  contact: readonly Point[],
  { mark, frontEdgeHeight, bottomNormal, inboard, rearLevel }: Pose,
  whole: Readonly<Record<EdgeName, Edge>>,
  centre: Vec3,
): Record<EdgeName, Edge> {
  const front = vec3(mark.x, mark.y, mark.z + frontEdgeHeight);
  const corners = contact.map(([x, y]) => {
    const off = dot(subtract(vec3(x, y, front.z), front), bottomNormal);
    return vec3(x, y, front.z - off / bottomNormal.z);
  });
  const edges = { ...whole };
  const found = new Set<EdgeName>();
  corners.forEach((from, i) => {
    const edge: Edge = [from, corners[(i + 1) % corners.length] ?? from];
    const name = facing(edge, inboard, rearLevel);
    if (!found.has(name) || angleOver(edge) < angleOver(edges[name])) edges[name] = edge;
    found.add(name);
  });
  return edges;

  function angleOver(edge: Edge): number {
    const all = { front: edge, rear: edge, inboard: edge, outboard: edge };
    return marginsOf(centre, all, bottomNormal).front.angle;
  }
}

/** The side of the cabinet whose outward direction, seen from above, is nearest to the edge's. */
function facing([from, to]: Edge, inboard: Vec3, rear: Vec3): EdgeName {
  const outward = cross(subtract(to, from), vec3(0, 0, 1));
  const reach = {
    front: -dot(outward, rear),
    rear: dot(outward, rear),
    inboard: dot(outward, inboard),
    outboard: -dot(outward, inboard),
  };
  return edgeNames.reduce((best, name) => (reach[name] > reach[best] ? name : best));
}
