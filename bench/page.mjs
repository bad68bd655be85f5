import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright';
import { browserFlags } from '../tools/browserFlags.mjs';
import { findBrowser } from '../tools/findBrowser.mjs';
import { root } from '../tools/root.mjs';
import { serveFolder } from '../tools/serve.mjs';

/**
 * How quickly the built page answers: typing, dragging, and how much script it loads first. Run after `npm run build`.
 */

const KEYSTROKES = 60;
const MOVES = 120;
/** Limits: ms, ms of script in a frame, bytes. */
const LIMITS = { keystroke: 16, script: 8, bytes: 130_000 };
/** Frames with less script than this drew nothing new, ms. */
const LEAST_SCRIPT = 0.5;
/** Events of the trace that are script at work. */
const SCRIPT = new Set(['FunctionCall', 'EvaluateScript', 'FireAnimationFrame', 'RunMicrotasks', 'EventDispatch']);
const TRACED = ['devtools.timeline', 'devtools.timeline.frame', 'disabled-by-default-devtools.timeline.frame'];
const EAR_HEIGHT = '[id="/layouts/0/listener/earHeight"]';
const LOUDSPEAKER = '[data-view="top"] [data-handle="handle-speaker-right"]';
const VIEWPORT = { width: 1440, height: 900 };

/**
 * The value below which so many of the numbers lie.
 * @param {readonly number[]} numbers
 * @param {number} share
 */
const quantile = (numbers, share) => {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
};

/**
 * @param {number} value
 * @param {number} limit
 * @param {string} text the limit in words
 */
const verdict = (value, limit, text) => `${value < limit ? 'under' : 'NOT under'} ${text}`;

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
 * @typedef {object} TraceEvent
 * @property {string} name
 * @property {string} ph
 * @property {number} ts µs
 * @property {number} [dur] µs by the clock
 * @property {number} [tdur] µs that the thread was at work, which others on the machine do not lengthen
 * @property {number} pid
 * @property {number} tid
 */

/**
 * Script in each frame and the time from frame to frame, from a trace.
 * @param {readonly TraceEvent[]} events
 * @returns {{ script: number[]; frames: number[] }} ms
 */
function framesOf(events) {
  const begins = events.filter(({ name }) => name === 'BeginMainThreadFrame').sort((a, b) => a.ts - b.ts);
  const main = begins[0];
  if (!main) throw new Error('the trace holds no frame');
  const work = events
    .filter(({ name, ph, pid, tid }) => SCRIPT.has(name) && ph === 'X' && pid === main.pid && tid === main.tid)
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  /** Script within script counts once. */
  const outermost = /** @type {TraceEvent[]} */ ([]);
  for (const event of work) {
    const last = outermost.at(-1);
    if (!last || event.ts >= last.ts + (last.dur ?? 0)) outermost.push(event);
  }
  const script = [];
  const frames = [];
  for (let index = 0; index + 1 < begins.length; index += 1) {
    const [from, to] = [begins[index]?.ts ?? 0, begins[index + 1]?.ts ?? 0];
    const own = outermost.filter(({ ts }) => ts >= from && ts < to);
    const spent = own.reduce((sum, { dur = 0, tdur = dur }) => sum + tdur / 1000, 0);
    frames.push((to - from) / 1000);
    if (spent >= LEAST_SCRIPT) script.push(spent);
  }
  return { script, frames };
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
  await browser.startTracing(page, { categories: TRACED });
  for (let move = 0; move < MOVES; move += 1) {
    const angle = (2 * Math.PI * move) / MOVES;
    await page.mouse.move(x - 25 + 17 * Math.cos(angle), y - 25 + 17 * Math.sin(angle));
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
  }
  const trace = await browser.stopTracing();
  await page.mouse.up();
  return framesOf(JSON.parse(trace.toString()).traceEvents);
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

/** The scripts that the document itself asks for; what is fetched when the page has settled comes on top. */
function firstLoad() {
  const folder = join(root, 'build');
  const names = readFileSync(join(folder, 'index.html'), 'utf8').matchAll(/_app\/immutable\/[\w/.-]+\.js/g);
  const scripts = [...new Set([...names].map(([name]) => name))];
  return scripts.reduce((sum, name) => sum + gzipSync(readFileSync(join(folder, name))).length, 0);
}

const found = await findBrowser();
const site = await serveFolder({ folder: `${root}build`, base: '/' });
/** @param {readonly string[]} flags */
const launch = (flags) =>
  chromium.launch({
    ...(found.path === null ? {} : { executablePath: found.path }),
    args: [...browserFlags, ...flags],
  });
const ms = (/** @type {number} */ value) => `${value.toFixed(1)} ms`;

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
const { script, frames } = await drag(steady, dragged);
await steady.close();
const most = quantile(script, 0.95);
console.log(
  `drag, ${script.length} frames with script: script median ${ms(quantile(script, 0.5))}, p95 ${ms(most)} ${verdict(most, LIMITS.script, `${LIMITS.script} ms`)}; ` +
    `frame to frame median ${ms(quantile(frames, 0.5))}, p95 ${ms(quantile(frames, 0.95))}`,
);
const bytes = firstLoad();
console.log(
  `first-load JavaScript: ${(bytes / 1000).toFixed(1)} kB gzip ${verdict(bytes, LIMITS.bytes, `${LIMITS.bytes / 1000} kB`)}`,
);
await site.close();
