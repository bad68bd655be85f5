import { says, type Piece, type Quantity } from '$lib/project/sentence.ts';
import { towards } from '$lib/solution/findings/towards.ts';
import type { Nothing, Sides, Told } from '$lib/solution/findings/told.ts';
import type { EdgeName } from '$lib/stand/tipping.ts';

/** What tips, and over which edge. */
interface Tips {
  readonly what: 'cabinet' | 'both';
  readonly edge: EdgeName;
}

/** The tilts `least` and `most` at which it tips, by the cabinet's mass where that is not given; and the plane that it should stand. */
type ToldOfTipping = Told<'least' | 'most' | 'plane', Nothing, Tips>;

const tipWording = ({ facts: { what, edge }, quantities, advice }: ToldOfTipping, { The }: Sides) =>
  says`${The} ${what === 'cabinet' ? 'cabinet tips off its stand' : 'stand tips over'} ${towards[edge]} ${tilts(quantities)} ${advice ?? 'Use a lower, wider and deeper stand.'}`;

function tilts({ least, most, plane }: ToldOfTipping['quantities']): Piece {
  if (least.value < most.value) {
    return says`at ${least} to ${most} of tilt, depending on the cabinet’s mass, which is not given; it should stand ${plane}.`;
  }
  return least.value <= 0
    ? 'by itself: its centre of mass is not over what carries it.'
    : says`when the desk tilts by ${least}; it should stand ${plane}.`;
}

/** What makes the friction, and its least and most. */
const gripText = (by: 'pad' | 'feet' | 'wood', least: Quantity, most: Quantity): Piece => {
  const range = least.value === most.value ? says`${least}` : says`${least} to ${most}`;
  return by === 'wood' ? range : says`${range} of the ${by}`;
};

/** The level push that does the same as so much tilt; nothing where the mass is not given. */
const pushText = (push: Quantity | undefined): Piece => (push ? says` or at a push of ${push}` : '');

interface Slides {
  readonly by: 'pad' | 'wood';
  readonly stop: boolean;
  /** The way down its slope. */
  readonly edge: EdgeName;
  /** Without a stop: whether one could be had with the base turned with the cabinet, for there is no room or no such base. */
  readonly base: 'turned' | 'square-to-desk';
}

type ToldOfSliding = Told<
  'tilt' | 'tiltMost' | 'slope' | 'needed' | 'least' | 'most' | 'plane',
  Nothing,
  Slides,
  'push' | 'stopHeight' | 'stopThickness'
>;

function slideAdvice({ facts: { stop, base }, quantities: { stopHeight, stopThickness } }: ToldOfSliding): Piece {
  if (stop) return 'Use a pad with more grip.';
  if (stopHeight && stopThickness) {
    return says`${addStopText(stopHeight, stopThickness)}, or a pad with more grip.`;
  }
  return base === 'turned'
    ? 'Use a pad with more grip, or raise the lift to make room for a stop.'
    : 'Use a pad with more grip, or a base turned with the cabinet, which can have a stop.';
}

/** What adding a stop is called, in a finding and on its button alike. */
export const addStopText = (height: Quantity, thickness: Quantity) =>
  says`Add a stop ${height} high and ${thickness} thick`;

export const standingWordings = {
  'falls-over': tipWording,
  tips: tipWording,
  'may-tip': tipWording,

  /** `tilt`, `tiltMost`: of the desk at which it slides, by its friction, 0 or less where it does on the level. */
  slides: (told: ToldOfSliding, { The }: Sides) => {
    const {
      facts: { by, stop, edge },
      quantities: { tilt, tiltMost, slope, needed, least, most, plane, push },
    } = told;
    const friction = gripText(by, least, most);
    if (tilt.value <= 0) {
      const may = tiltMost.value <= 0 ? 'slides' : 'may slide';
      return says`${The} cabinet ${may} off its slope of ${slope}: that needs a friction of ${needed}; ${friction} assumed. ${slideAdvice(told)}`;
    }
    const way = stop ? 'sideways along its stop' : says`${towards[edge]} down its slope of ${slope}`;
    return says`${The} cabinet may slide ${way} when the desk tilts by ${tilt}${pushText(push)}; it should stay at ${plane}. Friction: ${friction}. ${slideAdvice(told)}`;
  },

  'stand-slides': (
    {
      facts: { by },
      quantities: { tilt, least, most, plane, push },
    }: Told<'tilt' | 'least' | 'most' | 'plane', Nothing, { readonly by: 'feet' | 'wood' }, 'push'>,
    { The }: Sides,
  ) =>
    says`${The} stand may slide on the desk when that tilts by ${tilt}${pushText(push)}; it should stay at ${plane}. Friction: ${gripText(by, least, most)}. Put feet with more grip under it.`,

  'idle-mat': ({ quantities: { feet } }: Told<'feet'>) =>
    says`The mat in the base does not touch the desk: feet hold the stand ${feet} over it. Leave out the feet, or the recess.`,
};
