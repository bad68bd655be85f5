import type { Ask } from '$lib/study/ask.ts';
import type { AimRule } from '$lib/study/input.ts';
import type { Measure } from '$lib/study/measure.ts';
import type { Found } from '$lib/study/found.ts';
import { csvFile, type Cell } from './csv.ts';
import { decimalsOf, measureTitle, valuesDocument } from './measureText.ts';

const asked = ({ aims, rules }: Ask): readonly Measure[] => [
  ...new Set([...aims, ...rules.map(({ measure }) => measure)]),
];

/** What a search found as a document of JSON: lengths in mm, angles in degrees, nothing rounded. */
export function searchFile({ tried, front, relax }: Found, ask: Ask): string {
  const document = {
    format: 'wedgewright/search',
    version: 1,
    tried,
    kept: front.length,
    front: front.map(({ edits, values }) => ({ edits, measures: valuesDocument(values, asked(ask)) })),
    relax: relax.map(({ rule, to, by }) => ({ rule, measure: ask.rules[rule]?.measure.name, to, by })),
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

/** How finely the values of an input are written. */
const INPUT_DECIMALS = 4;

/** A rule in one cell: its name, and its number where it has one. */
const ruleCell = ({ rule, ...own }: AimRule): string =>
  [rule, ...Object.values(own).map((value: number) => Number(value.toFixed(INPUT_DECIMALS)))].join(' ');

/** The front as a table, one row a member: its inputs, then its measures. */
export const searchCsv = ({ front }: Found, ask: Ask): string =>
  csvFile(
    [...(front[0]?.edits ?? []).map(({ pointer }) => pointer), ...asked(ask).map(measureTitle)],
    front.map(({ edits, values }): Cell[] => [
      ...edits.map(({ value }): Cell =>
        typeof value === 'number' ? { value, decimals: INPUT_DECIMALS } : ruleCell(value),
      ),
      ...asked(ask).map((measure): Cell => {
        const value = values[measure.name] ?? null;
        return value === null ? '' : { value, decimals: decimalsOf(measure) };
      }),
    ]),
  );
