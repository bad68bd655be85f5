import { says, sizeOf, type Quantity } from '$lib/project/sentence.ts';
import type { Nothing, Sides, Told } from '$lib/solution/findings/told.ts';

/** What would bring an aim for several postures nearer to the seat. */
const FOR_FEWER = 'The aim is for other postures as well: aim for fewer, or for the seat alone.';

const NO_LINE_UP = 'the design point is not given';

/** What sets how far an axis may pass from the ears. */
type LimitedBy =
  | { readonly what: 'beam'; readonly driver: string }
  | { readonly what: 'lobe'; readonly between: readonly [string, string] };

/** How an axis passes the ears, `height` and `angle` positive over them. */
const passes = ({ The }: Sides, height: Quantity, angle: Quantity) =>
  says`${The} axis passes ${sizeOf(height)} or ${sizeOf(angle)} ${angle.value > 0 ? 'over' : 'under'} the ears`;

export const aimWordings = {
  /** `angle`: of the axis, positive where it rises. */
  inclination: ({ quantities: { angle, most } }: Told<'angle' | 'most'>, { The }: Sides) =>
    says`${The} axis ${angle.value > 0 ? 'rises' : 'falls'} ${sizeOf(angle)} towards the ear; ${most} is the most in a reference listening room. A ${angle.value > 0 ? 'higher' : 'lower'} stand or a seat further away flattens it.`,

  'axis-misses-head': (
    { facts: { shared }, quantities: { aside } }: Told<'aside', Nothing, { readonly shared: boolean }>,
    { The }: Sides,
  ) =>
    says`${The} axis passes ${aside} beside the middle of the head, outside it. ${shared ? FOR_FEWER : 'Let the toe aim at the head or the ear, or change the angle that is set.'}`,

  'axis-misses-ears': (
    {
      facts: { by, crossoverKnown, shared },
      quantities: { height, angle, heightMost, angleMost, frequency },
    }: Told<
      'height' | 'angle' | 'heightMost' | 'angleMost' | 'frequency',
      Nothing,
      { readonly by: LimitedBy; readonly crossoverKnown: boolean; readonly shared: boolean }
    >,
    sides: Sides,
  ) => {
    const limitedBy =
      by.what === 'beam'
        ? says`the beam of the ${by.driver} at ${frequency}`
        : says`${by.between[0]} and ${by.between[1]} where they meet, at ${frequency}`;
    const unknown = crossoverKnown ? '' : ` What the crossover does there is not known: ${NO_LINE_UP}.`;
    return says`${passes(sides, height, angle)}; up to ${sizeOf(heightMost)} or ${sizeOf(angleMost)} it still sounds as on the axis, for ${limitedBy}.${unknown} ${shared ? FOR_FEWER : 'Let the tilt follow the ear, or change the angle that is set.'}`;
  },

  'lobe-unknown': (
    {
      subject: {
        between: [upper, lower],
      },
      quantities: { height, angle, turn, frequency },
    }: Told<'height' | 'angle' | 'turn' | 'frequency', { readonly between: readonly [string, string] }>,
    sides: Sides,
  ) =>
    says`${passes(sides, height, angle)}. On the way there ${upper} and ${lower} turn by ${turn} against each other at ${frequency}, where they meet; whether their sum loses or gains by that is not known: ${NO_LINE_UP}. Give it to find out.`,
};
