import type { Locator, Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { valueAt } from '$lib/document/pointer.ts';
import { settleProject } from '$lib/document/settle.ts';
import { cutFiles } from '$lib/files/bundle.ts';
import { measuredOf } from '$lib/project/measured.ts';
import { parseProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { solutionOf } from '$lib/solution/solve.ts';
import { useBrowser } from './page.ts';
import { unzipped } from './taken.ts';
import { firstLayout } from '../projects.ts';
import { rectangleOf } from '../rooms.ts';

const MM_PER_INCH = 25.4;

/** What the guide asks, in its order: where, what a person with a tape in inches types there, and how much that is, mm, ° or Hz. */
const desk = [
  ['/layouts/0/desk/outline/width', '63 3/4', 63.75 * MM_PER_INCH],
  ['/layouts/0/desk/outline/depth', '29 1/2', 29.5 * MM_PER_INCH],
  ['/layouts/0/desk/height', '28 5/8', 28.625 * MM_PER_INCH],
  ['/layouts/0/room/gap', '3', 3 * MM_PER_INCH],
  ['/layouts/0/listener/earHeight', '47 1/4', 47.25 * MM_PER_INCH],
  ['/layouts/0/listener/setback', '9 1/2', 9.5 * MM_PER_INCH],
  ['/layouts/0/listener/offset', '0', 0],
] as const;
const screen = [
  ['/layouts/0/monitors/0/width', '24 1/4', 24.25 * MM_PER_INCH],
  ['/layouts/0/monitors/0/height', '14 3/8', 14.375 * MM_PER_INCH],
  ['/layouts/0/monitors/0/bottom', '4 1/2', 4.5 * MM_PER_INCH],
  ['/layouts/0/monitors/0/y', '20', 20 * MM_PER_INCH],
  ['/layouts/0/monitors/0/x', '0', 0],
  ['/speaker/width', '7 1/8', 7.125 * MM_PER_INCH],
  ['/speaker/height', '11 3/4', 11.75 * MM_PER_INCH],
  ['/speaker/depth', '8 7/8', 8.875 * MM_PER_INCH],
  ['/speaker/baffleRake', '0', 0],
] as const;
const rest = [
  ['/speaker/drivers/0/diameter', '1 1/8', 1.125 * MM_PER_INCH],
  ['/speaker/drivers/0/height', '9 1/8', 9.125 * MM_PER_INCH],
  ['/speaker/drivers/1/diameter', '4 5/8', 4.625 * MM_PER_INCH],
  ['/speaker/drivers/1/height', '4 1/8', 4.125 * MM_PER_INCH],
  ['/speaker/crossovers/0/frequency', '2.6k', 2600],
  ['/layouts/0/placement/right/x', '20', 20 * MM_PER_INCH],
  ['/layouts/0/placement/right/y', '13 1/2', 13.5 * MM_PER_INCH],
  ['/stock/0/name', 'birch', 'birch'],
  ['/stock/0/thickness', '0.162', 0.162 * MM_PER_INCH],
  ['/stock/0/sheet/width', '28 1/2', 28.5 * MM_PER_INCH],
  ['/stock/0/sheet/height', '20', 20 * MM_PER_INCH],
  ['/cutter/kerf', '0.006', 0.006 * MM_PER_INCH],
] as const;

/** What of the wall's distance from the front edge lies behind the desk, mm. */
function gapIn(of: Project): number {
  const { desk, room } = firstLayout(of);
  return (room.walls[0]?.distance ?? NaN) - rectangleOf(desk).depth;
}

/** The most that getting from the example to the files of one's own may take. */
const MOST_ACTIONS = 35;

/** A visitor's hands: every press, and every value typed with the Enter that ends it, counts as one. */
class Hands {
  readonly done: string[] = [];

  constructor(
    private readonly page: Page,
    private readonly touch: boolean,
  ) {}

  async press(target: Locator, what: string): Promise<void> {
    this.done.push(`press ${what}`);
    await (this.touch ? target.tap() : target.click());
  }

  /** Types where the last Enter has led: nothing is pressed to get there. */
  async type(values: readonly (readonly [pointer: string, text: string, value: unknown])[]): Promise<void> {
    for (const [pointer, text] of values) {
      await expect.poll(() => this.page.evaluate(() => document.activeElement?.id)).toBe(pointer);
      this.done.push(`type ${text} at ${pointer}`);
      await this.page.keyboard.type(text);
      await this.page.keyboard.press('Enter');
    }
  }
}

describe('a newcomer with a tape in inches', () => {
  const visit = useBrowser();

  test.each([
    ['at a desk', { viewport: { width: 1440, height: 900 } }],
    ['on a phone', { viewport: { width: 390, height: 844 }, touch: true }],
  ])('%s comes to the files of own stands in at most 35 actions', async (_, visitor) => {
    const { page, expectAccessible } = await visit('', visitor);
    const hands = new Hands(page, 'touch' in visitor);
    await hands.press(page.getByRole('button', { name: 'start your own' }), 'start your own');
    await hands.press(page.getByRole('button', { name: 'inches and sixteenths' }), 'the unit');
    await page.waitForURL('**/measure/**');
    await hands.type(desk);
    await hands.press(page.getByRole('radio', { name: 'one', exact: true }), 'one screen');
    await hands.press(page.locator('[id="/layouts/0/monitors/0/width"]'), 'into the width');
    await hands.type(screen);
    await hands.press(page.getByRole('radio', { name: 'known', exact: true }), 'crossover known');
    await hands.press(page.locator('[id="/speaker/drivers/0/diameter"]'), 'into the diameter');
    await hands.type(rest);

    expect(await page.getByText(/^All 26 values are your own/).isVisible()).toBe(true);
    await expectAccessible();
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent?.trim()))
      .toBe('Download all as one zip');
    const coming = page.waitForEvent('download');
    await hands.press(page.getByRole('button', { name: 'Download all as one zip' }), 'download');
    const files = await unzipped(await coming);
    expect(hands.done.length, hands.done.join('\n')).toBeLessThanOrEqual(MOST_ACTIONS);

    const project = parseProject(files['project.json'] ?? '');
    if (!project.ok) throw new Error('the archive holds the project');
    for (const [pointer, , value] of [...desk, ...screen, ...rest]) {
      const held = pointer.endsWith('/gap') ? gapIn(project.value) : valueAt(project.value, pointer);
      if (typeof value === 'number') expect(held, pointer).toBeCloseTo(value, 9);
      else expect(held, pointer).toBe(value);
    }
    const { entered, of } = measuredOf(project.value, 0);
    expect(entered).toBe(of);
    const { shown } = settleProject(project.value, 0);
    const made = shown && (await cutFiles(solutionOf(shown)));
    if (!made?.ok) throw new Error('the project has cut files');
    for (const { path, text } of made.value.cut) expect(files[path] === text, path).toBe(true);
  });
});
