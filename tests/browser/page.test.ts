import { describe, expect, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

describe('what a page may not do is noticed', () => {
  test('a console message', async () => {
    const { page, takeNoise } = await visit();
    await page.evaluate(() => console.info('hello'));
    expect(takeNoise()).toEqual(['console info: hello']);
  });

  test('an uncaught error', async () => {
    const { page, takeNoise } = await visit();
    const thrown = page.context().waitForEvent('weberror');
    await page.evaluate(() => void setTimeout(() => Reflect.get(globalThis, 'nothing').at(0)));
    await thrown;
    expect(takeNoise()).toEqual([expect.stringContaining('uncaught: TypeError')]);
  });

  test('a request to another host', async () => {
    const { page, takeNoise } = await visit();
    await page.evaluate(() => fetch('http://example.test/').catch(() => 'refused'));
    expect(takeNoise().join('\n')).toContain('Content Security Policy');
    await page.goto('http://example.test/').catch(() => 'refused');
    expect(takeNoise()).toContain('request to another host: http://example.test/');
  });

  test('a missing file', async () => {
    const { page, takeNoise } = await visit();
    await page.evaluate(() => fetch('missing.json'));
    expect(takeNoise()).toContainEqual(expect.stringMatching(/^answer 404: .*missing\.json$/));
  });

  test('what the content security policy forbids', async () => {
    const { page, takeNoise } = await visit();
    await page.evaluate(() => document.body.setAttribute('style', 'color: red'));
    expect(takeNoise()).toEqual([expect.stringContaining('violates')]);
  });

  test('a picture without words', async () => {
    const { page, expectAccessible, takeNoise } = await visit();
    await page.evaluate(() => document.body.append(document.createElement('img')));
    await expect(expectAccessible()).rejects.toThrow('image-alt');
    takeNoise();
  });
});

describe('what a page may do passes', () => {
  test('a download of its own making', async () => {
    const { page } = await visit();
    const coming = page.waitForEvent('download');
    await page.evaluate(() => {
      const link = document.createElement('a');
      link.href = URL.createObjectURL(new Blob(['wood']));
      link.download = 'wood.txt';
      link.click();
    });
    expect((await coming).suggestedFilename()).toBe('wood.txt');
  });
});

describe('a visitor', () => {
  test('has the screen, hand and system asked for', async () => {
    const { page } = await visit('', { viewport: { width: 390, height: 844 }, theme: 'dark', touch: true });
    const seen = await page.evaluate(() => ({
      width: innerWidth,
      dark: matchMedia('(prefers-color-scheme: dark)').matches,
      still: matchMedia('(prefers-reduced-motion: reduce)').matches,
      touch: navigator.maxTouchPoints > 0,
    }));
    expect(seen).toEqual({ width: 390, dark: true, still: true, touch: true });
  });

  test('loses the network', async () => {
    const { page, setOffline, takeNoise } = await visit('', { keepsSite: true });
    // What the page fetches after the first picture, and the offline copy, would be cut short: a noise of their own.
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    await page.waitForLoadState('networkidle');
    await setOffline(true);
    expect(await page.evaluate(() => navigator.onLine)).toBe(false);
    await page.evaluate(() => fetch('missing.json').catch(() => 'gone'));
    expect(takeNoise()).toContainEqual(expect.stringMatching(/^failed request: .*missing\.json/));
  });
});
