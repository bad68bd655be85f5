import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const EAR = '/layouts/0/listener/earHeight';

const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);
const line = (page: Page) => page.getByRole('region', { name: 'Example or your own' });
const counted = (page: Page, group: string) => page.locator('summary', { hasText: group }).locator('.measured');
const looks = (page: Page, pointer: string) =>
  field(page, pointer).evaluate((input) => {
    const { fontStyle, borderBlockEndStyle } = getComputedStyle(input);
    return [/^oblique/.test(fontStyle), borderBlockEndStyle];
  });
const described = (page: Page, pointer: string) =>
  field(page, pointer).evaluate((input) =>
    (input.getAttribute('aria-describedby') ?? '')
      .split(' ')
      .map((id) => document.getElementById(id)?.textContent ?? '')
      .join(' '),
  );

describe('values that nobody has measured yet', () => {
  test('are slanted on a dashed line, told to a screen reader, and counted, until they are typed', async () => {
    const { page, expectAccessible } = await visit();
    expect(await line(page).textContent()).toContain('0 of 26 measured');
    expect(await counted(page, 'Listener').innerText()).toBe('0 of 3 measured');
    expect(await looks(page, EAR)).toEqual([true, 'dashed']);
    expect(await described(page, EAR)).toContain('Not measured yet.');
    await expectAccessible('light and dark');

    await field(page, EAR).fill('1215');
    await expect.poll(() => looks(page, EAR)).toEqual([false, 'solid']);
    expect(await described(page, EAR)).not.toContain('measured');
    expect(await counted(page, 'Listener').innerText()).toBe('1 of 3 measured');
    expect(await line(page).textContent()).toContain('1 of 26 measured');
    // One that is no measurement is the user's own from the first.
    expect(await looks(page, '/layouts/0/stand/lift')).toEqual([false, 'solid']);
  });

  test('are confirmed as they stand by Enter, and Undo takes it back', async () => {
    const { page } = await visit();
    await field(page, EAR).press('Enter');
    await expect.poll(() => looks(page, EAR)).toEqual([false, 'solid']);
    await page.getByRole('button', { name: 'Undo Value confirmed' }).click();
    await expect.poll(() => looks(page, EAR)).toEqual([true, 'dashed']);
  });

  test('stay so over a reload', async () => {
    const { page } = await visit();
    await field(page, EAR).fill('1215');
    await field(page, EAR).blur();
    await page.locator('[data-status="saved"]').waitFor();
    await page.reload();
    await expect.poll(() => field(page, EAR).inputValue()).toBe('1215');
    await expect.poll(() => line(page).textContent()).toContain('1 of 26 measured');
  });
});

describe('the line of the example', () => {
  test.each([
    ['at a desk', { viewport: { width: 1440, height: 900 } }],
    ['on a phone', { viewport: { width: 390, height: 844 }, touch: true }],
    ['on a small one', { viewport: { width: 320, height: 640 }, touch: true }],
  ] as const)('%s asks for the unit once and begins a project of one’s own in the guide', async (name, visitor) => {
    const { page, expectAccessible, shot } = await visit('', visitor);
    await shot(`example-${name.replaceAll(' ', '-')}`);
    await line(page).getByRole('button', { name: 'start your own' }).click();
    await expectAccessible();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('millimetres');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(visitor.viewport.width);
    await line(page).getByRole('button', { name: 'inches and sixteenths' }).click();
    await page.waitForURL('**/measure/**');
    await page.getByRole('heading', { level: 1, name: /^Measure/ }).waitFor();
    // 730 mm are no number of sixteenths: all digits stand there.
    await expect.poll(() => field(page, '/layouts/0/desk/height').inputValue()).toBe('28.7402');
    expect(await looks(page, '/layouts/0/desk/height')).toEqual([true, 'dashed']);
    await page.goBack();
    await expect.poll(() => line(page).textContent()).toContain('0 of 22 measured');
    expect(await line(page).getByRole('link', { name: 'measure what is left' }).isVisible()).toBe(true);
  });

  test('can be left as it is', async () => {
    const { page } = await visit();
    await line(page).getByRole('button', { name: 'start your own' }).click();
    await line(page).getByRole('button', { name: 'Cancel' }).click();
    await line(page).getByRole('button', { name: 'start your own' }).waitFor();
    expect(await field(page, EAR).inputValue()).toBe('1180');
  });
});

test('how sure the plan is, opened by key: what to measure again first, its card, and the trials', async () => {
  const { page, expectAccessible } = await visit();
  const part = page.locator('details').filter({ hasText: 'How sure, and what to measure again first' });
  await part.locator('summary').press('Enter');
  await expect.poll(() => part.innerText()).toContain('Measure this again first: setback.');
  await part.getByRole('img', { name: /in 95 % of cases/ }).waitFor();
  await part.getByRole('row', { name: /^Setback/ }).waitFor();
  await expect.poll(() => part.innerText()).toMatch(/of 10\s000 trials the axis passes the head within\s+\d+\smm/);
  await expect.poll(() => part.innerText()).toContain('says the same');
  await expectAccessible('light and dark');
  // By what it was measured with.
  await part.getByRole('combobox', { name: 'Setback, measured with' }).selectOption('estimate');
  await expect.poll(() => part.getByRole('row', { name: /^Setback/ }).innerText()).toMatch(/±\s60\smm/);
});
