import { root } from '../tools/root.mjs';
import { serveFolder } from '../tools/serve.mjs';
import { dragText, framesWhile, launch, nextFrame } from './frames.mjs';

/**
 * How quickly the page about the sound follows a head that is dragged: over each of its maps, and by a slider. Run after
 * `npm run build`.
 */

const MOVES = 120;
const VIEWPORT = { width: 1440, height: 900 };

/** @typedef {import('playwright').Page} Page */

/**
 * Once round in a circle over a map, a move for each frame of the screen.
 * @param {Page} page
 * @param {RegExp} name of the map
 */
async function overMap(page, name) {
  const box = await page.getByRole('img', { name }).boundingBox();
  if (!box) throw new Error(`no map ${name} to drag over`);
  const [x, y, radius] = [box.x + box.width / 2, box.y + box.height / 2, box.width / 5];
  await page.mouse.move(x + radius, y);
  await page.mouse.down();
  for (let move = 0; move < MOVES; move += 1) {
    const angle = (2 * Math.PI * move) / MOVES;
    await page.mouse.move(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
    await nextFrame(page);
  }
  await page.mouse.up();
}

/**
 * Along a slider and back, a move for each frame of the screen.
 * @param {Page} page
 * @param {string} name
 */
async function alongSlider(page, name) {
  const box = await page.getByRole('slider', { name }).boundingBox();
  if (!box) throw new Error(`no slider ${name}`);
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + box.width / 2, y);
  await page.mouse.down();
  for (let move = 0; move < MOVES; move += 1) {
    await page.mouse.move(box.x + (box.width / 2) * (1 + 0.8 * Math.sin((2 * Math.PI * move) / MOVES)), y);
    await nextFrame(page);
  }
  await page.mouse.up();
}

/**
 * Counts the maps that come from the page's worker.
 * @param {Page} page not yet opened
 */
const countMaps = (page) =>
  page.addInitScript(() => {
    let maps = 0;
    const Quiet = Worker;
    Object.assign(globalThis, {
      mapsSoFar: () => maps,
      Worker: class extends Quiet {
        /** @param {ConstructorParameters<typeof Worker>} asked */
        constructor(...asked) {
          super(...asked);
          this.addEventListener('message', ({ data }) => (maps += data.kind === 'plane' ? 1 : 0));
        }
      },
    });
  });

/** @param {Page} page */
const mapsSoFar = (page) => page.evaluate(() => Reflect.get(globalThis, 'mapsSoFar')());

const site = await serveFolder({ folder: `${root}build`, base: '/' });
const browser = await launch([]);
const page = await browser.newPage({ viewport: VIEWPORT });
await countMaps(page);
await page.goto(new URL('sound/', site.address).href, { waitUntil: 'networkidle' });
const fromAbove = /^From above/;
const fromSide = /^From the side/;
await page.getByRole('img', { name: fromAbove }).scrollIntoViewIfNeeded();

/** Each moves the plane of one map, which must be worked out anew. */
const drags = /** @type {const} */ ([
  ['head over the map from above', () => overMap(page, fromAbove)],
  ['head over the map from the side', () => overMap(page, fromSide)],
  ['slider sideways', () => alongSlider(page, 'Sideways')],
  ['slider up', () => alongSlider(page, 'Up')],
]);
for (const [name, work] of drags) {
  const before = await mapsSoFar(page);
  console.log(dragText(name, await framesWhile(browser, page, work)));
  console.log(`  ${(await mapsSoFar(page)) - before} maps worked out in ${MOVES} moves`);
}
await browser.close();
await site.close();
