import type { Project } from '$lib/project/project.ts';
import type { StandPlan } from '$lib/solution/document.ts';
import { takesOf } from '$lib/solution/sheets.ts';
import { alikeSheets } from '$lib/workshop/nesting/alikeSheets.ts';
import { cutList } from '$lib/workshop/cutList.ts';
import { sheetName } from '$lib/workshop/part.ts';
import { arrangements } from './arrangements.ts';
import { table, text, type Block, type Section } from './block.ts';
import { alikeOnce, lengthsOf, toldStands, type Subject } from './subject.ts';

/** What to cut for both stands, from which sheets, and how it adds up to the width of each. */
export function cutting(subject: Subject): Section {
  const { plan } = subject;
  const { project } = plan;
  const { fine, unit } = lengthsOf(project);
  const widths = alikeOnce(
    toldStands(plan).map(({ who, stand }) => ({
      who,
      of: {
        rows: [
          ...stand.widths.map(({ what, each, count }) => [what, fine(each), String(count), fine(each * count)]),
          ['finished width', '', '', fine(stand.width)],
        ],
        note: spreadText(project, stand),
      },
    })),
    ({ who, of: { rows, note } }) => [
      table(`${who}: how the width adds up, ${unit}`, ['', 'each', 'count', 'sum'], rows, note),
    ],
  );
  return {
    id: 'cutting',
    title: 'Cut list and widths',
    blocks: [
      ...(plan.parts.length > 0
        ? [partList(subject), ...sheetList(subject), ...arrangements(subject)]
        : [text('Nothing is cut from sheet.')]),
      ...widths,
    ],
  };
}

function partList({ plan, sheets }: Subject): Block {
  const { project, parts } = plan;
  const { bare, fine, unit } = lengthsOf(project);
  return table(
    `Cut list for both stands, finished sizes in ${unit}`,
    ['Part', 'Stock', 'Thickness', 'Left', 'Right', 'Both', 'Width', 'Height', 'Sheets'],
    cutList(parts, takesOf(plan), sheets).map((row) => [
      row.part,
      row.stock,
      fine(row.thickness),
      String(row.left),
      String(row.right),
      String(row.quantity),
      bare(row.width),
      bare(row.height),
      row.sheets.length > 0 ? runs(row.sheets) : '–',
    ]),
    'Sizes are without kerf: the sheet files allow for it.',
  );
}

function sheetList({ plan: { project }, sheets }: Subject): Block[] {
  if (sheets.length === 0) return [];
  const { bare, unit } = lengthsOf(project);
  return [
    table(
      `Sheets to cut for both stands, ${unit}`,
      ['Drawing', 'Width', 'Height', 'Parts on it', 'Cut'],
      alikeSheets(sheets).map(({ sheet, numbers }) => [
        sheetName(sheet),
        bare(sheet.width),
        bare(sheet.height),
        String(sheet.placements.length),
        `× ${numbers.length}`,
      ]),
    ),
  ];
}

/** How far the width may be off, each cause for itself; null where it is of one piece. */
function spreadText(project: Project, { widthSpread: spread }: StandPlan): string | null {
  if (spread === null) return null;
  const { fineFull } = lengthsOf(project);
  const { boards, read, alike, each, packed, joints, glue } = spread;
  const glued =
    glue.most > glue.least
      ? ` Glue lines, not measured: ${signed(glue.least, fineFull)} to ${signed(glue.most, fineFull)} in all ${joints}.`
      : '';
  return `${boards} boards read to ±${fineFull(read)}: if all are off alike, as from one reading, the width is off by ±${fineFull(alike)}; if each is off for itself by ±${fineFull(each)}; from a pack of ten read at once by ±${fineFull(packed)}.${glued}`;
}

const signed = (mm: number, say: (mm: number) => string): string => (mm > 0 ? `+${say(mm)}` : say(mm));

/** Numbers that follow on each other as a run: `1–4, 6`. */
function runs(sheets: readonly (number | string)[]): string {
  const told: string[] = [];
  let [from, to]: [number | null, number] = [null, 0];
  const close = (): void => {
    if (from !== null) told.push(from === to ? String(from) : `${from}–${to}`);
    from = null;
  };
  for (const sheet of sheets) {
    if (typeof sheet === 'number' && from !== null && sheet === to + 1) {
      to = sheet;
      continue;
    }
    close();
    if (typeof sheet === 'number') [from, to] = [sheet, sheet];
    else told.push(sheet);
  }
  close();
  return told.join(', ');
}
