import { capital } from '$lib/project/capital.ts';
import type { Plan } from '$lib/solution/document.ts';
import { gravest } from '$lib/solution/findings/harm.ts';
import { surfaceReflections } from '$lib/solution/leadingReflections.ts';
import { aimed, free, lessSteady, steady, type Heard, type Line } from '$lib/views/sound/fiveLines.ts';
import {
  aimPicture,
  freePicture,
  pathPicture,
  steadyPicture,
  trianglePicture,
  type SmallPicture,
} from '$lib/views/sound/linePictures.ts';
import { causeName } from '$lib/solution/causeName.ts';
import { angleText, quantityText, tapeText } from '$lib/views/ui/formatNumber.ts';

/** What a plan comes to, at a glance: a picture, the number that counts, and a sentence. */
export interface Reading {
  readonly name: string;
  /** Null where nothing is judged. */
  readonly level: Line['level'] | null;
  readonly figure: string;
  readonly of: string;
  readonly sentence: string;
  /** Null while it is being worked out. */
  readonly picture: SmallPicture | null;
  /** Comes after the others. */
  readonly late?: true;
}

/**
 * Aim, triangle, what each surface sends back, balance and safe zone; of sides that differ the worse.
 *
 * @param late What takes longer, null while it is being worked out; left out where it could not be.
 */
export const readingsOf = (plan: Plan, late?: Pick<Heard, 'area' | 'findings'>): readonly Reading[] => [
  { ...aimed(plan), picture: aimPicture(plan) },
  triangle(plan),
  ...reflections(plan),
  { ...steady(plan), picture: steadyPicture(plan, lessSteady(plan.balance)) },
  ...(late ? [safeZone(plan, late)] : []),
];

const safeZone = (plan: Plan, late: Pick<Heard, 'area' | 'findings'>): Reading => ({
  ...free({ plan, ...late }),
  name: 'Safe zone',
  late: true,
  picture: late.area && freePicture(plan, late.area),
});

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
    // The louder one is the worse.
    const side = right && !(left && left.relativeLevel > right.relativeLevel) ? 'right' : 'left';
    const one = side === 'right' ? right : left;
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
