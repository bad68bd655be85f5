import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { readPdf } from '../files/readPdf.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const EAR = '/layouts/0/listener/earHeight';
const RIGHT = { x: '/layouts/0/placement/right/x', y: '/layouts/0/placement/right/y' };
const LEFT = { x: '/layouts/0/placement/left/x', y: '/layouts/0/placement/left/y' };
const PHONE = { viewport: { width: 390, height: 844 }, touch: true } as const;

const field = (page: Page, pointer: string): Locator => page.locator(`[id="${pointer}"]`);
const valueOf = (page: Page, pointer: string): Promise<string> => field(page, pointer).inputValue();
const drawing = (page: Page): Locator => page.getByRole('region', { name: 'Drawing' });
const dimension = (page: Page, name: string): Locator =>
  drawing(page).getByRole('button', { name: new RegExp(`^${name}: `) });
const entry = (page: Page, name: string): Locator => drawing(page).getByRole('textbox', { name });
const handle = (page: Page, view: string, id: string): Locator =>
  page.locator(`[data-view="${view}"] [data-handle="handle-${id}"]`);
const mirrored = (page: Page): Locator => drawing(page).getByRole('button', { name: 'Symmetrical' });

/** What is drawn of a cabinet. */
const outline = (page: Page): Promise<string | null> =>
  page.locator('[data-view="top"] [data-item="cabinet-right"]').getAttribute('d');

/** Waits until the sheet can be moved: dragging comes when the page has settled. */
async function movable(page: Page): Promise<void> {
  await drawing(page).locator('svg[tabindex="0"]').waitFor();
}

async function middleOf(what: Locator): Promise<readonly [number, number]> {
  const box = await what.locator('circle').boundingBox();
  if (!box) throw new Error('what is dragged is not on the screen');
  return [box.x + box.width / 2, box.y + box.height / 2];
}

async function press(page: Page, [x, y]: readonly [number, number]): Promise<void> {
  await page.mouse.move(x, y);
  await page.mouse.down();
}

const STEPS = { steps: 8 };

describe('a dimension of the drawing', () => {
  test('is changed by the keyboard alone, with sums and steps, and Tab goes on to the next', async () => {
    const { page } = await visit();
    const ear = dimension(page, 'ear height over the floor');
    await ear.focus();
    await page.keyboard.press('Enter');
    await page.keyboard.type('2400/2');
    expect(await valueOf(page, EAR)).toBe('1200');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Shift+ArrowUp');
    await page.keyboard.press('Alt+ArrowDown');
    expect(await valueOf(page, EAR)).toBe('1210.9');
    await page.keyboard.press('Enter');
    await expect.poll(() => ear.getAttribute('aria-label')).toBe('ear height over the floor: 1210.9 millimetres');
    expect(await ear.evaluate((node) => document.activeElement === node)).toBe(true);
    await page.keyboard.type('1190');
    await page.keyboard.press('Tab');
    await expect.poll(() => entry(page, 'ear height over the floor').count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(
      'lift: lowest bottom edge over the desk',
    );
    await page.keyboard.press('Shift+Tab');
    await expect.poll(() => entry(page, 'ear height over the floor').inputValue()).toBe('1190');
    await page.keyboard.press('Escape');
    expect(await valueOf(page, EAR)).toBe('1190');
  });

  test('is opened by a click, takes inches, and Escape takes everything back', async () => {
    const { page } = await visit();
    await dimension(page, 'desk width').locator('.target').click();
    await entry(page, 'desk width').fill('60 1/2"');
    expect(await valueOf(page, '/layouts/0/desk/outline/width')).toBe('1536.7');
    await page.keyboard.press('Escape');
    expect(await valueOf(page, '/layouts/0/desk/outline/width')).toBe('1400');
    await expect.poll(() => entry(page, 'desk width').count()).toBe(0);
  });

  test('of both marks is given once while they are alike, each by its size once they differ', async () => {
    const { page } = await visit();
    await dimension(page, 'middle of the desk to each mark').locator('.target').click();
    await entry(page, 'middle of the desk to each mark').fill('480');
    await page.keyboard.press('Enter');
    expect([await valueOf(page, LEFT.x), await valueOf(page, RIGHT.x)]).toEqual(['-480', '480']);
    expect(await dimension(page, 'middle of the desk to the left mark').count()).toBe(0);
    await mirrored(page).click();
    await dimension(page, 'middle of the desk to each mark').locator('.target').click();
    await entry(page, 'middle of the desk to each mark').fill('470');
    await page.keyboard.press('Enter');
    expect([await valueOf(page, LEFT.x), await valueOf(page, RIGHT.x)]).toEqual(['-480', '470']);
    await dimension(page, 'middle of the desk to the left mark').locator('.target').click();
    await entry(page, 'middle of the desk to the left mark').fill('500');
    await page.keyboard.press('Enter');
    expect([await valueOf(page, LEFT.x), await valueOf(page, RIGHT.x)]).toEqual(['-500', '470']);
    await mirrored(page).click();
    expect(await valueOf(page, LEFT.x)).toBe('-470');
  });

  test('that makes no sense says so on the drawing, which stays as it was', async () => {
    const { page, expectAccessible } = await visit();
    const before = await outline(page);
    await dimension(page, 'ear height over the floor').focus();
    await page.keyboard.press('Enter');
    const typed = entry(page, 'ear height over the floor');
    await typed.fill('99999');
    expect(await drawing(page).locator('.entry .fault').textContent()).toBe('Enter 200 to 2500 mm');
    await expect.poll(() => typed.getAttribute('aria-invalid')).toBe('true');
    expect(await outline(page)).toBe(before);
    await expectAccessible();
    await page.keyboard.press('Enter');
    await expect.poll(() => typed.count()).toBe(1);
    await page.keyboard.press('Escape');
    expect(await valueOf(page, EAR)).toBe('1180');
  });

  test('that is a result can be reached and read, and not typed into', async () => {
    const { page } = await visit();
    const toe = drawing(page).getByRole('img', { name: /^toe, each: 41\.9 degrees, a result$/ });
    await toe.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => drawing(page).getByRole('textbox').count()).toBe(0);
  });

  test('lights up with its field in the form, and the form with the drawing', async () => {
    const { page } = await visit();
    await field(page, EAR).focus();
    await expect.poll(() => page.locator('[data-item="ear-height"].chosen').count()).toBe(1);
    await expect.poll(() => page.locator('[data-view="side"] [data-item="head"].chosen').count()).toBe(1);
    await page.locator('[data-view="front"] [data-handle="handle-driver-1"]').focus();
    // Its group is filled when the page has come to rest, and lights up then.
    await page.locator('[data-lit][data-at="/speaker/drivers/1"]').waitFor();
    await expect.poll(() => page.locator('[data-view="front"] circle.chosen').count()).toBe(1);
  });
});

describe('a thing on the drawing', () => {
  test('is dragged with its numbers beside it, as one step of undo', async () => {
    const { page } = await visit();
    await movable(page);
    const [x, y] = await middleOf(handle(page, 'top', 'speaker-right'));
    await press(page, [x, y]);
    await page.mouse.move(x + 20, y + 14, STEPS);
    const live = drawing(page).locator('.live');
    await live.waitFor();
    const [across, depth] = [Number(await valueOf(page, RIGHT.x)), Number(await valueOf(page, RIGHT.y))];
    expect(across).toBeGreaterThan(430);
    expect(depth).toBeLessThan(300);
    expect([across % 5, depth % 5]).toEqual([0, 0]);
    expect(await live.locator('text').allTextContents()).toEqual([
      `${across} from the middle of the desk`,
      `${depth} from the desk’s front edge`,
    ]);
    expect(await valueOf(page, LEFT.x)).toBe(String(-across));
    await page.mouse.up();
    await expect.poll(() => live.count()).toBe(0);
    await page.keyboard.press('ControlOrMeta+z');
    expect([await valueOf(page, RIGHT.x), await valueOf(page, RIGHT.y)]).toEqual(['430', '300']);
    expect([await valueOf(page, LEFT.x), await valueOf(page, LEFT.y)]).toEqual(['-430', '300']);
  });

  test('goes back where it was on Escape, and is no step', async () => {
    const { page } = await visit();
    await movable(page);
    const [x, y] = await middleOf(handle(page, 'top', 'head'));
    await press(page, [x, y]);
    await page.mouse.move(x - 20, y + 30, STEPS);
    expect(await valueOf(page, '/layouts/0/listener/offset')).not.toBe('0');
    await page.keyboard.press('Escape');
    await page.mouse.move(x - 40, y, STEPS);
    await page.mouse.up();
    expect(await valueOf(page, '/layouts/0/listener/offset')).toBe('0');
    expect(await valueOf(page, '/layouts/0/listener/setback')).toBe('180');
  });

  test('cannot be left where it makes no sense', async () => {
    const { page } = await visit();
    await movable(page);
    const [x, y] = await middleOf(handle(page, 'front', 'driver-1'));
    await press(page, [x, y]);
    await page.mouse.move(x, y + 10, STEPS);
    await page.mouse.move(x, y + 300, STEPS);
    await drawing(page).locator('.live.refused').waitFor();
    await page.mouse.up();
    await expect.poll(() => drawing(page).locator('.live').count()).toBe(0);
    const height = Number(await valueOf(page, '/speaker/drivers/1/height'));
    // Its rim, 47.5 mm from its centre, stays on the baffle.
    expect(height).toBeGreaterThanOrEqual(47.5);
    expect(height).toBeLessThan(95);
  });

  test('moves its number, on every view', async () => {
    const { page } = await visit();
    await movable(page);
    for (const [view, id, pointer, before] of [
      ['top', 'desk-rear', '/layouts/0/desk/outline/depth', 700],
      ['top', 'desk-right', '/layouts/0/desk/outline/width', 1400],
      ['top', 'wall-0', '/layouts/0/room/gap', 120],
      ['side', 'speaker-right', '/layouts/0/stand/lift', 12],
      ['front', 'driver-0', '/speaker/drivers/0/height', 205],
      ['top', 'monitor-0', '/layouts/0/monitors/0/y', 520],
    ] as const) {
      const [x, y] = await middleOf(handle(page, view, id));
      await press(page, [x, y]);
      await page.mouse.move(x + 9, y - 9, STEPS);
      await page.mouse.up();
      expect([id, Number(await valueOf(page, pointer))]).not.toEqual([id, before]);
      await page.keyboard.press('ControlOrMeta+z');
      await expect.poll(() => valueOf(page, pointer), { message: id }).toBe(String(before));
    }
  });

  test('moves by arrow keys, says where to, and the keys are one step', async () => {
    const { page } = await visit();
    const right = handle(page, 'top', 'speaker-right');
    await right.focus();
    for (let presses = 0; presses < 3; presses += 1) await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Shift+ArrowRight');
    expect([await valueOf(page, RIGHT.x), await valueOf(page, RIGHT.y)]).toEqual(['440', '297']);
    const says =
      'Right loudspeaker: 440 millimetres from the middle of the desk, 297 millimetres from the desk’s front edge';
    // The name follows when the keys pause; what is said meanwhile does not wait.
    await expect.poll(() => right.getAttribute('aria-label')).toBe(says);
    await drawing(page).locator('[aria-live]', { hasText: says }).waitFor({ state: 'attached' });
    await right.blur();
    await page.keyboard.press('ControlOrMeta+z');
    expect([await valueOf(page, RIGHT.x), await valueOf(page, RIGHT.y)]).toEqual(['430', '300']);
  });

  test('shows on a phone the view that gives the value whose field is entered, lit, and stays in sight', async () => {
    const { page } = await visit('', PHONE);
    const shown = (view: string) => drawing(page).locator(`[data-view="${view}"]`);
    await shown('top').waitFor();
    await field(page, EAR).focus();
    await shown('side').waitFor();
    await drawing(page).locator('[data-view="side"] .dimension.chosen').waitFor();
    const box = await drawing(page).locator('svg[role="group"], svg').first().boundingBox();
    expect(box && box.y >= 0 && box.y < 400).toBe(true);
    // The group is folded on a phone.
    await page.locator('summary', { hasText: 'Placement' }).click();
    await field(page, RIGHT.x).focus();
    await shown('top').waitFor();
    await drawing(page).locator('[data-view="top"] .dimension.chosen').waitFor();
    // What is asked for by its button is shown, whatever is chosen.
    await drawing(page).getByRole('button', { name: 'Front', exact: true }).click();
    await shown('front').waitFor();
  });

  test('is dragged by a finger on a phone, while a finger beside it leaves the page to scroll', async () => {
    const { page, context } = await visit('', PHONE);
    await movable(page);
    const touch = await context.newCDPSession(page);
    const finger = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number, y: number) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] });
    const [x, y] = await middleOf(handle(page, 'top', 'speaker-right'));
    await finger('touchStart', x, y);
    for (let step = 1; step <= 6; step += 1) await finger('touchMove', x + 3 * step, y + step);
    await drawing(page).locator('.live').waitFor();
    await finger('touchEnd', x, y);
    expect(Number(await valueOf(page, RIGHT.x))).toBeGreaterThan(430);
    expect(await valueOf(page, LEFT.x)).toBe(String(-Number(await valueOf(page, RIGHT.x))));
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    const after = await valueOf(page, RIGHT.x);
    const sheet = await drawing(page).locator('svg[role=group]').boundingBox();
    if (!sheet) throw new Error('no sheet');
    await finger('touchStart', sheet.x + 20, sheet.y + sheet.height - 30);
    for (let step = 1; step <= 8; step += 1)
      await finger('touchMove', sheet.x + 20, sheet.y + sheet.height - 30 - 15 * step);
    await finger('touchEnd', 0, 0);
    await expect.poll(() => page.evaluate(() => window.scrollY)).toBeGreaterThan(20);
    expect(await valueOf(page, RIGHT.x)).toBe(after);
  });
});

describe('the sheet', () => {
  test('shows four views on a wide screen, and each by itself', async () => {
    const { page } = await visit('', { viewport: { width: 1440, height: 900 } });
    const shown = () =>
      page.locator('[data-view]').evaluateAll((views) => views.map((view) => view.getAttribute('data-view')));
    expect(await shown()).toEqual(['top', 'side', 'front', 'stand']);
    for (const [name, view] of [
      ['Plan', 'top'],
      ['Side', 'side'],
      ['Front', 'front'],
      ['Stand', 'stand'],
    ] as const) {
      // prettier-ignore
      await drawing(page).getByRole('button', { name, exact: true }).click();
      expect(await shown()).toEqual([view]);
    }
  });

  test('prints a view at a true scale and saves it', async () => {
    const { page, expectAccessible } = await visit();
    await drawing(page).getByRole('button', { name: 'Print' }).click();
    const dialog = page.getByRole('dialog', { name: 'Print a view' });
    await dialog.getByRole('combobox', { name: 'View' }).selectOption('Front of the loudspeaker');
    await dialog.getByRole('combobox', { name: 'Scale' }).selectOption('5');
    await dialog.getByRole('img', { name: 'Front of the loudspeaker on A4 at 1:5' }).waitFor();
    await expectAccessible();
    const coming = page.waitForEvent('download');
    await dialog.getByRole('button', { name: 'Save as SVG' }).click();
    expect((await coming).suggestedFilename()).toBe('window side Front of the loudspeaker 1-5.svg');
    const printed = page.waitForEvent('download');
    await dialog.getByRole('button', { name: 'Save as PDF' }).click();
    const pdf = await printed;
    expect(pdf.suggestedFilename()).toBe('window side Front of the loudspeaker 1-5.pdf');
    const [sheet] = readPdf(await readFile(await pdf.path())).pages;
    expect(sheet?.texts.map(({ text }) => text)).toContain('⌀95');
    await page.evaluate(() => Reflect.set(window, 'print', () => Reflect.set(window, 'printed', true)));
    await dialog.getByRole('button', { name: 'Print' }).click();
    await page.waitForFunction(() => Reflect.get(window, 'printed') === true);
    const size = await page.locator('.printed-sheet').evaluate((node) => {
      const { inlineSize, blockSize } = node instanceof HTMLElement ? node.style : { inlineSize: '', blockSize: '' };
      return [inlineSize, blockSize];
    });
    expect([...size].sort()).toEqual(['210mm', '297mm']);
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    await expect.poll(() => page.locator('.printed-sheet').count()).toBe(0);
    await page.keyboard.press('Escape');
    await expect.poll(() => dialog.count()).toBe(0);
  });

  test.each([
    [1440, 'light', 'dark'],
    [390, 'dark', 'light'],
  ] as const)(
    'axe finds nothing, %d px wide, in %s, nor while a dimension is typed into in %s',
    async (width, theme, other) => {
      const viewport = { width, height: 844 };
      const { page, expectAccessible } = await visit('', { theme, viewport, touch: width < 500 });
      await expectAccessible();
      await page.emulateMedia({ colorScheme: other });
      await dimension(page, 'desk depth').focus();
      await page.keyboard.press('Enter');
      await expectAccessible();
    },
  );

  test('offers nothing to press that is smaller than 24 px', async () => {
    const { page } = await visit('', PHONE);
    const small = await page
      .locator('[data-handle] circle, [data-item] .target, .tools button:enabled')
      .evaluateAll((targets) =>
        targets.flatMap((target) => {
          const { width, height } = target.getBoundingClientRect();
          return Math.min(width, height) < 24
            ? [`${target.parentElement?.getAttribute('aria-label')}: ${width} × ${height}`]
            : [];
        }),
      );
    expect(small).toEqual([]);
  });
});
