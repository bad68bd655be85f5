import type { Locator, Page } from 'playwright';
import { expect, test } from 'vitest';
import { useBrowser, type Visitor } from './page.ts';
import { pixelsOf } from './pixels.ts';

const visit = useBrowser();

/** What a system may set formulas in: its own choice, and letters that know nothing of mathematics. */
const fonts = ['', 'sans-serif', 'serif', 'monospace'];

for (const theme of ['light', 'dark'] satisfies Visitor['theme'][]) {
  test.each(fonts)(`every radical of the method covers its radicand, ${theme}, in the font "%s"`, async (font) => {
    const { page } = await visit('method/', { theme });
    await page.evaluate((family) => {
      for (const formula of document.querySelectorAll('math')) formula.style.fontFamily = family;
    }, font);
    await page.evaluate(() => document.fonts.ready);
    const roots = await page.locator('msqrt').all();
    expect(roots.length).toBeGreaterThan(4);
    for (const root of roots) await expectCovered(page, root);
    await page.emulateMedia({ media: 'print' });
    await expectCovered(page, page.locator('#speed msqrt').first());
  });
}

test('the speed of sound has both temperatures under its root', async () => {
  const { page } = await visit('method/');
  const speed = page.locator('#speed msqrt').first();
  expect((await speed.textContent())?.replaceAll(/\s/g, '')).toBe('(T+273.15)/293.15');
});

/** The bar runs over the whole width of the radicand, above it, and the sign at its left comes down to the foot of it. */
async function expectCovered(page: Page, root: Locator): Promise<void> {
  await root.scrollIntoViewIfNeeded();
  const [all, radicand] = [await boxOf(root), await boxOf(root.locator('> *').first())];
  const { width, height, data } = await pixelsOf(page, await page.screenshot({ clip: all }));
  const background = data.slice(0, 3);
  const isInk = (x: number, y: number): boolean =>
    background.some((value, i) => Math.abs(value - (data[4 * (y * width + x) + i] ?? value)) > 60);
  const columns = (from: number, to: number): number[] =>
    Array.from({ length: width }, (_, x) => x).filter((x) => x >= from - all.x && x <= to - all.x);
  const rows = Array.from({ length: height }, (_, y) => y);

  const under = columns(radicand.x + 1, radicand.x + radicand.width - 1);
  const bar = rows.find((y) => under.every((x) => isInk(x, y)));
  expect(bar, 'a bar over all of the radicand').toBeDefined();
  expect(all.y + (bar ?? height)).toBeLessThan(radicand.y + 2);

  const sign = columns(all.x, radicand.x - 1);
  const foot = rows.findLast((y) => sign.some((x) => isInk(x, y))) ?? 0;
  expect(all.y + foot, 'the foot of the sign').toBeGreaterThan(radicand.y + 0.7 * radicand.height);
}

async function boxOf(locator: Locator): Promise<{ x: number; y: number; width: number; height: number }> {
  const box = await locator.boundingBox();
  if (box === null) throw new Error('nothing is shown there');
  return box;
}
