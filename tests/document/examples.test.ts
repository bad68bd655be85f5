import { expect, test } from 'vitest';
import { listener } from '$lib/project/fields/listener.ts';
import { stop } from '$lib/project/fields/stand.ts';
import { exampleAt } from '$lib/document/examples.ts';
import { fieldOf } from '$lib/document/fields.ts';

const EAR = '/layouts/3/listener/earHeight';

test('a field’s example is what the first project holds there, in the unit that one types in', () => {
  expect(exampleAt(EAR, fieldOf('number', EAR), 'mm')).toBe('1180');
  expect(exampleAt(EAR, fieldOf('number', EAR), 'in')).toBe('46.4375');
  expect(exampleAt('/speaker/drivers/5/name', fieldOf('text', '/speaker/drivers/5/name'), 'mm')).toBe('tweeter');
});

test('where that project says nothing it is what the field starts as; where that is nothing there is no example', () => {
  const example = (pointer: string) => exampleAt(pointer, fieldOf('number', pointer), 'mm');
  expect(example('/layouts/0/listener/headWidth')).toBe(String(listener.headWidth.default));
  expect(example('/layouts/0/stand/stop/height')).toBe(String(stop.height.start));
  expect(example('/layouts/0/stand/width')).toBeUndefined();
  expect(example('/speaker/designPoint/distance')).toBe('1000');
});
