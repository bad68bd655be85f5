import type { StandSettings } from '$lib/project/project.ts';

/** What every build ends with: veneer, mat, feet, pad, trial. */
export function finishSteps({ veneer, veneerFaces, recess, feet, pad, stop }: StandSettings): readonly string[] {
  const faces = [
    ...(veneerFaces.sides ? ['both sides'] : []),
    ...(veneerFaces.front ? ['front'] : []),
    ...(veneerFaces.rear ? ['rear'] : []),
    ...(veneerFaces.top ? ['top'] : []),
    ...(veneerFaces.base ? ['base'] : []),
  ];
  return [
    ...(veneer > 0 && faces.length > 0 ? [`Veneer, ${veneer} mm: ${faces.join(', ')}, in this order.`] : []),
    ...(recess ? [`Glue the anti-slip mat into the ${recess.face}’s recess, ${recess.depth} mm deep.`] : []),
    ...(feet > 0 ? [`Stick the feet, ${feet} mm high, under the base.`] : []),
    ...(pad > 0 ? [`Lay the pad, ${pad} mm thick, on the slope.`] : []),
    'Check the slope with the gauge before the cabinet goes on.',
    ...(stop ? ['Set the cabinet against the stop and let go slowly.'] : ['Set the cabinet down and let go slowly.']),
  ];
}
