import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const PHONE = { viewport: { width: 390, height: 844 }, touch: true } as const;

const question = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const ask = (page: Page) => page.getByRole('region', { name: 'Ask' });
const counts = (page: Page) => ask(page).getByRole('status').filter({ hasText: 'tried' });
const rows = (page: Page) => page.getByRole('region', { name: 'The best', exact: true }).getByRole('radio');
const plan = (page: Page) => page.getByRole('region', { name: /as it is$/ }).getByRole('img');
const layouts = (page: Page) => page.getByRole('group', { name: 'Layout', exact: true }).getByRole('radio');

/** Waits until the search has come to its end. */
async function finished(page: Page): Promise<void> {
  await counts(page).waitFor({ timeout: 120_000 });
  await expect.poll(() => ask(page).getByRole('button', { name: 'Cancel' }).count(), { timeout: 120_000 }).toBe(0);
}

describe('a search', () => {
  test('by one press finds what is best, shows each by focus, adds one as a layout, and undoes that', async () => {
    const { page, expectAccessible } = await visit('search/');
    const before = await plan(page).getAttribute('aria-label');
    await question(page, '60° with what moves least').click();
    await finished(page);
    await expect
      .poll(() => counts(page).textContent())
      .toMatch(/^\s*29\s?791 tried, about [\d\s]+ hold, \d+\s+are best\./);
    await page.getByRole('heading', { name: /^Nothing is better in both than these \d+$/ }).waitFor();
    expect(await rows(page).count()).toBeGreaterThan(5);
    await expectAccessible('light and dark');

    // Focus shows, an arrow key goes on and chooses.
    const told: (string | null)[] = [before];
    await rows(page).first().focus();
    for (let row = 0; row < 3; row++) {
      await expect.poll(() => plan(page).getAttribute('aria-label')).not.toBe(told.at(-1));
      told.push(await plan(page).getAttribute('aria-label'));
      if (row < 2) await page.keyboard.press('ArrowDown');
    }
    expect(new Set(told).size).toBe(4);
    expect(told.at(-1)).toMatch(/° off 60°, moved \d+ mm, from above/);

    await page.getByRole('button', { name: 'Add as a layout' }).click();
    await page.getByText(/Added as layout “[\d.]+° off 60°, moved \d+ mm”/).waitFor();
    await expect.poll(() => layouts(page).count()).toBe(2);
    // The one that was searched stays open, and what was found with it.
    await expect.poll(() => layouts(page).first().isChecked()).toBe(true);
    expect(await rows(page).count()).toBeGreaterThan(5);
    await page
      .getByRole('region', { name: /as it is$/ })
      .getByRole('button', { name: 'Undo' })
      .click();
    await expect.poll(() => layouts(page).count()).toBe(1);
  }, 300_000);

  test('is narrowed down by keys on an axis, and shown whole again', async () => {
    const { page } = await visit('search/', { viewport: { width: 1440, height: 900 } });
    await question(page, '60° with what moves least').click();
    await finished(page);
    const all = await rows(page).count();
    await page.getByRole('slider', { name: 'Move, at most' }).focus();
    for (let i = 0; i < 30; i++) await page.keyboard.press('ArrowLeft');
    await expect.poll(() => rows(page).count()).toBeLessThan(all);
    const left = await rows(page).count();
    await page.getByRole('heading', { name: `${left} of ${all} left` }).waitFor();
    await page.getByRole('button', { name: 'Show all again' }).click();
    await expect.poll(() => rows(page).count()).toBe(all);
    // The same by dragging along the axis.
    const axis = page.locator('[data-axis="move"]');
    await axis.scrollIntoViewIfNeeded();
    const box = await axis.boundingBox();
    if (!box) throw new Error('the axis is drawn');
    const x = box.x + box.width / 2;
    await page.mouse.move(x, box.y + box.height * 0.95);
    await page.mouse.down();
    await page.mouse.move(x, box.y + box.height * 0.6, { steps: 4 });
    await page.mouse.up();
    await expect.poll(() => rows(page).count()).toBeLessThan(all);
  }, 300_000);

  test('is cancelled at once, whatever it is at: what was found stays', async () => {
    const { page } = await visit('search/');
    await question(page, 'Widest safe zone').click();
    await finished(page);
    // That one takes long enough to be cancelled.
    await ask(page).getByRole('button', { name: 'Search finer' }).click();
    await ask(page).getByRole('button', { name: 'Cancel' }).press('Enter');
    await expect.poll(() => ask(page).textContent()).toContain('Cancelled before its end.');
    expect(await ask(page).getByRole('progressbar').count()).toBe(0);
    await question(page, '60° with what moves least').click();
    await finished(page);
    await expect.poll(() => ask(page).textContent()).not.toContain('Cancelled');
  }, 300_000);

  test('with aims of one’s own says at the field what is wrong, and of too many what would fit', async () => {
    const { page, expectAccessible } = await visit('search/');
    await question(page, 'Aims of my own …').click();
    const field = (name: string) => page.getByRole('textbox', { name, exact: true });
    const search = page.getByRole('button', { name: 'Search', exact: true });
    const from = field('Head from the edge, from');
    await from.fill('abc');
    await expect.poll(() => from.getAttribute('aria-invalid')).toBe('true');
    await page.getByText('Enter −3000 to 6000 mm').waitFor();
    await expect.poll(() => search.isDisabled()).toBe(true);
    await expectAccessible();
    await from.fill('900');
    await page.getByText('Enter no less than where it begins').waitFor();
    await from.fill('100');
    await field('Head from the edge, step').fill('0');
    await page.getByText('Enter 0.1 to 5000 mm').waitFor();
    await field('Head from the edge, step').fill('0.1');
    await field('Marks, sideways, step').fill('0.1');
    await page.getByText(/combinations are too many: [^]*Steps [\d.]+\s+times as large would fit/).waitFor();
    await expect.poll(() => search.isDisabled()).toBe(true);
    await field('Head from the edge, step').fill('50');
    await field('Marks, sideways, step').fill('50');
    // A tilt that nothing has: what would do is said, and found by a press.
    await field('Steepest tilt, at most').fill('8');
    await search.click();
    await page.getByRole('heading', { name: 'Nothing satisfies all the rules' }).waitFor({ timeout: 60_000 });
    await page.getByText(/Steepest tilt: at most [\d.]+° in place of 8\.0°/).waitFor();
    await page.getByRole('button', { name: 'Search with that' }).first().click();
    await expect.poll(() => rows(page).count(), { timeout: 60_000 }).toBeGreaterThan(0);

    // The rules of toe: an axis of the chart, and in words.
    const box = (name: string) => page.getByRole('checkbox', { name, exact: true });
    for (const name of ['Marks, sideways', 'Marks, from the edge', 'Head from the edge']) await box(name).uncheck();
    await page.getByText('Choose something that may move.').waitFor();
    await box('Toe, rule').check();
    for (const name of ['to the head', 'to the nearer ear', 'straight ahead']) await box(name).uncheck();
    await page.getByText('2 combinations', { exact: true }).waitFor();
    await expectAccessible();
    await box('Triangle error less is better').uncheck();
    await box('Miss less is better').check();
    await box('Off axis less is better').check();
    await field('Steepest tilt, at most').fill('30');
    await search.click();
    await expect.poll(() => page.locator('[data-axis="/aim/toe"]').count()).toBe(1);
    await page.getByRole('cell', { name: /^as set, [\d.]+°$/ }).waitFor();
  }, 300_000);

  test('on a phone stands below each other, and is done by a finger', async () => {
    const { page, expectAccessible } = await visit('search/', PHONE);
    await question(page, '60° with what moves least').tap();
    await finished(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await expectAccessible('light and dark');
    await rows(page).nth(2).scrollIntoViewIfNeeded();
    await rows(page).nth(2).tap();
    await page.getByRole('button', { name: 'Add as a layout' }).tap();
    await page.getByText(/Added as layout/).waitFor();
  }, 300_000);
});
