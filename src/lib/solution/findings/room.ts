import { around, type Extent } from '$lib/geometry/extent.ts';
import type { Point } from '$lib/geometry/point.ts';
import { asMm } from '$lib/project/sentence.ts';
import { sideNames, type Desk, type SideName } from '$lib/project/project.ts';
import type { Finding } from './finding.ts';
import type { Check } from './check.ts';

/** Rounding puts a stand that ends at the edge a hair over it; mm. */
const AT_THE_EDGE = 1e-6;

const edges = ['front', 'back', 'left', 'right'] as const;
type Edge = (typeof edges)[number];

/** How far something lies over each edge of the desk, mm; negative inside. */
function overhangs({ left, bottom, right, top }: Extent, { width, depth }: Desk): Record<Edge, number> {
  return { front: -bottom, back: top - depth, left: -width / 2 - left, right: right - width / 2 };
}

function worstEdge(extent: Extent, desk: Desk): readonly [Edge, number] | null {
  const over = overhangs(extent, desk);
  const worst = edges.reduce((a, b) => (over[b] > over[a] ? b : a));
  return over[worst] > AT_THE_EDGE ? [worst, over[worst]] : null;
}

/** A stand with part of its base off the desk, or a cabinet that juts out over the edge. */
const deskEdge: Check = ({ layout, footprints, poses }) =>
  sideNames.flatMap((side): Finding[] => {
    const stand = worstEdge(around(footprints[side]), layout.desk);
    if (stand) {
      const [edge, over] = stand;
      return [
        {
          ...common(side, over),
          code: 'stand-over-edge',
          level: 'fault',
          facts: { edge },
          quantities: { over: asMm(over) },
        },
      ];
    }
    const cabinet = worstEdge(around(poses[side].cabinet.map(({ x, y }): Point => [x, y])), layout.desk);
    if (!cabinet) return [];
    const [edge, over] = cabinet;
    return [
      {
        ...common(side, over),
        code: 'cabinet-over-edge',
        level: 'caution',
        facts: { edge },
        quantities: { over: asMm(over) },
      },
    ];
  });

/** A cabinet or stand that would have to stand in the wall behind the desk. */
const wallBehind: Check = ({ layout, footprints, poses }) => {
  const { depth, wallGap } = layout.desk;
  if (wallGap === null) return [];
  const wall = depth + wallGap;
  return sideNames.flatMap((side): Finding[] => {
    const cabinet = poses[side].cabinet.reduce((most, { y }) => Math.max(most, y), -Infinity) - wall;
    const stand = around(footprints[side]).top - wall;
    const into = Math.max(cabinet, stand);
    if (into <= AT_THE_EDGE) return [];
    const what = cabinet >= stand ? 'cabinet' : 'stand';
    return [
      {
        ...common(side, into),
        code: 'into-wall',
        level: 'fault',
        facts: { what },
        quantities: { depth: asMm(into) },
      },
    ];
  });
};

const common = (side: SideName, value: number) =>
  ({ sides: [side], subject: {}, value, limit: 0, unit: 'mm', source: 'geometry' }) as const;

/** In the order in which they are told. */
export const roomChecks: readonly Check[] = [wallBehind, deskEdge];
