import type { Locator, Page, Route } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

const EAR = '/layouts/0/listener/earHeight';
const status = (page: Page): Locator => page.locator('[data-status]');
const saved = (page: Page) => expect.poll(() => status(page).getAttribute('data-status')).toBe('saved');

describe('a project without an answer', () => {
  const DEGREES = '/layouts/0/aim/tilt/degrees';

  test('is kept as typed, told, saved, and nothing of an older state is offered', async () => {
    const { page: first, context } = await visit();
    let page = first;
    const field = (): Locator => page.locator(`[id="${DEGREES}"]`);
    const faults = (): Locator => page.getByRole('region', { name: 'Faults' }).first();
    const print = (): Locator => page.getByRole('button', { name: 'Print', exact: true });
    const zip = (): Locator => page.getByRole('button', { name: 'Download all as one zip' });

    await page.locator('[id="/layouts/0/aim/tilt"]').selectOption('lift-to-ear');
    await field().fill('40');
    await expect
      .poll(() => page.getByRole('button', { name: /^\d+ faults?\./ }).textContent())
      .toMatch(/leaves a lift of 0\smm or more/);
    await expect
      .poll(() => faults().textContent())
      .toContain('Showing the last valid values; nothing is printed or downloaded');
    expect(await page.getByRole('region', { name: 'Results', exact: true }).textContent()).toContain(
      'These are the results of the last valid values',
    );
    await zip().scrollIntoViewIfNeeded();
    await expect.poll(() => zip().isDisabled()).toBe(true);
    await expect.poll(() => print().isDisabled()).toBe(true);
    // The project is sound: its file holds what is typed.
    await expect.poll(() => page.getByRole('button', { name: 'Save the project' }).isEnabled()).toBe(true);
    await saved(page);

    page = await context.newPage();
    await page.goto(first.url());
    await expect.poll(() => field().inputValue()).toBe('40');
    // Opened again, it shows the drawing that it showed before.
    await expect
      .poll(() => faults().textContent())
      .toContain('Showing the last valid values; nothing is printed or downloaded');
    await zip().waitFor();
    expect([await zip().isDisabled(), await print().isDisabled()]).toEqual([true, true]);

    await page.getByRole('link', { name: 'Build sheet to print' }).click();
    await page.getByRole('heading', { name: 'Build sheet: Bindery desk, window side' }).waitFor();
    await expect
      .poll(() => page.getByRole('main').getByRole('status').first().textContent())
      .toContain('Not to be built from: this sheet is of the last valid values');
    for (const name of ['Print', 'Download as PDF']) {
      await expect.poll(() => page.getByRole('button', { name, exact: true }).isDisabled()).toBe(true);
    }
  });
});

describe('what the browser kept', () => {
  const notices = (page: Page): Locator => page.getByRole('region', { name: 'Notices' });
  const gone = (page: Page) =>
    expect.poll(() => notices(page).textContent()).toContain('no longer kept in the browser');
  const kept = (page: Page) =>
    page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('wedgewright/shelf/')).length);

  test('cleared while the project is open: it can be kept as a new entry, and saved as a file', async () => {
    const { page } = await visit();
    await page.locator(`[id="${EAR}"]`).fill('1210');
    await saved(page);
    await page.evaluate(() => {
      localStorage.clear();
      window.dispatchEvent(new Event('focus'));
    });
    await gone(page);
    const coming = page.waitForEvent('download');
    await notices(page).getByRole('button', { name: 'Save it as a file' }).click();
    expect((await coming).suggestedFilename()).toBe('Bindery desk.json');
    await notices(page).getByRole('button', { name: 'Keep it as a new entry' }).click();
    await saved(page);
    expect(await kept(page)).toBe(1);
    await expect.poll(async () => (await notices(page).textContent())?.trim()).toBe('');
  });

  test('deleted in another tab: said there at once, and kept again by a press', async () => {
    const { page, context } = await visit();
    await page.locator(`[id="${EAR}"]`).fill('1210');
    await saved(page);
    const other = await context.newPage();
    await other.goto(page.url());
    await other.getByRole('button', { name: 'New, open, share' }).click();
    await other.getByRole('button', { name: /^Delete/ }).click();
    await gone(page);
    await notices(page).getByRole('button', { name: 'Keep it as a new entry' }).click();
    await saved(page);
    expect(await kept(page)).toBe(1);
  });

  test('of the site itself comes back when the page is opened again', async () => {
    const { page, context, setOffline } = await visit('', { keepsSite: true });
    const whole = () =>
      page.evaluate(async () => {
        const names = await caches.keys();
        const counts = await Promise.all(names.map(async (name) => (await (await caches.open(name)).keys()).length));
        return Math.max(0, ...counts);
      });
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    const before = await whole();
    expect(before).toBeGreaterThan(50);
    await page.evaluate(async () => Promise.all((await caches.keys()).map((name) => caches.delete(name))));
    await (await context.newPage()).goto(page.url());
    await expect.poll(whole, { timeout: 30_000 }).toBe(before);
    await setOffline(true);
    const offline = await context.newPage();
    await offline.goto(page.url());
    await offline.getByRole('heading', { name: 'Wedgewright' }).waitFor();
    await expect.poll(() => offline.locator(`[id="${EAR}"]`).inputValue()).toBe('1180');
  });
});

describe('a part of the page that fails', () => {
  test('says so in its place while all the rest goes on, and comes back', async () => {
    const { page } = await visit();
    await page.locator('.paper svg[tabindex="0"]').waitFor();
    await page.evaluate(() => {
      const set = Element.prototype.setAttribute;
      Element.prototype.setAttribute = function (name, value) {
        if (name === 'd' && !Reflect.has(globalThis, 'mended')) throw new Error('no ink');
        set.call(this, name, value);
      };
    });
    const ear = page.locator(`[id="${EAR}"]`);
    const tilt = page.locator('dl > div', { hasText: 'Tilt' }).locator('dd');
    const allFailed = page.getByRole('alert').filter({ hasText: 'could not be shown' });
    const failed = allFailed.first();
    const before = await tilt.textContent();
    await ear.fill('1250');
    await expect
      .poll(() => failed.textContent())
      .toContain('The drawing could not be shown, which is a mistake of the program: no ink. What you typed is kept.');
    await expect.poll(() => ear.inputValue()).toBe('1250');
    await expect.poll(() => tilt.textContent()).not.toBe(before);
    await saved(page);
    await failed.getByRole('button', { name: 'Try again' }).click();
    await expect.poll(() => failed.textContent()).toContain('no ink');
    await page.evaluate(() => Reflect.set(globalThis, 'mended', true));
    // Every part that draws a path has failed, and each comes back by its own press.
    for (let left = await allFailed.count(); left > 0; left -= 1) {
      await failed.getByRole('button', { name: 'Try again' }).click();
      await expect.poll(() => allFailed.count()).toBe(left - 1);
    }
    await page.locator('.paper svg[tabindex="0"]').waitFor();
  });
});

describe('a worker that fails', () => {
  /** How it fails, and what the page then says of it. */
  interface Way {
    /** What is answered to whoever fetches its script. */
    readonly script: (route: Route) => Promise<void>;
    readonly says: string;
    /** Whether the browser refuses to start it. */
    readonly refused?: boolean;
    readonly silent?: boolean;
  }
  const text = (body: string) => (route: Route) => route.fulfill({ contentType: 'text/javascript', body });
  const missing = 'could not be fetched or started';
  const ways: readonly Way[] = [
    { script: (route) => route.continue(), says: missing, refused: true },
    { script: (route) => route.abort(), says: missing },
    { script: (route) => route.fulfill({ status: 404, body: 'Not found' }), says: missing },
    { script: text('throw new Error("at once");'), says: 'made a mistake (at once)' },
    {
      script: text('self.onmessage = () => setTimeout(() => { throw new Error("late"); });'),
      says: 'made a mistake (late)',
    },
    { script: text('self.onmessage = () => undefined;'), says: 'has stopped answering', silent: true },
  ];

  /** A page whose clock and whose workers can be meddled with. */
  async function meddleWith(page: Page): Promise<void> {
    await page.clock.install();
    await page.evaluate(() => {
      globalThis.Worker = class extends Worker {
        constructor(...asked: ConstructorParameters<typeof Worker>) {
          if (Reflect.has(globalThis, 'refusesWorkers')) throw new DOMException('refused', 'SecurityError');
          super(...asked);
        }
      };
    });
  }

  /**
   * Lets the workers of some jobs fail in every way, one after the other, and then work. The jobs are asked by `ask`, then by the
   * button beside what is said of each, which begins with the given words.
   */
  async function failAll(page: Page, jobs: readonly string[], ask: () => Promise<void>): Promise<void> {
    const told = (job: string): Locator =>
      page
        .getByRole('alert')
        .filter({ hasText: `${job} could not be` })
        .first();
    const askAgain = async (): Promise<void> => {
      for (const job of jobs) await told(job).getByRole('button', { name: 'Try again' }).click();
    };
    for (const [i, { script, says, refused = false, silent = false }] of ways.entries()) {
      await page.unrouteAll();
      await page.route('**/job.worker*', script);
      await page.evaluate((refuses) => {
        if (refuses) Reflect.set(globalThis, 'refusesWorkers', true);
        else Reflect.deleteProperty(globalThis, 'refusesWorkers');
      }, refused);
      if (i === 0) await ask();
      else await askAgain();
      if (silent) {
        for (const job of jobs) await expect.poll(() => told(job).count()).toBe(0);
        await page.clock.runFor(31_000);
      }
      for (const job of jobs) await expect.poll(() => told(job).textContent()).toContain(says);
    }
    await page.unrouteAll();
    await askAgain();
    for (const job of jobs) await expect.poll(() => told(job).count()).toBe(0);
  }

  const follow = (page: Page, link: string) => page.getByRole('link', { name: link, exact: true }).click();

  test('on the first page, of how sure the plan is, says so, and comes back', async () => {
    const { page, takeNoise } = await visit();
    await meddleWith(page);
    const part = page.locator('details').filter({ hasText: 'How sure, and what to measure again first' });
    await failAll(page, ['The trials'], () => part.locator('summary').click());
    await expect.poll(() => part.textContent()).toContain('says the same');
    takeNoise();
  }, 300_000);

  test('on the workshop says so, gives no files, and comes back', async () => {
    const { page, takeNoise } = await visit('workshop/');
    await meddleWith(page);
    const sheets = page.getByRole('region', { name: 'Sheets', exact: true });
    const files = page.getByRole('region', { name: 'To cut' });
    await failAll(page, ['The sheets'], () => sheets.scrollIntoViewIfNeeded());
    await sheets.locator('svg[data-sheet]').first().waitFor();
    await files.scrollIntoViewIfNeeded();
    await expect.poll(() => files.textContent(), { timeout: 120_000 }).toContain('plan.json');
    takeNoise();
  }, 300_000);

  test('on the build sheet says so, prints nothing, and comes back', async () => {
    const { page, takeNoise } = await visit('workshop/');
    await meddleWith(page);
    const print = page.getByRole('button', { name: 'Print', exact: true });
    await failAll(page, ['The sheets'], () => follow(page, 'Build sheet, to print'));
    await expect.poll(() => print.isEnabled(), { timeout: 120_000 }).toBe(true);
    takeNoise();
  }, 300_000);

  test('on the search says so, and comes back', async () => {
    // From another page, since the search starts its workers when it has come to rest.
    const { page, takeNoise } = await visit('measure/');
    await meddleWith(page);
    const ask = page.getByRole('region', { name: 'Ask' });
    await failAll(page, ['The search'], async () => {
      await follow(page, 'Search');
      await ask.getByRole('button', { name: '60° with what moves least', exact: true }).click();
    });
    await expect
      .poll(() => ask.textContent(), { timeout: 120_000 })
      .toMatch(/tried, about [\d\s]+ hold, \d+\s+are best\./);
    takeNoise();
  }, 300_000);

  test('on the search for a place of stands that exist says so, and comes back', async () => {
    const { page, takeNoise } = await visit('measure/');
    await meddleWith(page);
    await failAll(page, ['The places'], async () => {
      await follow(page, 'Search');
      await page.getByRole('button', { name: 'Stands that I have: where?' }).click();
    });
    await page.getByRole('radio', { name: /^Leave everything where it is/ }).waitFor();
    takeNoise();
  }, 300_000);

  test('on the as built page says so of a file and of what was heard, and comes back', async () => {
    const { page, takeNoise } = await visit('measure/');
    await meddleWith(page);
    const heard = page.getByRole('region', { name: 'As heard' });
    const rows = Array.from({ length: 200 }, (_, i) => `${100 * (i + 1)} 80`).join('\n');
    await failAll(page, ['The file'], async () => {
      await follow(page, 'As built');
      await heard
        .locator('input[type=file]')
        .setInputFiles({ name: 'flat.txt', mimeType: 'text/plain', buffer: Buffer.from(rows) });
    });
    await heard.getByLabel('Plays').selectOption('left');
    await heard.getByLabel('Microphone').selectOption('seat');
    await failAll(page, ['The measured responses'], () => heard.getByRole('button', { name: 'Keep flat.txt' }).click());
    await heard.getByText('No dip of 3 dB and more').waitFor();
    takeNoise();
  }, 300_000);

  test('on the sound page says so in place of each thing that is waited for, and comes back', async () => {
    const { page, takeNoise } = await visit('measure/');
    await meddleWith(page);
    const ears = page.getByRole('region', { name: 'At the ears' });
    const findings = page.getByRole('region', { name: 'All findings' });
    const head = page.getByRole('region', { name: 'Head movement' });
    await failAll(page, ['The sound', 'Findings of the sound, and suggestions,', 'The maps'], () =>
      follow(page, 'Sound'),
    );
    await ears.locator('svg').first().waitFor();
    await expect.poll(() => ears.textContent()).not.toContain('Working out');
    await expect.poll(() => findings.textContent()).toContain('Move both marks');
    await head.locator('svg').first().waitFor();

    const free = (name: RegExp) => head.getByRole('img', { name }).locator('path.free').getAttribute('d');
    const before = [await free(/^From the side/), await free(/^From above/)];
    await failAll(page, ['The map from the side', 'The map from above'], async () => {
      await head.getByRole('slider', { name: 'Sideways' }).fill('150');
      await head.getByRole('slider', { name: 'Up' }).fill('100');
    });
    await expect.poll(() => free(/^From the side/)).not.toBe(before[0]);
    await expect.poll(() => free(/^From above/)).not.toBe(before[1]);
    takeNoise();
  }, 300_000);
});
