import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);
const inLayout = (page: Page, rest: string) => field(page, `/layouts/0/${rest}`);

test('a shelf is made, a pair put on it and a sit-stand posture drawn, by pointer and by keys', async () => {
  const { page } = await visit();
  const rightOn = inLayout(page, 'placement/right/on');
  await rightOn.waitFor();
  await page.locator('summary', { hasText: 'Shelves and floor stands' }).press('Enter');
  await page.getByRole('button', { name: 'Add a surface' }).click();
  const height = inLayout(page, 'surfaces/0/height');
  await height.waitFor();
  await expect.poll(() => height.inputValue()).toBe('1180');
  await height.fill('1380');
  await expect.poll(() => page.locator('[data-item="surface-0"]').count()).toBeGreaterThan(0);

  // One goes on it, and takes the other along; the mark comes to where the shelf is.
  await rightOn.focus();
  await rightOn.selectOption('shelf');
  await expect.poll(() => inLayout(page, 'placement/left/on').inputValue()).toBe('shelf');
  await expect.poll(() => inLayout(page, 'placement/right/y').inputValue()).toBe('580');
  await page.locator('body').press('ControlOrMeta+z');
  await expect.poll(() => rightOn.inputValue()).toBe('desk');

  // The desk goes up in the posture: the pair rides along, and can be looked at there.
  const posture = 'listener/postures/0';
  const deskHeight = inLayout(page, `${posture}/deskHeight`);
  await deskHeight.evaluate((node) => {
    for (let at = node.parentElement; at; at = at.parentElement) if (at instanceof HTMLDetailsElement) at.open = true;
  });
  await deskHeight.fill('1085');
  await inLayout(page, `${posture}/earHeight`).fill('1530');
  const drawn = page.getByLabel('Posture that is drawn', { exact: true });
  await drawn.selectOption('leaning in');
  await expect.poll(() => page.locator('b', { hasText: /^In the posture “leaning in”$/ }).count()).toBe(1);
  await expect.poll(() => page.locator('[data-handle]').count()).toBe(0);
  await drawn.selectOption('');
  await expect.poll(() => page.locator('[data-handle]').count()).toBeGreaterThan(0);
});
