import type { Page } from 'playwright';

/** How long a page is looked at, ms: longer than it takes to settle once it answers. */
const LOOK = 800;

/** Sum of the layout shifts of a page since it began to load (Layout Instability API). */
export const layoutShift = (page: Page): Promise<number> =>
  page.evaluate(
    (look) =>
      new Promise<number>((resolve) => {
        let sum = 0;
        const watch = new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) sum += Number(Reflect.get(entry, 'value'));
        });
        watch.observe({ type: 'layout-shift', buffered: true });
        setTimeout(() => resolve(sum), look);
      }),
    LOOK,
  );
