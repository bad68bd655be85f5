import type { Locator, Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const status = (page: Page): Locator => page.locator('[data-status]');
const saved = (page: Page) => expect.poll(() => status(page).getAttribute('data-status')).toBe('saved');

describe('a project without an answer', () => {
  const DEGREES = '/layouts/0/aim/tilt/degrees';

  test('is kept as typed, told, saved, and nothing of an older state is offered', async () => {
    const { page } = await visit();
    const field = page.locator(`[id="${DEGREES}"]`);
    const faults = page.getByRole('region', { name: 'Faults' }).first();
    const offers = [
      page.getByRole('button', { name: 'Download all as one zip' }),
      page.getByRole('button', { name: 'Print', exact: true }),
    ];
    await page.locator('[id="/layouts/0/aim/tilt"]').selectOption('lift-to-ear');
    await field.fill('40');
    await expect.poll(() => faults.textContent()).toContain('leaves a lift of 0 mm or more');
    expect(await faults.textContent()).toContain('Showing the last valid values; nothing is printed or downloaded');
    expect(await page.getByRole('region', { name: 'Results', exact: true }).textContent()).toContain(
      'These are the results of the last valid values',
    );
    await offers[0]?.scrollIntoViewIfNeeded();
    for (const offer of offers) await expect.poll(() => offer.isDisabled()).toBe(true);
    // The project is sound: its file holds what is typed.
    expect(await page.getByRole('button', { name: 'Save the project' }).isEnabled()).toBe(true);
    await saved(page);

    await page.reload();
    await expect.poll(() => field.inputValue()).toBe('40');
    await expect.poll(() => faults.textContent()).toContain('Nothing can be drawn from these values');
    await offers[0]?.waitFor();
    expect(await offers[0]?.isDisabled()).toBe(true);
    expect(await offers[1]?.count()).toBe(0);

    await page.getByRole('link', { name: 'Build sheet to print' }).click();
    await page.getByRole('heading', { name: 'Build sheet: Bindery desk, window side' }).waitFor();
    expect(await page.getByRole('status').first().textContent()).toContain('There is no build sheet for these values');
    for (const name of ['Print', 'Download as PDF']) {
      expect(await page.getByRole('button', { name, exact: true }).isDisabled()).toBe(true);
    }
  });
});
