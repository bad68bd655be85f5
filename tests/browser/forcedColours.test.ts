import type { Locator, Page } from 'playwright';
import { expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const styleOf = (of: Locator, name: 'borderBlockEndColor' | 'forcedColorAdjust' | 'color' | 'backgroundColor') =>
  of.evaluate((one, key) => getComputedStyle(one)[key], name);

const pageLink = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name });

test('in the system’s own colours the page that is open is marked, and no other', async () => {
  const { page } = await visit('method/');
  await page.emulateMedia({ forcedColors: 'active' });
  const ground = await styleOf(page.locator('header'), 'backgroundColor');
  expect(await styleOf(pageLink(page, 'Workshop'), 'borderBlockEndColor')).toBe(ground);
  expect(await styleOf(pageLink(page, 'Method'), 'borderBlockEndColor')).not.toBe(ground);
});

test('in the system’s own colours the words of a filled press stand out from its ground', async () => {
  const { page } = await visit();
  await page.emulateMedia({ forcedColors: 'active' });
  const press = page.getByRole('navigation', { name: 'On this page' }).getByRole('link', { name: 'Download' });
  // Without it the browser would lay a plate of the ground’s colour behind letters of the same colour.
  expect(await styleOf(press, 'forcedColorAdjust')).toBe('none');
  expect(await styleOf(press, 'color')).not.toBe(await styleOf(press, 'backgroundColor'));
  await page.getByRole('button', { name: 'Download all as one zip' }).hover();
  const main = page.getByRole('button', { name: 'Download all as one zip' });
  expect(await styleOf(main, 'forcedColorAdjust')).toBe('none');
  expect(await styleOf(main, 'color')).not.toBe(await styleOf(main, 'backgroundColor'));
});
