import { decimalsOf, measureTitle } from '$lib/files/measureText.ts';
import { plainText } from '$lib/project/sentence.ts';
import { plainFindingText } from '$lib/solution/findings/findingText.ts';
import { merged } from '$lib/solution/findings/whole.ts';
import type { Comparison } from '$lib/study/compare.ts';
import type { Measure } from '$lib/study/measure.ts';
import { textTable } from './textTable.ts';

/** A comparison for reading in a terminal; `+` marks the best of a row, `-` the worst. */
export function compareText(comparison: Comparison, by: readonly Measure[]): string {
  const { layouts, differs, best, worst, stands } = comparison;
  const names = layouts.map(({ name }) => name);
  const mark = (measure: string, layout: string): string =>
    best[measure]?.includes(layout) ? ' +' : worst[measure]?.includes(layout) ? ' -' : '  ';
  const parts = [
    section(
      'Measures (+ best, - worst)',
      textTable([
        ['', ...names],
        ...by.map((measure) => [
          measureTitle(measure),
          ...layouts.map(({ name, values }) => {
            const value = values[measure.name] ?? null;
            return (value === null ? 'none' : value.toFixed(decimalsOf(measure))) + mark(measure.name, name);
          }),
        ]),
      ]),
    ),
    section(
      'Input that differs',
      textTable(differs.map(({ pointer, values }) => [pointer, ...values.map((value) => String(value ?? 'none'))])),
    ),
    section(
      'Stands already cut, used in another layout',
      textTable([
        [
          'stands of',
          'in',
          'slope off (°)',
          'turn off (°)',
          'height off (mm)',
          'miss (mm)',
          'off axis (°)',
          'safe zone',
        ],
        ...stands.map(({ from, to, tilt, toe, lift, miss, offAxis, fits, by: limit }) => [
          from,
          to,
          tilt.toFixed(2),
          toe.toFixed(2),
          lift.toFixed(1),
          miss.toFixed(1),
          offAxis.toFixed(2),
          fits ? 'inside' : `outside (${limit})`,
        ]),
      ]),
    ),
    ...layouts.map(({ name, findings, reason }) =>
      section(
        `Findings of ${name}`,
        reason
          ? reason.map(({ pointer, message }) => `${pointer}: ${plainText(message)}\n`).join('')
          : merged(findings ?? []).map((finding) => `${finding.level}: ${plainFindingText(finding)}\n`).join(''), // prettier-ignore
      ),
    ),
  ];
  return parts.filter((part) => part !== '').join('\n');
}

const section = (title: string, body: string): string => (body === '' ? '' : `${title}\n\n${body}`);
