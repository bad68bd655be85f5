import { AxeBuilder } from '@axe-core/playwright';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest';
import { browserFlags } from '../../tools/browserFlags.mjs';
import { root } from '../../tools/root.mjs';
import { listen } from './noise.ts';

/** The visitor: what their screen, hand and system are like. */
export interface Visitor {
  /** CSS pixels; default 1280 × 800. */
  readonly viewport?: { readonly width: number; readonly height: number };
  /** What the system asks for; default light. */
  readonly theme?: 'light' | 'dark';
  /** A finger instead of a mouse; default false. */
  readonly touch?: boolean;
  /** Whether the system asks for less movement; default true, for then nothing moves while a test looks. */
  readonly reducedMotion?: boolean;
  /**
   * Whether the site may keep itself for later; default false, for fetching all of it takes longer than most tests, and without
   * every request of the page can be routed.
   */
  readonly keepsSite?: boolean;
}

/** One visitor's page, in storage of its own. */
export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Takes the network away, or gives it back. */
  setOffline(offline: boolean): Promise<void>;
  /** Fails when the page has made any noise (see `listen`). Runs after every test by itself. */
  expectQuiet(): void;
  /** What has been heard so far, taken off the list: for the tests that make a noise on purpose. */
  takeNoise(): string[];
  /** Fails when axe finds anything wrong with the page as it stands: as the visitor's system asks for, or in both themes. */
  expectAccessible(themes?: 'light and dark'): Promise<void>;
  /** Writes `.shots/NAME.png`, which stays out of the repository, where `WEDGEWRIGHT_SHOTS` is set: a long page takes a second. */
  shot(name: string): Promise<void>;
}

/** Long enough for a busy machine, short enough that a missing element is told as such and not as a slow test, ms. */
const PATIENCE = 60_000;

/**
 * Gives a test file its browser: started before its first test, closed after its last. After each test every page that
 * it opened must have been quiet, and is closed.
 * @returns `visit`, which opens a page of the built site for a new visitor and waits until it answers
 */
export function useBrowser(): (path?: string, visitor?: Visitor) => Promise<Visit> {
  let browser: Browser | undefined;
  let visits: Visit[] = [];

  beforeAll(async () => {
    const program = inject('browser');
    browser = await chromium.launch({ ...(program === null ? {} : { executablePath: program }), args: browserFlags });
  });
  afterAll(() => browser?.close());
  afterEach(async () => {
    const ending = visits;
    visits = [];
    // Heard out before the page is closed: closing cuts requests short, which is a noise of its own.
    const heard = await Promise.all(ending.map((visit) => hearOut(visit)));
    await Promise.all(ending.map(({ context }) => context.close()));
    expectNothing(heard.flat());
  });

  return async (path = '', visitor = {}) => {
    if (!browser) throw new Error('visit works inside a test only: the browser starts before the first');
    const visit = await open(browser, visitor);
    visits.push(visit);
    await visit.page.goto(new URL(path, inject('site')).href);
    await answers(visit.page);
    return visit;
  };
}

async function open(browser: Browser, visitor: Visitor): Promise<Visit> {
  const context = await browser.newContext({
    viewport: visitor.viewport ?? { width: 1280, height: 800 },
    colorScheme: visitor.theme ?? 'light',
    hasTouch: visitor.touch ?? false,
    reducedMotion: visitor.reducedMotion === false ? 'no-preference' : 'reduce',
  });
  context.setDefaultTimeout(PATIENCE);
  // As in a browser that has none.
  if (!visitor.keepsSite) {
    await context.addInitScript(() => Object.defineProperty(navigator, 'serviceWorker', { value: undefined }));
  }
  const noise = listen(context, inject('site'));
  const page = await context.newPage();
  return {
    page,
    context,
    setOffline: (offline) => context.setOffline(offline),
    expectQuiet: () => expectNothing(noise),
    takeNoise: () => noise.splice(0),
    expectAccessible: async (themes) => {
      if (!themes) return expectAccessible(page);
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        await expectAccessible(page);
      }
      await page.emulateMedia({ colorScheme: visitor.theme ?? 'light' });
    },
    shot: async (name) => {
      if (process.env['WEDGEWRIGHT_SHOTS']) {
        await page.screenshot({ path: `${root}.shots/${name}.png`, fullPage: true });
      }
    },
  };
}

/** What a visit's pages have said by now: an answer from each comes after everything it said before. */
async function hearOut({ context, takeNoise }: Visit): Promise<string[]> {
  await Promise.all(context.pages().map((page) => page.evaluate(() => true).catch(() => false)));
  return takeNoise();
}

/**
 * Waits until the page's scripts have taken over, of which the router adds its announcer to the page as the last thing, and
 * until what checks and keeps an edit has come: where the list of projects can be opened, it has.
 */
async function answers(page: Page): Promise<void> {
  await page.locator('#svelte-announcer').waitFor({ state: 'attached' });
  const projects = page.getByRole('button', { name: 'New, open, share' });
  if ((await projects.count()) === 0) await page.waitForLoadState('networkidle');
  else await page.locator('button:enabled', { hasText: 'New, open, share' }).waitFor();
}

async function expectAccessible(page: Page): Promise<void> {
  // In the page itself, and only what is wrong: carrying every passed node over takes most of the time. There are no frames.
  const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });
  const { violations } = await axe.analyze();
  const told = violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help}, at ${node.target.join(' ')}`),
  );
  expectNothing(told);
}

/** Fails with the lines themselves as its message. */
function expectNothing(lines: readonly string[]): void {
  expect(lines, lines.join('\n')).toEqual([]);
}
