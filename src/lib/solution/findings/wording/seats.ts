import type { HeadCriterion } from '$lib/acoustics/headHearing.ts';
import { says, type Quantity, type Sentence } from '$lib/project/sentence.ts';
import type { Sides, Told } from '$lib/solution/findings/told.ts';

const suffers: Readonly<Record<HeadCriterion, (by: Quantity) => Sentence>> = {
  treble: (by) => says`the treble falls ${by} under that on the axis`,
  crossover: (by) => says`a crossover falls ${by} under that of the planned seat`,
  time: (by) => says`one loudspeaker is heard ${by} before the other`,
  level: (by) => says`one loudspeaker is ${by} louder than the other`,
};

export const seatWordings = {
  'posture-missed': (
    {
      subject: { posture, way },
      quantities: { by },
    }: Told<'by', { readonly posture: string; readonly way: 'beside' | 'over' | 'under' }>,
    { the }: Sides,
  ) =>
    way === 'beside'
      ? says`In the posture “${posture}” ${the} axis passes ${by} beside the middle of the head, outside it.`
      : says`In the posture “${posture}” ${the} axis passes ${by} ${way} the ears, further than sounds as on the axis.`,

  'posture-suffers': ({
    subject: { posture, suffers: what },
    quantities: { by },
  }: Told<'by', { readonly posture: string; readonly suffers: HeadCriterion }>) =>
    says`In the posture “${posture}” ${suffers[what](by)}.`,

  'posture-triangle': ({
    subject: { posture },
    quantities: { angle, standard },
  }: Told<'angle' | 'standard', { readonly posture: string }>) =>
    says`In the posture “${posture}” the loudspeakers stand ${angle} apart; ${standard} is wanted.`,
};
