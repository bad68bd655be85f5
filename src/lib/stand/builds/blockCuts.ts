import { degrees } from '$lib/geometry/angle.ts';
import { vec3 } from '$lib/geometry/point.ts';
import { asDegrees, asFineMm, asMm } from '$lib/project/sentence.ts';
import type { Ground } from '$lib/stand/ground.ts';
import { compoundCut, setUpFor, type SawCut } from '$lib/stand/saw.ts';

/** An end that leans less than this, radians, is plumb: rounding of its corners. */
const PLUMB = 1e-9;

/**
 * The cuts that make the wedge from its squared blank. Turned: a rip with the blank standing on its higher end, its base
 * along the fence; then the ends where they lean. Square to the desk: one compound cut with the blank lying on a side.
 *
 * @param ends u of the blank's ends.
 */
export function blockCuts(ground: Ground, wood: number, ends: { from: number; to: number }): readonly SawCut[] {
  return ground.slope.across === 0 ? [rip(ground, ends), ...endCuts(ground, wood)] : [compound(ground, wood)];
}

function rip(ground: Ground, { from, to }: { from: number; to: number }): SawCut {
  const bevel = Math.atan(Math.abs(ground.slope.along));
  const high = ground.slope.along <= 0 ? 'front' : 'rear';
  const fence = ground.top(0, high === 'front' ? from : to) - ground.base;
  return {
    template: `Rip the slope: stand the blank on its ${high} end, base to the fence, fence {fence} from the blade at the table, blade tilted {bevel} towards the fence.`,
    quantities: { fence: asFineMm(fence), bevel: asDegrees(degrees(bevel)) },
    mitre: 0,
    bevel,
    fence,
    depth: (to - from) / Math.cos(bevel),
    setUp: setUpFor(bevel),
  };
}

/** Ends square to the slope lean from the base by the slope's angle. */
function endCuts(ground: Ground, wood: number): readonly SawCut[] {
  const [baseFront = [0, 0], , , topFront = [0, 0]] = ground.section(0).core;
  const lean = Math.atan2(Math.abs(topFront[0] - baseFront[0]), topFront[1] - baseFront[1]);
  if (lean < PLUMB) return [];
  const heights = ['front', 'rear'].map((end) => {
    const [a, b] =
      end === 'front'
        ? [ground.section(0).core[0], ground.section(0).core[3]]
        : [ground.section(0).core[1], ground.section(0).core[2]];
    return { end, depth: Math.hypot((b?.[0] ?? 0) - (a?.[0] ?? 0), (b?.[1] ?? 0) - (a?.[1] ?? 0)) };
  });
  return heights.map(({ end, depth }) => ({
    template: `Crosscut the ${end} end, {wood} long, base on the table, blade tilted {lean}, so that it is square to the slope.`,
    quantities: { wood: asMm(wood), lean: asDegrees(degrees(lean)) },
    mitre: 0,
    bevel: lean,
    fence: null,
    depth,
    setUp: setUpFor(lean),
  }));
}

function compound(ground: Ground, wood: number): SawCut {
  const { across, along } = ground.slope;
  // Lying on a side: the table is square to "across", and the blank's height is measured against the mitre.
  const { mitre, bevel } = compoundCut(vec3(1, along, across));
  const side = across > 0 ? 'inboard' : 'outboard';
  const [high, low] = along <= 0 ? ['front', 'rear'] : ['rear', 'front'];
  return {
    template: `Saw the compound slope: lay the blank on its ${side} side, turn it {mitre} from the base’s line, falling from ${high} to ${low}, tilt the blade {bevel}; saw beside the template’s line.`,
    quantities: { mitre: asDegrees(degrees(mitre)), bevel: asDegrees(degrees(bevel)) },
    mitre,
    bevel,
    fence: null,
    depth: wood / Math.cos(bevel),
    setUp: setUpFor(bevel),
  };
}
