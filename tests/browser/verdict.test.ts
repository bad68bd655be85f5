import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

/** The line over the title block. */
const line = (page: Page) =>
  page.getByRole('button', { name: /^(\d+ (fault|caution|note)|All is well|Nothing found)/ });
const focused = (page: Page) => page.evaluate(() => document.activeElement?.id);

describe('whether all is well', () => {
  test('is told in one line of the title block, and a press leads to the finding that is worst', async () => {
    const { page } = await visit();
    await expect
      .poll(() => line(page).innerText())
      .toMatch(/2 cautions, 4 notes\.\s+A cabinet may slide when the desk tilts by 2°; 10° is asked\./);
    await line(page).press('Enter');
    const finding = page.locator('#finding-slides');
    await expect.poll(() => finding.evaluate((one) => one.contains(document.activeElement))).toBe(true);
  });

  test('leads to the press that takes the suggestion, where the worst finding has one', async () => {
    const { page } = await visit();
    const press = page.locator('#finding-slides').getByRole('button', { name: /^Add a stop/ });
    await press.and(page.locator(':enabled')).waitFor();
    await line(page).press('Enter');
    await expect.poll(() => press.evaluate((one) => one === document.activeElement)).toBe(true);
    // Who hears the press alone hears what it is for.
    const described = page.locator(`[id="${(await press.getAttribute('aria-describedby')) ?? ''}"]`);
    expect(await described.textContent()).toMatch(/may slide/);
    await page.keyboard.press('Enter');
    await expect.poll(() => line(page).innerText()).not.toMatch(/may slide/);
  });

  test('with a value that cannot be, names its field, what it takes, and leads there', async () => {
    const { page } = await visit();
    const height = page.locator('[id="/layouts/0/desk/height"]');
    await height.fill('2950');
    await expect.poll(() => line(page).innerText()).toMatch(/1 fault\.\s+Desk, height: Enter 150 to 2000\smm/);
    await page.evaluate(() => window.scrollTo(0, 0));
    await line(page).click();
    expect(await focused(page)).toBe('/layouts/0/desk/height');
    await height.fill('735');
    await expect.poll(() => line(page).innerText()).toMatch(/^\D*2 cautions/);
  });

  test('marks the value concerned in the form and in its cell, until it is mended', async () => {
    const { page, expectAccessible } = await visit();
    const sign = page
      .locator('.row', { has: page.locator('[id="/layouts/0/placement/right/x"]') })
      .getByRole('img', { name: 'A caution concerns this' });
    const cell = page.locator('.block').getByRole('img', { name: '(caution)' });
    await expect.poll(() => sign.count()).toBe(1);
    await expect.poll(() => cell.count()).toBe(1);
    await expectAccessible('light and dark');
    await page.locator('[id="/layouts/0/placement/right/x"]').fill('300');
    await expect.poll(() => sign.count()).toBe(0);
    await expect.poll(() => cell.count()).toBe(0);
  });

  test.each([320, 390, 768, 1024, 1280, 1440])('nothing of line and cells is cut at %i px', async (width) => {
    const { page, expectAccessible, shot } = await visit('', { viewport: { width, height: 844 }, touch: width < 700 });
    await line(page).waitFor();
    const cut = () =>
      page
        .locator('.verdict, .block dd, .block dt')
        .evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth).map((one) => one.textContent));
    await expect.poll(cut).toEqual([]);
    // Nor does it lie under what stands above it.
    const [tools, told] = await Promise.all([page.locator('.tools').boundingBox(), line(page).boundingBox()]);
    expect(told?.y).toBeGreaterThanOrEqual((tools?.y ?? NaN) + (tools?.height ?? NaN) - 1);
    await shot(`verdict-${width}`);
    if (width === 390) await expectAccessible('light and dark');
  });
});

test('the results are small pictures with their numbers, the tables folded behind them', async () => {
  const { page, expectAccessible } = await visit('', { viewport: { width: 390, height: 844 }, touch: true });
  const readings = page.getByRole('list', { name: 'At a glance' }).getByRole('listitem');
  await expect
    .poll(() => readings.allInnerTexts())
    .toEqual(
      [
        /Aimed\s+0\smm\s±\s20\smm/,
        /Triangle\s+83\.7°/,
        /Off the desk\s+0\.\d\d\sms/,
        /Off the wall behind/,
        /Steady\s+2\.0°/,
        /Safe zone\s+± \d+\smm/,
      ].map((one) => expect.stringMatching(one)),
    );
  await expect.poll(() => readings.locator('svg').count()).toBe(await readings.count());
  const table = page.getByRole('table', { name: 'Aim' });
  expect(await table.count()).toBe(0);
  await page.getByText('All figures, and how each is worked out').tap();
  await expect.poll(() => table.isVisible()).toBe(true);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  await expectAccessible('light and dark');
});
