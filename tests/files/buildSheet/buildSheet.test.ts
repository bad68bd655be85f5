import jsQR from 'jsqr';
import { expect, test } from 'vitest';
import { buildSheet } from '$lib/files/buildSheet/buildSheet.ts';
import { buildSheetPdf, pagesOf } from '$lib/files/buildSheet/buildSheetPdf.ts';
import { primitivesBox, type Primitive } from '$lib/drawing/primitive.ts';
import { wholeFindings } from '$lib/solution/findings/whole.ts';
import { planGauges } from '$lib/solution/gauges.ts';
import { solve } from '$lib/solution/solve.ts';
import { angleText } from '$lib/project/lengthText.ts';
import { canLetter } from '$lib/workshop/lettering/lettering.ts';
import type { Block } from '$lib/files/buildSheet/block.ts';
import { textWidth } from '$lib/drawing/dimensionStyle.ts';
import { textLength } from '$lib/files/pdf/pageFont.ts';
import { readLink, writeLink } from '$lib/files/link.ts';
import { sheetsOf } from '$lib/solution/sheets.ts';
import { alikeSheets } from '$lib/workshop/nesting/alikeSheets.ts';
import { sheetName } from '$lib/workshop/part.ts';
import { firstLayout, project } from '../../projects.ts';
import { readPdf, type ReadPage } from '../readPdf.ts';

function subject(changes: Readonly<Record<string, unknown>>) {
  const of = project(changes);
  const layout = firstLayout(of);
  const made = solve(of, layout);
  if (!made.ok) throw new Error('the layout has a plan');
  return { plan: made.value, sheets: [] };
}

test.each([
  ['stacked', {}],
  ['skinned', {}],
  ['ribbed', { '/layouts/0/stand/lift': 30 }],
  ['solid', { '/display/length': 'in' }],
])('%s: every letter has a shape, nothing leaves its page, tables are whole', (build, changes) => {
  const of = subject({ '/layouts/0/stand/build': build, ...changes });
  const sections = buildSheet(of);
  for (const block of sections.flatMap(({ blocks }) => blocks)) {
    if (block.kind === 'text') expect(canLetter(block.text)).toBe(true);
    if (block.kind === 'drawing') expect(canLetter(block.note ?? '')).toBe(true);
    if (block.kind === 'list') expect(block.items.every(canLetter)).toBe(true);
    if (block.kind === 'table') for (const row of block.rows) expect(row).toHaveLength(block.columns.length);
  }
  for (const paper of ['A4', 'Letter'] as const) {
    for (const { width, height, primitives } of pagesOf('sheet', sections, of.plan.project.display, paper)) {
      const [left, top, right, bottom] = primitivesBox(primitives.map(asSet));
      // Printers leave some 6 mm white (common practice, no source).
      expect(Math.min(left, top, width - right, height - bottom)).toBeGreaterThan(6);
    }
  }
});

/** Room for texts is reckoned by the drawing's own letters, wider than those that are set. */
const asSet = (one: Primitive): Primitive =>
  one.kind === 'text' && one.text !== ''
    ? { ...one, size: (one.size * textLength(one.text, 1)) / textWidth(one.text, { textSize: 1 }) }
    : one;

test('the same project gives the same bytes', () => {
  const of = subject({});
  const [once, again] = [buildSheetPdf(of, 'A4'), buildSheetPdf(of, 'A4')];
  expect(Buffer.compare(once, again)).toBe(0);
});

test.each([
  ['stacked', 'mm'],
  ['solid', 'in'],
])('%s, %s: the PDF holds every word and number of the sheet as text in less than 100 kB', (build, unit) => {
  const of = subject({
    '/layouts/0/stand/build': build,
    '/display': { length: unit, fraction: unit === 'in' ? 16 : null },
  });
  const bytes = buildSheetPdf(of, 'A4');
  const { pages, font } = readPdf(bytes);
  const told = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
  const plain = (words: string): string => words.replace(/\p{Zs}/gu, ' ');
  for (const block of buildSheet(of).flatMap(({ title, blocks }) => [
    { kind: 'text', text: title } as const,
    ...blocks,
  ])) {
    for (const words of wordsOf(block)) for (const word of plain(words).split(' ')) expect(told).toContain(word);
  }
  expect(font.name).toMatch(/^[A-Z]{6}\+/);
  expect(bytes.length).toBeLessThan(100_000);
  // Fills and hatching as on the page.
  const fills = new Set(pages.flatMap(({ paths }) => paths.map(({ fill }) => fill)));
  for (const fill of ['/H', '0 0 0', '1 1 1']) expect(fills).toContain(fill);
  expect(fills.size).toBeGreaterThan(6);
});

function wordsOf(block: Block): readonly string[] {
  switch (block.kind) {
    case 'text':
      return [block.text];
    case 'list':
      return [block.title ?? '', ...block.items];
    case 'table':
      return [block.title, ...block.columns, ...block.rows.flat(), block.note ?? ''];
    case 'drawing':
      return [block.title, block.note ?? ''];
    case 'code':
      return [block.title];
  }
}

const everyStand = ['stacked', 'skinned', 'ribbed', 'solid'].flatMap((build) =>
  ['turned', 'square-to-desk'].map((base) => [build, base] as const),
);

test.each(everyStand)(
  '%s, %s: an inch project has no millimetre and no length that reads as nothing',
  (build, base) => {
    const stand = { '/layouts/0/stand/build': build, '/layouts/0/stand/base': base, '/layouts/0/stand/lift': 40 };
    const of = subject({ ...stand, '/layouts/0/stand/pad': 2, '/display': { length: 'in', fraction: 16 } });
    const names = of.plan.project.stock.map(({ name }) => name);
    const sentences = buildSheet(of).flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === 'text' ? [block.text] : block.kind === 'list' ? block.items : [])),
    );
    for (const sentence of sentences) {
      const said = names.reduce((text, name) => text.replaceAll(name, ''), sentence);
      expect(said).not.toMatch(/\bmm\b|≈\s0″/);
    }
  },
);

const listed = (changes: Readonly<Record<string, unknown>>, id: string) =>
  buildSheet(subject(changes))
    .filter((section) => section.id === id)
    .flatMap(({ blocks }) => blocks)
    .flatMap((block) => (block.kind === 'list' ? [block] : []));

test('steps that two different blocks have in common are told once, what differs for both', () => {
  const lists = listed(
    {
      '/layouts/0/stand': { lift: 30, build: 'solid', base: 'square-to-desk' },
      '/shop': { bandSaw: { height: 300, tiltsMost: 45 } },
    },
    'gluing',
  );
  const [steps] = lists;
  expect(lists.filter(({ numbered }) => numbered)).toHaveLength(1);
  expect(steps?.title).toBe('Each stand');
  expect(new Set(steps?.items).size).toBe(steps?.items.length);
  const told = (steps?.items ?? []).filter((item) => item.includes('Left stand: '));
  expect(told).toHaveLength(1);
  expect(told[0]).toMatch(/Left stand: Saw the slope .* Right stand: Saw the slope /);
  expect((steps?.items ?? []).filter((item) => item.startsWith('Square up a blank'))).toHaveLength(1);
});

test('a cabinet against a stop is set by that, and across the stand', () => {
  const seat = (stand: Readonly<Record<string, unknown>>): string =>
    listed({ '/layouts/0/stand': { lift: 30, stop: { height: 10, thickness: 8 }, ...stand } }, 'checking')
      .filter(({ title }) => title === 'Setting the cabinet')
      .flatMap(({ items }) => items)
      .join(' ');
  expect(seat({})).toMatch(/^Both stands: the cabinet’s rear edge lies against the stop all along, its sides /);
  expect(seat({ width: 145, pad: 2, build: 'solid' })).toMatch(
    /its sides 10\s?mm beyond those of the stand, left and right alike\.$/,
  );
});

test.each([
  ['skinned', 'glue-up'],
  ['solid', 'cutting'],
  ['solid', 'machines'],
])('%s, square to the desk: what %s says alike of both stands it says once', (build, id) => {
  const of = subject({
    '/layouts/0/stand': { lift: 30, build, base: 'square-to-desk' },
    '/shop': { bandSaw: { height: 300, tiltsMost: 45 } },
  });
  const blocks = buildSheet(of)
    .filter((section) => section.id === id)
    .flatMap((section) => section.blocks);
  const said = blocks.map((block) => JSON.stringify(block).replaceAll(/Left stand|Right stand/g, 'Each stand'));
  expect(said.length).toBeGreaterThan(1);
  expect(new Set(said).size).toBe(said.length);
});

test('a stack of thick boards tells the width asked for and the width built, and no shortfall under nothing', () => {
  const of = subject({ '/stock/0/thickness': 12.1, '/layouts/0/stand/lift': 30 });
  const [stands] = buildSheet(of).flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === 'table' ? [block] : [])),
  );
  const row = (name: string) => stands?.rows.find(([first]) => first === name);
  expect(of.plan.stand.right.width).toBeGreaterThan(of.plan.stand.right.widthAsked);
  // 14 boards of 12.1 mm for a cabinet of 165 mm.
  expect(row('Width asked for')).toEqual(['Width asked for', '165', '165']);
  expect(row('Finished width')).toEqual(['Finished width', '169.4', '169.4']);
  expect(stands?.rows.flat().some((cell) => cell.includes('−'))).toBe(false);
});

test('paper templates come off a block when the last of their lines is used, before anything is glued to it', () => {
  const stop = { height: 10, thickness: 8 };
  for (const stand of [{ corner: 4, stop, veneer: 0.6 }, { stop }, { corner: 4, veneer: 0.6 }]) {
    const { plan: made } = subject({ '/layouts/0/stand': { lift: 30, build: 'solid', ...stand } });
    const acts = made.stand.right.steps.map(({ act }) => act);
    const off = acts.indexOf('strip');
    expect(off).toBeGreaterThan(
      Math.max(acts.indexOf('template'), acts.lastIndexOf('plane'), acts.lastIndexOf('round')),
    );
    for (const act of ['glue', 'veneer'] as const) if (acts.includes(act)) expect(off).toBeLessThan(acts.indexOf(act));
  }
});

test('the slope is checked bare by a gauge as high as the finished stand: where feet or veneer come later, only its gap counts', () => {
  const gap = (stand: Readonly<Record<string, unknown>>): boolean => {
    const { plan: made } = subject({ '/layouts/0/stand': { lift: 30, ...stand } });
    const { feet, veneer } = made.layout.stand;
    const [gauge] = planGauges(made, made.layout.stand);
    const heights = made.stand.right.slice.map(([, z]) => z);
    const bare = Math.max(...heights) - Math.min(...heights);
    const high = Math.max(...(gauge?.outside.vertices.map(({ y }) => y) ?? []));
    // Flush where the gauge is as high as the bare wood, and only there.
    expect(high > bare + 0.1).toBe(feet > 0 || veneer > 0);
    return made.stand.right.steps.some(({ template }) => template.includes('a gap that is the same all along'));
  };
  expect([gap({}), gap({ pad: 2 }), gap({ feet: 4 }), gap({ veneer: 0.6 })]).toEqual([false, false, true, true]);
});

test('the room for a router’s bit in a slot is no slope of the part', () => {
  const of = subject({
    '/shop': { router: { bit: 6.35 } },
    '/stock/0/thickness': 12.1,
    '/layouts/0/stand': { lift: 40, build: 'ribbed' },
  });
  const notes = new Map(
    buildSheet(of)
      .flatMap(({ blocks }) => blocks)
      .flatMap((block) => (block.kind === 'drawing' ? [[block.title, block.note ?? ''] as const] : [])),
  );
  // Cross ribs of a turned base are level on top; the ribs have the stand's own slope.
  expect(notes.get('Part cross-rib-1')).not.toContain('Slope');
  expect(notes.get('Part rib')).toContain(`Slope (${angleText(of.plan.sides.right.tilt)})`);
});

test('every fault and caution of making and standing is printed before the work begins, once, in the reader’s unit', () => {
  const heeded = (changes: Readonly<Record<string, unknown>>): readonly string[] =>
    buildSheet(subject(changes))
      .filter(({ id }) => id === 'heed')
      .flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === 'list' ? block.items : [])));
  const over = { '/layouts/0/placement/right': { x: 690, y: 300 }, '/layouts/0/stand/width': 40 };
  const said = heeded({ ...over, '/display': { length: 'in', fraction: 16 } });
  expect(said.some((item) => /^Fault: .*edge of the desk|^(Fault|Caution): .*over the desk/.test(item))).toBe(true);
  expect(said.some((item) => /^(Fault|Caution): .*(tips|falls)/.test(item))).toBe(true);
  expect(new Set(said).size).toBe(said.length);
  expect(said.join(' ')).not.toMatch(/\bmm\b|head|crossover/);
  const { plan: of } = subject(over);
  const grave = of.checks.filter(
    ({ code, level }) => level !== 'note' && /edge|tip|falls|slides|wall|collision/.test(code),
  );
  expect(said).toHaveLength(wholeFindings(grave).length);
  expect(said.length).toBeGreaterThan(1);
});

/** The code that a page carries, with the white round it, scanned at eight dots a millimetre and decoded by a library. */
function scanned({ paths }: ReadPage): string | null {
  const [DOTS, WHITE] = [8, 4 * 0.5];
  const boxes = paths.flatMap(({ points, fill, width }) => {
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    const box = { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
    const isRow = Math.abs(box.bottom - box.top - 0.5) < 0.01;
    return fill === '0 0 0' && width === null && points.length === 4 && isRow ? [box] : [];
  });
  const [left, top] = [Math.min(...boxes.map((box) => box.left)), Math.min(...boxes.map((box) => box.top))];
  const dot = (mm: number): number => Math.round((mm + WHITE) * DOTS);
  const side = dot(Math.max(...boxes.map(({ right }) => right)) - left + WHITE);
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const box of boxes) {
    for (let y = dot(box.top - top); y < dot(box.bottom - top); y += 1) {
      pixels.fill(0, 4 * (y * side + dot(box.left - left)), 4 * (y * side + dot(box.right - left)));
    }
  }
  for (let alpha = 3; alpha < pixels.length; alpha += 4) pixels[alpha] = 255;
  return jsQR(pixels, side, side)?.data ?? null;
}

test.each([
  ['millimetres', {}],
  ['inches', { '/display': { length: 'in', fraction: 16 }, '/title': 'Desk “north” – 2' }],
])('the code in the PDF opens the very project, in %s', async (_, changes) => {
  const of = subject(changes);
  const fragment = await writeLink(of.plan.project);
  if (!fragment.ok) throw new Error('the project has a link');
  const link = `https://desk.example/some/where/#${fragment.value}`;
  const { pages } = readPdf(buildSheetPdf({ ...of, link }, 'A4'));
  const coded = pages.find(({ texts }) => texts.some(({ text }) => text === 'Project as a QR code'));
  expect(coded && scanned(coded)).toBe(link);
  expect(await readLink(new URL(link).hash)).toEqual({ kind: 'project', project: of.plan.project });
  expect(pages.at(-1)?.texts.map(({ text }) => text)).toContain(`${pages.length} / ${pages.length}`);
  // The head has two lines: no page is empty.
  for (const { texts, paths } of pages) expect(texts.length + paths.length).toBeGreaterThan(2);
});

test('a link too long for a code, and a sheet among the files of its project, say how to get back', () => {
  const said = (link: string | null): string =>
    buildSheet({ ...subject({}), link })
      .filter(({ id }) => id === 'reopening')
      .flatMap(({ blocks }) => blocks.map((block) => (block.kind === 'text' ? block.text : block.kind)))
      .join(' ');
  // ISO/IEC 18004, table 7: version 40 at level L holds 2953 bytes.
  expect(said('x'.repeat(2953))).toMatch(/^code /);
  expect(said('x'.repeat(2954))).toMatch(/^This project is too long for a QR code: its link has 2954 characters/);
  expect(said(null)).toBe('Open the project file that was saved with this sheet.');
});

test('every sheet is drawn as it is cut: alike ones once, each part with its number in the legend', () => {
  const { plan: of } = subject({});
  const laid = sheetsOf(of);
  if (!laid.ok) throw new Error('the parts fit');
  const drawn = buildSheet({ plan: of, sheets: laid.value }).flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === 'drawing' && block.title.startsWith('Arrangement of ') ? [block] : [])),
  );
  const alike = alikeSheets(laid.value);
  expect(drawn.map(({ title }) => title)).toEqual(alike.map(({ sheet }) => `Arrangement of ${sheetName(sheet)}`));
  expect(drawn.length).toBeGreaterThan(0);
  for (const [i, { view, note }] of drawn.entries()) {
    const placements = alike[i]?.sheet.placements ?? [];
    const legend = [...(note ?? '').matchAll(/(\d+) ([^,]+?)(?=, \d|\.$)/g)].map(
      ([, number, name]) => [number, name] as const,
    );
    const names = new Map(legend);
    const numbers = view.items.flatMap((item) => (item.kind === 'label' ? [item.text] : []));
    expect(numbers.map((number) => names.get(number)).sort()).toEqual(placements.map(({ part }) => part).sort());
    const [left, bottom, right, top] = view.extent;
    for (const item of view.items) {
      if (item.kind !== 'outline') continue;
      for (const [x, y] of item.points) {
        expect(x).toBeGreaterThan(left - 1e-6);
        expect(x).toBeLessThan(right + 1e-6);
        expect(y).toBeGreaterThan(bottom - 1e-6);
        expect(y).toBeLessThan(top + 1e-6);
      }
    }
  }
});

test.each([
  ['mm', /within an ellipse of 45\smm by 34\smm/],
  ['in', /within an ellipse of 1\s13\/16″ by 1\s3\/8″/],
])('says how sure it is before anything is cut, in %s', (length, ellipse) => {
  const sections = buildSheet(subject({ '/display': { length, fraction: length === 'in' ? 16 : null } }));
  const at = (id: string): number => sections.findIndex((section) => section.id === id);
  expect(at('how-sure')).toBeGreaterThan(0);
  expect(at('how-sure')).toBeLessThan(at('cutting'));
  const told = JSON.stringify(sections[at('how-sure')]?.blocks);
  expect(told).toContain('toe ± 1.4°, tilt ± 0.8°');
  expect(told).toMatch(ellipse);
  expect(told).toMatch(/setback 49 %, ear height 24 %/);
});

test.each([
  ['a plain desk', { rule: 'rectangle', width: 1400, depth: 700, corner: 0 }, false],
  ['a bowed front', { rule: 'bowed', width: 1400, depth: 700, bow: 60 }, true],
  // Its front edge is 500 mm wide, and the stands’ corners lie further out.
  ['a corner desk', { rule: 'corner', left: 1500, right: 1500, leftDepth: 700, rightDepth: 700, front: 500 }, true],
])('marks out %s from a line that a tape can be laid from', (_, outline, batten) => {
  const sections = buildSheet(subject({ '/layouts/0/desk/outline': outline, '/layouts/0/room/walls': [] }));
  const told = JSON.stringify(sections.find(({ id }) => id === 'on-the-desk')?.blocks);
  expect(told.includes('Lay a straight batten across the desk')).toBe(batten);
  expect(told.includes('square to the desk’s front edge')).toBe(!batten);
});
