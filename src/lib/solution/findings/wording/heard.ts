import type { SurfaceName } from '$lib/acoustics/surface.ts';
import { says, sizeOf } from '$lib/project/sentence.ts';
import { obstacleText, surfaceText, type Obstacle } from '$lib/solution/findings/surfaceText.ts';
import type { Nothing, Sides, Told } from '$lib/solution/findings/told.ts';

export const heardWordings = {
  /** `assumed`: whether nobody but the usual way of makers says where they are lined up. `late`: positive where the lower driver is; `loss` absent where they cancel outright. */
  'crossover-sum': (
    {
      subject: {
        between: [upper, lower],
      },
      facts: { assumed },
      quantities: { frequency, late, phase, loss },
    }: Told<
      'frequency' | 'late' | 'phase',
      { readonly between: readonly [string, string] },
      { readonly assumed: boolean },
      'loss'
    >,
    { the }: Sides,
  ) =>
    says`At ${frequency} ${upper} and ${lower} of ${the} loudspeaker ${loss ? says`lose ${loss}` : 'cancel each other'} at the head: the ${late.value > 0 ? lower : upper} comes ${sizeOf(late)} or ${sizeOf(phase)} late.${assumed ? ' That its maker lined them up on the tweeter’s axis is assumed.' : ''}`,

  /** `estimated`: the radiating diameter, where nobody stated it. */
  'treble-off-axis': (
    {
      subject: { driver },
      quantities: { offAxis, less, frequency, estimated },
    }: Told<'offAxis' | 'less' | 'frequency', { readonly driver: string }, Nothing, 'estimated'>,
    { the }: Sides,
  ) => {
    const estimate = estimated
      ? says` That is for a radiating diameter of ${estimated}, which is an estimate: measure it.`
      : '';
    return says`The head is ${offAxis} off the axis of the ${driver} of ${the} loudspeaker, which beams: up to ${less} less at ${frequency}.${estimate}`;
  },

  'early-reflection': (
    {
      subject,
      facts: { notchOf, screenedBy },
      quantities: { delay, lower, firstNotch, deepest, deepestAt },
    }: Told<
      'delay' | 'lower',
      { readonly surface: SurfaceName; readonly monitor: number | null },
      { readonly notchOf: string | null; readonly screenedBy: Obstacle | null },
      'firstNotch' | 'deepest' | 'deepestAt'
    >,
    { the }: Sides,
  ) => {
    const first = firstNotch && notchOf !== null ? says` Its first notch is at ${firstNotch}, of the ${notchOf}.` : '';
    const notch = deepest && deepestAt ? says` In the response its deepest is one of ${deepest} at ${deepestAt}.` : '';
    const screened =
      screenedBy === null
        ? ''
        : ` Counted with ${obstacleText(screenedBy)} in its way, which takes more the higher the sound.`;
    const bare = subject.surface === 'desk' ? ' A bare desk cannot be made to pass by distance alone.' : '';
    return says`${surfaceText(subject)} sends the sound of ${the} loudspeaker back ${delay} later and only ${lower} lower.${first}${notch}${screened}${bare}`;
  },
};
