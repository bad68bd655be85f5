import { expect, inject, test } from 'vitest';
import { useBrowser } from './page.ts';

const visit = useBrowser();

test('the page opens in silence, asks no other host for anything, and says whose it is', async () => {
  const { page, expectQuiet } = await visit();
  expect(await page.title()).toContain('Wedgewright');
  await expect.poll(() => page.locator('html').getAttribute('lang')).toBe('en');
  await page.waitForLoadState('networkidle');
  expectQuiet();
});

test('the content security policy forbids what it does not name', async () => {
  const { page } = await visit();
  const policy = await page.locator('meta[http-equiv="content-security-policy"]').getAttribute('content');
  const directives = new Map((policy ?? '').split(';').map((one) => splitFirst(one.trim())));
  expect(directives.get('default-src')).toBe("'none'");
  for (const closed of ['object-src', 'base-uri', 'form-action']) expect(directives.get(closed)).toBe("'none'");
  for (const own of ['connect-src', 'font-src', 'worker-src', 'manifest-src']) {
    expect(directives.get(own)).toBe("'self'");
  }
  expect(policy).not.toMatch(/unsafe-inline|unsafe-eval|https?:|\*/);
});

test('below a folder, all that a page loads and every way it leads stays there', async () => {
  const home = inject('site');
  const { page } = await visit('workshop/');
  const addresses = await page
    .locator(':is(a, link)[href], script[src]')
    .evaluateAll((all) => all.map((one) => Reflect.get(one, one.tagName === 'SCRIPT' ? 'src' : 'href') as string));
  expect(addresses.length).toBeGreaterThan(5);
  expect(addresses.filter((address) => !address.startsWith(home))).toEqual([]);
  await page.getByRole('link', { name: 'Wedgewright' }).first().click();
  await page.waitForURL(home);
  await page.getByRole('heading', { name: 'Wedgewright: desk, aim and stands' }).waitFor();
});

function splitFirst(directive: string): [string, string] {
  const [name = '', ...values] = directive.split(' ');
  return [name, values.join(' ')];
}
