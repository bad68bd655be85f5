import { asFineMm } from '$lib/project/sentence.ts';
import type { StandSettings } from '$lib/project/project.ts';
import { step, type Step } from '$lib/stand/step.ts';

/** What every build ends with: veneer, mat, feet, pad, trial. */
export function finishSteps({ veneer, veneerFaces, recess, feet, pad, stop }: StandSettings): readonly Step[] {
  const faces = [
    ...(veneerFaces.sides ? ['both sides'] : []),
    ...(veneerFaces.front ? ['front'] : []),
    ...(veneerFaces.rear ? ['rear'] : []),
    ...(veneerFaces.top ? ['top'] : []),
    ...(veneerFaces.base ? ['base'] : []),
  ];
  return [
    ...(veneer > 0 && faces.length > 0
      ? [step({ act: 'veneer' }, `Veneer, {veneer}: ${faces.join(', ')}, in this order.`, { veneer: asFineMm(veneer) })]
      : []),
    ...(recess
      ? [
          step({ act: 'mat' }, `Glue the anti-slip mat into the ${recess.face}’s recess, {deep} deep.`, {
            deep: asFineMm(recess.depth),
          }),
        ]
      : []),
    ...(feet > 0
      ? [step({ act: 'feet' }, 'Stick the feet, {high} high, under the base.', { high: asFineMm(feet) })]
      : []),
    ...(pad > 0 ? [step({ act: 'pad' }, 'Lay the pad, {thick} thick, on the slope.', { thick: asFineMm(pad) })] : []),
    step({ act: 'check' }, 'Check the slope with the gauge before the cabinet goes on.'),
    step(
      { act: 'load' },
      stop ? 'Set the cabinet against the stop and let go slowly.' : 'Set the cabinet down and let go slowly.',
    ),
  ];
}
