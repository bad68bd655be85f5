import { capital } from '$lib/project/capital.ts';
import type { Plan } from '$lib/solution/document.ts';
import { gravest } from '$lib/solution/findings/harm.ts';
import { surfaceReflections } from '$lib/solution/leadingReflections.ts';
import { aimed, steady, type Line } from '$lib/views/sound/fiveLines.ts';
import {
  aimPicture,
  pathPicture,
  steadyPicture,
  trianglePicture,
  type SmallPicture,
} from '$lib/views/sound/linePictures.ts';
import { causeName } from '$lib/views/sound/surfaceName.ts';
import { angleText, quantityText, tapeText } from '$lib/views/ui/formatNumber.ts';

/** What a plan comes to, at a glance: a picture, the number that counts, and a sentence. */
export interface Reading {
  readonly name: string;
  /** Null where nothing is judged. */
  readonly level: Line['level'] | null;
  readonly figure: string;
  readonly of: string;
  readonly sentence: string;
  readonly picture: SmallPicture;
}

/** Aim, triangle, what each surface sends back, and balance; of sides that differ the worse, or the right one where there is no worse. */
export const readingsOf = (plan: Plan): readonly Reading[] => [
  { ...aimed(plan), picture: aimPicture(plan) },
  triangle(plan),
  ...reflections(plan),
  { ...steady(plan), picture: steadyPicture(plan, 'right') },
];

function triangle(plan: Plan): Reading {
  const { triangle: at, project, checks } = plan;
  const mm = (length: number): string => tapeText(length, project.display);
  const [left, right] = [mm(at.leftDistance), mm(at.rightDistance)];
  return {
    name: 'Triangle',
    level: gravest(checks.filter(({ code }) => code === 'triangle-angle')) ?? 'good',
    figure: angleText(at.angle),
    of: 'at the head',
    sentence: `${mm(at.base)} apart, ${left === right ? `each ${left} from the head` : `the left ${left}, the right ${right} from the head`}.`,
    picture: trianglePicture(plan),
  };
}

const reflections = (plan: Plan): readonly Reading[] =>
  surfaceReflections(plan).flatMap(({ surface, monitor, left, right }) => {
    const side = right ? 'right' : 'left';
    const one = right ?? left;
    if (!one) return [];
    const path = tapeText(one.pathDifference, plan.project.display);
    const notch = one.firstNotch === null ? '' : ` First notch at ${quantityText(one.firstNotch, 0, 'Hz')}.`;
    return [
      {
        name: `Off the ${causeName(surface, monitor)}`,
        level: null,
        figure: quantityText(one.delay, 2, 'ms'),
        of: 'later',
        sentence: capital(
          `${one.driver}, ${side}: ${path} longer, ${quantityText(one.relativeLevel, 1, 'dB')} by spreading alone.${notch}`,
        ),
        picture: pathPicture(plan, side, one),
      },
    ];
  });
