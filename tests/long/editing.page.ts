import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { seeded } from '../../bench/measure.ts';
import { useBrowser } from '../browser/page.ts';

const visit = useBrowser();

/** The seed of edits, tabs and reloads; the environment may name another. */
const SEED = Number(process.env.WEDGEWRIGHT_SEED ?? 20260101);
const EAR = '/layouts/0/listener/earHeight';
const FIELDS: readonly (readonly [pointer: string, from: number, to: number])[] = [
  [EAR, 1050, 1300],
  ['/layouts/0/listener/setback', 0, 300],
  ['/layouts/0/stand/lift', 10, 60],
];

const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);
const saved = (page: Page) =>
  expect.poll(() => page.locator('[data-status]').getAttribute('data-status')).toBe('saved');
const alive = (page: Page) => page.locator('button:enabled', { hasText: 'New, open, share' }).waitFor();

async function type(page: Page, pointer: string, value: string): Promise<void> {
  await field(page, pointer).fill(value);
  await field(page, pointer).blur();
}

async function reload(page: Page): Promise<void> {
  await page.waitForLoadState('networkidle');
  await page.reload();
  await alive(page);
}

test(`nothing is lost among 300 random edits with reloads (seed ${SEED})`, async () => {
  const random = seeded(SEED);
  const { page } = await visit();
  const kept = new Map<string, string>();
  for (let edit = 0; edit < 300; edit++) {
    const [pointer, from, to] = FIELDS[Math.floor(random() * FIELDS.length)] ?? FIELDS[0] ?? [EAR, 1050, 1300];
    const value = String(Math.round(from + (to - from) * random()));
    await type(page, pointer, value);
    kept.set(pointer, value);
    if (random() < 0.1) {
      await reload(page);
      for (const [at, typed] of kept)
        await expect.poll(() => field(page, at).inputValue(), { message: at }).toBe(typed);
    }
  }
});

test(`three tabs: none writes over another, and each edit is somewhere (seed ${SEED})`, async () => {
  const random = seeded(SEED);
  const { page, context } = await visit();
  await type(page, EAR, '1200');
  await saved(page);
  const tabs = [page, await context.newPage(), await context.newPage()];
  for (const tab of tabs.slice(1)) {
    await tab.goto(page.url());
    await alive(tab);
    await expect.poll(() => field(tab, EAR).inputValue()).toBe('1200');
  }
  const notices = (tab: Page) => tab.getByRole('region', { name: 'Notices' });
  for (let round = 0; round < 12; round++) {
    const writer = tabs[Math.floor(random() * tabs.length)] ?? page;
    const value = String(1201 + round);
    await type(writer, EAR, value);
    await saved(writer);
    for (const other of tabs.filter((tab) => tab !== writer)) {
      await expect.poll(() => notices(other).textContent()).toContain('Another tab has changed this project.');
      await notices(other).getByRole('button', { name: 'Take theirs' }).click();
      await expect.poll(() => field(other, EAR).inputValue()).toBe(value);
    }
  }
});
