import { lengthWithUnit, trimmed } from '$lib/project/lengthText.ts';
import { sideNames } from '$lib/project/project.ts';
import { sureNames } from '$lib/project/sureNames.ts';
import { toTape } from '$lib/project/tape.ts';
import { solutionOf } from '$lib/solution/solve.ts';
import { list, text, type Section } from './block.ts';
import type { Subject } from './subject.ts';

/** How well the tape must have been read, before anything is cut: what the doubts of the measured values leave open at the head. */
export function howSure({ plan }: Subject): readonly Section[] {
  const { sure } = solutionOf(plan);
  if (!sure) return [];
  const { display } = plan.project;
  const across = (half: number): string => lengthWithUnit(toTape(2 * half, display, 'up'), display);
  const lines = sideNames.map((side) => {
    const { aim, ellipse, by } = sure.sides[side];
    const most = by.flatMap(({ value, share }) =>
      share < LEAST_SHARE ? [] : [`${sureNames[value]} ${percent(share)}`],
    );
    const [wide, high] = [across(ellipse.major), across(ellipse.minor)];
    return `toe ± ${trimmed(aim.toe, ANGLE_DECIMALS)}°, tilt ± ${trimmed(aim.tilt, ANGLE_DECIMALS)}°; in 95 of 100 cases the axis passes the head within an ellipse of ${wide} by ${high} round the place planned. What leaves it open: ${most.join(', ')}.`;
  });
  const [left, right] = lines;
  return [
    {
      id: 'how-sure',
      title: 'How sure this is',
      blocks: [
        text('As far as the measured values may be off. Before cutting, measure again what does the most.'),
        list(left === right ? [`Both loudspeakers: ${left}`] : [`Left: ${left}`, `Right: ${right}`]),
      ],
    },
  ];
}

/** A tape tells no finer. */
const ANGLE_DECIMALS = 1;

/** Less of what is open is not worth a word. */
const LEAST_SHARE = 0.05;

const percent = (share: number): string => `${Math.round(share * 100)} %`;
