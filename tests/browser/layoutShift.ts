import type { Page } from 'playwright';

/** What has jumped since the page began: how much, what, and from where to where; empty where nothing has. */
export async function layoutShift(page: Page): Promise<string[]> {
  await page.waitForLoadState('networkidle');
  return page.evaluate(async () => {
    const jumps: string[] = [];
    const place = (rectangle: unknown): string =>
      rectangle instanceof DOMRectReadOnly
        ? `${rectangle.x},${rectangle.y} ${rectangle.width}×${rectangle.height}`
        : '?';
    const what = (source: object): string => {
      const node: unknown = Reflect.get(source, 'node');
      const name =
        node instanceof Node ? `${node.nodeName} "${node.textContent?.trim().slice(0, 30)}"` : 'a part of a control';
      return `${name} ${place(Reflect.get(source, 'previousRect'))} → ${place(Reflect.get(source, 'currentRect'))}`;
    };
    const note = (entries: PerformanceEntryList): void => {
      for (const entry of entries) {
        const sources: unknown = Reflect.get(entry, 'sources');
        const moved = Array.isArray(sources) ? sources.map(what) : [];
        jumps.push(`${Reflect.get(entry, 'value')} at ${Math.round(entry.startTime)} ms: ${moved.join('; ')}`);
      }
    };
    const watch = new PerformanceObserver((list) => note(list.getEntries()));
    watch.observe({ type: 'layout-shift', buffered: true });
    // A shift is told after the frame that shows it, and what was told before the watch began comes as a task of its own.
    for (let frame = 0; frame < 3; frame += 1) await new Promise(requestAnimationFrame);
    await new Promise((resolve) => setTimeout(resolve));
    note(watch.takeRecords());
    return jumps;
  });
}
