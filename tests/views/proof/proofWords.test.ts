import { describe, expect, test } from 'vitest';
import { doneText } from '$lib/proof/doneText.ts';
import { doText, fitText, offText, readingHint, readingName, readText } from '$lib/views/proof/proofWords.ts';
import { blank } from '../../proof/stands.ts';

const mm = { length: 'mm', fraction: null } as const;
const inches = { length: 'in', fraction: null } as const;
/** Narrow spaces are told from wide ones nowhere else. */
const plain = (text: string): string => text.replaceAll('\u202f', ' ');

test('a reading is named by what is read, and where', () => {
  expect(readingName(blank.front)).toBe('Stand, front height');
  expect(readingName(blank.corner)).toBe('Cabinet’s rear outer corner');
  expect(readingName(blank.driver)).toBe('Tweeter’s centre, height');
  expect([readingName(blank.top), readingName(blank.baffle)]).toEqual(['Spot of a light on top', 'Spot of a light at the baffle']); // prettier-ignore
  expect(readingHint(blank.top)).toMatch(/lying on top .* on a card that stands plumb at the head/);
  expect(new Set(Object.values(blank).map(readingName)).size).toBe(Object.keys(blank).length);
});

describe('what to do is said', () => {
  const told = (display: typeof mm | typeof inches) => ({ side: 'right', display }) as const;

  test.each([
    [{ act: 'shim', where: 'rear', by: 1.62 }, mm, 'Lay 1.6 mm of card under the cabinet’s rear edge, all along it.'],
    [{ act: 'shim', where: 'front', by: 2.54 }, inches, 'Lay 0.100 in of card under the cabinet’s front edge, all along it.'],
    [{ act: 'turn', by: -0.84 }, mm, 'Turn the stand 0.8° away from the middle.'],
    [{ act: 'move', x: -3, y: 2 }, mm, 'Move the stand 3.0 mm to the left and 2.0 mm away from you, without turning it.'],
    [{ act: 'leave' }, mm, 'Leave it as it is.'],
  ] as const)('%j', (done, display, text) => {
    expect(plain(doText(done, told(display)))).toBe(text);
  }); // prettier-ignore

  test('a turn towards the middle carries the rear outer corner outwards, one away from it inwards', () => {
    expect(plain(doText({ act: 'turn', by: 0.8 }, { ...told(mm), corner: 2.84 }))).toContain('move the rear outer corner 2.8 mm outwards'); // prettier-ignore
    expect(plain(doText({ act: 'turn', by: -0.8 }, { ...told(mm), corner: 2.84 }))).toContain('2.8 mm inwards');
  });

  test('and what was done', () => {
    const done = [{ act: 'shim', where: 'rear', by: 1.6 }, { act: 'turn', by: -0.8 }] as const; // prettier-ignore
    expect(plain(doneText(done, mm))).toBe('1.6 mm of card, rear edge; turned out 0.8°');
    expect(plain(doneText([{ act: 'move', x: 3, y: -2 }], mm))).toBe('moved 3 mm right, 2 mm near');
    expect(doneText([{ act: 'leave' }], mm)).toBe('left as it was');
  });
});

test('numbers are said with the unit of what was read, and a place by its ways', () => {
  expect(plain(offText(12.4, -4.2, mm))).toBe('12 mm right, 4 mm under');
  expect(offText(0.1, -0.1, mm)).toBe('the middle itself');
  expect(plain(offText(-0.2, 67, mm))).toBe('67 mm over');
  expect(readText('toe', 41.94, mm)).toBe('41.9°');
  expect(plain(readText('mark', 25.4, inches))).toBe('1.000 in');
  expect(plain(fitText('front-height', -0.24, mm))).toBe('0.2 mm less than the rest say');
  expect(fitText('slope', 0, mm)).toBe('as the rest say');
});
