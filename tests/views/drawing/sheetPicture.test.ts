import { expect, test } from 'vitest';
import { OpenProject } from '$lib/document/openProject.svelte.ts';
import { Undo } from '$lib/document/undo.svelte.ts';
import { SheetPicture } from '$lib/views/drawing/sheetPicture.svelte.ts';
import { project } from '../../projects.ts';

function picture(width: number, height: number) {
  const open = new OpenProject(project());
  const drawn = () => {
    if (!open.shown) throw new Error('the demo has an answer');
    return open.shown;
  };
  return { open, picture: new SheetPicture(open, new Undo(open), drawn, { width, height }) };
}

test('shows every view where there is room, one on a phone, and what is asked for on both', () => {
  const [wide, narrow] = [picture(1200, 1100).picture, picture(360, 280).picture];
  expect([wide.fit, wide.shown, narrow.fit]).toEqual([true, 'all', false]);
  expect(narrow.panes).toHaveLength(1);
  expect(wide.panes.length).toBeGreaterThan(2);
  expect(wide.onPaper).toHaveLength(wide.panes.length);
  for (const one of [wide, narrow]) {
    one.show('front');
    expect(one.panes.map(({ key }) => key)).toEqual(['front']);
  }
});

test('letters are drawn smaller on a phone’s paper, yet never too small to read', () => {
  const [wide, narrow] = [picture(1200, 1100).picture, picture(360, 280).picture];
  expect(narrow.style.textSize).toBeLessThanOrEqual(wide.style.textSize);
  expect(narrow.style.textSize).toBeGreaterThanOrEqual(12);
});

test('draws what the project is on the side that is chosen', () => {
  const { open, picture: drawn } = picture(1200, 1100);
  expect(drawn.source).toMatchObject({ side: 'right', layoutIndex: 0 });
  expect(drawn.source.plan).toBe(open.shown);
  expect(drawn.display).toEqual(open.display);
});

test('follows the field that is entered to the view that gives its value, where one view is shown', () => {
  const [wide, narrow] = [picture(1200, 1100).picture, picture(360, 280).picture];
  const [ear, mark, width] = ['/layouts/0/listener/earHeight', '/layouts/0/placement/right/x', '/speaker/width'];
  for (const pointer of [ear, mark, width]) wide.follow(pointer);
  expect(wide.shown).toBe('all');
  const seen = [ear, mark, width, '/layouts/0/air/temperature'].map((pointer) => {
    narrow.follow(pointer);
    return narrow.shown;
  });
  // What no view gives leaves the view as it is.
  expect(seen).toEqual(['side', 'top', 'front', 'front']);
  narrow.show('stand');
  expect(narrow.shown).toBe('stand');
});

test('marks the dimensions of values that the checks have something to say of, with a sign and in words', () => {
  const { open, picture: drawn } = picture(1200, 1100);
  const marks = () =>
    drawn.onPaper.flatMap(({ dimensions }) =>
      dimensions.flatMap(({ dimension, touch, elements }) => {
        const text = elements.find((element) => element.kind === 'text')?.text ?? '';
        return dimension.concern ? [`${text}: ${touch.spoken}`] : [];
      }),
    );
  const caution = '; a caution concerns it';
  expect(marks()).toEqual([
    `▲\u00a0430\u00a0each: middle of the desk to each mark: 430 millimetres${caution}`,
    `▲\u00a0(83.7°): angle of the triangle at the head: 83.7 degrees${caution}`,
  ]);
  open.edit('/layouts/0/placement/right/x', 300);
  expect(marks()).toEqual([]);
});
