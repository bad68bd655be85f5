import { posturesServed } from '$lib/layout/ears.ts';
import type { Formula } from './formula.ts';
import {
  aimedHeight,
  aimedOnBaffle,
  aside,
  depth,
  earOverDesk,
  elevation,
  frontEdge,
  lift,
  outwards,
  quantity,
  sideOf,
  targetOf,
  tilt,
  toe,
} from './quantities.ts';
import { call, minus, over, plus, root, size, square, times, type Subject } from './term.ts';
import { asStood } from '$lib/project/stood.ts';

const inward = quantity('a', 'from the mark inwards to the target', 'mm', (s) =>
  outwards(s, sideOf(s).mark.x - targetOf(s).x),
);
const towards = quantity(
  'b',
  'from the mark towards the listener to the target',
  'mm',
  (s) => sideOf(s).mark.y - targetOf(s).y,
);
const offset = quantity('o', 'aimed point, inboard of the baffle’s middle', 'mm', (s) => aimedOnBaffle(s).offset);

/** The height is met over the head, or over the ear that the toe points at; a point behind the head only sets the toe. */
const metAt = (s: Subject) => (s.layout.aim.toe.rule === 'to-ear' ? targetOf(s) : s.plan.head);
const metInward = quantity('p', 'from the mark inwards to the head', 'mm', (s) =>
  outwards(s, sideOf(s).mark.x - metAt(s).x),
);
const metTowards = quantity(
  'q',
  'from the mark towards the listener to the head',
  'mm',
  (s) => sideOf(s).mark.y - metAt(s).y,
);
const run = quantity('r', 'from the mark to the head along the toed direction', 'mm', (s) => {
  const angle = (sideOf(s).toe * Math.PI) / 180;
  return metInward.of(s) * Math.sin(angle) + metTowards.of(s) * Math.cos(angle);
});
const rake = quantity('ρ', 'baffle rake', '°', ({ project }) => asStood(project.speaker).baffleRake);
const rear = quantity('h_r', 'rear bottom edge over what the stand is on', 'mm', (s) => sideOf(s).rearEdgeHeight);
const aimedOver = quantity(
  'z',
  'aimed point over what the stand is on',
  'mm',
  (s) => sideOf(s).aimedPoint.z - sideOf(s).mark.z,
);
const miss = quantity('m', 'shortest distance from the axis to the head', 'mm', (s) => sideOf(s).miss);
const toHead = quantity('d', 'aimed point to the head', 'mm', ({ plan, side }) =>
  side === 'left' ? plan.triangle.leftDistance : plan.triangle.rightDistance,
);
const beside = quantity('δ', 'angle between the axis and the line to the head', '°', (s) => {
  const { across, ahead } = aside(sideOf(s).aimedPoint, sideOf(s).axis, s.plan.head);
  return (Math.atan2(across, ahead) * 180) / Math.PI;
});

const rise = call('max', 0, times(depth, call('sin', tilt)));
const overEar = [rise, over(aimedHeight, call('cos', elevation)), times(run, call('tan', elevation))] as const;
/** Whether the aim is for the seat alone: for several postures it is found otherwise. */
const isForSeat = ({ layout }: Subject): boolean => posturesServed(layout).length === 0;
const solvesToe = (s: Subject): boolean => {
  const { rule } = s.layout.aim.toe;
  return rule === 'behind-head' || (isForSeat(s) && (rule === 'to-head' || rule === 'to-ear'));
};
const SHARED =
  'One aim for several postures is found by Newton’s method instead, with the least worst angle at the aimed point or the least weighted mean square.';

export const aimFormulas: readonly Formula[] = [
  {
    id: 'toe',
    topic: 'Aim',
    title: 'Toe',
    result: toe,
    term: minus(
      call('atan2', inward, towards),
      call('arcsin', over(offset, root(plus(square(inward), square(towards))))),
    ),
    holds: solvesToe,
    when: `The rule points at the head, at the nearer ear, or at a point behind the head; otherwise the toe is as set. ${SHARED}`,
    limits: 'The target must be further from the mark than the aimed point is from the baffle’s middle.',
    figure: 'toe',
  },
  {
    id: 'run',
    topic: 'Aim',
    title: 'Run to the head',
    result: run,
    term: plus(times(metInward, call('sin', toe)), times(metTowards, call('cos', toe))),
    figure: 'toe',
  },
  {
    id: 'tilt',
    topic: 'Aim',
    title: 'Tilt',
    result: earOverDesk,
    term: plus(lift, ...overEar),
    holds: (s) => isForSeat(s) && s.layout.aim.tilt.rule !== 'as-set',
    when: `The tilt is the one angle for which this comes out as the height of the ear: found by bracketing to the last digit, or as set. ${SHARED}`,
    limits: 'Tilts within ±60° and axes within ±80°; the ear must be in front of the baffle.',
    figure: 'side',
  },
  {
    id: 'elevation',
    topic: 'Aim',
    title: 'Axis elevation',
    result: elevation,
    term: plus(tilt, rake),
    figure: 'side',
  },
  {
    id: 'lift',
    topic: 'Aim',
    title: 'Lift',
    result: lift,
    term: minus(earOverDesk, ...overEar),
    holds: (s) => isForSeat(s) && s.layout.aim.tilt.rule === 'lift-to-ear',
    when: `The rule finds the lift for a given tilt; otherwise the lift is as set. ${SHARED}`,
    limits: 'A lift under 0 has no stand: the tilt is then too large.',
    figure: 'side',
  },
  {
    id: 'front-edge',
    topic: 'Aim',
    title: 'Front edge over the surface',
    result: frontEdge,
    term: plus(lift, rise),
    figure: 'side',
  },
  {
    id: 'rear-edge',
    topic: 'Aim',
    title: 'Rear edge over the surface',
    result: rear,
    term: plus(lift, call('max', 0, times(-1, depth, call('sin', tilt)))),
    figure: 'side',
  },
  {
    id: 'aimed-height',
    topic: 'Aim',
    title: 'Aimed point over the surface',
    result: aimedOver,
    term: plus(frontEdge, times(aimedHeight, call('cos', elevation))),
    figure: 'side',
  },
  {
    id: 'miss',
    topic: 'Aim',
    title: 'Miss at the head',
    result: miss,
    term: times(toHead, size(call('sin', beside))),
    limits: 'Of the axis as a line without end.',
    figure: 'miss',
  },
];
