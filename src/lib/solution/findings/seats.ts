import { HEAD_LIMITS, strainOf, type HeadCriterion } from '$lib/acoustics/headHearing.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import type { Finding } from './finding.ts';
import { hearingOf, seatsOf } from '$lib/solution/headVoices.ts';
import { asFineLevel, asUnit } from '$lib/project/sentence.ts';

/** What a limit's quantity is, and where the limit comes from. */
const limits = {
  treble: { as: asFineLevel, source: 'head-treble' },
  crossover: { as: asFineLevel, source: 'head-crossover' },
  time: { as: (value: number) => asUnit(value, 'µs'), source: 'head-time' },
  level: { as: asFineLevel, source: 'head-level' },
} as const satisfies Readonly<Record<HeadCriterion, unknown>>;

/** Another way of sitting that the aim does not serve. The planned seat has checks of its own. */
export function seatFindings(project: Project, layout: Layout, plan: Plan): Finding[] {
  const hear = hearingOf(project, plan);
  return seatsOf(layout, plan).flatMap(({ posture, head }): Finding[] => {
    if (posture === null) return [];
    const hearing = hear(head);
    const { by, used } = strainOf(hearing);
    if (used <= 1) return [];
    const { limit, unit } = HEAD_LIMITS[by];
    const { as, source } = limits[by];
    const value = Math.abs(hearing[by] ?? 0);
    return [
      {
        code: 'posture-suffers',
        level: 'note',
        sides: [],
        subject: { posture },
        facts: { suffers: by },
        quantities: { by: as(value) },
        value,
        limit,
        unit,
        source,
      },
    ];
  });
}
