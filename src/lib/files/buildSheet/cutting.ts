import { cutList } from '$lib/workshop/cutList.ts';
import { table, text, type Section } from './block.ts';
import { lengthsOf, toldStands, type Subject } from './subject.ts';

/** What to cut and how it adds up to the width. */
export function cutting({ project, plan, sheets }: Subject): Section {
  const { bare, fine, unit } = lengthsOf(project);
  const rows = cutList(plan.parts, sheets).map((row) => [
    row.part,
    row.stock,
    fine(row.thickness),
    String(row.quantity),
    bare(row.width),
    bare(row.height),
    row.sheets.length > 0 ? row.sheets.join(', ') : '–',
  ]);
  const widths = toldStands(plan).map(({ who, stand }) =>
    table(
      `${who}: how the width adds up, ${unit}`,
      ['', 'each', 'count', 'sum'],
      [
        ...stand.widths.map(({ what, each, count }) => [what, fine(each), String(count), fine(each * count)]),
        ['finished width', '', '', fine(stand.width)],
      ],
    ),
  );
  return {
    id: 'cutting',
    title: 'Cut list and widths',
    blocks: [
      ...(rows.length > 0
        ? [
            table(
              `Cut list, finished sizes in ${unit}`,
              ['Part', 'Stock', 'Thickness', 'Quantity', 'Width', 'Height', 'Sheets'],
              rows,
              'No kerf is in these sizes: the sheet files have it.',
            ),
          ]
        : [text('Nothing is cut from sheet.')]),
      ...widths,
    ],
  };
}
