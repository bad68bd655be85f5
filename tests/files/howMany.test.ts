import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { allFiles } from '$lib/files/allFiles.ts';
import { buildSheet } from '$lib/files/buildSheet/buildSheet.ts';
import { solve } from '$lib/solution/solve.ts';
import { parseProject } from '$lib/project/parse.ts';
import { faultLine } from '$lib/project/fault.ts';
import { root } from '../../tools/root.mjs';
import { inRows, rowsOf } from '../inRows.ts';
import { firstLayout, project } from '../projects.ts';
import { readCsv } from './readCsv.ts';

const cases = (['stacked', 'skinned', 'ribbed', 'solid'] as const).flatMap((build) =>
  (['turned', 'square-to-desk'] as const).map((base) => [build, base] as const),
);

async function made(build: string, base: string) {
  const of = project({ '/layouts/0/stand': { lift: 30, build, base } });
  const planned = solve(of, firstLayout(of));
  if (!planned.ok) throw new Error(planned.faults.map(faultLine).join('; '));
  const sheets = inRows(planned.value);
  if (!sheets.ok) throw new Error('the layout has sheets');
  const result = await allFiles(planned.value, sheets.value);
  if (!result.ok) throw new Error('the layout has files');
  const { files } = result.value;
  const content = (path: string): string | Uint8Array => files.find((file) => file.path === path)?.content ?? '';
  return { of, planned: planned.value, sheets: sheets.value, files, content };
}

describe.each(cases)('%s, %s', (build, base) => {
  let all: Awaited<ReturnType<typeof made>>;
  // Every file of a layout: a busy machine takes longer than a hook is given otherwise.
  beforeAll(async () => void (all = await made(build, base)), 120_000);

  test('every count on paper, in the list and in the files is that of the bodies that are built', () => {
    const { planned, sheets, files, content } = all;
    const { stand, parts } = planned;
    const taken = (side: 'left' | 'right', part: string): number =>
      stand[side].pieces.find((take) => take.part === part)?.quantity ?? 0;
    for (const { name, quantity } of parts) expect(taken('left', name) + taken('right', name)).toBe(quantity);

    const rows = readCsv(String(content('cut-list.csv')).slice(1)).slice(1);
    expect(rows.map((row) => [row[0], ...row.slice(3, 6).map(Number)])).toEqual(
      parts.map(({ name, quantity }) => [name, taken('left', name), taken('right', name), quantity]),
    );

    const blocks = buildSheet({ plan: planned, sheets }).flatMap((section) => section.blocks);
    const told = blocks.find((block) => block.kind === 'table' && block.title.startsWith('Cut list for both'));
    expect(told?.kind === 'table' ? told.rows.map((row) => [row[0], ...row.slice(3, 6).map(Number)]) : []).toEqual(
      parts.map(({ name, quantity }) => [name, taken('left', name), taken('right', name), quantity]),
    );
    // What is told under a stand is of that stand: nothing is told of two at once.
    const titles = blocks.map((block) => ('title' in block ? block.title : ''));
    expect(titles.filter((title) => title?.startsWith('Both'))).toEqual([]);

    const cut = files.filter(({ path }) => /^sheets\/.*\.svg$/.test(path));
    const loose = cut.map(({ path, content: svg }) => {
      const times = Number(/ cut (\d+) times\.svg$/.exec(path)?.[1] ?? 1);
      const outside = /<g id="outside"[\s\S]*?<\/g>/.exec(String(svg))?.[0] ?? '';
      return times * (outside.match(/<path /g) ?? []).length;
    });
    expect(loose.reduce((sum, count) => sum + count, 0)).toBe(parts.reduce((sum, { quantity }) => sum + quantity, 0));

    const printed = [...stand.left.printed, ...stand.right.printed].reduce((sum, { quantity }) => sum + quantity, 0);
    const solids = content('solids/stands.3mf');
    if (solids instanceof Uint8Array) {
      const model = new TextDecoder().decode(unzipSync(solids)['3D/3dmodel.model']);
      expect((model.match(/<item /g) ?? []).length).toBe(printed > 0 ? printed : 2);
    } else expect(printed).toBe(0);
  });

  test('the list names each file for what it is; the set holds its project; the README names every file', () => {
    const { of, content, files } = all;
    expect(parseProject(String(content('project.json')))).toMatchObject({ ok: true, value: of });
    const { files: listed } = JSON.parse(String(content('manifest.json'))) as {
      files: { path: string; about: string }[];
    };
    const twice = listed.filter(({ about }, i) => listed.findIndex((other) => other.about === about) !== i);
    // Whole sheets of one stock that differ are told apart by their names alone.
    expect(twice.filter(({ path }) => !path.startsWith('sheets/'))).toEqual([]);
    const known = patternsOf(readFileSync(`${root}README.md`, 'utf8'));
    expect(files.map(({ path }) => path).filter((path) => !known.some((pattern) => pattern.test(path)))).toEqual([]);
  });
});

test('sheets for a router say that no holding tabs are drawn in them, and how large to set them; others say nothing of tabs', async () => {
  const abouts = async (router: unknown) => {
    const of = project({
      '/shop': { router },
      '/cutter/spacing': 10,
      '/cutter/margin': 10,
      '/layouts/0/stand/rods': null,
    });
    const planned = solve(of, firstLayout(of));
    if (!planned.ok) throw new Error(planned.faults.map(faultLine).join('; '));
    const made = await allFiles(planned.value, rowsOf(planned.value));
    if (!made.ok) throw new Error(made.faults.map(faultLine).join('; '));
    const { files } = made.value;
    const manifest = String(files.find(({ path }) => path === 'manifest.json')?.content);
    return [...manifest.matchAll(/"about": "(Sheet of [^"]*)"/g)].map(([, about = '']) =>
      about.replaceAll('\u202f', ' '),
    );
  };
  const [bare] = await abouts({ bit: 3 });
  expect(bare).toContain('no holding tabs are drawn: set them in the router’s program; SVG');
  const tabbed = await abouts({ bit: 3, tab: { width: 6, height: 1.5 } });
  expect(tabbed.length).toBeGreaterThan(0);
  for (const about of tabbed) expect(about).toContain('set them in the router’s program, 6 mm wide and 1.5 mm high;');
  for (const about of await abouts({ bit: null, tab: { width: 6, height: 1.5 } })) expect(about).not.toContain('tabs');
});

/** The paths in the README's table of files: `DIR/parts/<part>.svg`, `.dxf`. */
function patternsOf(readme: string): readonly RegExp[] {
  return readme.split('\n').flatMap((line) => {
    const names = [...(line.split('|')[1] ?? '').matchAll(/`([^`]+)`/g)].map(([, name = '']) => name);
    const [first = ''] = names;
    if (!first.startsWith('DIR/')) return [];
    const paths = names.map((name) => {
      if (name.startsWith('DIR/')) return name.slice(4);
      const base = first.slice(4);
      return name.startsWith('.') ? base.replace(/\.\w+$/, name) : base.replace(/[^/]*$/, name);
    });
    return paths.map((path) => {
      const pattern = path.endsWith('/') ? `${path}<name>` : path;
      return new RegExp(`^${pattern.split(/<\w+>/).map(escaped).join('[^/]+')}$`);
    });
  });
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
