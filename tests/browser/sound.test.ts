import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { solve } from '$lib/solution/solve.ts';
import { soundOf } from '$lib/solution/sound.ts';
import { causeName } from '$lib/solution/causeName.ts';
import { firstLayout, project } from '../projects.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const demo = project();
const planned = solve(demo, firstLayout(demo));
if (!planned.ok) throw new Error('the demo has a plan');
const sound = soundOf(demo, firstLayout(demo), planned.value);

const notches = (page: Page) => page.getByRole('list', { name: 'Notches' }).getByRole('button');
const paths = (page: Page) => page.locator('.path');
const SUGGESTED = /^Move both marks \d+ mm inwards, and sit \d+ mm further back$/;

describe('the response', () => {
  test('lists the notches that the kernel finds, with what makes each, and lights the way of the one that is pointed at', async () => {
    const { page } = await visit('sound/');
    await notches(page).first().waitFor();
    const causes = await notches(page).locator('.cause').allTextContents();
    expect(causes).toEqual(sound.both.notches.map(({ cause, monitor }) => causeName(cause, monitor)));
    await page.getByRole('radio', { name: 'Left' }).check();
    await expect.poll(() => notches(page).count()).toBe(sound.sides.left.response.notches.length);
    // It says beside it what it leaves out.
    for (const sentence of sound.leftOut) expect(await page.getByText(sentence).count()).toBe(1);
    // The way of a notch that is pointed at is lit in both views, and put out again.
    await page.getByRole('radio', { name: 'Both' }).check();
    await expect.poll(() => notches(page).count()).toBe(sound.both.notches.length);
    const marks = page.locator('.notch .hit');
    await marks.first().hover();
    // From above both loudspeakers, from the side one; each driver's own way over the desk.
    await expect.poll(() => paths(page).count()).toBe(3 * demo.speaker.drivers.length);
    await page.mouse.move(5, 5);
    await expect.poll(() => paths(page).count()).toBe(0);
    await marks.first().click();
    await page.mouse.move(5, 5);
    await expect.poll(() => paths(page).count()).toBeGreaterThan(0);
  });

  test('lights it from the list by keys alone', async () => {
    const { page } = await visit('sound/');
    await page.getByRole('radio', { name: 'Both' }).focus();
    await expect.poll(() => notches(page).count()).toBeGreaterThan(1);
    await page.keyboard.press('Tab');
    await expect.poll(() => paths(page).count()).toBeGreaterThan(0);
    expect(
      await notches(page)
        .first()
        .evaluate((button) => button === document.activeElement),
    ).toBe(true);
    await page.keyboard.press('Enter');
    await expect.poll(() => notches(page).first().getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('Enter');
    await expect.poll(() => notches(page).first().getAttribute('aria-pressed')).toBe('false');
  });

  test('lights it by a touch in the list or on the chart, until it is touched again', async () => {
    const { page } = await visit('sound/', { viewport: { width: 390, height: 844 }, touch: true });
    for (const target of [notches(page).nth(1), page.locator('.notch .hit').nth(1)]) {
      await target.tap();
      await expect.poll(() => paths(page).count()).toBeGreaterThan(0);
      await target.tap();
      await page.getByRole('heading', { name: 'Notches' }).tap();
      await expect.poll(() => paths(page).count()).toBe(0);
    }
  });
});

describe('a suggestion', () => {
  test.each(['', 'sound/'])('on the page %j is followed as one step, and taken back', async (path) => {
    const { page } = await visit(path);
    const finding = page.getByText(/The loudspeakers stand 83\.7° apart/);
    const button = page.getByRole('button', { name: SUGGESTED });
    await expect.poll(() => button.isEnabled()).toBe(true);
    await button.press('Enter');
    await expect.poll(() => finding.count()).toBe(0);
    const undo = page.getByRole('button', { name: /^Undo: Move both marks/ });
    expect(await undo.evaluate((one) => one === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    await expect.poll(() => finding.count()).toBe(1);
    await expect.poll(() => undo.count()).toBe(0);
    expect(
      await page.getByRole('heading', { name: 'Findings' }).evaluate((one) => one === document.activeElement),
    ).toBe(true);
  });

  test('sets the marks on the first page, and the page’s own undo takes them back', async () => {
    const { page } = await visit();
    const mark = page.locator('[id="/layouts/0/placement/right/x"]');
    const before = await mark.inputValue();
    await page.getByRole('button', { name: SUGGESTED }).click();
    await expect.poll(() => mark.inputValue()).not.toBe(before);
    await page.locator('body').press('Control+z');
    await expect.poll(() => mark.inputValue()).toBe(before);
  });

  test('that lines the drivers up is told with its price, says that the maker’s way is assumed, and is followed', async () => {
    const { page } = await visit('sound/');
    await page
      .getByText(/^Assumed: its maker lined the drivers up on the tweeter’s axis, 1 m from the baffle/)
      .waitFor();
    const tilt = page.getByRole('button', { name: /^Set the tilt to / });
    await expect.poll(() => tilt.first().isEnabled()).toBe(true);
    const label = await tilt.first().textContent();
    await expect
      .poll(() => page.getByText(/Its price: the head 1\.2° off the tweeter’s axis/).count())
      .toBeGreaterThan(0);
    await tilt.first().click();
    await page.getByRole('button', { name: `Undo: ${label}` }).click();
    await expect.poll(() => tilt.first().isEnabled()).toBe(true);
  });
});

describe('the verdict', () => {
  test('is the first thing on the page: five lines, each with a sign, a number and a press to its picture', async () => {
    const { page } = await visit('sound/');
    const lines = page.getByRole('list', { name: 'Verdict' }).getByRole('listitem');
    await expect
      .poll(() => lines.allInnerTexts())
      .toEqual(
        [
          /Aimed\s+0\smm\s±\s20\smm/,
          /In step\s+−?\d\.\d\sdB/,
          /Even\s+−\d+\sdB/,
          /Free\s+± \d+\smm/,
          /Steady\s+2\.0°/,
        ].map((line) => expect.stringMatching(line)),
      );
    const signs = await lines.getByRole('img').evaluateAll((all) => all.map((one) => one.ariaLabel));
    expect(signs).toEqual(['Good:', 'Good:', 'Note:', expect.stringMatching(/^(Good|Note):/), 'Caution:']);
    expect(await lines.locator('svg').count()).toBe(5);
    for (const [name, heading] of [
      ['Aimed', 'At the ears'],
      ['In step', /^Crossovers/],
      ['Free', 'Head movement'],
      ['Steady', 'Stability'],
    ] as const) {
      await page.getByRole('link', { name: `${name}: show` }).click();
      const target = page.getByRole('heading', { name: heading, exact: true });
      await expect.poll(() => target.evaluate((one) => one === document.activeElement)).toBe(true);
    }
  });
});

describe('head movement', () => {
  test('is drawn as maps, follows the head that is dragged, and by keys', async () => {
    const { page } = await visit('sound/');
    const map = page.getByRole('img', { name: /^From the side/ });
    await map.waitFor();
    const limit = () => map.locator('.limit').getAttribute('d');
    const before = await limit();
    expect(before).toMatch(/^M/);
    const slider = page.getByRole('slider', { name: 'Sideways' });
    await slider.focus();
    for (let i = 0; i < 10; i++) await page.keyboard.press('ArrowRight');
    await expect.poll(limit).not.toBe(before);
    await expect
      .poll(() => page.getByText(/^Out: the (time|level) between the two is over its limit\.$/).count())
      .toBe(1);
    await page.getByRole('button', { name: 'Back to the planned head' }).click();
    await expect.poll(limit).toBe(before);
    const box = await page.getByRole('img', { name: /^From above/ }).boundingBox();
    if (!box) throw new Error('the map is on the page');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + 0.6 * box.width, box.y + box.height / 2, { steps: 8 });
    await page.mouse.up();
    expect(Number(await slider.inputValue())).toBeGreaterThan(0);
  });

  test('can be put off and taken up again', async () => {
    // From a page that asks for no maps of its own.
    const { page } = await visit('method/');
    await page.evaluate(() => {
      const stop = new MutationObserver(() => {
        const button = [...document.querySelectorAll('button')].find(({ textContent }) => textContent === 'Cancel');
        button?.click();
        if (button) stop.disconnect();
      });
      stop.observe(document.body, { childList: true, subtree: true });
    });
    await page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name: 'Sound' }).click();
    await page.getByRole('button', { name: 'Work out the maps' }).waitFor();
    await expect.poll(() => page.getByRole('img', { name: /^From the side/ }).count()).toBe(0);
    await page.getByRole('button', { name: 'Work out the maps' }).click();
    await page.getByRole('img', { name: /^From the side/ }).waitFor();
  });
});

describe('the working', () => {
  test('of a number opens with the user’s figures, and closes by Escape with the focus back; in inches where the page is', async () => {
    const { page, expectAccessible } = await visit();
    await page.getByText('All figures, and how each is worked out').click();
    const button = page.getByRole('button', { name: 'Front edge over desk: show the working' });
    await button.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Front edge over desk' });
    await dialog.waitFor();
    await expectAccessible();
    expect(await dialog.locator('math').count()).toBeGreaterThan(3);
    await expect.poll(() => dialog.textContent()).toContain('205\u202fmm');
    expect(await dialog.getByRole('link', { name: 'All formulas and conventions' }).getAttribute('href')).toContain(
      'method',
    );
    await page.keyboard.press('Escape');
    await expect.poll(() => dialog.count()).toBe(0);
    expect(await button.evaluate((one) => one === document.activeElement)).toBe(true);

    await page.getByLabel('Show lengths in').selectOption('inches, to 1/16');
    await button.click();
    await dialog.waitFor();
    // The cabinet's depth of 205 mm and the lift of 12 mm, to a ten-thousandth of an inch.
    const told = await dialog.textContent();
    for (const mm of [205, 12]) expect(told).toContain(`${Number((mm / 25.4).toFixed(4))}\u202fin`);
    expect(told).not.toContain('mm');
  });

  test('of every number is on the page about the method, where the link leads', async () => {
    const { page } = await visit('method/#tilt');
    expect(await page.locator('article').count()).toBeGreaterThan(30);
    await expect.poll(() => page.locator('#tilt h3').isVisible()).toBe(true);
  });
});

describe('anybody can use it', () => {
  test.each([
    ['sound/', 1280],
    ['sound/', 390],
    ['method/', 390],
  ] as const)('%s at %i px, in light and dark', async (path, width) => {
    const { page, expectAccessible, shot } = await visit(path, { viewport: { width, height: 844 } });
    if (path === 'sound/') await page.getByRole('img', { name: /^From the side/ }).waitFor();
    await expectAccessible('light and dark');
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    // On a phone no table has to be scrolled sideways, and each figure stands beside its name.
    if (path === 'sound/' && width === 390) {
      const tables = page.locator('.wide-table');
      expect(await tables.count()).toBeGreaterThan(2);
      expect(await tables.evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth).length)).toBe(0);
      const unnamed = await tables
        .locator('td')
        .evaluateAll((all) => all.filter((one) => getComputedStyle(one, '::before').content === 'none').length);
      expect(unnamed).toBe(0);
    }
    await shot(`${path.replace('/', '')}-${width}`);
  });
});
