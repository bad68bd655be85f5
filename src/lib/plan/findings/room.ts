import type { Point } from '$lib/geometry/point.ts';
import { sideNames, type Desk, type SideName } from '$lib/project/project.ts';
import type { Finding } from '$lib/plan/document.ts';
import type { Check } from './check.ts';
import { mmText } from './say.ts';

/** Rounding puts a stand that ends at the edge a hair over it; mm. */
const AT_THE_EDGE = 1e-6;

const edges = ['front', 'back', 'left', 'right'] as const;
type Edge = (typeof edges)[number];

/** How far the outermost of the points lies over each edge of the desk, mm; negative inside. */
function overhangs(points: readonly Point[], { width, depth }: Desk): Record<Edge, number> {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return {
    front: -Math.min(...ys),
    back: Math.max(...ys) - depth,
    left: -width / 2 - Math.min(...xs),
    right: Math.max(...xs) - width / 2,
  };
}

function worstEdge(points: readonly Point[], desk: Desk): readonly [Edge, number] | null {
  const over = overhangs(points, desk);
  const worst = edges.reduce((a, b) => (over[b] > over[a] ? b : a));
  return over[worst] > AT_THE_EDGE ? [worst, over[worst]] : null;
}

/** A stand with part of its base off the desk, or a cabinet that juts out over the edge. */
export const deskEdge: Check = ({ layout, footprints, poses }) =>
  sideNames.flatMap((side): Finding[] => {
    const stand = worstEdge(footprints[side], layout.desk);
    if (stand) {
      const [edge, over] = stand;
      return [
        finding(
          'stand-over-edge',
          'fault',
          side,
          over,
          `The ${side} stand stands ${mmText(over)} over the desk's ${edge} edge and may fall. Move its mark inwards.`,
        ),
      ];
    }
    const cabinet = worstEdge(
      poses[side].cabinet.map(({ x, y }) => [x, y]),
      layout.desk,
    );
    if (!cabinet) return [];
    const [edge, over] = cabinet;
    return [
      finding(
        'cabinet-over-edge',
        'caution',
        side,
        over,
        `The ${side} cabinet juts out ${mmText(over)} over the desk's ${edge} edge. Move its mark inwards, or see that nothing knocks it.`,
      ),
    ];
  });

/** A cabinet or stand that would have to stand in the wall behind the desk. */
export const wallBehind: Check = ({ layout, footprints, poses }) => {
  const { depth, wallGap } = layout.desk;
  if (wallGap === null) return [];
  const wall = depth + wallGap;
  return sideNames.flatMap((side): Finding[] => {
    const cabinet = Math.max(...poses[side].cabinet.map(({ y }) => y)) - wall;
    const stand = Math.max(...footprints[side].map(([, y]) => y)) - wall;
    const into = Math.max(cabinet, stand);
    if (into <= AT_THE_EDGE) return [];
    const what = cabinet >= stand ? 'cabinet' : 'stand';
    return [
      finding(
        'into-wall',
        'fault',
        side,
        into,
        `The ${side} ${what} reaches ${mmText(into)} into the wall behind the desk. Move its mark forwards or the desk away from the wall.`,
      ),
    ];
  });
};

const finding = (code: string, level: Finding['level'], side: SideName, value: number, text: string): Finding => ({
  code,
  level,
  side,
  text,
  value,
  limit: 0,
  unit: 'mm',
  source: 'the geometry itself',
});
