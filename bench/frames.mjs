import { setTimeout } from 'node:timers/promises';
import { chromium } from 'playwright';
import { browserFlags } from '../tools/browserFlags.mjs';
import { findBrowser } from '../tools/findBrowser.mjs';

/** What the frames of a page are spent on, from the browser's trace. */

/** The most script that a frame may hold, ms: half of one of sixty in a second. */
const MOST_SCRIPT = 8;
/** Frames with less script than this drew nothing new, ms. */
const LEAST_SCRIPT = 0.5;
/** Events of the trace that are script at work. */
const SCRIPT = new Set(['FunctionCall', 'EvaluateScript', 'FireAnimationFrame', 'RunMicrotasks', 'EventDispatch']);
const TRACED = ['devtools.timeline', 'devtools.timeline.frame', 'disabled-by-default-devtools.timeline.frame'];

/**
 * The value below which so many of the numbers lie.
 * @param {readonly number[]} numbers
 * @param {number} share
 */
export const quantile = (numbers, share) => {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
};

/**
 * @param {number} value
 * @param {number} limit
 * @param {string} text the limit in words
 */
export const verdict = (value, limit, text) => `${value < limit ? 'under' : 'NOT under'} ${text}`;

/** @param {number} value */
export const ms = (value) => `${value.toFixed(1)} ms`;

/** @param {readonly string[]} flags beside those that every browser here starts with */
export const launch = async (flags) => {
  const { path } = await findBrowser();
  return chromium.launch({ ...(path === null ? {} : { executablePath: path }), args: [...browserFlags, ...flags] });
};

/** A frame of the screen, ms. */
const FRAME = 1000 / 60;

/**
 * Moves the pressed pointer from place to place, one for each frame of the screen, by the browser's own input: a test
 * driver's mouse runs scripts in the page with every move, and they would count.
 * @param {import('playwright').Page} page
 * @param {readonly (readonly [number, number])[]} places px in the window
 */
export async function dragThrough(page, places) {
  const input = await page.context().newCDPSession(page);
  for (const [x, y] of places) {
    const due = performance.now() + FRAME;
    await input.send('Input.dispatchMouseEvent', { type: 'mouseMoved', x, y, button: 'left', buttons: 1 });
    await setTimeout(Math.max(0, due - performance.now()));
  }
  await input.detach();
}

/**
 * Places of as many moves as are asked for, by the share of the way, from 0 to 1.
 * @param {number} moves
 * @param {(share: number) => readonly [number, number]} at
 */
export const places = (moves, at) => Array.from({ length: moves }, (_, move) => at(move / moves));

/**
 * @typedef {object} Frames
 * @property {number[]} script in each frame that drew something new, ms
 * @property {number[]} frames from each to the next, ms
 */

/**
 * What the page is at while something is done to it.
 * @param {import('playwright').Browser} browser
 * @param {import('playwright').Page} page
 * @param {() => Promise<void>} work
 */
export async function framesWhile(browser, page, work) {
  await browser.startTracing(page, { categories: TRACED });
  await work();
  const trace = await browser.stopTracing();
  return framesOf(JSON.parse(trace.toString()).traceEvents);
}

/**
 * The frames of a drag in words, against the limit on script.
 * @param {string} name
 * @param {Frames} frames
 */
export function dragText(name, { script, frames }) {
  const most = quantile(script, 0.95);
  return (
    `${name}, ${script.length} frames with script: script median ${ms(quantile(script, 0.5))}, p95 ${ms(most)} ` +
    `${verdict(most, MOST_SCRIPT, `${MOST_SCRIPT} ms`)}; ` +
    `frame to frame median ${ms(quantile(frames, 0.5))}, p95 ${ms(quantile(frames, 0.95))}`
  );
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
 * From a trace.
 * @param {readonly TraceEvent[]} events
 * @returns {Frames}
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
