import { readFile } from 'node:fs/promises';
import { strFromU8, unzipSync } from 'fflate';
import type { Locator, Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import type { Sheet } from '$lib/workshop/part.ts';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { layoutFaults } from '$lib/workshop/nesting/validity.ts';
import { settleProject } from '$lib/document/settle.ts';
import { project } from '../projects.ts';
import { useBrowser, type Visit } from './page.ts';

const visit = useBrowser();

/** A search takes a busy machine some seconds, ms. */
const BUSY = 120_000;
const { shown } = settleProject(project(), 0);
if (!shown) throw new Error('the demo has an answer');
const { parts } = shown;
const copies = parts.reduce((sum, { quantity }) => sum + quantity, 0);

const section = (page: Page): Locator => page.getByRole('region', { name: 'Sheets', exact: true });
const drawings = (page: Page): Locator => section(page).locator('svg[data-sheet]');
const state = (page: Page): Locator => section(page).getByRole('status').first();
const message = (page: Page): Locator => section(page).getByRole('status').last();
const ended = (page: Page) =>
  expect.poll(() => state(page).textContent(), { timeout: BUSY }).toContain('come to its end');

/** The workshop with its sheets in view and the search at its end. */
async function open(visitor: Parameters<typeof visit>[1] = {}): Promise<Visit> {
  const made = await visit('workshop/', visitor);
  await made.page.getByRole('heading', { name: 'Sheets', exact: true }).scrollIntoViewIfNeeded();
  await ended(made.page);
  return made;
}

/** The emptiest sheet of the demo, and the first of its parts. */
async function emptiest(page: Page): Promise<{ readonly svg: Locator; readonly part: Locator }> {
  const counts = await drawings(page).evaluateAll((all) =>
    all.map((svg) => svg.querySelectorAll('[data-placement]').length),
  );
  const svg = drawings(page).nth(counts.indexOf(Math.min(...counts)));
  await svg.scrollIntoViewIfNeeded();
  return { svg, part: svg.locator('[data-placement="0"]') };
}

const boxOf = async (what: Locator) => {
  const box = await what.boundingBox();
  if (box === null) throw new Error('expected it on the page');
  return box;
};

/** Carries the middle of a part by so many pixels. */
async function drag(page: Page, part: Locator, dx: number, dy: number): Promise<void> {
  const { x, y, width, height } = await boxOf(part);
  // In the lower middle: a wedge has wood there at every turn.
  const from = { x: x + width / 2, y: y + height / 2 };
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + dx / 2, from.y + dy / 2, { steps: 4 });
  await page.mouse.move(from.x + dx, from.y + dy, { steps: 4 });
  await page.mouse.up();
}

async function archivedSheets(page: Page): Promise<readonly Sheet[]> {
  const coming = page.waitForEvent('download', { timeout: BUSY });
  await page.getByRole('button', { name: 'Download all as one zip' }).click();
  const files = unzipSync(await readFile(await (await coming).path()));
  const plan = JSON.parse(strFromU8(files['plan.json'] ?? new Uint8Array())) as { sheets: Sheet[] };
  // Turns are in degrees in the file.
  return plan.sheets.map((sheet) => ({
    ...sheet,
    placements: sheet.placements.map((placement) => ({ ...placement, turn: radians(placement.turn) })),
  }));
}

/** Where the parts of each sheet are drawn. */
const placesOf = (page: Page) =>
  drawings(page).evaluateAll((all) =>
    all.map((svg) => [...svg.querySelectorAll('[data-placement]')].map((part) => part.getAttribute('transform'))),
  );
const asDrawn = ({ x, y, turn }: Sheet['placements'][number]) =>
  `translate(${x} ${y}) rotate(${Math.round(degrees(turn))})`;

describe('the search', () => {
  test(
    'runs in the built site’s worker, only gets better, and what it shows is what is cut',
    async () => {
      const { page } = await visit('workshop/');
      const seen: number[] = [];
      await page.getByRole('heading', { name: 'Sheets', exact: true }).scrollIntoViewIfNeeded();
      await drawings(page).first().waitFor({ timeout: BUSY });
      expect(page.workers().some((worker) => worker.url().includes('/workers/job.worker'))).toBe(true);
      await expect
        .poll(
          async () => {
            seen.push(await drawings(page).count());
            return state(page).textContent();
          },
          { timeout: BUSY },
        )
        .toContain('come to its end');
      expect(seen).toEqual([...seen].sort((a, b) => b - a));
      await expect.poll(() => state(page).textContent()).toMatch(/^\s*MDF 3 mm: \d+ sheets\. By area alone/);
      await expect.poll(() => section(page).locator('[data-placement]').count()).toBe(copies);

      const places = await placesOf(page);
      const sheets = await archivedSheets(page);
      expect(sheets.map(({ placements }) => placements.map(asDrawn))).toEqual(places);
      expect(layoutFaults(sheets, parts, 2, 5)).toEqual([]);
    },
    2 * BUSY,
  );

  test(
    'can be stopped at any time: what is on show is locked in place and cut; and tried again from another start',
    async () => {
      const { page } = await visit('workshop/');
      await page.getByRole('heading', { name: 'Sheets', exact: true }).scrollIntoViewIfNeeded();
      await page.getByRole('button', { name: 'Stop and keep these' }).click();
      await expect.poll(() => message(page).textContent()).toContain('Every part is locked where it lies');
      const kept = await placesOf(page);
      await ended(page);
      await expect.poll(() => section(page).locator('[data-placement].locked').count()).toBe(copies);
      expect(await placesOf(page)).toEqual(kept);
      const sheets = await archivedSheets(page);
      expect(sheets.map(({ placements }) => placements.map(asDrawn))).toEqual(kept);
      await page.getByRole('button', { name: 'Unlock all' }).click();
      await expect.poll(() => section(page).locator('[data-placement].locked').count()).toBe(0);
      await ended(page);
      await page.getByRole('button', { name: 'Try another arrangement' }).click();
      await ended(page);
      // The other start is kept with the project, and is one step of undo.
      await page.locator('h1').click();
      await page.keyboard.press('Control+z');
      await ended(page);
    },
    2 * BUSY,
  );

  test(
    'can be cancelled before it has found anything, and taken up again',
    async () => {
      const { page } = await visit('workshop/');
      let bring = (): void => undefined;
      const worker = new Promise<void>((resolve) => (bring = resolve));
      await page.route('**/job.worker*', async (route) => {
        await worker;
        await route.continue();
      });
      await page.getByRole('heading', { name: 'Sheets', exact: true }).scrollIntoViewIfNeeded();
      await section(page).getByRole('button', { name: 'Cancel' }).click();
      await expect.poll(() => state(page).textContent()).toContain('Cancelled before an arrangement was found');
      await expect.poll(() => drawings(page).count()).toBe(0);
      await page.getByRole('button', { name: 'Try another arrangement' }).click();
      bring();
      await ended(page);
      await expect.poll(() => section(page).locator('[data-placement]').count()).toBe(copies);
    },
    2 * BUSY,
  );

  test('leaving the page ends the worker', async () => {
    const { page } = await visit('workshop/');
    await page.getByRole('heading', { name: 'Sheets', exact: true }).scrollIntoViewIfNeeded();
    await expect.poll(() => page.workers().length, { timeout: BUSY }).toBe(1);
    const [search] = page.workers();
    await page.getByRole('link', { name: 'Wedgewright' }).first().click();
    await expect.poll(() => page.workers()).not.toContain(search);
  });

  test('says what is wrong where a part is larger than its sheet', async () => {
    const { page } = await open();
    await page.getByRole('heading', { name: 'Stock', exact: true }).click();
    await page.locator('[id="/stock/0/sheet/width"]').fill('60');
    await page.locator('[id="/stock/0/sheet/height"]').fill('60');
    await expect
      .poll(() => section(page).getByRole('alert').textContent(), { timeout: BUSY })
      .toContain('/stock/0/sheet: Needs a sheet of at least');
  });
});

describe('by hand', () => {
  test(
    'a part that would overlap goes back; one that fits stays and is locked, and undo takes it back',
    async () => {
      const { page } = await open();
      const { svg, part } = await emptiest(page);
      const before = await part.getAttribute('transform');
      const neighbour = await boxOf(svg.locator('[data-placement="1"]'));
      const own = await boxOf(part);
      await drag(page, part, neighbour.x + 10 - own.x, neighbour.y - own.y);
      await expect.poll(() => message(page).textContent()).toMatch(/goes back: expected part "slice"/);
      await expect.poll(() => svg.locator('[data-placement="0"]').getAttribute('transform')).toBe(before);

      const board = await boxOf(svg);
      await drag(page, part, board.x + 20 - own.x, board.y + 30 - own.y);
      await expect.poll(() => message(page).textContent()).toContain('locked where you put it');
      await expect.poll(() => section(page).locator('[data-placement].locked').count()).toBe(1);
      await ended(page);
      const [locked] = (await section(page).locator('[data-placement].locked').all()).map((one) => one);
      await expect.poll(() => locked?.getAttribute('aria-label')).toMatch(/locked$/);
      await expect.poll(() => section(page).locator('[data-placement]').count()).toBe(copies);
      await page.locator('h1').click();
      await page.keyboard.press('Control+z');
      await expect.poll(() => section(page).locator('[data-placement].locked').count()).toBe(0);
    },
    2 * BUSY,
  );

  test(
    'all of it by keyboard: along the parts, up, away, down, turned, locked, unlocked',
    async () => {
      const { page } = await open();
      const { part } = await emptiest(page);
      await part.focus();
      await page.keyboard.press('End');
      await page.keyboard.press('Home');
      expect(await part.evaluate((one) => one === document.activeElement)).toBe(true);

      // Over the sheet's edge and down: it goes back.
      await page.keyboard.press('Enter');
      await expect.poll(() => part.getAttribute('aria-pressed')).toBe('true');
      for (let i = 0; i < 70; i++) await page.keyboard.press('Shift+ArrowUp');
      await expect.poll(() => message(page).textContent()).toContain('from the sheet');
      await page.keyboard.press('Enter');
      await expect.poll(() => message(page).textContent()).toContain('goes back');
      await page.keyboard.press('Enter');
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Escape');
      await expect.poll(() => part.getAttribute('aria-pressed')).toBe('false');

      // Up where there is room, and round.
      await page.keyboard.press('Enter');
      for (let i = 0; i < 20; i++) await page.keyboard.press('Shift+ArrowUp');
      await page.keyboard.press('Enter');
      await expect.poll(() => message(page).textContent()).toContain('locked where you put it');
      const before = await page.locator(':focus').getAttribute('aria-label');
      await page.keyboard.press('r');
      await expect.poll(() => page.locator(':focus').getAttribute('aria-label')).not.toBe(before);
      await ended(page);
      await expect.poll(() => page.locator(':focus').getAttribute('aria-label')).toMatch(/locked$/);
      await expect.poll(() => section(page).locator('[data-placement].locked').count()).toBe(1);

      // Unlocked, and locked where it then lies; the focus stays with it while the rest is arranged anew.
      await page.keyboard.press('l');
      await expect.poll(() => message(page).textContent()).toContain('is unlocked');
      await page.keyboard.press('l');
      await expect.poll(() => message(page).textContent()).toContain('is locked where it lies');
      await ended(page);
      await expect.poll(() => page.locator(':focus').getAttribute('aria-label')).toMatch(/locked$/);
    },
    2 * BUSY,
  );

  test(
    'a finger chooses first and then moves; buttons do what it has no keys for',
    async () => {
      const { page, context } = await open({ viewport: { width: 390, height: 844 }, touch: true });
      const { svg, part } = await emptiest(page);
      await part.tap({ force: true });
      const [own, board] = [await boxOf(part), await boxOf(svg)];
      const finger = await context.newCDPSession(page);
      const from = { x: own.x + own.width / 2, y: own.y + own.height / 2 };
      const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', share: number) =>
        finger.send('Input.dispatchTouchEvent', {
          type,
          touchPoints: type === 'touchEnd' ? [] : [{ x: from.x, y: from.y + share * (board.y + 20 - own.y) }],
        });
      await touch('touchStart', 0);
      for (const share of [0.2, 0.4, 0.6, 0.8, 1]) await touch('touchMove', share);
      await touch('touchEnd', 1);
      await expect.poll(() => message(page).textContent()).toContain('locked where you put it');
      await section(page).getByRole('button', { name: 'Unlock all' }).tap();
      await expect.poll(() => section(page).locator('[data-placement].locked').count(), { timeout: BUSY }).toBe(0);
      await ended(page);
      await (await emptiest(page)).part.tap({ force: true });
      const group = section(page).getByRole('group', { name: 'Chosen part' });
      await group.waitFor();
      await group.getByRole('button', { name: 'Lock', exact: true }).tap();
      await expect.poll(() => section(page).locator('[data-placement].locked').count(), { timeout: BUSY }).toBe(1);
      await ended(page);
      await section(page).getByRole('button', { name: 'Unlock all' }).tap();
      await expect.poll(() => section(page).locator('[data-placement].locked').count(), { timeout: BUSY }).toBe(0);
    },
    2 * BUSY,
  );

  test(
    'what no longer fits where it was locked is unlocked with the reason',
    async () => {
      const { page } = await open();
      const { part } = await emptiest(page);
      await part.focus();
      await page.keyboard.press('l');
      await expect.poll(() => section(page).locator('[data-placement].locked').count(), { timeout: BUSY }).toBe(1);
      await page.getByRole('heading', { name: 'Stock', exact: true }).click();
      await page.locator('[id="/stock/0/sheets"]').fill('2');
      await expect
        .poll(() => section(page).getByRole('alert').textContent(), { timeout: BUSY })
        .toContain('slice: expected one of 2 sheets of "MDF 3 mm"');
      await section(page).getByRole('button', { name: 'Forget where these were' }).click();
      await expect
        .poll(() => section(page).getByRole('alert').textContent(), { timeout: BUSY })
        .not.toContain('expected one of 2 sheets of "MDF 3 mm", got number');
    },
    2 * BUSY,
  );
});

describe('for every eye', () => {
  test.each([
    ['wide', {}],
    ['narrow', { viewport: { width: 390, height: 844 }, touch: true }],
  ] as const)(
    'the sheets are accessible in light and dark, and as wide as the window, %s',
    async (name, visitor) => {
      const { page, expectAccessible, shot } = await open(visitor);
      const { part } = await emptiest(page);
      await part.focus();
      await page.keyboard.press('Home');
      await shot(`sheets-${name}`);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      await expectAccessible('light and dark');
    },
    2 * BUSY,
  );
});
