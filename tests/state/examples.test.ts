import { expect, test } from 'vitest';
import { exampleAt } from '$lib/state/examples.ts';
import { fieldOf } from '$lib/state/fields.ts';

const EAR = '/layouts/3/listener/earHeight';

test('a field’s example is what the first project holds there, in the unit that one types in', () => {
  expect(exampleAt(EAR, fieldOf('number', EAR), 'mm')).toBe('1180');
  expect(exampleAt(EAR, fieldOf('number', EAR), 'in')).toBe('46.4567');
  expect(exampleAt('/speaker/drivers/5/name', fieldOf('text', '/speaker/drivers/5/name'), 'mm')).toBe('tweeter');
});

test('where that project holds nothing there is no example', () => {
  const stop = '/layouts/0/stand/stop/height';
  expect(exampleAt(stop, fieldOf('number', stop), 'mm')).toBeUndefined();
});
