import { distance } from '$lib/geometry/point.ts';
import { screensSeen, type ScreenSeen } from '$lib/solution/screensSeen.ts';
import type { Formula } from './formula.ts';
import { apart, quantity } from './quantities.ts';
import { call, minus, over, plus, root, square, times, type Subject } from './term.ts';

/** The screen that a subject's index speaks of. */
function screenOf({ plan, index }: Subject): ScreenSeen {
  const screen = screensSeen(plan)[index];
  if (!screen) throw new Error(`no screen has the place ${index}`);
  return screen;
}

const known = ({ layout, index }: Subject): boolean => index < layout.monitors.length;

const way = apart(
  (s) => screenOf(s).middle,
  ({ plan }) => plan.head,
  'from the head to the middle of the screen',
);
const path = quantity('d', 'head to the middle of the screen', 'mm', (s) => screenOf(s).distance);
const left = quantity('l', 'head to the screen’s left end', 'mm', (s) => distance(screenOf(s).left, s.plan.head));
const right = quantity('r', 'head to the screen’s right end', 'mm', (s) => distance(screenOf(s).right, s.plan.head));
const width = quantity('w', 'from end to end', 'mm', (s) => distance(screenOf(s).left, screenOf(s).right));
const angle = quantity('ω', 'angle under which the screen is seen', '°', (s) => screenOf(s).angle);

export const screenFormulas: readonly Formula[] = [
  {
    id: 'screen-distance',
    topic: 'Screens',
    title: 'Eyes to its middle',
    result: path,
    term: root(plus(square(way.x), square(way.y), square(way.z))),
    known,
    limits: 'The middle between the ears stands for the eyes, which lie some 100 mm nearer (rule of thumb).',
    figure: null,
  },
  {
    id: 'screen-angle',
    topic: 'Screens',
    title: 'Seen under',
    result: angle,
    term: times(
      2,
      call('arcsin', root(over(minus(square(width), square(minus(left, right))), times(times(4, left), right)))),
    ),
    known,
    limits: 'The middle between the ears stands for the eyes, which lie some 100 mm nearer (rule of thumb).',
    figure: null,
  },
];
