import { readFile } from 'node:fs/promises';
import { csvParse } from 'd3';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { compare } from '$lib/study/compare.ts';
import { comparedBy } from '$lib/study/measures.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const [first] = demoProject.layouts;
const together = { left: { x: -277, y: 300 }, right: { x: 277, y: 300 } };
const back = { ...first.listener, setback: 450 };
const document = {
  ...demoProject,
  layouts: [
    first,
    { ...first, name: 'drawn together', placement: together },
    { ...first, name: 'rolled back', listener: back },
  ],
};
const project: Project = (() => {
  const read = checkProject(document);
  if (!read.ok) throw new Error('three layouts that are sound');
  return read.value;
})();
/** Sheets take seconds a layout, and have their own tests. */
const by = comparedBy.filter(({ needs }) => needs !== 'sheets');

async function openThree(page: Page): Promise<void> {
  const text = JSON.stringify(document);
  const dropped = await page.evaluateHandle((content) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([content], 'three.json', { type: 'application/json' }));
    return transfer;
  }, text);
  for (const type of ['dragenter', 'dragover', 'drop'])
    await page.dispatchEvent('body', type, { dataTransfer: dropped });
  await page.getByText('Opened three.json.').waitFor();
}

const table = (page: Page) => page.getByRole('region', { name: 'Layouts side by side' });
const cells = (page: Page, measure: string) => page.locator(`[data-measure="${measure}"] td b`).allTextContents();
const heads = (page: Page) => table(page).locator('thead th > b:nth-of-type(2)').allTextContents();
const checked = (page: Page) => page.getByRole('heading', { name: 'What the checks say' }).waitFor();

describe('layouts side by side', () => {
  test('one is copied beside itself, changed on the drawing, and what differs is told', async () => {
    const { page } = await visit('compare/');
    await expect.poll(() => page.getByText('This project has one layout.').count()).toBe(1);
    await page.getByRole('button', { name: 'Copy it beside this one' }).first().press('Enter');
    await expect.poll(() => heads(page)).toEqual(['window side', 'window side 2']);
    await page.getByRole('radio', { name: 'window side 2' }).check({ force: true });
    await page.getByRole('link', { name: 'Drawing' }).click();
    const ear = page.locator('[id="/layouts/1/listener/earHeight"]');
    await ear.fill('1250');
    await ear.press('Enter');
    await page.getByRole('link', { name: 'Compare' }).click();
    await expect.poll(() => page.locator('.inputs tr').allTextContents()).toHaveLength(1);
    expect(await page.locator('.inputs th').textContent()).toBe('Listener, ear height');
    expect(await page.locator('.inputs td:not(.note)').allTextContents()).toEqual(['1180\u202fmm', '1250\u202fmm']);
  });

  test('hold the values, marks and findings that the comparison itself comes to, and are accessible in both themes', async () => {
    const { page, expectAccessible } = await visit('compare/', { viewport: { width: 1440, height: 900 } });
    await openThree(page);
    await checked(page);
    const expected = compare(project, project.layouts, by);
    for (const { name } of by) {
      const shown = (await cells(page, name)).map((text) => text.replace('\u2212', '-'));
      expected.layouts.forEach(({ values }, index) => {
        const value = values[name];
        if (typeof value !== 'number') expect(shown[index]).toMatch(/^(?:not known|none)$/);
        else {
          const decimals = /\.(\d+)/.exec(shown[index] ?? '')?.[1]?.length ?? 0;
          expect(Number(shown[index])).toBe(Number(value.toFixed(decimals)));
        }
      });
      const row = page.locator(`[data-measure="${name}"]`);
      expect(await row.getByRole('img', { name: 'best' }).count()).toBe(expected.best[name]?.length ?? 0);
      expect(await row.getByRole('img', { name: 'worst' }).count()).toBe(expected.worst[name]?.length ?? 0);
    }
    const pairs = page.locator('#stands-cut ~ .wide-table tbody td:not(.own)');
    await expect.poll(() => pairs.count()).toBe(6);
    const serves = await pairs.evaluateAll((all) => all.map((cell) => cell.className.includes('fits')));
    expect(serves).toEqual(expected.stands.map(({ fits }) => fits));
    await expectAccessible('light and dark');
  });

  test('are written as a table that another reader reads', async () => {
    const { page } = await visit('compare/');
    await openThree(page);
    await expect.poll(() => heads(page)).toEqual(['window side', 'drawn together', 'rolled back']);
    await checked(page);
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'CSV' }).press('Enter');
    const file = await coming;
    expect(file.suggestedFilename()).toBe('Bindery desk - compared.csv');
    const rows = csvParse((await readFile(await file.path(), 'utf8')).replace(/^\uFEFF/, ''));
    const expected = compare(project, project.layouts, by);
    expect(rows.map((row) => row['layout'])).toEqual(expected.layouts.map(({ name }) => name));
    rows.forEach((row, index) => {
      const angle = expected.layouts[index]?.values['triangle-error'] ?? NaN;
      expect(Number(row['triangle-error (°)'])).toBeCloseTo(angle, 3);
    });
  });

  test('are chosen and put in order by keyboard, and the order comes back', async () => {
    const { page } = await visit('compare/');
    await openThree(page);
    await expect.poll(() => heads(page)).toEqual(['window side', 'drawn together', 'rolled back']);
    await page.getByText('Choose layouts').press('Enter');
    await page.getByRole('checkbox', { name: 'B drawn together' }).press('Space');
    await expect.poll(() => heads(page)).toEqual(['window side', 'rolled back']);
    await page.getByRole('checkbox', { name: 'B drawn together' }).press('Space');
    await page.getByRole('button', { name: 'Order' }).press('Enter');
    const entry = page.getByRole('group', { name: 'All layouts' }).getByRole('button', { name: 'rolled back' });
    await entry.press('Alt+ArrowUp');
    await expect.poll(() => heads(page)).toEqual(['window side', 'rolled back', 'drawn together']);
    await expect.poll(() => entry.evaluate((button) => button === globalThis.document.activeElement)).toBe(true);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => heads(page)).toEqual(['window side', 'drawn together', 'rolled back']);
  });

  test('are put in order by dragging', async () => {
    const { page } = await visit('compare/');
    await openThree(page);
    await page.getByRole('button', { name: 'Order' }).click();
    const grips = page.locator('#layout-card .grip');
    const [from, to] = [await grips.nth(0).boundingBox(), await grips.nth(2).boundingBox()];
    if (!from || !to) throw new Error('the card is open');
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(to.x + to.width / 2, to.y + to.height / 2, { steps: 4 });
    await page.mouse.up();
    await expect.poll(() => heads(page)).toEqual(['drawn together', 'rolled back', 'window side']);
  });

  test('whose name has no room in the row end it with dots, and show it whole under the pointer and in the card', async () => {
    const { page } = await visit('compare/', { viewport: { width: 768, height: 900 } });
    await openThree(page);
    const shown = page.locator('.leaves .shown');
    await expect.poll(() => shown.getAttribute('title')).toBe('window side');
    await expect.poll(() => shown.count()).toBe(1);
    const ends = () =>
      shown.evaluate((leaf) => {
        const row = leaf.closest('fieldset');
        return row === null ? NaN : leaf.getBoundingClientRect().right - row.getBoundingClientRect().right;
      });
    await expect.poll(ends).toBeLessThanOrEqual(1);
    await page.getByRole('button', { name: /^window side: Arrange/ }).click();
    await page.getByRole('textbox', { name: /name/i }).first().waitFor();
  }, 60_000);

  test('on a phone have their plans one under the other, nothing wider than the screen, and are accessible', async () => {
    const { page, expectAccessible } = await visit('compare/', { viewport: { width: 390, height: 844 }, touch: true });
    await openThree(page);
    await checked(page);
    expect(await page.evaluate(() => globalThis.document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await expectAccessible();
  });
});

describe('another layout laid over the drawing', () => {
  test.each([1280, 390])('is dashed in the views, told to a reader, and goes again, %d px wide', async (width) => {
    const { page, expectAccessible } = await visit('', { viewport: { width, height: 844 }, touch: width < 700 });
    await openThree(page);
    const laid = page.locator('.drawing path.other');
    await expect.poll(() => laid.count()).toBe(0);
    const choice = page.getByRole('combobox', { name: 'Lay another layout over the drawing, dashed' });
    await choice.focus();
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => choice.inputValue()).toBe('drawn together');
    await expect.poll(() => laid.count()).toBeGreaterThan(3);
    expect(await laid.first().evaluate((path) => getComputedStyle(path).fill)).toBe('none');
    expect(await laid.first().getAttribute('stroke-dasharray')).toBe('5 3');
    await expect
      .poll(() => page.locator('.drawing desc').textContent())
      .toContain('Laid over it in thin dashes: the layout drawn together.');
    await expectAccessible();
    await choice.selectOption('');
    await expect.poll(() => laid.count()).toBe(0);
  });
});
