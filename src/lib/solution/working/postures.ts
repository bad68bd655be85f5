import { length, subtract } from '$lib/geometry/point.ts';
import { posturesOf, type PosturePlan } from '$lib/solution/postures.ts';
import type { Formula } from './formula.ts';
import { aside, quantity, sideOf } from './quantities.ts';
import { call, minus, plus, size, times, type Subject } from './term.ts';

/** The posture that a subject's index speaks of, the seat first. */
function postureOf({ plan, index }: Subject): PosturePlan {
  const posture = posturesOf(plan)[index];
  if (!posture) throw new Error(`no posture has the place ${index}`);
  return posture;
}

const asideOf = (s: Subject) => aside(sideOf(s).aimedPoint, sideOf(s).axis, postureOf(s).head);

const across = quantity('s', 'from the axis to the head, square to it', 'mm', (s) => asideOf(s).across);
const ahead = quantity('t', 'along the axis to beside the head', 'mm', (s) => asideOf(s).ahead);
const offAxis = quantity('δ', 'head off the axis', '°', (s) => postureOf(s).sides[s.side].offAxis);
const path = quantity('d', 'aimed point to this head', 'mm', (s) =>
  length(subtract(postureOf(s).head, sideOf(s).aimedPoint)),
);
const miss = quantity('m', 'shortest distance from the axis to the head', 'mm', (s) => postureOf(s).sides[s.side].miss);

const from = (side: 'left' | 'right', axis: 'x' | 'y') => (s: Subject) =>
  s.plan.sides[side].aimedPoint[axis] - postureOf(s).head[axis];
const lx = quantity('x_L', 'left aimed point, sideways from this head', 'mm', from('left', 'x'));
const ly = quantity('y_L', 'left aimed point, ahead of this head', 'mm', from('left', 'y'));
const rx = quantity('x_R', 'right aimed point, sideways from this head', 'mm', from('right', 'x'));
const ry = quantity('y_R', 'right aimed point, ahead of this head', 'mm', from('right', 'y'));
const angle = quantity('γ', 'angle of the pair at this head, in plan', '°', (s) => postureOf(s).triangle.angle);

export const postureFormulas: readonly Formula[] = [
  {
    id: 'posture-off-axis',
    topic: 'Postures',
    title: 'Head off the axis',
    result: offAxis,
    term: call('atan2', across, ahead),
    limits: 'At the aimed point.',
    figure: 'driver',
  },
  {
    id: 'posture-miss',
    topic: 'Postures',
    title: 'Miss at this head',
    result: miss,
    term: times(path, call('sin', offAxis)),
    limits: 'Of the axis as a line without end.',
    figure: 'miss',
  },
  {
    id: 'posture-angle',
    topic: 'Postures',
    title: 'Angle at this head',
    result: angle,
    term: call('atan2', size(minus(times(lx, ry), times(ly, rx))), plus(times(lx, rx), times(ly, ry))),
    source: 'held against the 60° of ITU-R BS.775, as modelled on it',
    figure: 'triangle',
  },
];
