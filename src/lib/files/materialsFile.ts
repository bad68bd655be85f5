import type { Material } from '$lib/solution/materials.ts';
import { fromMillimetres, type LengthUnit } from '$lib/project/units.ts';
import { csvFile, type Cell } from './csv.ts';

/** A hundredth of a millimetre, or about as much in inches. */
const DECIMALS = { mm: 2, in: 4 } as const;

/** The materials of both stands as a CSV file; lengths in the unit, areas in its square. */
export function materialsFile(materials: readonly Material[], unit: LengthUnit): string {
  const length = (mm: number | null): Cell =>
    mm === null ? '' : { value: fromMillimetres(mm, unit), decimals: DECIMALS[unit] };
  const columns: readonly (readonly [title: string, cell: (row: Material) => Cell])[] = [
    ['Material', ({ what }) => what],
    ['Made of', ({ of }) => of ?? ''],
    ['Both stands', ({ quantity, unit: of }) => amount(quantity, of, unit)],
    ['Counted in', ({ unit: of }) => (of === 'mm²' ? `${unit}²` : of)],
    [`Length ${unit}`, (row) => length(row.length)],
    [`Width ${unit}`, (row) => length(row.width)],
    [`Thickness ${unit}`, (row) => length(row.thickness)],
    [`Diameter ${unit}`, (row) => length(row.diameter)],
    ['Note', ({ note }) => note],
  ];
  return csvFile(
    columns.map(([title]) => title),
    materials.map((row) => columns.map(([, cell]) => cell(row))),
  );
}

const amount = (value: number, of: Material['unit'], unit: LengthUnit): Cell =>
  of === 'mm²'
    ? { value: fromMillimetres(fromMillimetres(value, unit), unit), decimals: unit === 'mm' ? 0 : 1 }
    : { value, decimals: 0 };
