import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { settleProject } from '$lib/document/settle.ts';
import { angleText } from '$lib/views/ui/formatNumber.ts';
import { project } from '../projects.ts';
import { layoutShift } from './layoutShift.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);
const faultAt = (page: Page, pointer: string) => page.locator(`[id="${pointer}-fault"]`);
const reading = (page: Page, name: string) => page.locator('dl > div', { hasText: name }).locator('dd');
/** A worked-out value without what the tape leaves open of it, which comes when the numbers rest. */
const solvedAlone = (text: string | null): string | null => text?.split(/\s±/)[0] ?? null;
const tilted = async (page: Page): Promise<string | null> => solvedAlone(await reading(page, 'Tilt').textContent());
const drawing = (page: Page) => page.locator('.paper > svg').innerHTML();
const faults = (page: Page) => page.getByRole('region', { name: 'Faults' });
/** The line over the title block, while there is a fault. */
const verdict = (page: Page) => page.getByRole('button', { name: /^\d+ faults?\./ });

const BUILD = '/layouts/0/stand/build';
const MIRRORED = '/speaker/mirrored';
const EAR = '/layouts/0/listener/earHeight';

/** What the kernel says of the demo with changes. */
function planned(changes: Readonly<Record<string, unknown>> = {}) {
  const { shown } = settleProject(project(changes), 0);
  if (!shown) throw new Error('the demo has an answer');
  return shown;
}

/** Opens every group of the form. */
const openAll = (page: Page) =>
  page.evaluate(() => {
    for (const group of document.querySelectorAll('details')) group.open = true;
  });

describe('the demo', () => {
  test('is drawn and worked out in the page as it is served, nothing jumps, and the headings are in order', async () => {
    const { page } = await visit();
    const served = await page.evaluate(async () => (await fetch('./')).text());
    expect(served).toContain(angleText(planned().sides.right.tilt));
    expect(served).toContain('<h1');
    const shifted = await layoutShift(page);
    expect(shifted).toEqual([]);
    await expect(tilted(page)).resolves.toBe(angleText(planned().sides.right.tilt));
    const levels = await page
      .locator('h1, h2, h3, h4')
      .evaluateAll((headings) => headings.map((heading) => Number(heading.tagName.slice(1))));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(levels.every((level, index) => level <= (levels[index - 1] ?? 0) + 1)).toBe(true);
  });
});

describe('a measurement', () => {
  test('moves the drawing and the numbers with every key', async () => {
    const { page } = await visit();
    const before = await drawing(page);
    await field(page, EAR).fill('1250');
    const { tilt } = planned({ [EAR]: 1250 }).sides.right;
    await expect.poll(() => tilted(page)).toBe(angleText(tilt));
    await expect.poll(() => drawing(page)).not.toBe(before);
    await page.getByText('All figures, and how each is worked out').click();
    const cell = page.getByRole('table', { name: 'Aim' }).getByRole('row', { name: 'Tilt' }).getByRole('cell').first();
    // Tables out of sight are filled when the typing pauses.
    await expect.poll(async () => solvedAlone(await cell.textContent())).toBe(angleText(tilt));
  });

  test('entered before the page is alive is taken, and nothing of it is lost', async () => {
    const { page } = await visit();
    const early = await page.context().newPage();
    let bring = (): void => undefined;
    const scripts = new Promise<void>((resolve) => (bring = resolve));
    await early.route('**/*.js', async (route) => {
      await scripts;
      await route.continue();
    });
    await early.goto(page.url(), { waitUntil: 'commit' });
    await field(early, EAR).fill('1250');
    await field(early, BUILD).selectOption('ribbed');
    await field(early, MIRRORED).setChecked(false);
    await early.getByRole('radio', { name: 'left', exact: true }).check();
    bring();
    const { tilt } = planned({ [EAR]: 1250, [BUILD]: 'ribbed', [MIRRORED]: false }).sides.left;
    await expect.poll(() => tilted(early)).toBe(angleText(tilt));
    await expect.poll(() => field(early, EAR).inputValue()).toBe('1250');
    await expect.poll(() => field(early, BUILD).inputValue()).toBe('ribbed');
    await expect.poll(() => field(early, MIRRORED).isChecked()).toBe(false);
    await expect.poll(() => early.getByRole('radio', { name: 'left', exact: true }).isChecked()).toBe(true);
    // The last one that was entered into keeps the focus.
    expect(await early.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('side');
    await early.getByRole('button', { name: 'Undo', exact: false }).click();
    await early.close();
  });

  test('typed before what checks it has come is drawn as soon as it has', async () => {
    const { page } = await visit();
    // A page of its own, which nobody has waited for.
    const early = await page.context().newPage();
    await early.goto(page.url());
    await early.locator('#svelte-announcer').waitFor({ state: 'attached' });
    await field(early, EAR).fill('1250');
    const { tilt } = planned({ [EAR]: 1250 }).sides.right;
    await expect.poll(() => tilted(early)).toBe(angleText(tilt));
    await expect.poll(() => faults(early).count()).toBe(0);
  });

  test('takes a decimal comma, and shows what was typed as it was typed', async () => {
    const { page } = await visit();
    await field(page, EAR).fill('1250,50');
    await expect.poll(() => field(page, EAR).inputValue()).toBe('1250,50');
    await expect.poll(() => tilted(page)).toBe(angleText(planned({ [EAR]: 1250.5 }).sides.right.tilt));
    await field(page, EAR).blur();
    await expect.poll(() => field(page, EAR).inputValue()).toBe('1250,50');
    // Another value in its place is written as the page writes it.
    await page.getByRole('button', { name: 'Undo Listener, ear height' }).click();
    await expect.poll(() => field(page, EAR).inputValue()).toBe('1180');
  });

  test('is not called wrong in mid-number, but after a pause, or when left, and then what came of it is said once', async () => {
    const { page } = await visit();
    const said = page.getByRole('status', { name: 'Undo' });
    // Time stands still until it is told to pass, however busy the machine is.
    await page.clock.install({ time: 0 });
    await page.clock.pauseAt(60_000);
    await field(page, EAR).click();
    // A press has chosen all of it.
    await page.keyboard.type('12');
    await expect.poll(() => field(page, EAR).inputValue()).toBe('12');
    await page.clock.runFor(500);
    expect(await faultAt(page, EAR).textContent()).toBe('');
    expect(await faults(page).count()).toBe(0);
    await page.clock.runFor(1000);
    await expect.poll(() => faultAt(page, EAR).textContent()).toBe('Enter 200 to 2500 mm');
    await page.keyboard.type('50');
    await expect.poll(() => faultAt(page, EAR).textContent()).toBe('');
    expect(await said.textContent()).toBe('');
    await page.clock.resume();
    await field(page, EAR).blur();
    const { toe, tilt } = planned({ [EAR]: 1250 }).sides.right;
    await expect.poll(() => said.textContent()).toBe(`Toe ${angleText(toe)}, tilt ${angleText(tilt)}`);
    await field(page, EAR).fill('3');
    await field(page, EAR).blur();
    await expect.poll(() => faultAt(page, EAR).textContent()).toBe('Enter 200 to 2500 mm');
  });

  test('steps with the arrow keys', async () => {
    const { page } = await visit();
    await field(page, EAR).press('ArrowUp');
    await field(page, EAR).press('Shift+ArrowDown');
    await expect.poll(() => field(page, EAR).inputValue()).toBe('1171');
  });

  test('that makes no sense shows its message and keeps the last drawing', async () => {
    const { page } = await visit();
    for (const [text, message] of [
      ['-5', 'Enter 200 to 2500 mm'],
      ['', 'Enter 200 to 2500 mm'],
      ['tall', 'Enter 200 to 2500 mm'],
      ['NaN', 'Enter 200 to 2500 mm'],
      ['Infinity', 'Enter 200 to 2500 mm'],
      ['99999', 'Enter 200 to 2500 mm'],
    ] as const) {
      await field(page, EAR).fill('1250');
      const tilt = angleText(planned({ [EAR]: 1250 }).sides.right.tilt);
      await field(page, EAR).fill(text);
      await expect.poll(() => faultAt(page, EAR).textContent()).toBe(message);
      await expect.poll(() => field(page, EAR).getAttribute('aria-invalid')).toBe('true');
      await expect.poll(() => verdict(page).innerText()).toContain(`1 fault. Listener, ear height: ${message}`);
      await expect.poll(() => faults(page).innerText()).toContain('Showing the last valid values');
      // Said once over the drawing: its line has the message, the list what else there is.
      expect(await faults(page).innerText()).not.toContain(message);
      await expect.poll(() => tilted(page)).toBe(tilt);
      await field(page, EAR).fill('1180');
      await expect.poll(() => faultAt(page, EAR).textContent()).toBe('');
      await expect.poll(() => faults(page).count()).toBe(0);
    }
  });

  test('that the geometry refuses is told at the field, and the line over the title block leads there', async () => {
    const { page } = await visit();
    await page.getByRole('combobox', { name: 'Tilt' }).selectOption('lift to the ear');
    await page.getByRole('textbox', { name: 'Tilt angle' }).fill('60');
    await expect.poll(() => faultAt(page, '/layouts/0/aim/tilt/degrees').textContent()).not.toBe('');
    await page.evaluate(() => window.scrollTo(0, 0));
    await verdict(page).click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('/layouts/0/aim/tilt/degrees');
  });

  test('can be nonsense in every number field in turn, and the page lives on', async () => {
    const { page } = await visit();
    await openAll(page);
    const pointers = await page.locator('form .entry > input').evaluateAll((inputs) => inputs.map(({ id }) => id));
    expect(pointers.length).toBeGreaterThan(40);
    const tilt = await tilted(page);
    // In the page itself, field by field: every look from outside costs more than the field does.
    const wrong = await page.evaluate(async (tilt) => {
      const PATIENCE_MS = 20_000;
      const until = async (holds: () => boolean): Promise<boolean> => {
        const end = performance.now() + PATIENCE_MS;
        while (!holds() && performance.now() < end) await new Promise(requestAnimationFrame);
        return holds();
      };
      const type = (input: HTMLInputElement, text: string): void => {
        input.value = text;
        input.dispatchEvent(new InputEvent('input', { bubbles: true }));
      };
      const tilts = [...document.querySelectorAll('dl > div')].find((cell) => cell.textContent?.includes('Tilt'));
      const wrong: string[] = [];
      for (const input of document.querySelectorAll<HTMLInputElement>('form .entry > input')) {
        const told = (): string => document.getElementById(`${input.id}-fault`)?.textContent ?? '';
        const sound = input.value;
        input.focus();
        // Typed without a pause, as by a hand on the keys; what is told is that of the last.
        for (const text of ['<b>x</b>', '-1e308', '1e-320', 'NaN']) type(input, text);
        input.blur();
        if (!(await until(() => told().includes('Enter ')))) wrong.push(`${input.id} told ${told()}`);
        if (input.value !== 'NaN') wrong.push(`${input.id} became ${input.value}`);
        type(input, sound);
        if (!(await until(() => told() === ''))) wrong.push(`${input.id} still tells ${told()}`);
        const now = tilts?.querySelector('dd')?.textContent?.split(/\s±/)[0];
        if (now !== tilt) wrong.push(`${input.id} left the tilt at ${now}`);
      }
      return wrong;
    }, tilt);
    expect(wrong).toEqual([]);
    await expect.poll(() => page.locator('form [aria-invalid=true]').count()).toBe(0);
    await expect.poll(() => page.locator('body').innerText()).not.toMatch(/\b(?:NaN|Infinity|undefined|null)\b/);
  });
});

describe('the form', () => {
  test('mirrors one mark in the other until they are set free', async () => {
    const { page } = await visit();
    await field(page, '/layouts/0/placement/right/x').fill('480');
    await expect.poll(() => field(page, '/layouts/0/placement/left/x').inputValue()).toBe('-480');
    await page.getByRole('checkbox', { name: 'Symmetrical placement' }).uncheck();
    await field(page, '/layouts/0/placement/right/x').fill('500');
    await expect.poll(() => field(page, '/layouts/0/placement/left/x').inputValue()).toBe('-480');
    await page.getByRole('checkbox', { name: 'Symmetrical placement' }).check();
    await expect.poll(() => field(page, '/layouts/0/placement/left/x').inputValue()).toBe('-500');
  });

  test('renames a driver wherever it is spoken of, adds one and takes one away', async () => {
    const { page } = await visit();
    await openAll(page);
    await field(page, '/speaker/drivers/0/name').focus();
    await field(page, '/speaker/drivers/0/name').fill('');
    await page.keyboard.type('woofer top');
    await expect.poll(() => faults(page).count()).toBe(0);
    await expect.poll(() => field(page, '/layouts/0/aim/through').inputValue()).toBe('dwoofer top');
    await expect.poll(() => field(page, '/speaker/crossovers/0/between/0').inputValue()).toBe('woofer top');
    await expect.poll(() => field(page, '/speaker/crossovers/0/between/1').inputValue()).toBe('woofer');
    await page.getByRole('button', { name: 'Add a driver' }).click();
    await expect.poll(() => field(page, '/speaker/drivers/2/name').inputValue()).toBe('driver 3');
    await page.getByRole('button', { name: 'Remove woofer top' }).click();
    await expect.poll(() => faults(page).count()).toBe(0);
    await expect.poll(() => field(page, '/layouts/0/aim/through').inputValue()).toBe('dwoofer');
  });

  test('follows every rule of the aim without a fault', async () => {
    const { page } = await visit();
    for (const toe of ['to the nearer ear', 'to meet behind the head', 'straight ahead', 'as set', 'to the head']) {
      await page.getByRole('combobox', { name: 'Toe' }).selectOption(toe);
      expect([toe, await faults(page).count()]).toEqual([toe, 0]);
    }
    for (const tilt of ['lift to the ear', 'as set', 'tilt to the ear']) {
      await page.getByRole('combobox', { name: 'Tilt' }).selectOption(tilt);
      expect([tilt, await faults(page).count()]).toEqual([tilt, 0]);
    }
    await page.getByRole('combobox', { name: 'Aimed point' }).selectOption('a point between two');
    await page.getByRole('textbox', { name: 'Fraction' }).fill('1');
    const woofer = planned({ '/layouts/0/aim/through': 'woofer' });
    await expect.poll(() => tilted(page)).toBe(angleText(woofer.sides.right.tilt));
  });

  test('speaks in inches on demand, and the millimetres stay exact', async () => {
    const { page } = await visit();
    await openAll(page);
    await page.getByRole('combobox', { name: 'Lengths in', exact: true }).selectOption('inches, as decimals');
    await expect.poll(() => field(page, EAR).inputValue()).toBe('46.4567');
    await field(page, EAR).fill('50');
    await expect.poll(() => tilted(page)).toBe(angleText(planned({ [EAR]: 1270 }).sides.right.tilt));
    await field(page, EAR).fill('-5');
    await expect.poll(() => faultAt(page, EAR).textContent()).toBe('Enter 7.88 to 98.42 in');
    await field(page, EAR).fill('50');
    await page.getByRole('combobox', { name: 'Lengths in', exact: true }).selectOption('millimetres');
    await expect.poll(() => field(page, EAR).inputValue()).toBe('1270');
  });

  test('shows user text as text', async () => {
    const { page } = await visit();
    await openAll(page);
    const nasty = '<img src=x onerror=alert(1)> & "ö"';
    await field(page, '/title').fill(nasty);
    await expect.poll(() => reading(page, 'Project').textContent()).toBe(nasty);
    await expect.poll(() => page.locator('img').count()).toBe(0);
  });
});

describe('for everybody', () => {
  test.each([
    [1280, 'light', 'dark'],
    [390, 'dark', 'light'],
  ] as const)('axe finds nothing, %d px wide, sound in %s nor unsound in %s', async (width, sound, unsound) => {
    const { page, expectAccessible } = await visit('', {
      theme: sound,
      viewport: { width, height: 844 },
      touch: width < 1000,
    });
    await openAll(page);
    await expectAccessible();
    // Every control is tall enough to be hit.
    const small = await page.locator('form :is(input, select, button, summary)').evaluateAll((controls) =>
      controls.flatMap((control) => {
        const { width, height } = control.getBoundingClientRect();
        return Math.min(width, height) < 24 ? [`${control.id || control.textContent}: ${width} × ${height}`] : [];
      }),
    );
    expect(small).toEqual([]);
    await page.emulateMedia({ colorScheme: unsound });
    await field(page, EAR).fill('tall');
    await expectAccessible();
  });

  test('nothing sticks out at any width', async () => {
    const { page } = await visit();
    await openAll(page);
    await field(page, EAR).fill('tall');
    for (const width of [320, 390, 768, 1024, 1440, 2560]) {
      await page.setViewportSize({ width, height: 844 });
      await expect
        .poll(() => page.evaluate(() => document.documentElement.scrollWidth), { message: `${width} px` })
        .toBeLessThanOrEqual(width);
    }
  });

  test('the keyboard alone goes from the top to a changed stand and its archive', async () => {
    const { page } = await visit();
    const focused = () =>
      page.evaluate(() => document.activeElement?.id || document.activeElement?.textContent?.trim());
    const tabTo = async (target: string): Promise<void> => {
      // More than there are stops on the page.
      for (let presses = 0; presses < 300; presses += 1) {
        if ((await focused()) === target) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`Tab never came to ${target}`);
    };
    await page.keyboard.press('Tab');
    expect(await focused()).toBe('Skip to the measurements');
    await page.keyboard.press('Enter');
    await tabTo(EAR);
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('1230');
    await expect.poll(() => tilted(page)).toBe(angleText(planned({ [EAR]: 1230 }).sides.right.tilt));
    // What cannot be pressed yet is no place to stop at.
    await page.locator('button:enabled', { hasText: 'Download all as one zip' }).waitFor();
    await tabTo('Download all as one zip');
    const coming = page.waitForEvent('download');
    await page.keyboard.press('Enter');
    expect((await coming).suggestedFilename()).toMatch(/\.zip$/);
  });
});
