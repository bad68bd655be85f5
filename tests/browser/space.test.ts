import { readFileSync } from 'node:fs';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useBrowser } from './page.ts';
import { pixelsOf, type Pixels } from './pixels.ts';

const visit = useBrowser();

const open = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Space', exact: true }).click();
  await page.getByRole('application', { name: /in space, seen from the chair and the right/ }).waitFor();
};
const picture = (page: Page) => page.getByRole('application', { name: /in space/ });
const seen = async (page: Page): Promise<string> => (await picture(page).getAttribute('aria-label')) ?? '';
const told = (page: Page, words: RegExp) => expect.poll(() => seen(page)).toMatch(words);

/** How many colours a picture has, how many of its pixels are of the axis's red, and which share of it is of one colour. */
function coloursIn({ data }: Pixels): { readonly count: number; readonly red: number; readonly paper: number } {
  const counts = new Map<string, number>();
  let red = 0;
  for (let at = 0; at < data.length; at += 4) {
    const [r = 0, g = 0, b = 0] = data.subarray(at, at + 3);
    if (r > 180 && g < 90 && b < 90) red++;
    const colour = `${r} ${g} ${b}`;
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  return { count: counts.size, red, paper: (4 * Math.max(...counts.values())) / data.length };
}

describe('the view in space', () => {
  test('turns by key, pointer and named views, says from where it is seen, and goes back to the drawing', async () => {
    const { page, expectAccessible } = await visit();
    await open(page);
    await expectAccessible('light and dark');
    await picture(page).focus();
    await page.keyboard.press('ArrowRight');
    await told(page, /seen from the chair and the right, 28° above/);
    for (let press = 0; press < 4; press++) await page.keyboard.press('Shift+ArrowRight');
    await told(page, /seen from the right, 28° above/);
    await page.keyboard.press('ArrowDown');
    await told(page, /seen from the right, 23° above/);

    await page.getByRole('button', { name: 'From the chair' }).click();
    await told(page, /seen from the chair, 16° above/);
    await expect
      .poll(() => page.getByRole('button', { name: 'From the chair' }).getAttribute('aria-pressed'))
      .toBe('true');

    const box = await picture(page).boundingBox();
    if (!box) throw new Error('the picture has a place');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - 225, y, { steps: 4 });
    await page.mouse.up();
    await told(page, /seen from the right, 16° above/);
    await expect
      .poll(() => page.getByRole('button', { name: 'From the chair' }).getAttribute('aria-pressed'))
      .toBe('false');

    await page.getByRole('button', { name: 'From above' }).click();
    await told(page, /seen from above/);
    await page.getByRole('button', { name: 'Plan', exact: true }).click();
    await expect.poll(() => picture(page).count()).toBe(0);
    await page.getByRole('group', { name: 'Plan' }).waitFor();
  });

  test('is drawn by the graphics processor where there is one, and saved as it is seen', async () => {
    const { page } = await visit();
    await open(page);
    const drawn = picture(page).locator('canvas[data-drawn]');
    await drawn.waitFor();
    await expect.poll(() => picture(page).locator('svg path').count()).toBe(0);
    await page.getByRole('button', { name: 'From the side' }).click();
    await expect.poll(() => drawn.getAttribute('data-drawn')).toBe('from the right, 4° above');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save PNG' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('window side in space.png');
    const png = readFileSync(await download.path());
    const tints = coloursIn(await pixelsOf(page, png));
    // Paper, desk, screen, wood, head and two cabinets, each with several faces, and red for an axis.
    expect(tints.count).toBeGreaterThan(30);
    expect(tints.red).toBeGreaterThan(20);
    expect(tints.paper).toBeGreaterThan(0.3);
    expect(tints.paper).toBeLessThan(0.95);
  });

  test('is a still picture where there is no WebGL, turned all the same, and saved as SVG', async () => {
    const { page, context } = await visit();
    await context.addInitScript(() => {
      HTMLCanvasElement.prototype.getContext = () => null;
    });
    await page.reload();
    await page.locator('button:enabled', { hasText: 'New, open, share' }).waitFor();
    await open(page);
    const paths = picture(page).locator('svg path');
    await expect.poll(() => paths.count()).toBeGreaterThan(50);
    const before = await paths.first().getAttribute('d');
    await page.getByRole('button', { name: 'From the side' }).click();
    await told(page, /seen from the right/);
    await expect.poll(() => paths.first().getAttribute('d')).not.toBe(before);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save SVG' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('window side in space.svg');
    const svg = readFileSync(await download.path(), 'utf8');
    expect(svg).toContain('seen from the right, 4° above');
    expect(svg.match(/<path /g)?.length).toBeGreaterThan(50);
  });

  test('turns under one finger, comes nearer under two, and leaves the page its scrolling', async () => {
    const { page, context } = await visit('', { viewport: { width: 390, height: 844 }, touch: true });
    await open(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    const hand = await context.newCDPSession(page);
    const box = await picture(page).boundingBox();
    if (!box) throw new Error('the picture has a place');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: [number, number][]) =>
      hand.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: points.map(([px, py], id) => ({ x: px, y: py, id })),
      });
    await touch('touchStart', [x, y]);
    await touch('touchMove', [x - 60, y]);
    await touch('touchMove', [x - 120, y - 20]);
    await touch('touchEnd');
    await told(page, /seen from the right, /);
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    const nearest = page.getByRole('button', { name: 'Nearer' });
    await touch('touchStart', [x - 10, y], [x + 10, y]);
    for (const reach of [20, 40, 80, 150]) await touch('touchMove', [x - reach, y], [x + reach, y]);
    await touch('touchEnd');
    await expect.poll(() => nearest.isDisabled()).toBe(true);
    // Beside it the page scrolls on.
    await touch('touchStart', [100, 700]);
    for (const up of [640, 560, 460, 340]) await touch('touchMove', [100, up]);
    await touch('touchEnd');
    await expect.poll(() => page.evaluate(() => window.scrollY)).toBeGreaterThan(0);
  });
});
