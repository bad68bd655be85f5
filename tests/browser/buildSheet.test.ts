import jsQR from 'jsqr';
import { expect, test } from 'vitest';
import { readLink } from '$lib/files/link.ts';
import { useBrowser, type Visitor } from './page.ts';
import { pixelsOf } from './pixels.ts';
import { project } from '../projects.ts';

const visit = useBrowser();

for (const theme of ['light', 'dark'] satisfies Visitor['theme'][]) {
  test(`the code on the page opens the very project at the home address, ${theme}`, async () => {
    const { page } = await visit('build-sheet/', { theme });
    const code = page.getByRole('img', { name: 'Project as a QR code' });
    await code.waitFor();
    // Before, the sheets are being laid out, and the code may still be moved.
    await page.locator('button:enabled', { hasText: 'Print' }).waitFor();
    const { data, width, height } = await pixelsOf(page, await code.screenshot());
    const link = jsQR(data, width, height)?.data ?? '';
    const address = new URL(link);
    expect(address.pathname).toBe('/some/where/');
    expect(await readLink(address.hash)).toEqual({ kind: 'project', project: project() });
  });
}
