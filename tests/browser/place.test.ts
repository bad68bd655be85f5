import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { blank, off, planned, taken } from '../proof/stands.ts';
import { demoWith } from '../projects.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const PHONE = { viewport: { width: 390, height: 844 }, touch: true } as const;

const question = (page: Page) => page.getByRole('button', { name: 'Stands that I have: where?' });
const ways = (page: Page) => page.getByRole('group', { name: 'Ways, what moves least first' }).getByRole('radio');
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const plan = (page: Page) => page.getByRole('region', { name: /as it is$/ }).getByRole('img');
const regions = (page: Page) => page.locator('.regions path');
const layouts = (page: Page) => page.getByRole('group', { name: 'Layout', exact: true }).getByRole('radio');

/** Types stands of a slope and a lowest edge, and asks for axes that miss by no more than 3 mm. */
async function type(page: Page, slope: string, height: string): Promise<void> {
  await page.getByRole('radio', { name: 'at most' }).check();
  await field(page, 'The most that the axes may miss by').fill('3');
  await field(page, 'Slope of the stands').fill(slope);
  await field(page, 'Height of the stands').fill(height);
}

describe('stands that I have', () => {
  test('that are typed are placed: what moves least first, shown by focus, added as a layout, and undone', async () => {
    const { page, expectAccessible } = await visit('search/');
    await question(page).click();
    await type(page, '15', '12');
    await ways(page).first().waitFor();
    await expect.poll(() => regions(page).count()).toBeGreaterThanOrEqual(2);
    await page.getByText('Marks where a stand hits', { exact: true }).waitFor();
    await expectAccessible('light and dark');

    await ways(page).first().focus();
    await expect.poll(() => plan(page).getAttribute('aria-label')).toMatch(/^Sit [\d.]+\smm nearer, from above/);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => ways(page).nth(2).isChecked()).toBe(true);

    await page.getByRole('button', { name: 'Add as a layout' }).click();
    await page.getByText(/^Added as layout “stands I have: /).waitFor();
    await expect.poll(() => layouts(page).count()).toBe(2);
    await page
      .getByRole('region', { name: /as it is$/ })
      .getByRole('button', { name: 'Undo' })
      .click();
    await expect.poll(() => layouts(page).count()).toBe(1);

    // What is wrong is told at its field, and the last answer stays.
    const before = await ways(page).count();
    await field(page, 'Slope of the stands').fill('75');
    await page.getByText('Enter −60 to 60°').waitFor();
    expect(await field(page, 'Slope of the stands').getAttribute('aria-invalid')).toBe('true');
    expect(await ways(page).count()).toBe(before);
    await field(page, 'Slope of the stands').fill('15');
    await page.getByRole('combobox', { name: 'Which height' }).selectOption('front');
    await page.getByText(/^Expected a front at least as high as the slope rises, 53\.1/).waitFor();
  }, 180_000);

  test('for which nowhere will do are packed: a riser or a shim, with cautions', async () => {
    const { page } = await visit('search/');
    await question(page).click();
    await type(page, '10', '12');
    await page.getByRole('heading', { name: 'Nowhere within these bounds' }).waitFor();
    await page
      .getByText(/^Each stand: a riser [\d.]+\smm thick under the whole base; [\d.]+\smm to [\d.]+\smm will do\.$/)
      .waitFor();
    await page.getByText(/^Each stand: a shim [\d.]+\smm thick under the front edge, all across it/).waitFor();
    await page.getByText(/nothing may rock, slide or tip/).waitFor();
    await page.getByText('Marks where a stand hits: none').waitFor();
    expect(await page.getByRole('button', { name: 'Add as a layout' }).count()).toBe(0);
  }, 120_000);

  test('of another layout are placed, by keys alone', async () => {
    const { page } = await visit('search/');
    await question(page).click();
    await type(page, '15', '12');
    await ways(page).first().waitFor();
    await page.getByRole('button', { name: 'Add as a layout' }).click();
    await expect.poll(() => layouts(page).count()).toBe(2);
    const whose = page.getByRole('combobox', { name: 'Whose' });
    await whose.focus();
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => whose.locator('option:checked').textContent()).toMatch(/^those of stands I have: /);
    await expect.poll(() => field(page, 'Slope of the stands').count()).toBe(0);
    await page.getByRole('status').filter({ hasText: 'Working out' }).waitFor({ state: 'detached' });
    await ways(page).first().waitFor();
    await ways(page).first().focus();
    await page.keyboard.press('Space');
    await expect.poll(() => ways(page).first().isChecked()).toBe(true);
  }, 120_000);

  test('as built are placed by their readings', async () => {
    const { page } = await visit('');
    const [left, right] = [planned('left'), planned('right')];
    const kinds = [blank.front, blank.rear];
    const real = { left: off(left.plan, [0, 0, 3, 0, -2, 0]), right: off(right.plan, [0, 0, 1, 0, -1, 0]) };
    const sides = { left: { readings: taken(kinds, real.left, left) }, right: { readings: taken(kinds, real.right, right) } }; // prettier-ignore
    const text = JSON.stringify(demoWith({ '/title': 'Read desk', '/layouts/0/built': { sides } }));
    await page
      .getByLabel('Open a project')
      .setInputFiles({ name: 'read.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    await expect.poll(() => page.locator('svg title').first().textContent()).toContain('Read desk');
    await page.getByRole('link', { name: 'Search', exact: true }).click();
    await question(page).click();
    await page.getByRole('combobox', { name: 'Whose' }).selectOption('window side, as built');
    const degrees = (side: 'left' | 'right') => (real[side].tilt * 180) / Math.PI;
    await page.getByText(`${degrees('left').toFixed(1)}°, lowest edge`).waitFor();
    await page.getByText(`${degrees('right').toFixed(1)}°, lowest edge`).waitFor();
    await ways(page).first().waitFor();
    await expect.poll(() => regions(page).count()).toBeGreaterThanOrEqual(2);
  }, 120_000);

  test('fit a phone', async () => {
    const { page, expectAccessible } = await visit('search/', PHONE);
    await question(page).tap();
    await type(page, '15', '12');
    await ways(page).first().waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await expectAccessible();
    await ways(page).last().tap();
    await expect.poll(() => ways(page).last().isChecked()).toBe(true);
  }, 120_000);
});
