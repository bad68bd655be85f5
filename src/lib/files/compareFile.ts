import { plainText } from '$lib/project/sentence.ts';
import { findingDocuments } from '$lib/solution/findings/findingDocument.ts';
import type { Comparison } from '$lib/study/compare.ts';
import type { Measure } from '$lib/study/measure.ts';
import { csvFile, type Cell } from './csv.ts';
import { decimalsOf, measureTitle, valuesDocument } from './measureText.ts';

/** A comparison as a document of JSON: lengths in mm, angles in degrees, nothing rounded. */
export function compareFile({ layouts, ...rest }: Comparison, by: readonly Measure[]): string {
  const document = {
    format: 'wedgewright/compare',
    version: 1,
    layouts: layouts.map(({ name, ok, values, findings, reason }) => ({
      name,
      ok,
      measures: valuesDocument(values, by),
      findings: findings && findingDocuments(findings),
      reason: reason?.map(({ pointer, message }) => ({ pointer, message: plainText(message) })) ?? null,
    })),
    ...rest,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

/** The measures as a table, one row a layout. */
export const compareCsv = ({ layouts }: Comparison, by: readonly Measure[]): string =>
  csvFile(
    ['layout', ...by.map(measureTitle)],
    layouts.map(({ name, values }) => [
      name,
      ...by.map((measure): Cell => {
        const value = values[measure.name] ?? null;
        return value === null ? '' : { value, decimals: decimalsOf(measure) };
      }),
    ]),
  );
