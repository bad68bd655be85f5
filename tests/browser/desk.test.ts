import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);

const visit = useBrowser();

test('a desk takes another shape by keys alone, has its own sizes in form and drawing, and one step takes it back', async () => {
  const { page } = await visit();
  const shape = field(page, '/layouts/0/desk/outline/rule');
  const front = field(page, '/layouts/0/desk/outline/front');
  const inDrawing = page.locator('[data-view="top"] [data-handle="handle-desk-front"]');
  await shape.waitFor();
  await shape.focus();
  await shape.selectOption('corner');
  await front.waitFor();
  await expect.poll(() => front.inputValue()).toBe('600');
  await front.fill('640');
  await expect.poll(() => inDrawing.getAttribute('aria-label')).toContain('640');
  // The gap to the wall was measured: it stays.
  expect(await field(page, '/layouts/0/room/gap').inputValue()).toBe('120');
  await front.press('Enter');
  await page.locator('body').press('ControlOrMeta+z');
  await expect.poll(() => front.inputValue()).toBe('600');
  await page.locator('body').press('ControlOrMeta+z');
  await expect.poll(() => field(page, '/layouts/0/desk/outline/width').inputValue()).toBe('1400');
  await expect.poll(() => front.count()).toBe(0);
});
