import { says, sentenceText, sizeOf, type Sentence } from '$lib/project/sentence.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { DESK } from '$lib/project/surface.ts';
import { wallText } from '$lib/project/wall.ts';
import type { Finding, FindingCode } from './finding.ts';

/** A finding in one line, to be read beside how many there are: what is so, without advice. */
export const headlineText = (finding: Finding, display: LengthDisplay): string =>
  sentenceText(headlineOf(finding), display);

const byCode: { readonly [Code in FindingCode]: (finding: Finding<Code>) => Sentence } = {
  'monitor-collision': ({ quantities: { depth } }) => says`Cabinet and screen share ${depth} of one place.`,
  'monitor-in-sight-line': ({ subject: { driver } }) => says`A screen hides a ${driver} from the head.`,
  'close-to-screen': ({ quantities: { gap } }) => says`A cabinet stands ${gap} from a screen.`,
  'screen-hidden': ({ quantities: { share } }) => says`A cabinet hides ${share} of a screen.`,
  'into-wall': ({ facts: { what, wall }, quantities: { depth } }) =>
    says`A ${what} reaches ${depth} into the ${wallText(wall)}.`,
  'stand-over-edge': ({ facts: { edge, on }, quantities: { over } }) =>
    says`A stand stands ${over} over ${on === DESK ? 'the desk’s' : 'its surface’s'} ${edge} edge.`,
  'cabinet-over-edge': ({ facts: { edge, on }, quantities: { over } }) =>
    says`A cabinet juts out ${over} over ${on === DESK ? 'the desk’s' : 'its surface’s'} ${edge} edge.`,
  'into-surface': ({ subject: { surface }, quantities: { depth } }) =>
    says`A cabinet and ${surface === DESK ? 'the desk’s top' : 'a surface'} share ${depth} of one place.`,
  'plate-tips': ({ facts: { carried }, quantities: { least, plane } }) =>
    says`A ${carried === 'desk' ? 'riser' : 'floor stand'} tips at ${least}; ${plane} is asked.`,
  'no-stop': ({ quantities: { slope } }) => says`Nothing but friction holds a cabinet that leans down ${slope}.`,
  'close-to-wall': ({ facts: { wall }, quantities: { gap } }) =>
    says`A cabinet leaves ${gap} to the ${wallText(wall)}.`,
  'falls-over': () => says`A loudspeaker falls over.`,
  tips: ({ quantities: { least, plane } }) => says`A loudspeaker tips at ${least}; ${plane} is asked.`,
  'may-tip': ({ quantities: { least, plane } }) => says`A loudspeaker may tip at ${least}; ${plane} is asked.`,
  slides: ({ quantities: { tilt, plane } }) =>
    tilt.value <= 0
      ? says`A cabinet may slide off its slope.`
      : says`A cabinet may slide when the desk tilts by ${tilt}; ${plane} is asked.`,
  'stand-slides': ({ quantities: { tilt, plane } }) =>
    says`A stand may slide when the desk tilts by ${tilt}; ${plane} is asked.`,
  'idle-mat': () => says`The mat in the base does not touch the desk.`,
  inclination: ({ quantities: { angle, most } }) =>
    says`An axis ${angle.value > 0 ? 'rises' : 'falls'} ${sizeOf(angle)}; ${most} is the usual most.`,
  'axis-misses-head': ({ quantities: { aside } }) => says`An axis passes ${aside} beside the middle of the head.`,
  'axis-misses-ears': ({ quantities: { height } }) =>
    says`An axis passes ${sizeOf(height)} ${height.value > 0 ? 'over' : 'under'} the ears.`,
  'lobe-unknown': () => says`What the crossover does at the ears is not known.`,
  'time-difference': ({ quantities: { time } }) =>
    says`The ${time.value > 0 ? 'right' : 'left'} loudspeaker is heard ${sizeOf(time)} sooner.`,
  'level-difference': ({ quantities: { level } }) =>
    says`The ${level.value > 0 ? 'right' : 'left'} loudspeaker is ${sizeOf(level)} louder.`,
  'triangle-angle': ({ quantities: { angle, standard } }) =>
    says`The loudspeakers stand ${angle} apart; ${standard} is wanted.`,
  'cut-by-hand': () => says`No saw of this workshop makes some cuts of the stand.`,
  'crossover-sum': ({ quantities: { frequency, loss } }) =>
    loss ? says`Two drivers lose ${loss} at ${frequency}.` : says`Two drivers cancel each other at ${frequency}.`,
  'treble-off-axis': ({ quantities: { less, frequency } }) => says`Up to ${less} less treble at ${frequency}.`,
  'early-reflection': ({ quantities: { delay, lower } }) =>
    says`A surface sends sound back ${delay} later, only ${lower} lower.`,
  'posture-missed': ({ subject: { posture, way }, quantities: { by } }) =>
    says`An axis passes ${by} ${way} the head of “${posture}”.`,
  'posture-suffers': ({ subject: { posture } }) => says`The posture “${posture}” hears less well.`,
  'posture-triangle': ({ subject: { posture }, quantities: { angle } }) =>
    says`The posture “${posture}” has the loudspeakers ${angle} apart.`,
};

export const headlineOf = <Code extends FindingCode>(finding: Finding<Code>): Sentence => byCode[finding.code](finding);
