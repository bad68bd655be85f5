import { degrees, radians } from '$lib/geometry/angle.ts';
import { sideNames, type SideName, type StandSettings } from '$lib/project/project.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Balance } from '$lib/stand/balance.ts';
import type { Grip } from '$lib/stand/grip.ts';
import { lowEnd } from '$lib/stand/push.ts';
import { stopRemedy, tipRemedies, type Remedy } from '$lib/stand/remedy.ts';
import { GRAVITY } from '$lib/stand/tipping.ts';
import type { Finding } from '$lib/plan/document.ts';
import type { Check, Scene } from './check.ts';
import { degreesText, mmText, newtonText, ratioText } from './say.ts';
import { addStopText, stopToTape } from './stopSize.ts';
import { TEST_PLANE } from './testPlane.ts';
import { towards } from './towards.ts';

const TIP_SOURCE = 'the tip test on a plane of 10° (UL 1678 §16.3.1, IEC 60065 §19.1)';

/** Sliding is held against the same plane as tipping. */
const FRICTION_SOURCE =
  'the plane of the tip test, with the least friction: wood on wood, dry, 0.40–0.75; rules of thumb; smooth pine down to 0.12 (Mater. Constr. 64, 2014)';

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
    if (degrees(survives.least) >= TEST_PLANE) return [];
    const remedies = sites === null ? [] : tipRemedies(sites[side], balances[side], radians(TEST_PLANE));
    const advice = spoken(remedies, 'Use a lower, wider and deeper stand.');
    const what = weakest.what === 'cabinet' ? `The ${side} cabinet tips off its stand` : `The ${side} stand tips over`;
    return [
      {
        ...tipLevel(balances[side]),
        side,
        text: `${what} ${towards[weakest.edge]} ${tipText(balances[side])} ${advice}`,
        value: degrees(survives.least),
        limit: TEST_PLANE,
        unit: '°',
        source: TIP_SOURCE,
      },
    ];
  });

function tipLevel({ survives: { least, most } }: Balance): Pick<Finding, 'code' | 'level'> {
  if (most <= 0 || (least <= 0 && least === most)) return { code: 'falls-over', level: 'fault' };
  return degrees(most) < TEST_PLANE || least === most
    ? { code: 'tips', level: 'caution' }
    : { code: 'may-tip', level: 'note' };
}

/** How far it may be tilted; without the cabinet's mass, between what and what. */
function tipText({ survives: { least, most } }: Balance): string {
  const [low, high] = [degreesText(degrees(least)), degreesText(degrees(most))];
  if (least === most) {
    return least <= 0
      ? 'by itself: its centre of mass is not over what carries it.'
      : `when the desk tilts by ${low}; it should stand ${TEST_PLANE}°.`;
  }
  return `at ${low} to ${high} of tilt, depending on the cabinet’s mass, which is not given; it should stand ${TEST_PLANE}°.`;
}

/** A cabinet, or a stand under it, that slides on the level, at a knock, or on the test's plane. */
export const sliding: Check = (scene) =>
  sideNames.flatMap((side) => [...cabinetSlides(scene, side), ...standSlides(scene, side)]);

function cabinetSlides({ balances, poses, speaker, layout, display }: Scene, side: SideName): Finding[] {
  const { slide, grip } = balances[side];
  const { least, most } = slide.survives;
  if (degrees(least) >= TEST_PLANE) return [];
  const [friction, slope] = [gripText(grip.cabinet), degreesText(degrees(slide.slope))];
  const advice = slide.stop
    ? 'Use a pad with more grip.'
    : stopText(stopRemedy(layout.stand, speaker.depth, poses[side]), layout.stand, display);
  const found = { side, value: degrees(least), limit: TEST_PLANE, unit: '°', source: FRICTION_SOURCE };
  if (least <= 0) {
    const may = most <= 0 ? 'slides' : 'may slide';
    return [
      {
        ...found,
        code: 'slides',
        level: most <= 0 ? 'fault' : 'caution',
        text: `The ${side} cabinet ${may} off its slope of ${slope}: that takes a friction of ${ratioText(slide.frictionNeeded)}, and it has ${friction}. ${advice}`,
      },
    ];
  }
  const way = slide.stop ? 'sideways along its stop' : `${towards[lowEnd(poses[side])]} down its slope of ${slope}`;
  return [
    {
      ...found,
      code: 'slides',
      level: 'caution',
      text: `The ${side} cabinet may slide ${way} when the desk tilts by ${degreesText(degrees(least))}${pushText(speaker.mass, least)}; it should stay at ${TEST_PLANE}°. Friction: ${friction}. ${advice}`,
    },
  ];
}

function standSlides({ balances, speaker }: Scene, side: SideName): Finding[] {
  const { grip, joint } = balances[side];
  const least = Math.atan(grip.base.friction.least);
  if (degrees(least) >= TEST_PLANE) return [];
  return [
    {
      code: 'stand-slides',
      level: 'caution',
      side,
      text: `The ${side} stand may slide on the desk when that tilts by ${degreesText(degrees(least))}${pushText(speaker.mass === null ? null : (joint?.mass ?? null), least)}; it should stay at ${TEST_PLANE}°. Friction: ${gripText(grip.base)}. Put feet with more grip under it.`,
      value: degrees(least),
      limit: TEST_PLANE,
      unit: '°',
      source: FRICTION_SOURCE,
    },
  ];
}

/** The level push that does the same as so much tilt. */
const pushText = (mass: number | null, tilt: number): string =>
  mass === null ? '' : ` or at a push of ${newtonText(mass * GRAVITY * Math.tan(tilt))}`;

const gripText = ({ friction: { least, most }, by }: Grip<string>): string => {
  const range = least === most ? ratioText(least) : `${ratioText(least)} to ${ratioText(most)}`;
  return by === 'wood' ? range : `${range} of the ${by}`;
};

function stopText(stop: Remedy | null, { base }: StandSettings, display: LengthDisplay): string {
  if (stop?.key === 'stop') {
    return `${addStopText(stopToTape(stop.value, display), display)}, or a pad with more grip.`;
  }
  return base === 'turned'
    ? 'Use a pad with more grip, or raise the lift to make room for a stop.'
    : 'Use a pad with more grip, or a base turned with the cabinet, which can have a stop.';
}
