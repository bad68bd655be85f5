import { expect, test } from 'vitest';
import { usualPlaces } from '../../tools/installedBrowsers.mjs';

// Where these browsers install themselves: common practice, no source.
test('Linux: the usual folders and whatever is on the path', () => {
  const places = usualPlaces('linux', { PATH: '/somewhere/bin::/usr/bin' });
  expect(places).toContain('/usr/bin/chromium');
  expect(places).toContain('/usr/bin/google-chrome');
  expect(places).toContain('/somewhere/bin/chromium');
  expect(new Set(places).size).toBe(places.length);
});

test('macOS: applications of the machine and of the user', () => {
  const places = usualPlaces('darwin', { HOME: '/Users/someone' });
  expect(places[0]).toBe('/Applications/Google Chrome.app/Contents/MacOS/Google Chrome');
  expect(places).toContain('/Users/someone/Applications/Chromium.app/Contents/MacOS/Chromium');
});

test('Windows: program folders that are set', () => {
  const places = usualPlaces('win32', { PROGRAMFILES: 'P', LOCALAPPDATA: 'L' });
  expect(places).toHaveLength(6);
  expect(places.every((place) => place.endsWith('.exe'))).toBe(true);
});
