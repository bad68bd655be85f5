import { describe, expect, test } from 'vitest';
import type { Way } from '$lib/study/placeExisting.ts';
import { packingText, wayDetail, wayName, wayTitle } from '$lib/views/search/placeWords.ts';
import { firstLayout, project } from '../../projects.ts';

const layout = firstLayout(project());
const mm = { length: 'mm', fraction: null } as const;
const plain = (text: string): string => text.replaceAll('\u202f', ' ').replaceAll('\u2212', '-');

const at = {
  left: { mark: { x: -440, y: 310 }, toe: 41, over: -2.5, miss: 2.5 },
  right: { mark: { x: 440, y: 310 }, toe: 41, over: -2.5, miss: 2.5 },
};
const way: Way = {
  moves: 'marks',
  deadOn: false,
  edits: [],
  moved: { left: 14.1, right: 14.1, head: 0 },
  total: 28.2,
  at,
  layout,
};

describe('what a way asks', () => {
  test('is told by what is moved and which way', () => {
    const title = (one: Partial<Way>) => plain(wayTitle({ ...way, ...one }, layout, mm));
    expect(title({})).toBe('Move both marks 14.1 mm');
    expect(title({ moved: { left: 3, right: 14.1, head: 0 } })).toBe(
      'Move the left mark 3.0 mm, the right one 14.1 mm',
    );
    const { setback, earHeight } = layout.listener;
    const set = (pointer: string, value: number) => [{ pointer, value }];
    expect(title({ moves: 'setback', edits: set('/listener/setback', setback + 85) })).toBe('Sit 85.0 mm further back');
    expect(title({ moves: 'setback', edits: set('/listener/setback', setback - 5) })).toBe('Sit 5.0 mm nearer');
    expect(title({ moves: 'earHeight', edits: set('/listener/earHeight', earHeight - 20) })).toBe('Sit 20.0 mm lower');
    expect(title({ moves: 'nothing' })).toBe('Leave everything where it is');
    expect(wayName(way, layout, mm)).toBe('stands I have: move both marks 14.1 mm');
  });

  test('has where things then are, and how the axes pass', () => {
    expect(plain(wayDetail(way, mm))).toBe('Both marks 440.0 mm from the middle, 310.0 mm from the edge, toe 41.0°; the axes pass 2.5 mm under.'); // prettier-ignore
    expect(plain(wayDetail({ ...way, moves: 'setback', deadOn: true }, mm))).toBe('The axes are dead on.');
  });
});

test('packing is told with what will do', () => {
  const then = { tilt: Math.PI / 18, lift: 20 };
  const told = (packing: Parameters<typeof packingText>[0]) => plain(packingText(packing, mm));
  expect(told({ under: 'base', thickness: 12.3, from: 10, to: 14.6, then })).toBe(
    'a riser 12.3 mm thick under the whole base; 10.0 mm to 14.6 mm will do',
  );
  expect(told({ under: 'front', thickness: 3, from: 3, to: 3, then })).toBe(
    'a shim 3.0 mm thick under the front edge, all across it, which makes the slope 10.0°',
  );
  expect(told({ under: 'base', thickness: -4.8, from: -9, to: -1, then })).toBe(
    'it is 4.8 mm too high: take that much off the base, or sit that much higher',
  );
});
