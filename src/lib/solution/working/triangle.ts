import type { Formula } from './formula.ts';
import { apart, c, leftPath, quantity, rightPath } from './quantities.ts';
import { call, minus, over, plus, root, size, square, times } from './term.ts';

const pair = apart(
  ({ plan }) => plan.sides.right.aimedPoint,
  ({ plan }) => plan.sides.left.aimedPoint,
  'from left to right aimed point',
);
const left = apart(
  ({ plan }) => plan.sides.left.aimedPoint,
  ({ plan }) => plan.head,
  'from the head to the left aimed point',
);
const right = apart(
  ({ plan }) => plan.sides.right.aimedPoint,
  ({ plan }) => plan.head,
  'from the head to the right aimed point',
);

const lx = quantity('x_L', 'left aimed point, sideways from the head', 'mm', left.x.of);
const ly = quantity('y_L', 'left aimed point, ahead of the head', 'mm', left.y.of);
const rx = quantity('x_R', 'right aimed point, sideways from the head', 'mm', right.x.of);
const ry = quantity('y_R', 'right aimed point, ahead of the head', 'mm', right.y.of);

const base = quantity('B', 'aimed point to aimed point', 'mm', ({ plan }) => plan.triangle.base);
const angle = quantity('γ', 'angle of the pair at the head, in plan', '°', ({ plan }) => plan.triangle.angle);
const time = quantity('τ', 'how much later the left one is heard', 'µs', ({ plan }) => plan.triangle.timeDifference);
const level = quantity('L', 'how much louder the right one is', 'dB', ({ plan }) => plan.triangle.levelDifference);

const distance = ({ x, y, z }: typeof pair) => root(plus(square(x), square(y), square(z)));

export const triangleFormulas: readonly Formula[] = [
  {
    id: 'angle',
    topic: 'Triangle',
    title: 'Angle at the head',
    result: angle,
    term: call('atan2', size(minus(times(lx, ry), times(ly, rx))), plus(times(lx, rx), times(ly, ry))),
    source: 'compared with the 60° of ITU-R BS.775-4, recommends 2',
    limits: 'A desk is smaller than the rooms that standard speaks of.',
    figure: 'triangle',
  },
  {
    id: 'base',
    topic: 'Triangle',
    title: 'Between aimed points',
    result: base,
    term: distance(pair),
    figure: 'triangle',
  },
  {
    id: 'left-distance',
    topic: 'Triangle',
    title: 'Left to head',
    result: leftPath,
    term: distance(left),
    figure: 'triangle',
  },
  {
    id: 'right-distance',
    topic: 'Triangle',
    title: 'Right to head',
    result: rightPath,
    term: distance(right),
    figure: 'triangle',
  },
  {
    id: 'time',
    topic: 'Triangle',
    title: 'Arrival difference, left − right',
    result: time,
    term: over(times(1000, minus(leftPath, rightPath)), c),
    source: 'path over speed; a millisecond is 1000 µs',
    limits: 'Both loudspeakers fed at the same instant.',
    figure: 'triangle',
  },
  {
    id: 'level',
    topic: 'Triangle',
    title: 'Level difference, right − left',
    result: level,
    term: times(20, call('lg', over(leftPath, rightPath))),
    source: 'spreading of a small source: 6 dB for each doubling of the distance',
    limits: 'Spreading alone; directivity and the room are left out.',
    figure: 'triangle',
  },
];
