import { root } from '../tools/root.mjs';
import { serveFolder } from '../tools/serve.mjs';
import { dragText, dragThrough, framesWhile, launch, places } from './frames.mjs';

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
  await dragThrough(
    page,
    places(MOVES, (share) => [x + radius * Math.cos(2 * Math.PI * share), y + radius * Math.sin(2 * Math.PI * share)]),
  );
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
  const half = box.width / 2;
  await dragThrough(
    page,
    places(MOVES, (share) => [box.x + half * (1 + 0.8 * Math.sin(2 * Math.PI * share)), y]),
  );
  await page.mouse.up();
}

/**
 * Counts the maps that come from the page's workers.
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
          this.addEventListener(
            'message',
            ({ data }) => (maps += asked[1]?.name === 'slice' && data.kind === 'answer' ? 1 : 0),
          );
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
