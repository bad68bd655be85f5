import { HEAD_LIMITS, strainOf, type HeadCriterion } from '$lib/acoustics/headHearing.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import type { Finding, Plan } from '$lib/plan/document.ts';
import { hearingOf, seatsOf } from '$lib/plan/headVoices.ts';
import { decibelText, microsecondsText } from './say.ts';

const suffers: Readonly<Record<HeadCriterion, (value: number) => string>> = {
  treble: (value) => `the treble falls ${decibelText(Math.abs(value))} under that on the axis`,
  crossover: (value) => `a crossover falls ${decibelText(Math.abs(value))} under that of the planned seat`,
  time: (value) => `one loudspeaker is heard ${microsecondsText(Math.abs(value))} before the other`,
  level: (value) => `one loudspeaker is ${decibelText(Math.abs(value))} louder than the other`,
};

/** Another way of sitting that the aim does not serve. The planned seat has checks of its own. */
export function seatFindings(project: Project, layout: Layout, plan: Plan): Finding[] {
  const hear = hearingOf(project, plan);
  return seatsOf(layout, plan).flatMap(({ posture, head }, index): Finding[] => {
    if (posture === null) return [];
    const hearing = hear(head);
    const { by, used } = strainOf(hearing);
    if (used <= 1) return [];
    const { limit, unit, source } = HEAD_LIMITS[by];
    const value = hearing[by] ?? 0;
    return [
      {
        code: `posture-${index}`,
        level: 'note',
        text: `In the posture “${posture}” ${suffers[by](value)}.`,
        value: Math.abs(value),
        limit,
        unit,
        source,
      },
    ];
  });
}
