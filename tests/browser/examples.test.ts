import { describe, expect, test } from 'vitest';
import { exampleFiles } from '$lib/views/document/exampleFiles.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

describe('the examples', () => {
  test('each open from the projects dialog, its file fetched only then', async () => {
    const { page, expectAccessible } = await visit();
    const fetched: string[] = [];
    page.on('request', (request) => fetched.push(request.url()));
    const title = page.getByRole('textbox', { name: 'Project title' });
    for (const [index, example] of exampleFiles.entries()) {
      await page.getByRole('button', { name: 'New, open, share' }).click();
      const dialog = page.getByRole('dialog', { name: 'Projects in this browser' });
      await dialog.getByRole('button', { name: example.title, exact: true }).waitFor();
      if (index === 0) {
        await expectAccessible();
        // The dialog and what it is made of, no example.
        expect(fetched.filter((url) => exampleFiles.some(({ file }) => url.includes(file)))).toEqual([]);
      }
      await dialog.getByRole('button', { name: example.title, exact: true }).click();
      await expect.poll(() => title.inputValue()).toBe(example.title);
      await expect.poll(() => dialog.count()).toBe(0);
      // Drawn, and nothing to be put right.
      await page.locator('[data-view="top"] [data-item="desk"]').first().waitFor();
      await expect.poll(() => page.getByText(/^Fix:|Showing last valid/).count()).toBe(0);
    }
  });
});
