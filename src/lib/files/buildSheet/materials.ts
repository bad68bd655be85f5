import type { Project } from '$lib/project/project.ts';
import { materialsOf, type Material } from '$lib/solution/materials.ts';
import { MM_PER_INCH } from '$lib/project/units.ts';
import { list, table, type Section } from './block.ts';
import { lengthsOf, type Subject } from './subject.ts';

/** What to buy and to have at hand, for both stands. */
export function materials({ plan, sheets }: Subject): Section {
  const { project, layout } = plan;
  const rows = materialsOf(project, layout, plan, sheets);
  const { unit } = lengthsOf(project);
  const notes = rows.filter(({ note }) => note !== '').map(({ what, note }) => `${what}: ${note}`);
  return {
    id: 'materials',
    title: 'Materials',
    blocks: [
      table(
        `Materials for both stands, sizes in ${unit}`,
        ['Material', 'Quantity', 'Size'],
        rows.map((row) => [
          row.of === null ? row.what : `${row.what}, ${row.of}`,
          quantityText(row, project.display.length),
          sizeText(row, project),
        ]),
      ),
      list([...new Set(notes)], 'To know'),
    ],
  };
}

const MM2_IN = { mm: { each: 1e6, name: 'm²' }, in: { each: (12 * MM_PER_INCH) ** 2, name: 'ft²' } } as const;

function quantityText({ quantity, unit }: Material, display: 'mm' | 'in'): string {
  if (unit === 'pieces') return String(quantity);
  if (unit === 'g') return `${Math.ceil(quantity)} g`;
  const { each, name } = MM2_IN[display];
  return `${(quantity / each).toFixed(2)} ${name}`;
}

/** `600 × 400 × 3.05`, `⌀ 6 × 161.7`; thicknesses and diameters as a caliper reads them. */
function sizeText({ length, width, thickness, diameter }: Material, project: Project): string {
  const { bare, fine } = lengthsOf(project);
  const sizes = [
    ...(diameter === null ? [] : [`⌀ ${fine(diameter)}`]),
    ...[length, width].filter((mm) => mm !== null).map(bare),
    ...(thickness === null ? [] : [fine(thickness)]),
  ];
  return sizes.join(' × ') || '–';
}
