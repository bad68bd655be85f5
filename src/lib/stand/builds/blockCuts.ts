import { vec3 } from '$lib/geometry/point.ts';
import type { SideName, Workshop } from '$lib/project/project.ts';
import type { StandSurface } from '$lib/stand/standSurface.ts';
import { compoundCut, sawFor, setUpFor, type SawCut } from '$lib/stand/saw.ts';

/** An end that leans less than this, radians, is plumb, and such a slope level: rounding of its corners. */
const PLUMB = 1e-9;
/** Left outside the line of a slope, mm: what a plane takes off, a saw's marks with it; common practice, no source. */
const TO_PLANE = 1;

/**
 * The cuts that make the wedge from its squared blank, the work always held in a carriage. The slope: the blank lies on its
 * lower side, so that the blade, tilted away from the work, leaves the higher side above, and no cut stands on a narrow
 * end. Ends that lean: the wedge lies on its slope, to which they are square. None for a level block: that is its blank.
 */
export function blockCuts(surface: StandSurface, wood: number, side: SideName, tools: Workshop): readonly SawCut[] {
  const level = Math.hypot(surface.slope.across, surface.slope.along) < PLUMB;
  return level ? [] : [slopeCut(surface, wood, side, tools), ...endCuts(surface, tools)];
}

function slopeCut({ slope }: StandSurface, wood: number, side: SideName, tools: Workshop): SawCut {
  const { across, along } = slope;
  // Lying on a side: the table is square to "across", and the blank's height is measured against the mitre.
  const { mitre, bevel } = compoundCut(vec3(1, along, across));
  const inboardDown = across >= 0;
  const depth = wood / Math.cos(bevel);
  const tool = sawFor(tools, depth, bevel);
  const held = heldOn(tool, tools);
  // Up from the table is outboard with the inboard side down, and outboard is to the right on the right stand only; the
  // base, away from the blade, is where the work is held. That leaves one way for the rear end to point.
  const rearLeads = (held === 'right') === ((side === 'right') === inboardDown);
  return {
    makes: 'slope',
    tool,
    down: inboardDown ? 'inboard side' : 'outboard side',
    leads: rearLeads ? 'rear' : 'front',
    held,
    mitre,
    bevel,
    depth,
    leave: TO_PLANE,
    mitreSetUp: setUpFor(mitre),
    bevelSetUp: setUpFor(bevel),
  };
}

/**
 * The work is on the side that the blade does not tilt to. A band saw's table tilts down to the right, so that its blade
 * leans to the left of square: common practice, no source.
 */
const heldOn = (tool: SawCut['tool'], { saw }: Workshop): SawCut['held'] =>
  tool === 'table saw' && saw.tilts === 'right' ? 'left' : 'right';

/** Ends square to the slope lean from the base by the slope's angle; the blade stands square to the slope they lie on. */
function endCuts(surface: StandSurface, tools: Workshop): readonly SawCut[] {
  const [baseFront = [0, 0], baseRear = [0, 0], topRear = [0, 0], topFront = [0, 0]] = surface.section(0).core;
  const lean = Math.atan2(Math.abs(topFront[0] - baseFront[0]), topFront[1] - baseFront[1]);
  if (lean < PLUMB) return [];
  const ends = [
    { makes: 'front end', from: baseFront, to: topFront },
    { makes: 'rear end', from: baseRear, to: topRear },
  ] as const;
  return ends.map(({ makes, from, to }) => {
    const depth = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const tool = sawFor(tools, depth, 0);
    return {
      makes,
      tool,
      down: 'slope',
      leads: 'inboard side',
      held: heldOn(tool, tools),
      mitre: 0,
      bevel: 0,
      depth,
      leave: 0,
      mitreSetUp: setUpFor(0),
      bevelSetUp: setUpFor(0),
    };
  });
}
