import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

/** Every page, with what shows that all of it is there. */
const pages = [
  ['', (page: Page) => page.getByText('All figures, and how each is worked out')],
  ['measure/', (page: Page) => page.getByRole('heading', { name: 'The board' })],
  ['compare/', (page: Page) => page.getByRole('heading', { level: 1 })],
  ['search/', (page: Page) => page.getByRole('heading', { level: 1 })],
  ['sound/', (page: Page) => page.getByRole('button', { name: 'Back to the planned head' })],
  ['workshop/', (page: Page) => page.getByRole('button', { name: 'Try another arrangement' })],
  ['build-sheet/', (page: Page) => page.getByRole('heading', { name: 'Marking out', exact: true })],
  ['as-built/', (page: Page) => page.getByRole('button', { name: 'Begin with the usual readings' })],
  ['method/', (page: Page) => page.getByRole('heading', { name: 'Conventions' })],
] as const;

/** Controls that would take room on paper, each by its tag and its words. */
const controlsOnPaper = (page: Page): Promise<string[]> =>
  page
    .locator('button, input, select, textarea, progress, nav, menu, [role=menu], [role=slider]')
    .evaluateAll((all) =>
      all.filter((one) => one.getClientRects().length > 0).map((one) => `${one.tagName} ${one.textContent.trim()}`),
    );

/** What stands on paper in place of the control with a name. */
const printedFor = (page: Page, control: string): Promise<string> =>
  page
    .getByLabel(control, { exact: true })
    .first()
    .evaluate((one) => getComputedStyle(one.closest('[data-printed]') ?? one, '::before').content);

describe('a page that is printed', () => {
  test.each(pages)('shows no control: %j', async (path, whole) => {
    const { page } = await visit(path);
    await whole(page).waitFor();
    // The check finds controls where there are some.
    expect((await controlsOnPaper(page)).length).toBeGreaterThan(0);
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => controlsOnPaper(page)).toEqual([]);
  });

  test('says what its controls hold', async () => {
    const { page } = await visit('workshop/');
    await page.getByLabel('Lift', { exact: true }).fill('17.5');
    await page.emulateMedia({ media: 'print' });
    expect(await printedFor(page, 'Lift')).toBe('"17.5"');
    expect(await printedFor(page, 'Ends')).toBe('"plumb"');
    expect(await printedFor(page, 'Rods')).toBe('"yes"');
  });

  test('keeps the words of buttons that are read', async () => {
    const { page } = await visit();
    await page.getByText('All figures, and how each is worked out').click();
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => page.getByRole('row', { name: /Miss at the head/ }).textContent()).toContain('Miss');
    const row = page.locator('th', { hasText: 'Miss at the head' });
    // The words have a place of their own though the button has none.
    const words = await row.evaluate((cell) => {
      const range = document.createRange();
      range.selectNodeContents(cell.querySelector('button') ?? cell);
      return range.getBoundingClientRect().width;
    });
    expect(words).toBeGreaterThan(20);
  });
});
