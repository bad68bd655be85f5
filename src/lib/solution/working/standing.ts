import { GRAVITY } from '$lib/stand/tipping.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import type { BalancePlan } from '$lib/solution/document.ts';
import type { Formula } from './formula.ts';
import { quantity, sideOf, tilt } from './quantities.ts';
import { call, minus, over, size, times, type Subject } from './term.ts';

const edges = ['front', 'rear', 'inboard', 'outboard'] as const;

const balanceOf = ({ plan, side }: Subject): BalancePlan => plan.balance[side];
/** Which edge: the subject's index counts them as the plan does. */
const edgeOf = ({ index }: Subject) => edges[index] ?? 'front';
const jointOf = (s: Subject): Vec3 => balanceOf(s).joint ?? { x: NaN, y: NaN, z: NaN };

const margin = quantity('b', 'centre of mass inside the edge', 'mm', (s) => balanceOf(s).base[edgeOf(s)].margin.least);
const height = quantity('z', 'centre of mass over what the stand is on', 'mm', (s) => jointOf(s).z - sideOf(s).mark.z);
const angle = quantity('β', 'tip angle over the edge', '°', (s) => balanceOf(s).base[edgeOf(s)].angle.least);
const mass = quantity('m', 'cabinet and stand', 'kg', (s) => balanceOf(s).mass ?? NaN);
const gravity = quantity('g', 'gravity', 'm/s²', () => GRAVITY);
const top = quantity('z_t', 'highest corner of the cabinet over what the stand is on', 'mm', (s) =>
  Math.max(
    ...sideOf(s)
      .cabinet.slice(4)
      .map(({ z }) => z - sideOf(s).mark.z),
  ),
);
const push = quantity(
  'F',
  'tipping force at the cabinet’s top',
  'N',
  (s) => balanceOf(s).push?.[edgeOf(s)].tips ?? NaN,
);
const friction = quantity('μ', 'least friction of cabinet on stand', '', (s) => balanceOf(s).slide.friction);
const needed = quantity('μ_θ', 'friction that the slope takes', '', (s) => balanceOf(s).slide.frictionNeeded);
const held = quantity('ε', 'slope on which it just starts', '°', (s) => balanceOf(s).slide.frictionAngle);
const spare = quantity('ν', 'what is left of it', '°', (s) => balanceOf(s).slide.margin);

const known = (s: Subject): boolean => balanceOf(s).joint !== null;
const together = (s: Subject): boolean => {
  const { push: pushes, base } = balanceOf(s);
  return pushes !== null && !pushes[edgeOf(s)].off && base[edgeOf(s)].margin.least > 0;
};
const WITH_MASS = 'The cabinet’s mass is known; otherwise the number lies between those of a light and of a heavy one.';

export const standingFormulas: readonly Formula[] = [
  {
    id: 'tip',
    topic: 'Stability',
    title: 'Tip angle, over an edge',
    result: angle,
    term: call('atan2', margin, height),
    holds: known,
    when: WITH_MASS,
    source: 'compared with the tip test on a plane of 10° (UL 1678 §16.3.1, IEC 60065 §19.1)',
    limits: 'Stand and cabinet as one body on the whole of its base; feet set inwards leave less.',
    figure: 'tip',
  },
  {
    id: 'push',
    topic: 'Stability',
    title: 'Tipping force',
    result: push,
    term: over(times(mass, gravity, margin), top),
    holds: together,
    when: 'Cabinet and stand tip together; a cabinet that leaves its stand behind tips over the stand’s top edge in the same way.',
    source: 'moments about the edge',
    limits: 'A steady, level push at the cabinet’s highest corner, square to the edge.',
    figure: 'tip',
  },
  {
    id: 'friction-needed',
    topic: 'Stability',
    title: 'Friction that the slope takes',
    result: needed,
    term: call('tan', size(tilt)),
    figure: 'slide',
  },
  {
    id: 'friction-angle',
    topic: 'Stability',
    title: 'Slope on which it starts to slide',
    result: held,
    term: call('arctan', friction),
    source: 'dry friction',
    limits:
      'Friction varies widely: 0.40 to 0.75 for dry wood on wood, down to 0.12 for smooth pine. Measure your own.',
    figure: 'slide',
  },
  {
    id: 'slide-margin',
    topic: 'Stability',
    title: 'Spare before it slides',
    result: spare,
    term: minus(held, size(tilt)),
    limits: 'Nothing but friction holds the cabinet; a stop at the low end does.',
    figure: 'slide',
  },
];
