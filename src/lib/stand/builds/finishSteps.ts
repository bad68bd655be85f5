import { asFineMm } from '$lib/project/sentence.ts';
import type { StandSettings } from '$lib/project/project.ts';
import { step, type Step } from '$lib/stand/step.ts';

/**
 * What every build ends with. The slope is checked while it can still be put right; the wood as a whole, and where the
 * cabinet goes, before a pad covers it.
 */
export function finishSteps(settings: StandSettings): readonly Step[] {
  const { recess, feet, pad, stop, build, veneer } = settings;
  return [
    step(
      { act: 'check' },
      `Check the slope of the bare stand with the wedge gauge or a digital one, and put it right before veneer, oil or paint goes on.${
        feet > 0 || veneer > 0
          ? ' The gauge is as high as the finished stand: look for a gap that is the same all along.'
          : ''
      }`,
    ),
    ...veneerSteps(settings),
    ...(recess
      ? [
          step({ act: 'mat' }, `Glue the anti-slip mat into the recess in the ${recess.face}, {deep} deep.`, {
            deep: asFineMm(recess.depth),
          }),
        ]
      : []),
    ...(feet > 0
      ? [
          step(
            { act: 'feet' },
            `Stick the feet, {high} high, under the ${build === 'ribbed' ? 'base, where ribs cross near its corners' : 'corners of the base'}.`,
            { high: asFineMm(feet) },
          ),
        ]
      : []),
    step(
      { act: 'check' },
      `Set the stand on its marks (“Marking out”) and check it with the gauges (“Checking the stands”)${
        stop ? '.' : ', then mark on it where the cabinet’s front edge goes (“Setting the cabinet”).'
      }`,
    ),
    ...(pad > 0 ? [step({ act: 'pad' }, 'Lay the pad, {thick} thick, on the slope.', { thick: asFineMm(pad) })] : []),
    step(
      { act: 'load' },
      stop
        ? 'Set the cabinet against the stop and let go slowly.'
        : 'Set the cabinet down with its front edge on the marks and let go slowly.',
    ),
    step({ act: 'check' }, 'Check the baffle with its gauge or a digital one, grille off.'),
  ];
}

function veneerSteps(settings: StandSettings): readonly Step[] {
  const { veneer, veneerFaces, build, cable, recess } = settings;
  const faces = [
    ...(veneerFaces.sides ? ['both sides'] : []),
    ...(veneerFaces.front ? ['front'] : []),
    ...(veneerFaces.rear ? ['rear'] : []),
    ...(veneerFaces.top ? ['top'] : []),
    ...(veneerFaces.base ? ['base'] : []),
  ];
  if (veneer === 0 || faces.length === 0) return [];
  const openings = [...(cable ? ['the cable slot'] : []), ...(recess ? ['the recess'] : [])];
  return [
    step(
      { act: 'veneer' },
      [
        `Veneer, {veneer} thick, in this order: ${faces.join(', ')}; trim each flush before the next.`,
        ...(build === 'ribbed' ? ['Where a face is open, glue strips of it onto the edges of the ribs.'] : []),
        ...(build === 'skinned' ? ['Use an adhesive that holds on the plastic too.'] : []),
        ...(openings.length > 0 ? [`Cut it away over ${openings.join(' and ')}.`] : []),
      ].join(' '),
      { veneer: asFineMm(veneer) },
    ),
  ];
}
