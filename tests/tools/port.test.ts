import { expect, test } from 'vitest';
import { portFrom } from '../../tools/port.mjs';

test.each([
  [undefined, 4173],
  ['', 4173],
  ['1', 1],
  ['8080', 8080],
  ['65535', 65_535],
])('PORT %j means %i', (text, port) => {
  expect(portFrom(text)).toBe(port);
});

test.each(['0', '65536', '-1', '80.5', '8e3', ' 80', '0x50', 'http', 'NaN'])('PORT %j is refused', (text) => {
  expect(() => portFrom(text)).toThrow(`PORT: expected a whole number from 1 to 65535, got ${JSON.stringify(text)}`);
});
