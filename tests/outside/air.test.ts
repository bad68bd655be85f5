import { expect, test } from 'vitest';
import { speedOfSound } from '$lib/acoustics/air.ts';

// 343.2·√((t + 273.15)/293.15) of ISO 9613-1, worked out apart from this code to the digits shown.
test.each([
  [0, 331.2859],
  [10, 337.2956],
  [20, 343.2],
  [25, 346.1145],
  [30, 349.0046],
])('at %d °C sound travels %d m/s', (temperature, speed) => {
  expect(speedOfSound(temperature)).toBeCloseTo(speed, 4);
});

// F. A. Everest, K. C. Pohlmann, "Master Handbook of Acoustics": 1130 ft/s in a room.
test("a handbook's 1130 ft/s agrees within 1 %", () => {
  const handbook = 1130 * 0.3048;
  expect(Math.abs(speedOfSound(20) / handbook - 1)).toBeLessThan(0.01);
});
