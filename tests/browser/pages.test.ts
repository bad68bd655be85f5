import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { layoutShift } from './layoutShift.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const PHONE = { viewport: { width: 390, height: 844 }, touch: true } as const;

/** Every page with its name in the row and its heading. */
const pages = [
  ['', 'Drawing', 'Wedgewright: desk, aim and stands'],
  ['measure/', 'Measure', 'Measure in seven steps'],
  ['compare/', 'Compare', 'Compare layouts'],
  ['search/', 'Search', 'Search'],
  ['sound/', 'Sound', 'Sound and stability'],
  ['workshop/', 'Workshop', 'Workshop'],
  ['build-sheet/', 'Build sheet', /^Build sheet: /],
  ['as-built/', 'As built', 'As built'],
  ['method/', 'Method', 'Method'],
] as const;

const menu = (page: Page) => page.getByRole('button', { name: 'Menu' });

/** Where the pages' frame and all that it holds stand, px. */
const frameOf = (page: Page) =>
  page
    .locator('header')
    .locator('a, .cell, legend, select, input, button')
    .evaluateAll((parts) => {
      // The page's own font may come too late for the first page; a font of the system is there for each.
      document.body.style.fontFamily = 'sans-serif';
      return parts.map((part) => {
        const { x, y, width, height } = part.getBoundingClientRect();
        return [x, y, width, height];
      });
    });

const row = (page: Page) => page.getByRole('navigation', { name: 'Pages' }).getByRole('link');

describe('the row of pages', () => {
  test.each(pages)(
    'on the page %j is the same, and marks %s; nothing jumps, no control is filled in',
    async (path, name) => {
      const { page } = await visit(path);
      if (path === 'sound/') await page.getByRole('button', { name: 'Back to the planned head' }).waitFor();
      // While the page came to life, nothing on it jumped.
      expect(await layoutShift(page)).toEqual([]);
      await expect.poll(() => row(page).allTextContents()).toEqual(pages.map(([, word]) => word));
      await expect.poll(() => page.locator('[aria-current=page]').allTextContents()).toEqual([name]);
      // What a browser remembers of a page that was there before is put into no control: it would pass for what somebody has just entered.
      const remembered = await page.locator('input:not([type=file]), select, textarea').evaluateAll((controls) =>
        controls.flatMap((control) => {
          if (!(control instanceof HTMLInputElement || control instanceof HTMLSelectElement)) return ['no control'];
          return (control.autocomplete || control.form?.autocomplete) === 'off' ? [] : [control.outerHTML];
        }),
      );
      expect(remembered).toEqual([]);
      await page.emulateMedia({ media: 'print' });
      await expect.poll(() => row(page).first().isVisible()).toBe(false);
    },
  );

  test('leads from each page to the next, and the open project goes along', async () => {
    const { page } = await visit('', PHONE);
    await page.getByLabel('Project title').fill('Attic');
    for (const [, name, heading] of [...pages.slice(1), pages[0]]) {
      await menu(page).tap();
      await row(page)
        .filter({ hasText: new RegExp(`^${name}$`) })
        .tap();
      await page.getByRole('heading', { level: 1, name: heading, exact: true }).waitFor();
      await expect.poll(() => row(page).count()).toBe(0);
    }
    await expect.poll(() => page.getByLabel('Project title').inputValue()).toBe('Attic');
  });

  test.each([1440, 768, 390])(
    'stands in one frame with project, layouts and unit, at the same pixels on every page, %d px wide',
    async (width) => {
      const { page } = await visit('', { viewport: { width, height: 900 }, touch: width < 1000 });
      await page.getByLabel('Project title').fill('Attic');
      const frame = await frameOf(page);
      for (const [path, , heading] of pages.slice(1)) {
        await page.goto(new URL(`/some/where/${path}`, page.url()).href);
        await page.locator('button:enabled', { hasText: 'New, open, share' }).waitFor();
        await page.getByRole('heading', { level: 1, name: heading, exact: true }).waitFor();
        await expect.poll(() => page.getByLabel('Project title').inputValue()).toBe('Attic');
        expect(await frameOf(page)).toEqual(frame);
      }
    },
  );

  test('is folded behind a button on a phone, which Escape closes again', async () => {
    const { page } = await visit('', PHONE);
    await expect.poll(() => row(page).count()).toBe(0);
    await menu(page).press('Enter');
    await expect.poll(() => row(page).count()).toBe(pages.length);
    await page.keyboard.press('Escape');
    await expect.poll(() => row(page).count()).toBe(0);
    await expect.poll(() => menu(page).evaluate((button) => button === document.activeElement)).toBe(true);
  });

  test.each(pages)(
    'on a phone the page %j shows all of it, large enough for a finger, and nothing jumps',
    async (path) => {
      const { page, expectAccessible } = await visit(path, PHONE);
      if (path === 'sound/') await page.getByRole('button', { name: 'Back to the planned head' }).waitFor();
      // While the page came to life, nothing on it jumped.
      expect(await layoutShift(page)).toEqual([]);
      await expectAccessible();
      await menu(page).tap();
      await expect.poll(() => row(page).count()).toBe(pages.length);
      const boxes = await row(page).evaluateAll((links) =>
        links.map((link) => {
          const { left, right, width, height } = link.getBoundingClientRect();
          return { left, right, width, height };
        }),
      );
      for (const { left, right, width, height } of boxes) {
        expect([left >= 0, right <= 390, height >= 44, width >= 44]).toEqual([true, true, true, true]);
      }
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
      await expectAccessible();
    },
  );
});

describe('while a page comes to life', () => {
  test('nothing is shown of one that has come in half, which the rest would push about', async () => {
    const { page } = await visit('method/');
    const home = new URL('../', page.url()).href;
    await page.route(home, async (route) => {
      const whole = await (await route.fetch()).text();
      await route.fulfill({ contentType: 'text/html', body: whole.slice(0, whole.length / 2) });
    });
    await page.goto(home);
    const frame = page.locator('header section');
    await frame.waitFor({ state: 'attached' });
    expect(await frame.isVisible()).toBe(false);
    await page.unrouteAll();
    await page.reload();
    await frame.waitFor({ state: 'visible' });
  });

  test('a jump would be noticed', async () => {
    const { page } = await visit('method/');
    await page.evaluate(() => {
      const pointMass = document.createElement('div');
      pointMass.append('pointMass', ...Array.from({ length: 12 }, () => document.createElement('br')));
      document.body.prepend(pointMass);
    });
    expect((await layoutShift(page)).length).toBeGreaterThan(0);
  });

  test('it is shown only when all of it is read, for half of it has its parts where they do not stay', async () => {
    const { page } = await visit('method/');
    const visibility = () => page.evaluate(() => getComputedStyle(document.body).visibility);
    expect(await visibility()).toBe('visible');
    expect(await page.evaluate(() => document.body.lastElementChild?.id)).toBe('read');
    await page.locator('#read').evaluate((mark) => mark.remove());
    expect(await visibility()).toBe('hidden');
  });
});

describe('the first page on a phone', () => {
  const strip = (page: Page) => page.getByRole('link', { name: 'Back to the drawing' });

  test('shrinks the drawing to a strip once it has scrolled away, which leads back to it, and moves nothing', async () => {
    const { page, expectAccessible } = await visit('', PHONE);
    await page.getByRole('button', { name: /^2 cautions/ }).waitFor();
    // All that comes late is there.
    await page.getByText('All figures, and how each is worked out').waitFor();
    await page.getByRole('button', { name: 'Download all as one zip' }).waitFor();
    await page.getByRole('button', { name: /^Raise the lift by/ }).waitFor();
    await expect.poll(() => page.locator('.verdict .passing').textContent()).toBe('');
    expect(await strip(page).count()).toBe(0);
    await page.locator('.within').getByRole('link', { name: 'Results' }).tap();
    await strip(page).waitFor();
    expect((await strip(page).boundingBox())?.height).toBe(104);
    // What the checks of the sound find comes later.
    await expect
      .poll(() => strip(page).innerText())
      .toMatch(
        /Bindery desk, window side\s+Toe, each\s+41\.9°\s+Tilt, each\s+14\.7°\s+Lift, each\s+12\smm\s+▲ 2 cautions, \d notes/,
      );
    // What was jumped to begins under it.
    const top = await page.locator('#results').evaluate((results) => results.getBoundingClientRect().top);
    expect(top).toBeGreaterThanOrEqual(104);
    expect(await layoutShift(page)).toEqual([]);
    await expectAccessible('light and dark');
    await strip(page).tap();
    await expect.poll(() => strip(page).count()).toBe(0);
    await page.setViewportSize({ width: 768, height: 1024 });
    await page.evaluate(() => window.scrollTo(0, 3000));
    await expect
      .poll(() => page.locator('.drawing').evaluate((drawing) => drawing.getBoundingClientRect().top))
      .toBe(0);
    expect(await strip(page).isVisible()).toBe(false);
  });

  test('shows in the strip the view that gives the field which is typed, its thing lit', async () => {
    const { page } = await visit('', PHONE);
    await page.locator('summary', { hasText: 'Other postures' }).tap();
    await page.locator('[id="/layouts/0/listener/postures/0/setback"]').tap();
    await strip(page).waitFor();
    const lit = strip(page).locator('.shape.chosen');
    await page.locator('[id="/layouts/0/listener/earHeight"]').focus();
    await expect.poll(() => lit.evaluateAll((shapes) => [...new Set(shapes.map((one) => one.classList[1]))])).toEqual(['head']); // prettier-ignore
    const drawn = await strip(page).locator('svg').innerHTML();
    await page.locator('[id="/layouts/0/listener/earHeight"]').blur();
    await expect.poll(() => lit.count()).toBe(0);
    expect(await strip(page).locator('svg').innerHTML()).not.toBe(drawn);
  });

  test('shows one group of fields at first, the first with something left to measure, and is under 5500 px tall', async () => {
    const { page } = await visit('', PHONE);
    const open = page.locator('form > details[open] > summary h3');
    await expect.poll(() => open.allInnerTexts()).toEqual(['Listener']);
    expect(await page.locator('form > details > summary', { hasText: 'Loudspeaker' }).innerText()).toMatch(
      /0 of \d+ measured/,
    );
    await page.getByText('All figures, and how each is worked out').waitFor();
    await page.getByRole('button', { name: 'Download all as one zip' }).waitFor();
    // Once what came late fills its room.
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThan(5500);
    // A number of the drawing opens its group.
    await page.locator('#drawing').scrollIntoViewIfNeeded();
    await page.locator('[data-item="desk-width"] .target').tap();
    await expect.poll(() => open.allInnerTexts()).toEqual(['Listener', 'Desk and wall']);
  });

  test('shows the drawing, the verdict and the first field on the first screen, the desk as wide as it but for 56 px', async () => {
    const { page } = await visit('', PHONE);
    const boxOf = async (part: string) => {
      const box = await page.locator(part).first().boundingBox();
      if (!box) throw new Error(`no ${part}`);
      return box;
    };
    await expect.poll(async () => (await boxOf('[data-view="top"] .shape.desk')).width).toBeGreaterThan(390 - 56);
    const box = await boxOf('.drawing');
    expect(box.y).toBeGreaterThanOrEqual(0);
    const [verdict, first, bar] = await Promise.all(['.verdict', '.form input', '.within'].map(boxOf));
    expect((verdict?.y ?? NaN) + (verdict?.height ?? NaN)).toBeLessThan(first?.y ?? NaN);
    expect((first?.y ?? NaN) + (first?.height ?? NaN)).toBeLessThan(bar?.y ?? NaN);
    // What stands above it takes less than 30 % of the screen, and is large enough for a finger.
    expect(box.y).toBeLessThan(0.3 * PHONE.viewport.height);
    const small = await page.locator('header :is(a, button, select, input[type=text])').evaluateAll((controls) =>
      controls.flatMap((control) => {
        const { width, height } = control.getBoundingClientRect();
        return height > 0 && (height < 44 || width < 24) ? [`${control.textContent}: ${width} × ${height}`] : [];
      }),
    );
    expect(small).toEqual([]);
  });
});
