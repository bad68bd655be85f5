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
  /^mm$/,
  // Files are in mm for every machine.
  /(SVG|DXF|STL|3MF)[^.]* in mm/,
  // A board's name is the maker's own.
  /MDF 3 mm/,
  // A speed of sound is in metres a second, a density by the cubic metre, an absorption without a unit.
  /m\/s|kg\/m³/,
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
    await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
    for (const fold of await page.getByRole('button', { expanded: false }).all()) {
      if (await fold.isVisible()) await fold.click();
    }
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
    await page.getByRole('navigation').getByRole('link', { name: path, exact: false }).first().click();
    await page.waitForURL(/workshop|sound|build-sheet|measure/);
    await expect.poll(async () => (await textsOf(page)).some((text) => /\d(″|\u202f?\s?in\b)/.test(text))).toBe(true);
    await look(name);
  }
  expect(found).toEqual({ home: [], workshop: [], sound: [], 'build sheet': [], measure: [] });
});
