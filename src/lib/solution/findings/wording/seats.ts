import type { HeadCriterion } from '$lib/acoustics/headHearing.ts';
import { says, type Quantity, type Sentence } from '$lib/project/sentence.ts';
import type { Told } from '$lib/solution/findings/told.ts';

const suffers: Readonly<Record<HeadCriterion, (by: Quantity) => Sentence>> = {
  treble: (by) => says`the treble falls ${by} under that on the axis`,
  crossover: (by) => says`a crossover falls ${by} under that of the planned seat`,
  time: (by) => says`one loudspeaker is heard ${by} before the other`,
  level: (by) => says`one loudspeaker is ${by} louder than the other`,
};

export const seatWordings = {
  'posture-suffers': ({
    subject: { posture },
    facts: { suffers: what },
    quantities: { by },
  }: Told<'by', { readonly posture: string }, { readonly suffers: HeadCriterion }>) =>
    says`In the posture “${posture}” ${suffers[what](by)}.`,
};
