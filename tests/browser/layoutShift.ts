import type { Page } from 'playwright';

/** Sum of the layout shifts of a page since it began to load (Layout Instability API), once it has settled. */
export async function layoutShift(page: Page): Promise<number> {
  await page.waitForLoadState('networkidle');
  return page.evaluate(async () => {
    let sum = 0;
    const count = (entries: PerformanceEntryList): void => {
      for (const entry of entries) sum += Number(Reflect.get(entry, 'value'));
    };
    const watch = new PerformanceObserver((list) => count(list.getEntries()));
    watch.observe({ type: 'layout-shift', buffered: true });
    // A shift is told after the frame that shows it, and what was told before the watch began comes as a task of its own.
    for (let frame = 0; frame < 3; frame += 1) await new Promise(requestAnimationFrame);
    await new Promise((resolve) => setTimeout(resolve));
    count(watch.takeRecords());
    return sum;
  });
}
