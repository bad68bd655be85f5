import { says, sizeOf, type Quantity } from '$lib/project/sentence.ts';
import type { Told } from '$lib/solution/findings/told.ts';

/** The loudspeaker that leads where a difference is positive, and the other one. */
const leads = ({ value }: Quantity): string => (value > 0 ? 'right' : 'left');

export const balanceWordings = {
  /** `time`: positive where the right one is heard first. */
  'time-difference': ({ quantities: { time } }: Told<'time'>) =>
    says`The ${leads(time)} loudspeaker is heard ${sizeOf(time)} sooner: the image leans to that side. Sit in the middle, or move one mark until both are as far from the head.`,

  /** `level`: positive where the right one is louder. */
  'level-difference': ({ quantities: { level } }: Told<'level'>) =>
    says`The ${leads(level)} loudspeaker is ${sizeOf(level)} louder at the head for being nearer. Turn it down by as much, or move one mark until both are as far from the head.`,

  'triangle-angle': ({ quantities: { angle, standard } }: Told<'angle' | 'standard'>) =>
    says`The loudspeakers stand ${angle} apart as the head sees them; a stereo triangle has ${standard}. To get closer to ${standard}, ${angle.value > standard.value ? 'move the marks together or sit further back' : 'move the marks apart or sit closer'}.`,
};
