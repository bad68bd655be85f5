import { axisHeight, axisLimit } from '$lib/acoustics/axisLimit.ts';
import {
  HEAD_LIMITS,
  strainsOf,
  type HeadCriterion,
  type HeadHearing,
  type Voice,
} from '$lib/acoustics/headHearing.ts';
import { degrees, radians } from '$lib/geometry/angle.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import { triangleOf } from '$lib/layout/triangle.ts';
import { sideNames, type Layout, type Project, type SideName } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import { missAside } from './aim.ts';
import type { Finding } from './finding.ts';
import { TRIANGLE } from './triangle.ts';
import { hearingOf, seatsOf, voicesOf } from '$lib/solution/headVoices.ts';
import { asAngle, asFineLevel, asMm, asUnit } from '$lib/project/sentence.ts';

/** What the checks of the planned seat say of every other posture: how the axes pass it, what it hears, its triangle. */
export function seatFindings(project: Project, layout: Layout, plan: Plan): Finding[] {
  const hear = hearingOf(project, plan);
  const voices = voicesOf(project, plan);
  return seatsOf(layout, plan).flatMap(({ posture, head }): Finding[] => {
    if (posture === null) return [];
    const passed = { posture, head, project, layout, plan };
    return [
      ...sideNames.flatMap((side) => [
        ...passesBeside(passed, side, voices[side]),
        ...passesOver(passed, side, voices[side]),
      ]),
      ...suffers(posture, hear(head)),
      ...triangle(passed),
    ];
  });
}

interface Passed {
  readonly posture: string;
  readonly head: Vec3;
  readonly project: Project;
  readonly layout: Layout;
  readonly plan: Plan;
}

function passesBeside({ posture, head, layout }: Passed, side: SideName, voice: Voice): Finding[] {
  const aside = missAside(voice, head);
  const limit = layout.listener.headWidth / 2;
  if (aside <= limit) return [];
  return [
    {
      code: 'posture-missed',
      level: 'note',
      sides: [side],
      subject: { posture, way: 'beside' },
      facts: {},
      quantities: { by: asMm(aside) },
      value: aside,
      limit,
      unit: 'mm',
      source: 'head-width',
    },
  ];
}

function passesOver({ posture, head, project, plan }: Passed, side: SideName, voice: Voice): Finding[] {
  const aimed = { ...voice, elevation: radians(plan.sides[side].axisElevation) };
  const found = axisHeight(aimed, head);
  const limit = axisLimit(project.speaker, aimed, head, plan.speedOfSound);
  if (!found || !limit) return [];
  return [
    {
      code: 'posture-missed',
      level: 'note',
      sides: [side],
      subject: { posture, way: found.height > 0 ? 'over' : 'under' },
      facts: {},
      quantities: { by: asMm(Math.abs(found.height)) },
      value: degrees(Math.abs(found.angle)),
      limit: degrees(Math.abs(limit.angle)),
      unit: '°',
      source: limit.by.what === 'beam' ? 'head-treble' : 'crossover-loss',
    },
  ];
}

/** What a limit's quantity is, and where the limit comes from. */
const limits = {
  treble: { as: asFineLevel, source: 'head-treble' },
  crossover: { as: asFineLevel, source: 'head-crossover' },
  time: { as: (value: number) => asUnit(value, 'µs'), source: 'head-time' },
  level: { as: asFineLevel, source: 'head-level' },
} as const satisfies Readonly<Record<HeadCriterion, unknown>>;

const suffers = (posture: string, hearing: HeadHearing): Finding[] =>
  strainsOf(hearing).flatMap(({ by, used }): Finding[] => {
    if (used <= 1) return [];
    const { limit, unit } = HEAD_LIMITS[by];
    const { as, source } = limits[by];
    const value = Math.abs(hearing[by] ?? 0);
    return [
      {
        code: 'posture-suffers',
        level: 'note',
        sides: [],
        subject: { posture, suffers: by },
        facts: {},
        quantities: { by: as(value) },
        value,
        limit,
        unit,
        source,
      },
    ];
  });

function triangle({ posture, head, plan: { sides } }: Passed): Finding[] {
  const angle = degrees(triangleOf(sides.left.aimedPoint, sides.right.aimedPoint, head).angle);
  if (Math.abs(angle - TRIANGLE.standard) <= TRIANGLE.passes) return [];
  return [
    {
      code: 'posture-triangle',
      level: 'note',
      sides: [],
      subject: { posture },
      facts: {},
      quantities: { angle: asAngle(angle), standard: asAngle(TRIANGLE.standard) },
      value: angle,
      limit: TRIANGLE.standard,
      unit: '°',
      source: 'stereo-triangle',
    },
  ];
}
