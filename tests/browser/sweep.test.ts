import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { solve } from '$lib/solution/solve.ts';
import { measureOf } from '$lib/study/measure.ts';
import { measures } from '$lib/study/measures.ts';
import { angleText } from '$lib/views/ui/formatNumber.ts';
import { firstLayout, project } from '../projects.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const SETBACK = '/layouts/0/listener/setback';
const LIFT = '/layouts/0/stand/lift';

const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);
const whatIf = (page: Page, label: string) => page.getByRole('button', { name: `What if … ${label} changes?` });
const sweep = (page: Page) => page.getByRole('region', { name: 'What if this changes?' });
const charts = (page: Page) => sweep(page).getByRole('slider');
const part = (page: Page, name: string) => sweep(page).getByRole('textbox', { name });
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });
const setbackDrawn = (page: Page) => page.locator('.paper [data-item]', { hasText: /^(?:180|205)$/ }).first();

/** What a single plan of the demo says with another setback. */
function planned(setback: number): string {
  const demo = project({ [SETBACK]: setback });
  const solved = solve(demo, firstLayout(demo), false);
  const tilt = measures.find(({ name }) => name === 'tilt');
  if (!solved.ok || !tilt) throw new Error('the demo has an answer');
  return angleText(measureOf(tilt, solved.value, null) ?? NaN);
}

/** Opens the sweep of a field and waits until everything is worked out. */
async function open(page: Page, pointer: string, label: string): Promise<void> {
  await field(page, pointer).click();
  await whatIf(page, label).click();
  await charts(page).waitFor();
  await sweep(page).getByRole('progressbar').waitFor({ state: 'detached' });
}

describe('what if a number changes', () => {
  test('is asked at its field, read and taken over by the keyboard alone, and undone', async () => {
    const { page, expectAccessible } = await visit();
    await field(page, SETBACK).focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await charts(page).waitFor();
    await sweep(page).getByRole('progressbar').waitFor({ state: 'detached' });
    await expect.poll(() => sweep(page).getByRole('heading', { level: 3 }).textContent()).toContain('180\u202fmm now');
    await charts(page).focus();
    for (let row = 0; row < 5; row += 1) await page.keyboard.press('ArrowRight');
    // Each row is what a single plan says; the drawing shows it, and nothing is edited.
    const read = await charts(page).getAttribute('aria-valuetext');
    expect(read).toContain('205\u202fmm:');
    expect(read).toContain(`Steepest tilt ${planned(205)}`);
    await expect.poll(() => setbackDrawn(page).textContent()).toBe('205');
    await expect.poll(() => page.getByText('Preview: Setback 205\u202fmm').count()).toBe(1);
    expect(await field(page, SETBACK).inputValue()).toBe('180');
    await expectAccessible();
    await page.keyboard.press('Escape');
    await expect.poll(() => setbackDrawn(page).textContent()).toBe('180');
    for (let row = 0; row < 5; row += 1) await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await expect.poll(() => field(page, SETBACK).inputValue()).toBe('205');
    await expect.poll(() => sweep(page).getByRole('heading', { level: 3 }).textContent()).toContain('205');
    await page.keyboard.press('ControlOrMeta+z');
    await expect.poll(() => field(page, SETBACK).inputValue()).toBe('180');
    // Back where one came from.
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await expect.poll(() => sweep(page).count()).toBe(0);
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe(SETBACK);
  });

  test('may be one of the loudspeaker’s, which all layouts share', async () => {
    const { page } = await visit();
    const DEPTH = '/speaker/depth';
    await open(page, DEPTH, 'Depth');
    const before = await field(page, DEPTH).inputValue();
    await charts(page).focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await expect.poll(() => field(page, DEPTH).inputValue()).not.toBe(before);
    await expect.poll(() => sweep(page).getByRole('heading', { level: 3 }).textContent()).toContain(`${await field(page, DEPTH).inputValue()}\u202fmm`); // prettier-ignore
    await undo(page).click();
    await expect.poll(() => field(page, DEPTH).inputValue()).toBe(before);
  });

  test('is read where the mouse points, which leaves nothing behind, and taken over where it is pressed', async () => {
    const { page, expectAccessible } = await visit('', { viewport: { width: 1440, height: 900 } });
    await open(page, SETBACK, 'Setback');
    await expectAccessible('light and dark');
    const box = await charts(page).boundingBox();
    if (!box) throw new Error('the charts are there');
    await page.mouse.move(box.x + box.width - 30, box.y + 100);
    await expect.poll(() => page.getByText(/^Preview: Setback/).count()).toBe(1);
    await page.mouse.move(200, 400);
    await expect.poll(() => page.getByText(/^Preview: Setback/).count()).toBe(0);
    expect(await field(page, SETBACK).inputValue()).toBe('180');
    await page.mouse.click(box.x + box.width - 30, box.y + 100);
    await expect.poll(() => field(page, SETBACK).inputValue()).not.toBe('180');
    await undo(page).click();
    await expect.poll(() => field(page, SETBACK).inputValue()).toBe('180');
    await sweep(page).getByRole('button', { name: 'Close' }).click();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe(SETBACK);
  });

  test('at 390 px: a finger reads, what it has read stays, and a press takes it over', async () => {
    const { page, expectAccessible } = await visit('', { viewport: { width: 390, height: 844 }, touch: true, theme: 'dark' }); // prettier-ignore
    await open(page, SETBACK, 'Setback');
    await charts(page).scrollIntoViewIfNeeded();
    const box = await charts(page).boundingBox();
    if (!box) throw new Error('the charts are there');
    await page.touchscreen.tap(box.x + box.width - 60, Math.min(box.y + box.height - 60, 700));
    await expect.poll(() => page.getByText(/^Preview: Setback/).count()).toBe(1);
    expect(await field(page, SETBACK).inputValue()).toBe('180');
    await expectAccessible();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await sweep(page).getByRole('button', { name: 'Take over' }).tap();
    await expect.poll(async () => Number(await field(page, SETBACK).inputValue())).toBeGreaterThan(180);
  });

  test('says where there is no answer and why, and takes none of that over', async () => {
    const { page } = await visit();
    await open(page, LIFT, 'Lift');
    await expect
      .poll(() => sweep(page).getByText('No answer from').textContent())
      .toMatch(/from 2\u202fmm to 3\u202fmm: Needs a thin end of at least 3\u202fmm/);
    await charts(page).focus();
    await page.keyboard.press('Home');
    await expect.poll(() => charts(page).getAttribute('aria-valuetext')).toBe('2\u202fmm: no answer');
    await page.keyboard.press('Enter');
    expect(await field(page, LIFT).inputValue()).toBe('12');
    expect(await sweep(page).getByRole('button', { name: 'Take over' }).isDisabled()).toBe(true);
    expect(await undo(page).isDisabled()).toBe(true);
  });

  test('a range that cannot be is told at its field; what was last worked out stays', async () => {
    const { page, expectAccessible } = await visit();
    await open(page, SETBACK, 'Setback');
    const before = await charts(page).innerHTML();
    await part(page, 'From').fill('400');
    await expect.poll(() => sweep(page).getByText('Enter more than 400').count()).toBe(1);
    expect(await part(page, 'To').getAttribute('aria-invalid')).toBe('true');
    await part(page, 'From').fill('80');
    await part(page, 'Values').fill('0');
    await expect.poll(() => sweep(page).getByText('Enter 2 to 1000, a whole number').count()).toBe(1);
    await part(page, 'To').fill('near');
    await expect.poll(() => sweep(page).getByText('To: Enter −3000 to 6000 mm').count()).toBe(1);
    expect(await charts(page).innerHTML()).toBe(before);
    await expectAccessible();
    await part(page, 'To').fill('1280');
    await part(page, 'Values').fill('121');
    await expect.poll(() => charts(page).getAttribute('aria-valuemax')).toBe('1280');
  });

  test('shows where a finding begins, its place a tenth of a step finely', async () => {
    const { page } = await visit();
    await open(page, SETBACK, 'Setback');
    const strip = sweep(page).getByRole('list', { name: 'Findings along the range' });
    const ends = await strip.getByRole('listitem').filter({ hasText: 'The loudspeakers stand' }).allTextContents();
    // Over ±15° it is a caution, within it a note: the angle at the head is 75° there.
    expect(ends.map((text) => /(?:up to|from) ([\d.]+)\smm$/.exec(text.trim())?.[1])).toEqual(['260.4', '260.4']);
  });

  test('gives its rows as a table of the measures that are drawn', async () => {
    const { page } = await visit();
    await open(page, SETBACK, 'Setback');
    await sweep(page)
      .getByText(/^Measures: /)
      .click();
    await sweep(page)
      .getByRole('checkbox', { name: /^Toe difference/ })
      .check();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      sweep(page).getByRole('button', { name: 'Table of these values (CSV)' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('what-if-setback.csv');
    const [head = '', ...rows] = (await readFile(await download.path(), 'utf8')).trim().split(/\r?\n/);
    expect(head).toMatch(/^\/listener\/setback \(mm\),.*toe-difference/);
    expect(rows).toHaveLength(41);
    expect(rows[0]).toMatch(/^80/);
  });

  test('says when it cannot be worked out, and comes back when tried again', async () => {
    const { page, takeNoise } = await visit();
    await field(page, SETBACK).click();
    await page.route('**/job.worker*', (route) => route.abort());
    await whatIf(page, 'Setback').click();
    const told = sweep(page).getByRole('alert');
    await expect.poll(() => told.textContent()).toContain('The values could not be worked out');
    expect(await charts(page).count()).toBe(0);
    await page.unrouteAll();
    await told.getByRole('button', { name: 'Try again' }).click();
    await charts(page).waitFor();
    await expect.poll(() => told.count()).toBe(0);
    takeNoise();
  });

  test('takes what is worked out so far where somebody stops it, and goes on', async () => {
    const { page } = await visit();
    await open(page, SETBACK, 'Setback');
    // A sheet takes seconds a value: there is time to stop it.
    await sweep(page)
      .getByText(/^Measures: /)
      .click();
    await sweep(page)
      .getByRole('checkbox', { name: /^Sheets/ })
      .check();
    await sweep(page).getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => sweep(page).getByText('Stopped before everything was worked out').count()).toBe(1);
    expect(await sweep(page).getByRole('progressbar').count()).toBe(0);
    await charts(page).waitFor();
    await sweep(page).getByRole('button', { name: 'Go on' }).click();
    await sweep(page).getByRole('progressbar').waitFor();
    await sweep(page)
      .getByRole('checkbox', { name: /^Sheets/ })
      .uncheck();
    await sweep(page).getByRole('progressbar').waitFor({ state: 'detached' });
  });
});
