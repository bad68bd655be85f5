import { unzipSync } from 'fflate';
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import type { allFiles } from '$lib/files/allFiles.ts';
import { buildSheet } from '$lib/files/buildSheet/buildSheet.ts';
import type { Block } from '$lib/files/buildSheet/block.ts';
import { solve } from '$lib/solution/solve.ts';
import { compareBuilds } from '$lib/solution/builds.ts';
import { findingText } from '$lib/solution/findings/findingText.ts';
import { ownNames } from '$lib/project/ownNames.ts';
import { sentenceText } from '$lib/project/sentence.ts';
import type { Project } from '$lib/project/project.ts';
import { steps } from '$lib/views/guide/steps.ts';
import { tablesOf } from '$lib/views/results/tables.ts';
import { sheetFigures } from '$lib/views/sheets/sheetText.ts';
import { choiceRows, countBy, refusals } from '$lib/views/workshop/choices.ts';
import type * as Lettering from '$lib/workshop/lettering/lettering.ts';
import { faultLine } from '$lib/project/fault.ts';
import { inRows } from '../inRows.ts';
import { firstLayout, project } from '../projects.ts';
import { readPdf } from './readPdf.ts';

/** Every line that is engraved: letters are strokes there, so texts are caught on the way. */
const lettered: string[] = [];
const LETTERING = '$lib/workshop/lettering/lettering.ts';

/** The writer of all files, with letters that tell what they write. */
let write: typeof allFiles;

beforeAll(async () => {
  vi.resetModules();
  vi.doMock(LETTERING, async (original) => {
    const real = await original<typeof Lettering>();
    return {
      ...real,
      letter: (...words: Parameters<typeof real.letter>) => {
        lettered.push(words[0]);
        return real.letter(...words);
      },
    };
  });
  write = (await import('$lib/files/allFiles.ts')).allFiles;
});
beforeEach(() => {
  lettered.length = 0;
});
afterAll(() => {
  vi.doUnmock(LETTERING);
  vi.resetModules();
});

/** A metric length or area, a unit alone among it: `6 mm`, `Width, mm`, `66.2 m`, `3 cm`, `0.4 l`. */
const METRIC = /\b(mm|cm|millimetres?|centimetres?|metres?)\b|mm[²³]|\d[ \u202f\u00a0]?(m|l)\b/;

const metric = (texts: readonly string[], of: Project): readonly string[] => {
  const names = [...ownNames(of)].sort((a, b) => b.length - a.length);
  return texts.filter((text) => METRIC.test(names.reduce((rest, name) => rest.replaceAll(name, ''), text)));
};

const cases = (['stacked', 'skinned', 'ribbed', 'solid'] as const).flatMap((build) =>
  // Decimals for one base, fractions for the other.
  (
    [
      ['turned', 32],
      ['square-to-desk', null],
    ] as const
  ).map(([base, fraction]) => [build, base, fraction] as const),
);

const DETAILS = {
  stacked: { corner: 4, relief: {}, cheeks: {}, cable: { width: 12, depth: 6, fromRear: 60 } },
  skinned: { corner: 60, relief: {}, pockets: { count: 2, diameter: 10, depth: 30 }, ribs: {} },
  ribbed: { ribs: {}, relief: {} },
  solid: { corner: 4, recess: { depth: 1 }, ribs: {} },
} as const;

function inchProject(build: keyof typeof DETAILS, base: string, fraction: number | null): Project {
  return project({
    '/display': { length: 'in', fraction },
    '/layouts/0/monitors/0/width': 900,
    // Of a board three times as thick there are as many texts, and a third of the slices that all differ.
    '/stock/0/thickness': 9.1,
    '/layouts/0/stand': {
      lift: 40,
      build,
      base,
      veneer: 0.6,
      glue: 0.05,
      feet: 3,
      pad: 2,
      ...(build === 'ribbed' || base !== 'turned' ? {} : { stop: { height: 8, thickness: 6 } }),
      ...DETAILS[build],
    },
  });
}

describe.each(cases)('%s, %s, inches in fractions of %s', (build, base, fraction) => {
  const of = inchProject(build, base, fraction);
  const planned = solve(of, firstLayout(of));
  if (!planned.ok) throw new Error(planned.faults.map(faultLine).join('; '));
  const sheets = inRows(planned.value);
  if (!sheets.ok) throw new Error(sheets.faults.map(faultLine).join('; '));

  test('everything on paper, on parts and in lists is in inches', async () => {
    const made = await write(planned.value, sheets.value);
    if (!made.ok) throw new Error(made.faults.map(faultLine).join('; '));
    const printed = made.value.files.flatMap(({ path, content }) =>
      path.endsWith('.pdf') && typeof content !== 'string' ? readPdf(content).pages : [],
    );
    const texts = [...lettered, ...printed.flatMap((page) => page.texts.map(({ text }) => text))];
    expect(lettered.length).toBeGreaterThan(0);
    expect(texts.length).toBeGreaterThan(200);
    expect(metric(texts, of)).toEqual([]);
    const lists = made.value.files.filter(({ path }) => path.endsWith('.csv'));
    expect(lists.length).toBeGreaterThan(0);
    expect(
      metric(
        lists.flatMap(({ content }) => String(content).split('\n')),
        of,
      ),
    ).toEqual([]);
    // What a file is in stands in the list of files: drawings and bodies are in mm for every machine.
    const listed = JSON.parse(String(made.value.files.at(-1)?.content)) as { files: { about: string }[] };
    const abouts = listed.files.map(({ about }) => about.replace(/; (SVG|DXF|STL|3MF) in mm$/, ''));
    expect(metric(abouts, of)).toEqual([]);
    for (const { path, content } of made.value.files) {
      if (!path.endsWith('.3mf') || typeof content === 'string') continue;
      expect(new TextDecoder().decode(unzipSync(content)['3D/3dmodel.model'])).toContain('unit="millimeter"');
    }
  });

  test('the build sheet on the page, and what the pages say of the plan, is in inches', () => {
    const layout = firstLayout(of);
    const sections = buildSheet({ plan: planned.value, sheets: sheets.value });
    const blocks = sections.flatMap((section) => section.blocks);
    expect(metric([...sections.map(({ title }) => title), ...blocks.flatMap(textsOf)], of)).toEqual([]);
    const { stand, findings } = planned.value;
    const said = [
      ...findings.map((finding) => findingText(finding, of.display)),
      ...[stand.left, stand.right].flatMap((one) => one.steps.map((step) => sentenceText(step, of.display))),
      ...sheets.value.map((sheet) => sheetFigures(sheet, of.display)),
      ...steps.flatMap(({ title, how, well }) => [title, ...how, well.in]),
      ...tablesOf(planned.value, of.display).flatMap((table) => JSON.stringify(table)),
      ...choiceRows(compareBuilds(of, layout, countBy(of)), 'in').flatMap(({ name, cells }) => [
        name,
        ...cells.filter((cell) => cell !== null),
      ]),
    ];
    expect(metric(said, of)).toEqual([]);
  });
});

test('a build that cannot be had says why in inches', () => {
  const of = project({ '/display': { length: 'in', fraction: 16 }, '/layouts/0/stand/lift': 1 });
  const said = refusals(compareBuilds(of, firstLayout(of)), of);
  expect(said.map(({ build }) => build)).toEqual(['stacked', 'skinned', 'ribbed', 'solid']);
  for (const { text } of said) {
    expect(text).toBe('Needs a thin end of at least 0.118″, not 0.039″: raise the lift by 0.079″');
  }
});

test('a metric length is told from what only looks like one', () => {
  const of = project();
  expect(
    metric(['rods of 6 mm', 'Width, mm', '66.2 m', '178.3 mm wide', '3 mm²', 'Two millimetres', '0.4 l'], of),
  ).toHaveLength(7);
  expect(metric(['MDF 3 mm', '6.5 in', '3 min', '12 lb', '4 layers', 'M6', 'a 3 m'], of)).toEqual(['a 3 m']);
});

function textsOf(block: Block): string[] {
  switch (block.kind) {
    case 'text':
      return [block.text];
    case 'list':
      return [block.title ?? '', ...block.items];
    case 'code':
      return [block.title];
    case 'table':
      return [block.title, ...block.columns, ...block.rows.flat(), block.note ?? ''];
    case 'drawing':
      return [block.title];
  }
}
