import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { earEstimate } from '$lib/layout/earEstimate.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const EAR = '/layouts/0/listener/earHeight';
const FROM = '/layouts/0/listener/earHeightFrom';
const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);

test('an ear height that nobody measured is estimated from the person, with its spread, and used by a button', async () => {
  const { page, expectAccessible } = await visit();
  await field(page, FROM).check();
  await field(page, `${FROM}/sex`).selectOption('woman');
  await field(page, `${FROM}/stature`).fill('1680');
  await field(page, `${FROM}/seat`).fill('450');
  const { earHeight, low, high } = earEstimate({
    sex: 'woman',
    stature: 1680,
    percentile: 50,
    seat: 450,
    slump: 40,
    shoes: null,
  });
  const told = page.getByRole('status').filter({ hasText: 'Ears about' });
  await expect.poll(() => told.textContent()).toContain(`${low.toFixed(1)}\u202fmm to ${high.toFixed(1)}\u202fmm`);
  await expect.poll(() => page.getByText('ANSUR II').count()).toBe(1);
  await expectAccessible();
  await page.getByRole('button', { name: `Use ${Math.round(earHeight)}.0\u202fmm as the ear height` }).click();
  await expect.poll(() => field(page, EAR).inputValue()).toBe(String(Math.round(earHeight)));
  await page.getByRole('link', { name: /^What ±.* does to the tilt$/ }).click();
  const seat = page.locator('#seat');
  await seat.waitFor();
  await expect.poll(() => field(page, '/sure/earHeight').inputValue()).toBe(String(Math.round((high - low) / 2)));
  // Several centimetres at some 75 cm: degrees of tilt, not tenths.
  const effect = page.locator('.value', { has: field(page, '/sure/earHeight') }).locator('.effect');
  const doubt = Number(/tilt ±\u202f([\d.]+)°/.exec((await effect.textContent()) ?? '')?.[1]);
  expect(doubt).toBeGreaterThan(1);
  await page.goBack();
  await page.locator('#measurements').waitFor();
  await page.locator('body').press('Control+z');
  await expect.poll(() => field(page, EAR).inputValue()).toBe('1180');
  await field(page, FROM).uncheck();
  await expect.poll(() => told.count()).toBe(0);
});

test('the room and the design point have fields', async () => {
  const { page } = await visit();
  await page.getByRole('heading', { name: 'Room', exact: true }).click();
  await page.getByRole('button', { name: 'Add a wall' }).click();
  await field(page, '/layouts/0/room/walls/1/distance').fill('200');
  await page.getByRole('heading', { name: 'Crossovers', exact: true }).first().click();
  await field(page, '/speaker/designPoint').selectOption('measured');
  await expect.poll(() => field(page, '/speaker/designPoint/distance').inputValue()).toBe('1000');
  await page.getByRole('link', { name: 'Sound and stability, drawn' }).click();
  await expect.poll(() => page.getByText('left wall', { exact: false }).count()).toBeGreaterThan(0);
  await expect.poll(() => page.getByText('The same re the design point').count()).toBe(1);
});
