import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { root } from '../tools/root.mjs';
import { serveFolder } from '../tools/serve.mjs';
import { dragText, dragThrough, framesWhile, launch, ms, places, quantile, verdict } from './frames.mjs';

/**
 * How quickly the built page answers: typing, dragging, and how much script it loads first. Run after `npm run build`.
 */

const KEYSTROKES = 60;
const MOVES = 120;
/** Limits: ms, bytes. */
const LIMITS = { keystroke: 16, bytes: 130_000 };
const EAR_HEIGHT = '[id="/layouts/0/listener/earHeight"]';
const LOUDSPEAKER = '[data-view="top"] [data-handle="handle-speaker-right"]';
const VIEWPORT = { width: 1440, height: 900 };

/**
 * From the input event to the paint after it. Frames are not held back to the screen's rhythm, so that only work counts.
 * @param {import('playwright').Page} page
 * @returns {Promise<readonly number[]>} ms
 */
async function keystrokes(page) {
  const field = page.locator(EAR_HEIGHT);
  await field.fill('1180.');
  await field.evaluate((input) => {
    const times = /** @type {number[]} */ ([]);
    Object.assign(globalThis, { benchTimes: times });
    input.addEventListener(
      'input',
      () => {
        const start = performance.now();
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => times.push(performance.now() - start);
          port2.postMessage(null);
        });
      },
      { capture: true },
    );
  });
  await field.press('End');
  // Both keys leave a sound project with another ear height than before.
  for (let stroke = 0; stroke < KEYSTROKES; stroke += 1) {
    await page.keyboard.press(stroke % 2 === 0 ? '5' : 'Backspace');
    await page.waitForFunction((count) => Reflect.get(globalThis, 'benchTimes').length > count, stroke);
  }
  return page.evaluate(() => Reflect.get(globalThis, 'benchTimes'));
}

/**
 * Drags the right loudspeaker in a circle, a move for each frame of the screen.
 * @param {import('playwright').Browser} browser
 * @param {import('playwright').Page} page
 */
async function drag(browser, page) {
  const box = await page.locator(`${LOUDSPEAKER} circle`).boundingBox();
  if (!box) throw new Error('no loudspeaker to drag on the top view');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 8, y - 8);
  const circle = places(MOVES, (share) => [
    x - 25 + 17 * Math.cos(2 * Math.PI * share),
    y - 25 + 17 * Math.sin(2 * Math.PI * share),
  ]);
  const seen = await framesWhile(browser, page, () => dragThrough(page, circle));
  await page.mouse.up();
  return seen;
}

/**
 * Opens the page and waits until it answers.
 * @param {import('playwright').Browser} browser
 * @param {string} address
 */
async function open(browser, address) {
  const page = await browser.newPage({ viewport: VIEWPORT });
  await page.goto(address, { waitUntil: 'networkidle' });
  // The sheet can be reached with the tab key once it can be moved: the last thing to be ready.
  await page.locator('[data-view="top"]').locator('xpath=..').and(page.locator('[tabindex="0"]')).waitFor();
  return page;
}

/**
 * The scripts that the document itself asks for, and those that they import at once, listed in the document or not; what is
 * fetched when the page has settled comes on top.
 */
function firstLoad() {
  const folder = join(root, 'build');
  const names = readFileSync(join(folder, 'index.html'), 'utf8').matchAll(/_app\/immutable\/[\w/.-]+\.js/g);
  const waiting = [...names].map(([name]) => name);
  const scripts = /** @type {Map<string, number>} */ (new Map());
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    if (scripts.has(name)) continue;
    const script = readFileSync(join(folder, name));
    scripts.set(name, gzipSync(script).length);
    const imports = script.toString().matchAll(/(?:from|import) ?"(\.[^"]+\.js)"/g);
    for (const [, path = ''] of imports) waiting.push(join(dirname(name), path));
  }
  return [...scripts.values()].reduce((sum, size) => sum + size, 0);
}

const site = await serveFolder({ folder: `${root}build`, base: '/' });

const quick = await launch(['--disable-frame-rate-limit', '--disable-gpu-vsync']);
const typed = await open(quick, site.address);
const times = await keystrokes(typed);
await quick.close();
const [middle, worst] = [quantile(times, 0.5), quantile(times, 0.95)];
console.log(
  `keystroke to paint, ${times.length} times: median ${ms(middle)}, p95 ${ms(worst)} ${verdict(worst, LIMITS.keystroke, `${LIMITS.keystroke} ms`)}`,
);

const steady = await launch([]);
const dragged = await open(steady, site.address);
const seen = await drag(steady, dragged);
await steady.close();
console.log(dragText('drag', seen));
const bytes = firstLoad();
console.log(
  `first-load JavaScript: ${(bytes / 1000).toFixed(1)} kB gzip ${verdict(bytes, LIMITS.bytes, `${LIMITS.bytes / 1000} kB`)}`,
);
await site.close();
