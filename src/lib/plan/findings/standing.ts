import { degrees, radians } from '$lib/geometry/angle.ts';
import { sideNames } from '$lib/project/project.ts';
import type { Balance } from '$lib/stand/balance.ts';
import { stopRemedy, tipRemedies, type Remedy } from '$lib/stand/remedy.ts';
import type { EdgeName } from '$lib/stand/tipping.ts';
import type { Finding } from '$lib/plan/document.ts';
import type { Check } from './check.ts';
import { degreesText, mmText, ratioText } from './say.ts';

/** The plane on which a stand must not tip, whichever way it is turned, degrees. */
const TIP_TEST = 10;
const TIP_SOURCE = 'the tip test on a plane of 10° (UL 1678 §16.3.1, IEC 60065 §19.1)';

/** How many times the friction needed there should be before a cabinet counts as held by friction alone. */
const SLIDE_MARGIN = 1.5;
const FRICTION_SOURCE =
  'friction as set; measured: wood on wood, dry, 0.40–0.75 (a drive engineering guide), smooth pine down to 0.12 (Mater. Constr. 64, 2014)';

const towards: Record<EdgeName, string> = {
  front: 'forwards',
  rear: 'backwards',
  inboard: 'inwards',
  outboard: 'outwards',
};

const where: Record<Remedy['key'], (text: string) => string> = {
  frontMargin: (text) => `let the stand reach ${text} beyond the cabinet’s front`,
  rearMargin: (text) => `let the stand reach ${text} beyond the cabinet’s back`,
  width: (text) => `make the stand ${text} wide`,
  lift: (text) => `set the lift to ${text}`,
  stop: (text) => text,
};

const lengthOf = ({ value }: Remedy): string => (typeof value === 'number' ? mmText(value) : '');

const spoken = (remedies: readonly Remedy[], otherwise: string): string =>
  remedies.length === 0 ? otherwise : sentence(remedies.map((one) => where[one.key](lengthOf(one))).join(', or '));

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** A loudspeaker that tips on a plane of 10°, with its stand or off it. */
export const tipping: Check = ({ balances, sites }) =>
  sideNames.flatMap((side): Finding[] => {
    const { survives, weakest } = balances[side];
    if (degrees(survives.least) >= TIP_TEST) return [];
    const advice = spoken(
      tipRemedies(sites[side], balances[side], radians(TIP_TEST)),
      'Use a lower, wider and deeper stand.',
    );
    const what = weakest.what === 'cabinet' ? `The ${side} cabinet tips off its stand` : `The ${side} stand tips over`;
    return [
      {
        ...tipLevel(balances[side]),
        side,
        text: `${what} ${towards[weakest.edge]} ${tipText(balances[side])} ${advice}`,
        value: degrees(survives.least),
        limit: TIP_TEST,
        unit: '°',
        source: TIP_SOURCE,
      },
    ];
  });

function tipLevel({ survives: { least, most } }: Balance): Pick<Finding, 'code' | 'level'> {
  if (most <= 0 || (least <= 0 && least === most)) return { code: 'falls-over', level: 'fault' };
  return degrees(most) < TIP_TEST || least === most
    ? { code: 'tips', level: 'caution' }
    : { code: 'may-tip', level: 'note' };
}

/** How far it may be tilted; without the cabinet's mass, between what and what. */
function tipText({ survives: { least, most } }: Balance): string {
  const [low, high] = [degreesText(degrees(least)), degreesText(degrees(most))];
  if (least === most) {
    return least <= 0
      ? 'by itself: its centre of mass is not over what carries it.'
      : `when the desk tilts by ${low}; it should stand ${TIP_TEST}°.`;
  }
  return `at ${low} to ${high} of tilt, depending on the cabinet’s mass, which is not given; it should stand ${TIP_TEST}°.`;
}

/** A cabinet that only friction holds on its slope, with too little of it. */
export const sliding: Check = ({ balances, poses, speaker, layout }) =>
  layout.stand.stop
    ? []
    : sideNames.flatMap((side): Finding[] => {
        const { slide } = balances[side];
        const { friction } = layout.stand;
        if (slide.frictionNeeded * SLIDE_MARGIN <= friction) return [];
        const slides = slide.margin <= 0;
        const needed = ratioText(slide.frictionNeeded);
        const advice = stopText(stopRemedy(layout.stand, speaker.depth, poses[side]));
        return [
          {
            code: slides ? 'slides' : 'little-friction',
            level: slides ? 'caution' : 'note',
            side,
            text: slides
              ? `The ${side} cabinet slides off its slope of ${degreesText(degrees(slide.slope))}: that takes a friction of ${needed}, and ${ratioText(friction)} is set. ${advice}`
              : `Only friction holds the ${side} cabinet on its slope of ${degreesText(degrees(slide.slope))}: it takes ${needed} of the ${ratioText(friction)} set, and a knock takes more. ${advice}`,
            value: slide.frictionNeeded,
            limit: slides ? friction : friction / SLIDE_MARGIN,
            unit: '',
            source: slides
              ? FRICTION_SOURCE
              : `${SLIDE_MARGIN} times what it takes: common practice, no source; ${FRICTION_SOURCE}`,
          },
        ];
      });

const stopText = (stop: Remedy | null): string =>
  stop?.key === 'stop'
    ? `Add a stop ${mmText(stop.value.height)} high and ${mmText(stop.value.thickness)} thick, or a pad with more grip.`
    : 'Use a pad with more grip, or raise the lift to make room for a stop.';
