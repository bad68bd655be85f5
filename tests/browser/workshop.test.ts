import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { readCsv } from '../files/readCsv.ts';
import { readDxf } from '../files/readDxf.ts';
import { readStl } from '../files/readStl.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

/** Making every file takes a machine some seconds when it is busy, ms. */
const BUSY = 120_000;
const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);
const choose = (page: Page, name: string) => page.getByRole('radio', { name }).check();

interface Listed {
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}

async function archive(page: Page): Promise<Record<string, Uint8Array>> {
  const coming = page.waitForEvent('download', { timeout: BUSY });
  await page.getByRole('button', { name: 'Download all as one zip' }).click();
  return unzipSync(await readFile(await (await coming).path()));
}

/** What the browser's own reader says of an SVG file: its root, and whether it found an error. */
const rootOf = (page: Page, svg: string) =>
  page.evaluate((source) => {
    const parsed = new DOMParser().parseFromString(source, 'image/svg+xml');
    return { root: parsed.documentElement.tagName, wrong: parsed.querySelector('parsererror') !== null };
  }, svg);

/** Opens a file with a reader of its kind, and says whether there is something in it. */
async function opens(page: Page, path: string, content: Uint8Array): Promise<boolean> {
  const kind = path.split('.').at(-1);
  switch (kind) {
    case 'svg': {
      const { root, wrong } = await rootOf(page, strFromU8(content));
      return root === 'svg' && !wrong;
    }
    case 'dxf':
      return Object.values(readDxf(strFromU8(content)).layers).flat().length > 0;
    case 'pdf': {
      const text = strFromU8(content, true);
      return text.startsWith('%PDF-') && /\/Type \/Page\b/.test(text) && text.trimEnd().endsWith('%%EOF');
    }
    case 'stl':
      return readStl(content).facets.length > 3;
    case '3mf':
      return strFromU8(unzipSync(content)['3D/3dmodel.model'] ?? new Uint8Array()).includes('<triangle ');
    case 'csv':
      return readCsv(strFromU8(content).slice(1)).length >= 1;
    case 'json':
      return typeof JSON.parse(strFromU8(content)) === 'object';
    default:
      return false;
  }
}

/** Chooses a build, downloads its archive and opens every file of it: `own` is the path of one that no other build has. */
async function makesFiles(
  page: Page,
  name: string,
  typed: Readonly<Record<string, string>>,
  own: RegExp,
): Promise<void> {
  for (const [pointer, value] of Object.entries(typed)) await field(page, pointer).fill(value);
  await choose(page, name);
  const files = await archive(page);
  const paths = Object.keys(files);
  expect(paths.some((path) => own.test(path))).toBe(true);
  expect(paths).toContain('build-sheet.pdf');
  for (const [path, content] of Object.entries(files)) {
    expect([path, await opens(page, path, content)]).toEqual([path, true]);
  }
  const { files: listed, leftOut } = JSON.parse(strFromU8(files['manifest.json'] ?? new Uint8Array())) as {
    files: Listed[];
    leftOut: unknown[];
  };
  expect(leftOut).toEqual([]);
  expect(listed.map(({ path }) => path).sort()).toEqual(paths.filter((path) => path !== 'manifest.json').sort());
  for (const { path, bytes, sha256 } of listed) {
    const content = files[path] ?? new Uint8Array();
    expect([path, bytes, sha256]).toEqual([path, content.length, createHash('sha256').update(content).digest('hex')]);
  }
}

describe('the workshop', () => {
  const builds = [
    ['Stacked slices', {}, /^sheets\/.*\.dxf$/],
    ['Printed core between cheeks', {}, /^solids\/core.*\.stl$/],
    ['Crossing ribs', { '/layouts/0/stand/lift': '30' }, /^parts\/cross-rib-1.*\.svg$/],
    ['Solid block', {}, /^templates\/left stand, block, inboard side\.pdf$/],
  ] as const;

  test(
    'every build: chosen, downloaded, every file opens',
    async () => {
      const { page } = await visit('workshop/');
      for (const [name, typed, own] of builds) await makesFiles(page, name, typed, own);
    },
    2 * BUSY,
  );

  test('choosing a build is one step of undo, and what cannot be had says why with its numbers', async () => {
    const { page } = await visit('workshop/');
    await choose(page, 'Solid block');
    await expect.poll(() => page.getByRole('radio', { name: 'Solid block' }).isChecked()).toBe(true);
    await page.locator('h1').click();
    await page.keyboard.press('Control+z');
    await expect.poll(() => page.getByRole('radio', { name: 'Stacked slices' }).isChecked()).toBe(true);
    await field(page, '/layouts/0/stand/width').fill('20');
    await expect
      .poll(() => page.locator('.refused').allTextContents())
      .toContainEqual(
        expect.stringMatching(/Crossing ribs: Needs a width of at least [\d.]+\smm for 2 ribs.*, not 20\smm/),
      );
  });

  test('all builds are compared on a phone without scrolling, and what nobody gave prices for is not listed', async () => {
    const { page } = await visit('workshop/', { viewport: { width: 390, height: 844 }, touch: true });
    const table = page.getByRole('table', { name: 'Builds side by side' });
    const boxes = await table.getByRole('radio').evaluateAll((all) => all.map((one) => one.getBoundingClientRect().x));
    expect(boxes).toHaveLength(4);
    expect(boxes.every((x) => x >= 0 && x < 390)).toBe(true);
    const cut = await table
      .locator('td, th')
      .evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth).map((one) => one.textContent));
    expect(cut).toEqual([]);
    await expect.poll(() => table.getByRole('rowheader', { name: 'Finished mass' }).isVisible()).toBe(true);
    expect(await table.innerText()).not.toMatch(/not known|Cost|Cutting/);
    await page.getByText('Minutes and cost come with the speeds and prices').click();
    await expect
      .poll(() =>
        page
          .getByText(/^the price of a sheet of/)
          .first()
          .isVisible(),
      )
      .toBe(true);
  });

  test('every build can be had with its base square to the desk', async () => {
    const { page } = await visit('workshop/');
    await field(page, '/layouts/0/stand/base').selectOption('square to the desk');
    await choose(page, 'Printed core between cheeks');
    await expect.poll(() => page.locator('main').textContent()).toContain('cheek-2');
    await expect.poll(() => page.locator('.refused').allTextContents()).toEqual([]);
    const paths = Object.keys(await archive(page));
    expect(paths.filter((path) => path.endsWith('.stl'))).toEqual(['solids/core left.stl', 'solids/core right.stl']);
  });

  test('a coupon’s widths become kerf and taper of the board, as one step', async () => {
    const { page } = await visit('workshop/');
    // Cut along the lines with 0.2 mm at the beam's face and 0.1 mm at the far one: tabs lose it, slots gain it.
    const cut = { 'beam’s face': 0.2, 'far face': 0.1 };
    for (const drawn of [5, 10, 20, 40]) {
      for (const [face, kerf] of Object.entries(cut)) {
        await page.getByRole('textbox', { name: `tab ${drawn} mm at the ${face}` }).fill((drawn - kerf).toFixed(2));
        await page.getByRole('textbox', { name: `slot ${drawn} mm at the ${face}` }).fill((drawn + kerf).toFixed(2));
      }
    }
    await page.getByRole('button', { name: 'Put kerf and taper into the board' }).click();
    const group = page.getByRole('heading', { name: 'Stock', exact: true });
    await group.click();
    await expect.poll(() => field(page, '/stock/0/kerf').inputValue()).toBe('0.15');
    // atan(0.1 / (2 · 3.05)) is 0.939°.
    expect(Number(await field(page, '/stock/0/taper').inputValue())).toBeCloseTo(0.939, 3);
    await page.locator('h1').click();
    await page.keyboard.press('Control+z');
    await expect.poll(() => field(page, '/stock/0/kerf').inputValue()).toBe('');
    await expect.poll(() => field(page, '/stock/0/taper').inputValue()).toBe('');
  });
});

describe.each(['workshop/', 'build-sheet/'])('%s', (path) => {
  test.each([
    ['wide', { viewport: { width: 1280, height: 900 } }],
    ['narrow', { viewport: { width: 390, height: 844 }, touch: true }],
  ] as const)('is accessible in light and dark, and as wide as the window, %s', async (name, visitor) => {
    const { page, expectAccessible, shot } = await visit(path, visitor);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    await shot(`${path.slice(0, -1)}-${name}`);
    expect(over).toBeLessThanOrEqual(0);
    await expectAccessible('light and dark');
  });
});

test('the build sheet prints without the page’s buttons, its drawings in true mm', async () => {
  const { page, shot } = await visit('build-sheet/');
  await page.emulateMedia({ media: 'print' });
  await expect.poll(() => page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
  const drawing = page.getByRole('img', { name: 'Part slice' });
  const [width, box] = [await drawing.getAttribute('width'), await drawing.boundingBox()];
  // CSS has 96 pixels to the inch.
  expect(Math.abs((box?.width ?? 0) - (parseFloat(width ?? '0') / 25.4) * 96)).toBeLessThan(0.5);
  await shot('build-sheet-print');
});
