import { describe, expect, it } from 'vitest';
import { dimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { canWait, detailed, handlesOf, redrawn, sheetOf, type Sheet } from '$lib/drawing/sheet.ts';
import type { SheetSource } from '$lib/drawing/sheetSource.ts';
import { steadyPanes, stillServes, type DrawnPane } from '$lib/drawing/steady.ts';
import { scene, type Difference } from './scene.ts';

const style = dimensionStyle(4);
const frame = { left: 0, top: 0, width: 1000, height: 660 };
const sourceOf = (difference: Difference): SheetSource => ({ ...scene(difference), layoutIndex: 0, side: 'right' });
const sheetFor = (source: SheetSource): Sheet => sheetOf(source, 'all', frame, style);
const drawn = (source: SheetSource, sheet: Sheet): DrawnPane[] =>
  detailed(sheet, 1, style).map((pane) => ({ ...pane, handles: handlesOf(pane, source, sheet) }));

describe('canWait', () => {
  it('lets the views beside the desk follow, but not the one that is worked on', () => {
    const sheet = sheetFor(sourceOf({}));
    expect([...canWait(sheet, null)]).toEqual(['front', 'stand']);
    expect([...canWait(sheet, 'top')]).toEqual(['front', 'stand']);
    expect([...canWait(sheet, 'front')]).toEqual(['stand']);
  });

  it('leaves a waiting view its very picture, and draws every other one of the new numbers', () => {
    const before = sheetFor(sourceOf({}));
    const source = sourceOf({ right: { x: 430, y: 270 } });
    const [now, exact] = [redrawn(source, before, canWait(before, null)), redrawn(source, before)];
    for (const [index, pane] of now.panes.entries()) {
      if (!['front', 'stand'].includes(pane.key)) expect(pane).toEqual(exact.panes[index]);
      else expect(pane).toBe(before.panes[index]);
    }
  });
});

describe('stillServes', () => {
  it('is true while the views of the desk reach no further, and false when one does', () => {
    const arranged = sheetFor(sourceOf({ earHeight: 1180 }));
    const at = (earHeight: number): Sheet => redrawn(sourceOf({ earHeight }), arranged);
    expect(stillServes(arranged, at(1180))).toBe(true);
    expect(stillServes(arranged, at(1180.5))).toBe(true);
    expect(stillServes(arranged, at(1600))).toBe(false);
  });

  it('is false where other views are shown', () => {
    const source = sourceOf({});
    expect(stillServes(sheetFor(source), sheetOf(source, 'top', frame, style))).toBe(false);
  });
});

describe('steadyPanes', () => {
  it('gives the very view again where all of it says the same', () => {
    const source = sourceOf({});
    const before = drawn(source, sheetFor(source));
    const after = steadyPanes(before, drawn(source, sheetFor(source)));
    expect(after.map((pane, index) => pane === before[index])).toEqual(before.map(() => true));
  });

  it('says what the new numbers say, and keeps what is the same', () => {
    const [one, other] = [sourceOf({}), sourceOf({ right: { x: 430, y: 270 } })];
    const sheet = sheetFor(one);
    const [before, fresh] = [drawn(one, sheet), drawn(other, redrawn(other, sheet))];
    const after = steadyPanes(before, fresh);
    expect(after).toEqual(fresh);
    const desk = (panes: readonly DrawnPane[]) => panes[0]?.view.items.find(({ subject }) => subject === 'desk');
    expect(desk(after)).toBeDefined();
    expect(desk(after)).toBe(desk(before));
  });
});
