import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const PHONE = { viewport: { width: 390, height: 844 }, touch: true } as const;
const GUIDE = 'measure/';
const EAR = '/layouts/0/listener/earHeight';

const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);
const help = (page: Page) => page.locator('#help');
const question = (page: Page, label: string) =>
  page.getByRole('button', { name: `What is meant by ${label}`, exact: true }).first();
const shownSteps = (page: Page) => page.locator('.step:visible h2').allTextContents();

describe('the measuring guide on a phone', () => {
  test('shows one step at a time, from the desk to the drawing', async () => {
    const { page, expectAccessible } = await visit(GUIDE, PHONE);
    expect(await shownSteps(page)).toEqual(['The desk']);
    const seen: string[] = [];
    for (let step = 0; step < 7; step += 1) {
      seen.push(...(await shownSteps(page)));
      await expectAccessible();
      if (step < 6)
        await page
          .locator('.step:visible')
          .getByRole('link', { name: /^Next: / })
          .tap();
    }
    expect(seen).toEqual([
      'The desk',
      'Your ears',
      'The screen',
      'The cabinet',
      'The drivers',
      'The marks',
      'The board',
    ]);
    await expect.poll(() => page.getByRole('link', { name: 'The board' }).getAttribute('aria-current')).toBe('step');
    await page.locator('.step:visible').getByRole('link', { name: 'See the drawing' }).tap();
    await page.getByRole('heading', { name: 'Measurements' }).waitFor();
  });

  test.each(['desk', 'seat', 'cabinet', 'marks'])(
    'shows question, picture, values and the way on of the step %s on one screen, how to measure below them',
    async (step) => {
      const { page } = await visit(`${GUIDE}#${step}`, PHONE);
      const shown = page.locator('.step:visible');
      const next = shown.getByRole('link', { name: /^Next: / });
      const bottom = () => next.evaluate((link) => link.getBoundingClientRect().bottom + scrollY);
      await expect.poll(bottom).toBeLessThanOrEqual(844);
      const below = await shown.locator('> .text').evaluate((text) => text.getBoundingClientRect().top + scrollY);
      expect(below).toBeGreaterThanOrEqual(await bottom());
    },
  );

  test('goes back as the browser does', async () => {
    const { page } = await visit(`${GUIDE}#seat`, PHONE);
    expect(await shownSteps(page)).toEqual(['Your ears']);
    await page.locator('.step:visible').getByRole('link', { name: 'Next: the screen' }).tap();
    expect(await shownSteps(page)).toEqual(['The screen']);
    await page.goBack();
    expect(await shownSteps(page)).toEqual(['Your ears']);
  });

  test('takes numbers into the open project, and says what a doubt does', async () => {
    const { page } = await visit(`${GUIDE}#seat`, PHONE);
    await field(page, EAR).tap();
    await field(page, EAR).fill('1210');
    const effect = page.locator('.value', { has: field(page, '/sure/earHeight') }).locator('.effect');
    const before = await effect.textContent();
    await field(page, '/sure/earHeight').fill('30');
    await expect.poll(() => effect.textContent()).not.toBe(before);
    await expect.poll(() => effect.textContent()).toMatch(/^tilt ±\u202f\d\.\d°/);
    await page.getByRole('link', { name: 'Wedgewright' }).tap();
    await page.getByRole('heading', { name: 'Measurements' }).waitFor();
    await expect.poll(() => field(page, EAR).inputValue()).toBe('1210');
  });

  test('has nothing too small for a finger and nothing that sticks out', async () => {
    const { page } = await visit(`${GUIDE}#drivers`, PHONE);
    const small = await page.locator(':is(.step:target, nav) :is(a, button, input)').evaluateAll((controls) =>
      controls.flatMap((control) => {
        // A choice is pressed on its words too.
        const { width, height } = (control.closest('label') ?? control).getBoundingClientRect();
        return height > 0 && Math.min(width, height) < 44 && !control.matches('.term')
          ? [`${control.textContent}: ${height}`]
          : [];
      }),
    );
    expect(small).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });

  test('works before any script has come', async () => {
    const { page } = await visit(GUIDE, PHONE);
    const served = await page.evaluate(async () => (await fetch('./')).text());
    for (const title of ['The desk', 'Your ears', 'The board']) expect(served).toContain(title);
    expect(served).toContain('1180');
  });
});

describe('the measuring guide on a desk', () => {
  test('is accessible at every width, and nothing sticks out', async () => {
    const { page, expectAccessible, shot } = await visit(GUIDE);
    for (const width of [768, 1440, 2560]) {
      await page.setViewportSize({ width, height: 900 });
      if (width >= 1024) await expect.poll(() => shownSteps(page)).toHaveLength(7);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      await expectAccessible(width === 1440 ? 'light and dark' : undefined);
      await shot(`guide-${width}`);
    }
  });

  test('leads the keyboard through to the drawing', async () => {
    const { page } = await visit(GUIDE, { viewport: { width: 1440, height: 900 } });
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the page');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('main');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('href'))).toBe('#desk');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('seat');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe(EAR);
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => field(page, EAR).inputValue()).toBe('1181');
  });

  test('tells a wrong number at its field and in the list', async () => {
    const { page } = await visit(GUIDE, { viewport: { width: 1440, height: 900 } });
    await field(page, '/sure/markX').fill('-3');
    await expect.poll(() => page.locator('[id="/sure/markX-fault"]').textContent()).toBe('Enter 0 to 500 mm');
    await expect
      .poll(() => page.getByRole('region', { name: 'Faults' }).innerText())
      .toContain('How sure, sideways, ±');
  });
});

describe('the help', () => {
  test('opens when the keyboard comes to it, is read out, and closes with Escape', async () => {
    const { page, expectAccessible } = await visit();
    await field(page, '/layouts/0/listener/setback').focus();
    await page.keyboard.press('Shift+Tab');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(
      'What is meant by Setback',
    );
    await help(page).getByRole('img').waitFor();
    await expect.poll(() => help(page).innerText()).toContain('From the desk’s front edge level back to the ears.');
    await expect.poll(() => page.locator('[role=status]', { hasText: 'Setback: From' }).count()).toBe(1);
    await expectAccessible();
    await page.keyboard.press('Escape');
    await help(page).waitFor({ state: 'hidden' });
  });

  test('opens at a touch and closes at the next one elsewhere', async () => {
    const { page, expectAccessible } = await visit('', PHONE);
    // The group is folded on a phone.
    await page.locator('summary', { hasText: 'Placement' }).tap();
    await question(page, 'Right, sideways').tap();
    await help(page).getByText('Mark', { exact: true }).waitFor();
    const box = await help(page).boundingBox();
    expect(box && [box.x, Math.round(box.y + box.height)]).toEqual([0, 844]);
    await expectAccessible();
    await page.getByRole('heading', { name: 'Measurements' }).tap();
    await help(page).waitFor({ state: 'hidden' });
  });

  test('opens when the mouse rests, stays while it is on it, and goes with it', async () => {
    const { page } = await visit();
    await page.clock.install();
    await question(page, 'Toe').hover();
    await page.clock.runFor(1000);
    await help(page).getByText('Toe', { exact: true }).waitFor();
    const box = await help(page).boundingBox();
    if (!box) throw new Error('the help is shown');
    await page.mouse.move(box.x + 40, box.y + 40);
    await page.clock.runFor(2000);
    await expect.poll(() => help(page).isVisible()).toBe(true);
    await page.mouse.move(5, 5);
    await help(page).waitFor({ state: 'hidden' });
  });

  test('is there for results too', async () => {
    const { page } = await visit();
    await page.getByText('All figures, and how each is worked out').click();
    await page
      .getByRole('table', { name: 'Aim' })
      .getByRole('button', { name: 'What is meant by Miss at the head' })
      .click();
    await help(page).getByText('The shortest distance from the axis to the head').waitFor();
  });

  test('that cannot be fetched says so, and comes at the next try', async () => {
    const { page, context, takeNoise } = await visit();
    const card = /\/chunks\/.*\.js$/;
    await context.route(card, (route) => route.abort());
    await question(page, 'Setback').click();
    await help(page).getByText('The help could not be fetched').waitFor();
    await context.unroute(card);
    takeNoise();
    await help(page).getByRole('button', { name: 'Try again' }).click();
    await help(page).getByRole('img').waitFor();
  });
});

describe('on paper', () => {
  test('the page is a sheet with its title block, date and scale, and the tables', async () => {
    const { page, shot } = await visit();
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    await page.emulateMedia({ media: 'print' });
    for (const gone of ['nav', '.form', '.tools', '.term']) {
      expect([gone, await page.locator(gone).first().isVisible()]).toEqual([gone, false]);
    }
    const cell = (name: string) => page.locator('dl > div', { hasText: name }).locator('dd').textContent();
    expect(await cell('Date')).toMatch(/^\d{4}-\d\d-\d\d$/);
    expect(await cell('Scale')).toBe('as noted');
    await expect.poll(() => page.locator('div.paper').innerText()).toMatch(/1:\d+/);
    await expect.poll(() => page.getByRole('table', { name: 'Stand' }).isVisible()).toBe(true);
    // As large as the scale has been reckoned for: a millimetre is 96/25.4 px.
    const paper = await page.locator('.paper > svg').boundingBox();
    expect(paper?.width).toBeCloseTo((176 * 96) / 25.4, 0);
    await shot('print');
  });
});

describe('an address that nothing is at', () => {
  test('says so in our manner and leads back', async () => {
    const { page, context, takeNoise, expectAccessible } = await visit();
    const answer = await page.goto(new URL('nowhere', inject('site')).href);
    expect(answer?.status()).toBe(404);
    await page.getByRole('heading', { name: 'There is nothing at this address' }).waitFor();
    await expectAccessible();
    await page.getByRole('link', { name: 'To the drawing' }).click();
    await page.getByRole('heading', { name: 'Measurements' }).waitFor();
    expect(context.pages()).toHaveLength(1);
    takeNoise();
  });
});

test('without colours of its own and in high contrast the page stays accessible', async () => {
  const { page, expectAccessible, shot } = await visit();
  for (const media of [{ forcedColors: 'active' }, { forcedColors: 'none', contrast: 'more' }] as const) {
    await page.emulateMedia(media);
    await expectAccessible();
    await shot(`look-${Object.values(media).join('-')}`);
  }
});
