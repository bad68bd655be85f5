import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const aimFor = (page: Page) => page.getByLabel('Aim is for', { exact: true });
const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);
const fan = (page: Page) => page.locator('[data-item^="fan-"]');
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });

/** A number of the table of postures, as the page shows it: of both loudspeakers, which are alike. */
const offAxis = (page: Page, posture: RegExp) =>
  page
    .getByRole('table', { name: 'Postures' })
    .locator('tbody', { hasText: posture })
    .getByRole('row', { name: /^Head off the axis/ })
    .getByRole('cell')
    .last();

describe.each([1440, 390])('at %d px, one aim for several postures', (width) => {
  test('is set, seen as a fan of heads and in numbers, and undone', async () => {
    const { page, expectAccessible } = await visit('', { viewport: { width, height: 900 } });
    await page.getByText('All figures, and how each is worked out').click();
    await expect.poll(() => offAxis(page, /leaning in/).innerText()).toMatch(/^7\.3°/);
    expect(await fan(page).count()).toBe(0);

    // On a phone the group stands folded.
    await aimFor(page).evaluate((node) => node.closest('details')?.setAttribute('open', ''));
    await aimFor(page).selectOption('every posture');
    await expect.poll(() => offAxis(page, /leaning in/).innerText()).toMatch(/^3\.7°/);
    // What it costs the seat.
    expect(await offAxis(page, /seat/).innerText()).toMatch(/^3\.7°/);
    await expect.poll(() => fan(page).count()).toBeGreaterThan(0);

    await page.getByLabel('What is least', { exact: true }).selectOption('their weighted mean square');
    await page.locator('summary', { hasText: 'Other postures' }).press('Enter');
    const weight = field(page, '/layouts/0/listener/postures/0/weight');
    await weight.fill('4');
    await expect.poll(async () => parseFloat(await offAxis(page, /leaning in/).innerText())).toBeLessThan(3);
    await expectAccessible();

    await aimFor(page).selectOption('seat and some');
    const chosen = page.getByRole('group', { name: 'Postures' }).getByRole('checkbox', { name: 'leaning in' });
    expect(await chosen.isChecked()).toBe(true);
    await chosen.uncheck();
    await expect.poll(() => offAxis(page, /leaning in/).innerText()).toMatch(/^7\.3°/);

    while (await undo(page).isEnabled()) await undo(page).press('Enter');
    await expect.poll(() => aimFor(page).inputValue()).toBe('seat');
    await expect.poll(() => fan(page).count()).toBe(0);
  });
});
