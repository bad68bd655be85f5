import { plainText } from '$lib/project/sentence.ts';
import type { Fault } from '$lib/project/fault.ts';
import type { Measure } from '$lib/study/measure.ts';
import { headlineOf } from '$lib/solution/findings/headline.ts';
import type { Sweep } from '$lib/study/sweep.ts';
import { csvFile, type Cell } from './csv.ts';
import { decimalsOf, measureTitle, valuesDocument } from './measureText.ts';

/** A sweep as a document of JSON: lengths in mm, angles in degrees, nothing rounded. */
export function sweepFile({ over, rows, gaps, kinks, findings }: Sweep, by: readonly Measure[]): string {
  const document = {
    format: 'wedgewright/sweep',
    version: 1,
    over: { pointer: over.pointer, unit: over.field.unit, now: over.now },
    rows: rows.map(({ at, ok, values, reason }) => ({
      at,
      ok,
      measures: valuesDocument(values, by),
      reason: reason && reasonDocument(reason),
    })),
    gaps: gaps.map((gap) => ({ ...gap, reason: reasonDocument(gap.reason) })),
    kinks,
    findings: findings.map(({ finding, from, to }) => ({
      code: finding.code,
      level: finding.level,
      sides: finding.sides,
      from,
      to,
      text: plainText(headlineOf(finding)),
    })),
    limits: Object.fromEntries(by.flatMap(({ name, limit }) => (limit ? [[name, limit]] : []))),
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

const reasonDocument = (faults: readonly Fault[]) =>
  faults.map(({ pointer, message }) => ({ pointer, message: plainText(message) }));

/** How finely the values of an input are written. */
const INPUT_DECIMALS = 4;

/** The measures as a table, one row a value; empty where there is no answer. */
export const sweepCsv = ({ over, rows }: Sweep, by: readonly Measure[]): string =>
  csvFile(
    [over.field.unit === '' ? over.pointer : `${over.pointer} (${over.field.unit})`, ...by.map(measureTitle)],
    rows.map(({ at, values }): Cell[] => [
      { value: at, decimals: INPUT_DECIMALS },
      ...by.map((measure): Cell => {
        const value = values[measure.name] ?? null;
        return value === null ? '' : { value, decimals: decimalsOf(measure) };
      }),
    ]),
  );
