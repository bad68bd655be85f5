import type { Comparison } from '$lib/study/compare.ts';
import type { Measure } from '$lib/study/measure.ts';

/** The table of a comparison as a file, the same that the command prints. What is still being worked out is left out. */
export async function makeCsv(
  title: string,
  comparison: Comparison,
  by: readonly Measure[],
): Promise<{ readonly path: string; readonly text: string }> {
  const [{ compareCsv }, { fileStem }] = await Promise.all([
    import('$lib/files/compareFile.ts'),
    import('$lib/files/fileName.ts'),
  ]);
  const known = by.filter(({ name }) => comparison.layouts.some(({ values }) => name in values));
  return { path: `${fileStem(`${title} - compared`)}.csv`, text: compareCsv(comparison, known) };
}
