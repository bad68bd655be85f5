import { responseView } from '$lib/drawing/responseView.ts';
import { capital } from '$lib/project/capital.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { hearSteps, type Heard } from '$lib/proof/heard/heard.ts';
import { causeName } from '$lib/solution/causeName.ts';
import { drawing, text, type Section } from './block.ts';
import type { Subject } from './subject.ts';

/** What was measured with a microphone, each response over the prediction; nothing before anything was measured. */
export function asHeard({ plan }: Subject): readonly Section[] {
  const heard = plan.layout.built?.heard ?? [];
  if (heard.length === 0) return [];
  const { all } = toTheEnd(hearSteps(plan, false));
  return [
    {
      id: 'as-heard',
      title: 'As heard',
      blocks: [
        text(
          'Measured wide, predicted dashed, where that may lie between narrow lines; a ring at a dip that is explained, a cross at one that is not. Mean powers, even in the logarithm of frequency, an octave being a factor of 2.',
        ),
        ...all.flatMap((one) => [drawing(responseView(one), toldOf(one))]),
      ],
    },
  ];
}

const PLAYED = { left: 'the left loudspeaker', right: 'the right loudspeaker', both: 'both loudspeakers' } as const;

function toldOf({ one, overlay, matched }: Heard): string {
  const head = `${capital(PLAYED[one.of])}, ${one.at === 'near' ? 'near the driver' : 'at the head’s place'}; over 1/${Math.round(1 / overlay.window)} octave.`;
  if (!matched) return head;
  const dips = matched.dips.map(({ frequency, by }) => {
    const cause =
      by === null
        ? 'unexplained'
        : by === 'loudspeaker'
          ? 'loudspeaker itself'
          : causeName(by.notch.cause, by.notch.monitor);
    return `${Math.round(frequency)} Hz ${cause}`;
  });
  return `${head} Levels moved by ${(-overlay.aligned.by).toFixed(1).replace('-', '\u2212')} dB. ${dips.length === 0 ? 'No dips.' : `Dips: ${dips.join(', ')}.`}`;
}
