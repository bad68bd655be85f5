import type { CutListRow } from '$lib/workshop/cutList.ts';
import { fromMillimetres, type LengthUnit } from '$lib/project/units.ts';
import { csvFile, type Cell } from './csv.ts';

interface Column {
  readonly title: string;
  readonly cell: (row: CutListRow) => Cell;
}

/** A hundredth of a millimetre, or about as much in inches. */
const DECIMALS = { mm: 2, in: 4 } as const;

const count = (value: number): Cell => ({ value, decimals: 0 });

function columnsIn(unit: LengthUnit): readonly Column[] {
  const length = (mm: number): Cell => ({ value: fromMillimetres(mm, unit), decimals: DECIMALS[unit] });
  const area = (mm2: number): Cell => length(fromMillimetres(mm2, unit));
  return [
    { title: 'Part', cell: ({ part }) => part },
    { title: 'Stock', cell: ({ stock }) => stock },
    { title: `Thickness ${unit}`, cell: ({ thickness }) => length(thickness) },
    { title: 'Left stand', cell: ({ left }) => count(left) },
    { title: 'Right stand', cell: ({ right }) => count(right) },
    { title: 'Both stands', cell: ({ quantity }) => count(quantity) },
    { title: `Width ${unit}`, cell: ({ width }) => length(width) },
    { title: `Height ${unit}`, cell: ({ height }) => length(height) },
    { title: `Area ${unit}²`, cell: (row) => area(row.area) },
    { title: `Cut length ${unit}`, cell: ({ cutLength }) => length(cutLength) },
    // With "&": a comma, point, slash or hyphen between numbers would make a spreadsheet see a number or a date.
    { title: 'On sheets', cell: ({ sheets }) => sheets.join(' & ') },
    { title: 'Label', cell: ({ label }) => label },
  ];
}

/**
 * The cut list as a CSV file; sizes, areas and cut lengths are of one copy at its finished size.
 *
 * @param unit what lengths are shown in; decimals, for a spreadsheet adds no fractions up.
 */
export function cutListFile(rows: readonly CutListRow[], unit: LengthUnit = 'mm'): string {
  const columns = columnsIn(unit);
  return csvFile(
    columns.map(({ title }) => title),
    rows.map((row) => columns.map(({ cell }) => cell(row))),
  );
}
