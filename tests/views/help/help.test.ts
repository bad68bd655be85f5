import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { toPaper } from '$lib/drawing/place.ts';
import { fieldTable } from '$lib/project/fields/table.ts';
import type { TermKey } from '$lib/project/fields/termKey.ts';
import { figureFit } from '$lib/views/figure/figureFit.ts';
import { Help, type Asked } from '$lib/views/help/help.svelte.ts';
import { placeBeside } from '$lib/views/help/place.ts';
import { termOfRow } from '$lib/views/help/termKeys.ts';
import { terms } from '$lib/views/help/terms.ts';
import { tablesOf } from '$lib/views/results/tables.ts';
import { settleProject } from '$lib/document/settle.ts';
import { project } from '../../projects.ts';

const keys = Object.keys(terms) as TermKey[];
const { shown } = settleProject(project(), 0);
const rows = shown
  ? tablesOf(shown, 'mm').flatMap(({ groups }) => groups.flatMap((group) => group.rows.map(({ name }) => name)))
  : [];

describe('the terms', () => {
  test('are each asked for somewhere, and each field asks for one that there is', () => {
    const asked = new Set([...Object.values(fieldTable).map(({ term }) => term), ...rows.map(termOfRow)]);
    asked.delete(undefined);
    expect([...asked].toSorted()).toEqual(keys.toSorted());
  });

  test.each(keys)('%s: short, whole sentences, and a drawing that is on its paper', (key) => {
    const { name, text, figure } = terms[key];
    expect(name).not.toBe('');
    expect(text).toMatch(/^[A-Z].*\.$/s);
    expect(text.length).toBeLessThan(210);
    const { width, height, place } = figureFit(figure, 300, 210);
    // Lines that only point on, such as an axis, may run out of the picture by a little.
    const BEYOND = 12;
    const inside = ([x, y]: readonly [number, number]): boolean =>
      x >= -BEYOND && x <= width + BEYOND && y >= -BEYOND && y <= height + BEYOND;
    for (const shape of figure.shapes) {
      const points = shape.kind === 'outline' ? shape.points : shape.kind === 'round' ? [shape.centre] : [shape.at];
      for (const point of points) expect([shape.id, inside(toPaper(place, point))]).toEqual([shape.id, true]);
    }
    const ids = figure.shapes.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('where the help stands', () => {
  const size = fc.record({ width: fc.integer({ min: 10, max: 400 }), height: fc.integer({ min: 10, max: 400 }) });

  test('is within the screen wherever it is asked for', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1260 }), fc.integer({ min: 0, max: 780 }), size, (left, top, card) => {
        const screen = { width: 1280, height: 800 };
        const at = placeBeside({ left, top, width: 20, height: 20 }, card, screen);
        expect(at.left).toBeGreaterThanOrEqual(0);
        expect(at.top).toBeGreaterThanOrEqual(0);
        expect(at.left + card.width).toBeLessThanOrEqual(screen.width);
        expect(at.top + card.height).toBeLessThanOrEqual(screen.height);
      }),
    );
  });

  test('is below its button, above it where there is no room', () => {
    const card = { width: 300, height: 200 };
    const screen = { width: 1280, height: 800 };
    expect(placeBeside({ left: 100, top: 100, width: 20, height: 20 }, card, screen)).toEqual({ left: 100, top: 126 });
    expect(placeBeside({ left: 100, top: 700, width: 20, height: 20 }, card, screen)).toEqual({ left: 100, top: 494 });
  });
});

describe('the help', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  /** A button is only told from others here. */
  const asked = (term: TermKey): Asked<symbol> => ({ term, button: Symbol(term) });
  const LONG = 1000;

  test('opens when the mouse rests, not when it passes, and closes when it leaves', () => {
    const help = new Help<symbol>();
    const kerf = asked('kerf');
    help.rest(kerf);
    expect(help.asked).toBeNull();
    help.leave();
    vi.advanceTimersByTime(LONG);
    expect(help.asked).toBeNull();
    help.rest(kerf);
    vi.advanceTimersByTime(LONG);
    expect(help.asked).toEqual(kerf);
    help.leave();
    vi.advanceTimersByTime(LONG);
    expect(help.asked).toBeNull();
  });

  test('stays while the mouse is on it', () => {
    const help = new Help<symbol>();
    help.focus(asked('toe'));
    help.leave();
    help.stay();
    vi.advanceTimersByTime(LONG);
    expect(help.asked?.term).toBe('toe');
  });

  test('opened by a press outlives the mouse, and a second press closes it', () => {
    const help = new Help<symbol>();
    const stop = asked('stop');
    help.press(stop);
    help.leave();
    vi.advanceTimersByTime(LONG);
    expect(help.asked).toEqual(stop);
    help.press(stop);
    expect(help.asked).toBeNull();
  });

  test('shown by the focus is kept by a press, and a press on another term moves on', () => {
    const help = new Help<symbol>();
    const [stop, rods] = [asked('stop'), asked('rods')];
    help.focus(stop);
    help.press(stop);
    expect(help.asked).toEqual(stop);
    help.press(rods);
    expect(help.asked).toEqual(rods);
    help.close();
    expect(help.asked).toBeNull();
  });
});
