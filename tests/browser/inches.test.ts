import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);

/** Every text of a page that somebody reads or hears: what is written, and names, hints and values given by attributes. */
const textsOf = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const written = document.body.innerText.split('\n');
    const given = [...document.body.querySelectorAll('*')].flatMap((one) =>
      ['aria-label', 'aria-description', 'title', 'placeholder', 'alt'].flatMap((name) => one.getAttribute(name) ?? []),
    );
    return [...written, ...given].map((text) => text.trim()).filter((text) => text !== '');
  });

/** A metric length, a unit alone among it. */
const METRIC = /\b(mm|cm|millimetres?|centimetres?|metres?)\b|mm[²³]|\d[ \u202f\u00a0]?m\b/;

/** Where a millimetre belongs in an inch project too. */
const ALLOWED: readonly RegExp[] = [
  // The choice of the unit itself.
  /^millimetres$/,
  // Files are in mm for every machine.
  /files stay in mm/,
  /(SVG|DXF|STL|3MF)[^.]* in mm/,
  // A board's name is the maker's own.
  /MDF 3 mm/,
  // A speed of sound is in metres a second; a density and a price by the cubic metre, with the price its feet beside it.
  /m\/s|kg\/m³|of a cubic metre or 424 board feet/,
  // A printer's bed, layers and flow are set in mm on the machine.
  /mm\/s|mm³\/s|layer height/i,
];

const metric = (texts: readonly string[]): readonly string[] =>
  [...new Set(texts)].filter((text) => METRIC.test(text) && !ALLOWED.some((one) => one.test(text)));

test('every page of an inch project is in inches, but for files, names and what a machine itself shows in mm', async () => {
  const { page } = await visit();
  await page.getByLabel('Show lengths in').selectOption('inches, as decimals');
  await expect.poll(() => field(page, '/speaker/width').inputValue()).toMatch(/^6\.4961?$/);
  const found: Record<string, readonly string[]> = {};
  const look = async (name: string): Promise<void> => {
    // All groups of fields are opened: what is folded away is read later.
    await page.evaluate(() => {
      for (const one of document.querySelectorAll('details')) one.open = true;
      for (const fold of document.querySelectorAll<HTMLElement>('button[aria-expanded="false"]')) {
        if (fold.checkVisibility()) fold.click();
      }
    });
    const texts = await textsOf(page);
    expect(texts.length).toBeGreaterThan(40);
    expect(texts.some((text) => /\d(″|\u202f?\s?in\b)/.test(text))).toBe(true);
    found[name] = metric(texts);
  };
  await look('home');
  for (const [name, path] of [
    ['workshop', 'Workshop'],
    ['sound', 'Sound'],
    ['build sheet', 'Build sheet'],
    ['measure', 'Measure'],
  ] as const) {
    const link = page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name: path, exact: true });
    await link.click();
    // The page that is left has lengths of its own: this one is there once its link is marked.
    await expect.poll(() => link.getAttribute('aria-current')).toBe('page');
    await expect.poll(async () => (await textsOf(page)).some((text) => /\d(″|\u202f?\s?in\b)/.test(text))).toBe(true);
    await look(name);
  }
  expect(found).toEqual({ home: [], workshop: [], sound: [], 'build sheet': [], measure: [] });
});

test('page and paper heed the same cautions, and both tell letters that cannot be printed', async () => {
  const { page } = await visit('workshop/');
  const cautions = page.getByRole('region', { name: 'Before you start' }).getByRole('listitem');
  const missing = page.getByText('Cannot be printed:');
  await expect.poll(() => cautions.count()).toBeGreaterThan(5);
  const onPage = await cautions.allInnerTexts();
  expect(await missing.count()).toBe(0);
  await page.getByRole('textbox', { name: 'Project title' }).fill('Στούντιο');
  await expect.poll(() => missing.count()).toBe(1);
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name: 'Build sheet' }).click();
  await page.getByRole('heading', { level: 1, name: /^Build sheet: Στούντιο/ }).waitFor();
  await expect.poll(() => missing.locator('..').innerText()).toContain('Σ τ');
  const section = page.getByRole('region', { name: 'Cautions', exact: true });
  expect(await section.getByRole('listitem').allInnerTexts()).toEqual(onPage);
});
