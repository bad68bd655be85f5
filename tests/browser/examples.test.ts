import { describe, expect, test } from 'vitest';
import { exampleFiles } from '$lib/views/document/exampleFiles.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

describe('the examples', () => {
  test('each open from the projects dialog, its file fetched only then', async () => {
    const { page, expectAccessible } = await visit();
    const scripts: Promise<string>[] = [];
    page.on('response', (response) => {
      if (response.url().endsWith('.js')) scripts.push(response.text());
    });
    /** Whether what was fetched meanwhile holds the first example, by the name of its layout. */
    const hasFirst = async () => (await Promise.all(scripts)).some((text) => text.includes('under the window'));
    const title = page.getByRole('textbox', { name: 'Project title' });
    for (const [index, example] of exampleFiles.entries()) {
      await page.getByRole('button', { name: 'New, open, share' }).click();
      const dialog = page.getByRole('dialog', { name: 'Projects in this browser' });
      await dialog.getByRole('button', { name: example.title, exact: true }).waitFor();
      if (index === 0) {
        await expectAccessible();
        expect(scripts.length).toBeGreaterThan(0);
        expect(await hasFirst()).toBe(false);
      }
      await dialog.getByRole('button', { name: example.title, exact: true }).click();
      await expect.poll(() => title.inputValue()).toBe(example.title);
      await expect.poll(() => dialog.count()).toBe(0);
      if (index === 0) await expect.poll(hasFirst).toBe(true);
      // Drawn, and nothing to be put right.
      await page.locator('[data-view="top"] [data-item="desk"]').first().waitFor();
      await expect.poll(() => page.getByText(/^Fix:|Showing last valid/).count()).toBe(0);
    }
  });
});
