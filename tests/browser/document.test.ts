import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readFile } from 'node:fs/promises';
import { unzipSync } from 'fflate';
import type { BrowserContext, Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { demoProject } from '$lib/project/demo.ts';
import { root } from '../../tools/root.mjs';
import { serveFolder } from '../../tools/serve.mjs';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const EAR = '/layouts/0/listener/earHeight';

const field = (page: Page, pointer: string) => page.locator(`[id="${pointer}"]`);
const ear = (page: Page) => field(page, EAR);
const title = (page: Page) => page.getByRole('textbox', { name: 'Project title' });
const notices = (page: Page) => page.getByRole('region', { name: 'Notices' });
const status = (page: Page) => page.locator('[data-status]');
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });
const redo = (page: Page) => page.getByRole('button', { name: /^Redo/ });
const projectsDialog = (page: Page) => page.getByRole('dialog', { name: 'Projects in this browser' });
/** What this browser keeps; the examples are a list of their own. */
const kept = (page: Page) =>
  projectsDialog(page).getByRole('list', { name: 'Projects in this browser' }).getByRole('listitem');
const layout = (page: Page, name: string) => page.getByRole('radio', { name, exact: true });

const saved = (page: Page) => expect.poll(() => status(page).getAttribute('data-status')).toBe('saved');

async function openProjects(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'New, open, share' }).click();
  await projectsDialog(page).waitFor();
}

async function typeEar(page: Page, value: string): Promise<void> {
  await ear(page).fill(value);
  await ear(page).blur();
}

/** Loads the page anew once it can be worked with. */
async function reload(page: Page): Promise<void> {
  await page.locator('button:enabled', { hasText: 'New, open, share' }).waitFor();
  await page.reload();
}

/** Opens the site again in another tab, as somebody would who comes back; its noise is heard as well. */
async function another(context: BrowserContext, page: Page): Promise<Page> {
  const tab = await context.newPage();
  await tab.goto(page.url());
  await tab.locator('#svelte-announcer').waitFor({ state: 'attached' });
  return tab;
}

describe('undo', () => {
  test('takes back what was typed into a field as one step, by buttons that say what', async () => {
    const { page } = await visit();
    await expect.poll(() => undo(page).isDisabled()).toBe(true);
    await ear(page).focus();
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('1234');
    await ear(page).blur();
    await page.getByRole('button', { name: 'Undo Listener, ear height' }).click();
    await expect.poll(() => ear(page).inputValue()).toBe('1180');
    await expect
      .poll(() => page.getByRole('status', { name: 'Undo' }).textContent())
      .toBe('Undone: Listener, ear height');
    await expect.poll(() => undo(page).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Redo Listener, ear height' }).click();
    await expect.poll(() => ear(page).inputValue()).toBe('1234');
    await expect.poll(() => redo(page).isDisabled()).toBe(true);
  });

  test('answers to keys, inside the field too, and goes on where it was', async () => {
    const { page } = await visit();
    await typeEar(page, '1200');
    await typeEar(page, '1210');
    await ear(page).focus();
    await page.keyboard.press('ControlOrMeta+Z');
    await expect.poll(() => ear(page).inputValue()).toBe('1200');
    await page.keyboard.press('ControlOrMeta+Z');
    await expect.poll(() => ear(page).inputValue()).toBe('1180');
    await page.keyboard.press('ControlOrMeta+Shift+Z');
    await expect.poll(() => ear(page).inputValue()).toBe('1200');
    await page.keyboard.press('Control+Y');
    await expect.poll(() => ear(page).inputValue()).toBe('1210');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('1300');
    await ear(page).blur();
    await page.keyboard.press('ControlOrMeta+Z');
    await expect.poll(() => ear(page).inputValue()).toBe('1210');
  });

  test('has a shorter way while a field is typed into: Escape', async () => {
    const { page } = await visit();
    await ear(page).fill('tall');
    await ear(page).press('Escape');
    await expect.poll(() => ear(page).inputValue()).toBe('1180');
    await expect.poll(() => undo(page).isDisabled()).toBe(true);
  });

  test('shows the layout in which something comes back', async () => {
    const { page } = await visit();
    await page.getByRole('button', { name: 'Add a layout' }).click();
    await field(page, '/layouts/1/listener/earHeight').fill('1250');
    await field(page, '/layouts/1/listener/earHeight').blur();
    await layout(page, 'window side').check({ force: true });
    await undo(page).click();
    await expect.poll(() => layout(page, 'window side 2').isChecked()).toBe(true);
    await expect.poll(() => field(page, '/layouts/1/listener/earHeight').inputValue()).toBe('1180');
    await undo(page).click();
    await expect.poll(() => page.getByRole('radio', { name: /^window side/ }).count()).toBe(1);
    await expect.poll(() => ear(page).inputValue()).toBe('1180');
  });
});

describe('what is kept', () => {
  test('is there again after a reload, unsound numbers and all', async () => {
    const { page } = await visit();
    await expect.poll(() => status(page).textContent()).toContain('Nothing to save yet');
    await typeEar(page, '1234.5');
    await saved(page);
    await expect.poll(() => status(page).textContent()).toMatch(/^\s*Saved at \d/);
    await ear(page).fill('tall');
    await reload(page);
    await expect.poll(() => ear(page).inputValue()).toBe('tall');
    await ear(page).fill('1222');
    await reload(page);
    await expect.poll(() => ear(page).inputValue()).toBe('1222');
  });

  test('is told when the browser forbids it, and stays on the page', async () => {
    const { page, context, expectAccessible } = await visit();
    await context.addInitScript(() => {
      Object.defineProperty(globalThis, 'localStorage', {
        get: () => {
          throw new DOMException('no', 'SecurityError');
        },
      });
    });
    await reload(page);
    await typeEar(page, '1234');
    await expect.poll(() => notices(page).textContent()).toContain('This browser keeps nothing for this page.');
    await expect.poll(() => status(page).textContent()).toContain('Not saved');
    await expect.poll(() => ear(page).inputValue()).toBe('1234');
    await expectAccessible();
    await openProjects(page);
    await expect.poll(() => projectsDialog(page).textContent()).toContain('This browser keeps nothing');
    await page.keyboard.press('Escape');
  });

  test('is told when there is no room, and is tried again', async () => {
    const { page, context } = await visit();
    await context.addInitScript(() => {
      const write = Storage.prototype.setItem;
      Storage.prototype.setItem = function (key, value) {
        if (Reflect.get(globalThis, 'full') !== false) throw new DOMException('full', 'QuotaExceededError');
        write.call(this, key, value);
      };
    });
    await reload(page);
    await typeEar(page, '1234');
    await expect.poll(() => notices(page).textContent()).toContain('The browser has no room left.');
    await page.evaluate(() => Reflect.set(globalThis, 'full', false));
    await notices(page).getByRole('button', { name: 'Try again' }).click();
    await saved(page);
    await expect.poll(async () => (await notices(page).textContent())?.trim()).toBe('');
    await reload(page);
    await page.evaluate(() => Reflect.set(globalThis, 'full', false));
    await expect.poll(() => ear(page).inputValue()).toBe('1234');
  });

  test('is found again in the copy before when the newest is torn; what cannot be read at all can be saved', async () => {
    const { page } = await visit();
    await typeEar(page, '1201');
    await saved(page);
    await typeEar(page, '1202');
    await expect
      .poll(() => page.evaluate(() => Object.keys(localStorage).filter((key) => /[01]$/.test(key)).length))
      .toBe(2);
    await saved(page);
    const tear = (which: RegExp) =>
      page.evaluate((source) => {
        for (const key of Object.keys(localStorage)) {
          if (new RegExp(source).test(key)) localStorage.setItem(key, (localStorage.getItem(key) ?? '').slice(0, -9));
        }
      }, which.source);
    await tear(/shelf\/.*\/1$/);
    await reload(page);
    await expect.poll(() => ear(page).inputValue()).toBe('1201');
    await expect.poll(() => notices(page).textContent()).toContain('This is the one before it');
    await notices(page).getByRole('button', { name: 'Dismiss' }).click();
    await expect.poll(async () => (await notices(page).textContent())?.trim()).toBe('');
    await tear(/shelf\//);
    await reload(page);
    await expect
      .poll(() => notices(page).textContent())
      .toContain('No copy of this project in the browser can be read');
    await openProjects(page);
    const coming = page.waitForEvent('download');
    await projectsDialog(page).getByRole('button', { name: 'Save what is there' }).click();
    expect(await readFile(await (await coming).path(), 'utf8')).toContain('Bindery desk');
  });
});

describe('two tabs', () => {
  test('know of each other, and neither writes over the other', async () => {
    const { page, context } = await visit();
    await typeEar(page, '1200');
    await saved(page);
    const second = await another(context, page);
    await expect.poll(() => ear(second).inputValue()).toBe('1200');
    await expect.poll(() => notices(page).textContent()).toContain('open in another tab too');
    await typeEar(second, '1210');
    await saved(second);
    await expect.poll(() => notices(page).textContent()).toContain('Another tab has changed this project.');
    await typeEar(page, '1220');
    await notices(page).getByRole('button', { name: 'Take theirs' }).click();
    await expect.poll(() => ear(page).inputValue()).toBe('1210');
    await openProjects(page);
    await expect.poll(() => kept(page).count()).toBe(2);
    await page.keyboard.press('Escape');
    await typeEar(page, '1230');
    await saved(page);
    await expect.poll(() => notices(second).textContent()).toContain('Another tab has changed this project.');
    await notices(second).getByRole('button', { name: 'Keep mine' }).click();
    await expect.poll(() => ear(second).inputValue()).toBe('1210');
    await openProjects(second);
    await expect.poll(() => kept(second).count()).toBe(3);
  });
});

describe('the store', () => {
  test('opens, copies, renames and deletes, and puts back what was deleted', async () => {
    const { page, expectAccessible } = await visit();
    await title(page).fill('First');
    await saved(page);
    await openProjects(page);
    await expectAccessible();
    await projectsDialog(page).getByRole('button', { name: 'New project, default sizes' }).click();
    await expect.poll(() => title(page).inputValue()).toBe('My desk');
    await openProjects(page);
    await projectsDialog(page).getByRole('button', { name: 'Copy First' }).click();
    await projectsDialog(page).getByRole('button', { name: 'Rename First 2' }).click();
    await projectsDialog(page).getByRole('textbox', { name: 'New title' }).fill('Second');
    await page.keyboard.press('Enter');
    await projectsDialog(page).getByRole('button', { name: 'Rename My desk' }).click();
    await projectsDialog(page).getByRole('textbox', { name: 'New title' }).fill('Third');
    await projectsDialog(page).getByRole('button', { name: 'Keep this title' }).click();
    await projectsDialog(page).getByRole('button', { name: 'Delete First' }).click();
    const titles = () => kept(page).locator('b').allTextContents();
    await expect.poll(async () => (await titles()).sort()).toEqual(['Second', 'Third']);
    await projectsDialog(page).getByRole('button', { name: 'Put it back' }).click();
    await expect.poll(async () => (await titles()).sort()).toEqual(['First', 'Second', 'Third']);
    await expectAccessible();
    await projectsDialog(page).getByRole('button', { name: 'Open First' }).click();
    await expect.poll(() => projectsDialog(page).count()).toBe(0);
    await expect.poll(() => title(page).inputValue()).toBe('First');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent?.trim()))
      .toBe('New, open, shareOpen');
  });

  test('refuses a broken file with its faults and loses nothing', async () => {
    const { page, expectAccessible } = await visit();
    await typeEar(page, '1234');
    await openProjects(page);
    const text = JSON.stringify({ ...demoProject, cutter: { kerf: -1 }, title: '' });
    await projectsDialog(page)
      .getByLabel('From a file')
      .setInputFiles({ name: 'broken.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    await expect
      .poll(() => projectsDialog(page).textContent())
      .toContain('/cutter/kerf: expected a width from 0 to 13 mm, got -1');
    await expect.poll(() => projectsDialog(page).textContent()).toContain('/title: ');
    await expectAccessible();
    await page.keyboard.press('Escape');
    await expect.poll(() => ear(page).inputValue()).toBe('1234');
  });
});

describe('a link', () => {
  test('carries the whole project to another browser', async () => {
    const { page } = await visit();
    await typeEar(page, '1234');
    await title(page).fill('Übung & <b>more</b>');
    await page.evaluate(() => Reflect.set(navigator, 'clipboard', undefined));
    await page.evaluate(() =>
      Object.defineProperty(navigator, 'clipboard', { value: { writeText: () => Promise.reject(new Error('no')) } }),
    );
    await openProjects(page);
    await projectsDialog(page).getByRole('button', { name: 'Copy a link' }).click();
    const field = projectsDialog(page).getByRole('textbox', { name: 'Link to this project' });
    await expect.poll(() => field.inputValue()).toMatch(/#project-1\./);
    const link = await field.inputValue();
    await expect
      .poll(() => projectsDialog(page).textContent())
      .toContain(`A link of ${link.length.toLocaleString()} characters.`);
    const fresh = await visit(new URL(link).hash);
    await expect.poll(() => ear(fresh.page).inputValue()).toBe('1234');
    await expect.poll(() => title(fresh.page).inputValue()).toBe('Übung & <b>more</b>');
    expect(new URL(fresh.page.url()).hash).toBe('');
    await reload(fresh.page);
    await expect.poll(() => ear(fresh.page).inputValue()).toBe('1234');
    await openProjects(fresh.page);
    await expect.poll(() => kept(fresh.page).count()).toBe(1);
  });

  test('goes to the clipboard where there is one', async () => {
    const { page, context } = await visit();
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await openProjects(page);
    await projectsDialog(page).getByRole('button', { name: 'Copy a link' }).click();
    await expect.poll(() => projectsDialog(page).textContent()).toContain('Copied: a link of');
    expect(await page.evaluate(() => navigator.clipboard.readText())).toMatch(/#project-1\./);
  });

  test('that was damaged on its way says so and leaves what was there', async () => {
    const { page } = await visit();
    await typeEar(page, '1234');
    await saved(page);
    await page.evaluate(() => (location.hash = '#project-1.AAAA'));
    await expect.poll(() => notices(page).textContent()).toContain('expected a whole link');
    await expect.poll(() => ear(page).inputValue()).toBe('1234');
  });
});

describe('layouts', () => {
  test('are added, renamed, moved, copied and deleted by keyboard, and every step comes back', async () => {
    const { page, expectAccessible } = await visit();
    await page.getByRole('button', { name: 'Add a layout' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => layout(page, 'window side 2').isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Arrange' }).press('Enter');
    const card = page.getByRole('dialog', { name: 'Arrange layouts' });
    await card.getByRole('textbox', { name: 'Name of this layout' }).fill('door side');
    await expectAccessible();
    await card.getByRole('button', { name: 'Move it one earlier' }).press('Enter');
    const names = () =>
      page
        .locator('#layout-card')
        .getByRole('group', { name: 'All layouts', includeHidden: true })
        .locator('button')
        .allTextContents();
    expect(await names()).toEqual(['door side', 'window side']);
    await card.getByRole('button', { name: 'Copy it beside this one' }).press('Enter');
    expect(await names()).toEqual(['door side', 'door side 2', 'window side']);
    await card.getByRole('button', { name: 'Delete it' }).press('Enter');
    expect(await names()).toEqual(['door side', 'window side']);
    await card.getByRole('textbox', { name: 'Name of this layout' }).fill('door side');
    await expect.poll(() => card.textContent()).toContain('Needs a name not used before');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await layout(page, 'window side').focus();
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => layout(page, 'door side').isChecked()).toBe(true);
    for (const expected of [3, 2, 2, 2, 1]) {
      await undo(page).click();
      expect((await names()).length).toBe(expected);
    }
    expect(await names()).toEqual(['window side']);
  });

  test('are chosen by touch, and the page follows', async () => {
    const { page } = await visit('', { viewport: { width: 390, height: 844 }, touch: true });
    await page.getByRole('button', { name: 'window side: Arrange' }).tap();
    const card = page.getByRole('dialog', { name: 'Arrange layouts' });
    await card.getByRole('button', { name: 'Add another' }).tap();
    await card.getByRole('button', { name: 'Done' }).tap();
    await page.locator('[id="/layouts/1/listener/earHeight"]').fill('1250');
    await page.getByRole('button', { name: /^window side 2: Arrange/ }).tap();
    await card.getByRole('button', { name: 'window side', exact: true }).tap();
    await expect.poll(() => ear(page).inputValue()).toBe('1180');
  });
});

describe('units', () => {
  test('are the same all over the page: form, drawing, title block, tables, findings', async () => {
    const { page, expectAccessible } = await visit();
    await page.getByText('All figures, and how each is worked out').click();
    await page.getByRole('combobox', { name: 'Show lengths in' }).selectOption('inches, to 1/16');
    await ear(page).fill('47 1/4');
    await ear(page).blur();
    await expect.poll(() => ear(page).inputValue()).toBe('47 1/4');
    await field(page, '/layouts/0/placement/right/x').fill('26');
    await field(page, '/layouts/0/placement/right/x').blur();
    const seen = await page.locator('main').innerText();
    const results = await page.getByRole('region', { name: 'Results', exact: true }).innerText();
    expect(results.replaceAll('MDF 3 mm', '')).not.toMatch(/\d\s?mm\b/);
    expect(results).toMatch(/″/);
    expect(seen).toContain('1/16');
    await expectAccessible();
    await page.getByRole('combobox', { name: 'Show lengths in' }).selectOption('millimetres');
    await expect.poll(() => ear(page).inputValue()).toBe('1200.15');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => ear(page).inputValue()).toBe('47 1/4');
  });
});

describe('without a network', () => {
  /** Once the site is kept whole and answers for itself. */
  const ready = (page: Page) =>
    expect.poll(() => page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state)).toBe('activated');

  test('the page opens, works and makes its files after one visit', async () => {
    const { page, setOffline } = await visit('', { keepsSite: true });
    await ready(page);
    await setOffline(true);
    const home = page.url();
    await page.goto(new URL('workshop', home).href);
    await page.getByRole('heading', { level: 1, name: 'Workshop' }).waitFor();
    expect(page.url()).toBe(new URL('workshop/', home).href);
    await page.goto(home);
    await page.locator('#svelte-announcer').waitFor({ state: 'attached' });
    await typeEar(page, '1234');
    await saved(page);
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Download all as one zip' }).click();
    const archive = unzipSync(new Uint8Array(await readFile(await (await coming).path())));
    expect(Object.keys(archive)).toContain('plan.json');
    await openProjects(page);
    const file = page.waitForEvent('download');
    await projectsDialog(page).getByRole('button', { name: 'Save as a file' }).click();
    expect((await file).suggestedFilename()).toBe('Bindery desk.json');
    await page.keyboard.press('Escape');
    await reload(page);
    await expect.poll(() => ear(page).inputValue()).toBe('1234');
  });

  test('it can be installed: a manifest below any folder, with its icons', async () => {
    const { page } = await visit();
    const found = await page.evaluate(async () => {
      const link = document.querySelector<HTMLLinkElement>('link[rel=manifest]');
      const manifest = await (await fetch(link?.href ?? '')).json();
      const icons: { src: string; type: string }[] = manifest.icons;
      const answers = await Promise.all(icons.map(({ src }) => fetch(new URL(src, link?.href))));
      return {
        start: new URL(manifest.start_url, link?.href).pathname,
        types: answers.map((answer) => answer.ok && answer.headers.get('content-type')),
        wanted: icons.map(({ type }) => type),
      };
    });
    expect(found.start).toBe('/some/where/');
    expect(found.types).toEqual(found.wanted);
  });
});

describe('a newer build', () => {
  /** The site as it would be after a change: one script has another name, and the page's policy knows it. */
  function changeSite(folder: string): void {
    const scripts = join(folder, '_app/immutable/entry');
    const app = readdirSync(scripts).find((name) => name.startsWith('app.')) ?? '';
    cpSync(join(scripts, app), join(scripts, 'app.newer.js'));
    for (const name of ['service-worker.js', 'index.html']) {
      const file = join(folder, name);
      const [old, changed] = [readFileSync(file, 'utf8'), readFileSync(file, 'utf8').replaceAll(app, 'app.newer.js')];
      writeFileSync(file, changed.replace(hashOf(old), hashOf(changed)));
      for (const compressed of ['.gz', '.br']) rmSync(file + compressed, { force: true });
    }
  }

  const hashOf = (page: string): string => {
    const script = /<script>([^]*?)<\/script>/.exec(page)?.[1] ?? '';
    return `sha256-${createHash('sha256').update(script).digest('base64')}`;
  };

  test('is told in a line, waits until it is asked for, and leaves the work as it is', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'wedgewright-site-'));
    cpSync(join(root, 'build'), folder, { recursive: true });
    const site = await serveFolder({ folder, base: '/some/where/' });
    const { page, context, takeNoise, expectAccessible } = await visit(site.address, { keepsSite: true });
    // Another host is what is wanted here, and nothing else.
    const unexpected = () => takeNoise().filter((line) => !line.startsWith('request to another host'));
    try {
      await page.evaluate(async () => void (await navigator.serviceWorker.ready));
      await typeEar(page, '1234');
      await saved(page);
      changeSite(folder);
      await page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));
      await expect.poll(() => notices(page).textContent()).toContain('A newer Wedgewright is ready.');
      await expectAccessible();
      await expect.poll(() => ear(page).inputValue()).toBe('1234');
      await notices(page).getByRole('button', { name: 'Change to it now' }).click();
      await expect.poll(() => page.content()).toContain('app.newer.js');
      await expect.poll(() => ear(page).inputValue()).toBe('1234');
      await expect.poll(async () => (await notices(page).textContent())?.trim()).toBe('');
      expect(unexpected()).toEqual([]);
    } finally {
      await context.close();
      unexpected();
      await site.close();
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

describe('for everybody', () => {
  test.each([
    ['dark', 1280],
    ['light', 390],
  ] as const)(
    'axe finds nothing on the open projects dialog and the open card in %s, %d px wide',
    async (theme, width) => {
      const { page, expectAccessible } = await visit('', {
        theme,
        viewport: { width, height: 844 },
        touch: width < 1000,
      });
      await page.getByRole('button', { name: 'window side: Arrange' }).click();
      await page.getByRole('button', { name: 'Add another' }).click();
      await expectAccessible();
      await page.keyboard.press('Escape');
      await openProjects(page);
      await projectsDialog(page).getByRole('button', { name: 'Copy a link' }).click();
      await expectAccessible();
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    },
  );
});
