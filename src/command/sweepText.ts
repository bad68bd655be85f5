import { decimalsOf, measureTitle } from '$lib/files/measureText.ts';
import { plainText } from '$lib/project/sentence.ts';
import { headlineOf } from '$lib/solution/findings/headline.ts';
import type { Measure } from '$lib/study/measure.ts';
import type { Sweep } from '$lib/study/sweep.ts';
import { textTable } from './textTable.ts';

/** A sweep for reading in a terminal. */
export function sweepText({ over, rows, gaps, kinks, findings }: Sweep, by: readonly Measure[]): string {
  const table = textTable([
    [over.field.unit === '' ? over.pointer : `${over.pointer} (${over.field.unit})`, ...by.map(measureTitle)],
    ...rows.map(({ at, values }) => [
      place(at),
      ...by.map((measure) => values[measure.name]?.toFixed(decimalsOf(measure)) ?? 'none'),
    ]),
  ]);
  const notes = [
    ...gaps.map(
      ({ from, to, reason }) =>
        `No answer from ${place(from)} to ${place(to)}: ${reason.map(({ message }) => plainText(message)).join('; ')}`,
    ),
    ...kinks.map(({ measure, at, what }) => `${measure} ${what}s at ${place(at)}`),
    ...findings.map(
      ({ finding, from, to }) =>
        `${finding.level} from ${place(from)} to ${place(to)}: ${plainText(headlineOf(finding))}`,
    ),
    ...by.flatMap(({ name, limit }) => (limit ? [`limit of ${name}: ${limit.value}, ${limit.source}`] : [])),
  ];
  return notes.length === 0 ? table : `${table}\n${notes.join('\n')}\n`;
}

const place = (at: number): string => String(Number(at.toFixed(4)));
