import { expect, it } from 'vitest';
import { aimWords } from '$lib/views/form/aimWords.ts';
import { inputModeOf } from '$lib/views/form/inputMode.ts';

it('offers figures alone only where neither a sign nor a fraction may be typed', () => {
  expect(inputModeOf({ min: 200, unit: 'mm' })).toBe('decimal');
  expect(inputModeOf({ min: 0, unit: 'Hz' })).toBe('decimal');
  expect(inputModeOf({ min: -30, unit: '°' })).toBe('text');
  expect(inputModeOf({ min: 7.88, unit: 'in' })).toBe('text');
});

it('says what came of a change in tenths of a degree, once where both sides are alike', () => {
  const [one, other] = [
    { toe: 41.861, tilt: 14.7 },
    { toe: 40.04, tilt: -0.01 },
  ];
  expect(aimWords({ left: one, right: one })).toBe('Toe 41.9°, tilt 14.7°');
  expect(aimWords({ left: one, right: other })).toBe('Left: toe 41.9°, tilt 14.7°; right: toe 40.0°, tilt 0.0°');
});
