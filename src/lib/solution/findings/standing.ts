import { degrees, radians } from '$lib/geometry/angle.ts';
import { sideNames, type SideName } from '$lib/project/project.ts';
import { asAngle, asMm, asUnit, capital, joined, says, type Quantity, type Sentence } from '$lib/project/sentence.ts';
import type { Balance } from '$lib/stand/balance.ts';
import type { Grip } from '$lib/stand/grip.ts';
import { lowEnd } from '$lib/stand/push.ts';
import { stopRemedy, tipRemedies, type Remedy } from '$lib/stand/remedy.ts';
import type { Span } from '$lib/stand/span.ts';
import { GRAVITY } from '$lib/stand/tipping.ts';
import type { Check, Scene } from './check.ts';
import type { Finding } from './finding.ts';
import { idleMat } from './idleMat.ts';
import { stopToTape } from './stopSize.ts';
import { TEST_PLANE } from './testPlane.ts';

const ways: Readonly<Record<Exclude<Remedy['key'], 'stop'>, (length: Quantity) => Sentence>> = {
  frontMargin: (length) => says`let the stand reach ${length} beyond the cabinet’s front`,
  rearMargin: (length) => says`let the stand reach ${length} beyond the cabinet’s back`,
  width: (length) => says`make the stand ${length} wide`,
  lift: (length) => says`set the lift to ${length}`,
};

/** Each of some remedies is enough by itself. */
function adviceOf(remedies: readonly Remedy[]): Sentence | null {
  const told = remedies.flatMap((one) => (one.key === 'stop' ? [] : [ways[one.key](asMm(one.value))]));
  return told.length === 0 ? null : says`${capital(joined(told, ', or '))}.`;
}

/** A loudspeaker that tips on a plane of 10°, with its stand or off it. */
const tipping: Check = ({ balances, sites }) =>
  sideNames.flatMap((side): Finding[] => {
    const { survives, weakest } = balances[side];
    if (degrees(survives.least) >= TEST_PLANE) return [];
    const advice = sites && adviceOf(tipRemedies(sites[side], balances[side], radians(TEST_PLANE)));
    return [
      {
        ...tipLevel(balances[side]),
        sides: [side],
        subject: {},
        facts: weakest,
        quantities: { ...tilts(survives), plane: asAngle(TEST_PLANE) },
        value: degrees(survives.least),
        limit: TEST_PLANE,
        unit: '°',
        source: 'tip-test',
        ...(advice && { advice }),
      },
    ];
  });

/** A span of angles, radians, as quantities. */
const tilts = ({ least, most }: Span) => ({ least: asAngle(degrees(least)), most: asAngle(degrees(most)) });

function tipLevel({ survives: { least, most } }: Balance) {
  if (most <= 0 || (least <= 0 && least === most)) return { code: 'falls-over', level: 'fault' } as const;
  return degrees(most) < TEST_PLANE || least === most
    ? ({ code: 'tips', level: 'caution' } as const)
    : ({ code: 'may-tip', level: 'note' } as const);
}

/** A cabinet, or a stand under it, that slides on the level, at a knock, or on the test's plane. */
const sliding: Check = (scene) =>
  sideNames.flatMap((side) => [...cabinetSlides(scene, side), ...standSlides(scene, side)]);

function cabinetSlides({ balances, poses, speaker, layout, display }: Scene, side: SideName): Finding[] {
  const { slide, grip } = balances[side];
  const { least, most } = slide.survives;
  if (degrees(least) >= TEST_PLANE) return [];
  const remedy = slide.stop ? null : stopRemedy(layout.stand, speaker.depth, poses[side]);
  const stop = remedy?.key === 'stop' ? stopToTape(remedy.value, display) : null;
  return [
    {
      code: 'slides',
      level: most <= 0 ? 'fault' : 'caution',
      sides: [side],
      subject: {},
      facts: { by: grip.cabinet.by, stop: slide.stop, edge: lowEnd(poses[side]), base: layout.stand.base },
      quantities: {
        tilt: asAngle(degrees(least)),
        tiltMost: asAngle(degrees(most)),
        slope: asAngle(degrees(slide.slope)),
        needed: asUnit(slide.frictionNeeded, 'ratio'),
        ...frictions(grip.cabinet),
        plane: asAngle(TEST_PLANE),
        ...pushAt(speaker.mass, least),
        ...(stop && { stopHeight: asMm(stop.height), stopThickness: asMm(stop.thickness) }),
      },
      value: degrees(least),
      limit: TEST_PLANE,
      unit: '°',
      source: 'least-friction',
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
      sides: [side],
      subject: {},
      facts: { by: grip.base.by },
      quantities: {
        tilt: asAngle(degrees(least)),
        ...frictions(grip.base),
        plane: asAngle(TEST_PLANE),
        ...pushAt(speaker.mass === null ? null : (joint?.mass ?? null), least),
      },
      value: degrees(least),
      limit: TEST_PLANE,
      unit: '°',
      source: 'least-friction',
    },
  ];
}

const frictions = ({ friction: { least, most } }: Grip<string>) => ({
  least: asUnit(least, 'ratio'),
  most: asUnit(most, 'ratio'),
});

/** The level push that does the same as so much tilt, N; none where the mass is not given. */
const pushAt = (mass: number | null, tilt: number) =>
  mass !== null && tilt > 0 && { push: asUnit(mass * GRAVITY * Math.tan(tilt), 'N') };

/** What checks of how loudspeakers stand there are, in the order in which they are told. */
export const standingChecks: readonly Check[] = [tipping, sliding, idleMat];
