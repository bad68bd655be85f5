import { describe, expect, test } from 'vitest';
import { timeText } from '$lib/views/document/clock.ts';

describe('the time of day', () => {
  test.each([
    [new Date(2031, 2, 3, 14, 3), '14:03'],
    [new Date(2031, 2, 3, 0, 0, 59), '00:00'],
    [new Date(2031, 11, 31, 23, 59, 59), '23:59'],
  ])('of %s is %s', (at, text) => {
    expect(timeText(at.getTime())).toBe(text);
  });

  test('is what the ECMAScript internationalisation library writes for a country with 24 hours', () => {
    for (let hour = 0; hour < 24; hour += 1) {
      const at = new Date(2031, 2, 3, hour, 7 * (hour % 8));
      // Swedish times are those of ISO 8601.
      expect(timeText(at.getTime())).toBe(at.toLocaleTimeString('sv', { hour: '2-digit', minute: '2-digit' }));
    }
  });
});
