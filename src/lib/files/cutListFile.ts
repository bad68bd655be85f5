import type { CutListRow } from '$lib/workshop/cutList.ts';
import { csvFile, type Cell } from './csv.ts';

interface Column {
  readonly title: string;
  readonly cell: (row: CutListRow) => Cell;
}

const count = (value: number): Cell => ({ value, decimals: 0 });
const measure = (value: number): Cell => ({ value, decimals: 2 });

const columns: readonly Column[] = [
  { title: 'Part', cell: ({ part }) => part },
  { title: 'Stock', cell: ({ stock }) => stock },
  { title: 'Thickness mm', cell: ({ thickness }) => measure(thickness) },
  { title: 'Quantity', cell: ({ quantity }) => count(quantity) },
  { title: 'Width mm', cell: ({ width }) => measure(width) },
  { title: 'Height mm', cell: ({ height }) => measure(height) },
  { title: 'Area mm²', cell: ({ area }) => measure(area) },
  { title: 'Cut length mm', cell: ({ cutLength }) => measure(cutLength) },
  // With "&": a comma, point, slash or hyphen between numbers would make a spreadsheet see a number or a date.
  { title: 'On sheets', cell: ({ sheets }) => sheets.join(' & ') },
  { title: 'Label', cell: ({ label }) => label },
];

/** The cut list as a CSV file; sizes, areas and cut lengths are of one copy at its finished size. */
export const cutListFile = (rows: readonly CutListRow[]): string =>
  csvFile(
    columns.map(({ title }) => title),
    rows.map((row) => columns.map(({ cell }) => cell(row))),
  );
