import { describe, expect, it } from 'vitest';
import { closeRows, ofRank } from '$lib/drawing/rows.ts';
import { viewOf } from '$lib/drawing/sheet.ts';
import { viewNames } from '$lib/drawing/views.ts';
import { viewPrimitives, type ViewPrimitives } from '$lib/drawing/viewPrimitives.ts';
import { topView } from '$lib/drawing/topView.ts';
import { printScales } from '$lib/files/printSheet.ts';
import { PRINTED, scaledView, viewAt } from '$lib/files/scaledView.ts';
import { solve } from '$lib/solution/solve.ts';
import { boxed, meet, meeting } from '../drawing/textBoxes.ts';
import { firstLayout, project } from '../projects.ts';

const of = project();
const outcome = solve(of, firstLayout(of));
if (!outcome.ok) throw new Error('The demo has a plan.');
const displays = [
  { length: 'mm', fraction: null },
  { length: 'in', fraction: 64 },
] as const;
const plan = topView(of.speaker, firstLayout(of), 0, outcome.value);

describe('a view on paper', () => {
  const source = { project: of, layout: firstLayout(of), layoutIndex: 0, plan: outcome.value, side: 'right' } as const;
  const views = viewNames.flatMap((key) =>
    printScales.map((scale) => ({ scale, view: closeRows(ofRank(viewOf(key, source, 'broken'), scale > 2 ? 3 : 4)) })),
  );

  /** How many texts stand on another or on a line. */
  function struck({ things, dimensions }: ViewPrimitives): number {
    const all = [...things, ...dimensions];
    const texts = all.flatMap((one) => (one.kind === 'text' ? [boxed(one.text, { turn: 0, ...one }, PRINTED)] : []));
    const paths = all.flatMap((one) => {
      if (one.kind !== 'line') return [];
      return [one.closed ? [...one.points, ...one.points.slice(0, 1)] : one.points];
    });
    const crossed = texts.filter(({ corners }) =>
      paths.some((path) => path.some((point, index) => index > 0 && meet(corners, [path[index - 1] ?? point, point]))),
    );
    return meeting(texts).length + crossed.length;
  }

  it('has every number of the view, and fewer of them struck than where each stands where it would like to', () => {
    let [before, after] = [0, 0];
    for (const { scale, view } of views)
      for (const display of displays) {
        const plain = viewPrimitives(view, { place: { scale: 1 / scale, origin: [0, 0] }, style: PRINTED }, display);
        const placed = viewAt(view, scale, display);
        const count = ({ dimensions }: ViewPrimitives): number =>
          dimensions.filter(({ kind }) => kind === 'text').length;
        expect(count(placed)).toBe(count(plain));
        expect(struck(placed)).toBeLessThanOrEqual(struck(plain));
        before += struck(plain);
        after += struck(placed);
      }
    expect(after).toBeLessThan(before / 2);
  });

  it('gives each input once', () => {
    for (const { view } of views) {
      const inputs = view.items.flatMap((item) => ('input' in item && item.input ? [item.input] : []));
      expect(new Set(inputs).size).toBe(inputs.length);
    }
  });
});

describe('the plan of a build sheet', () => {
  // Its width and the rows beside it, at each reduction of a desk of 1400 mm.
  it.each(printScales.filter((scale) => scale > 2))('keeps its results and ways of sound at 1:%d', (scale) => {
    const scaled = scaledView(plan, 1400 / scale + 60, 5000, { length: 'mm', fraction: null });
    expect(scaled?.scale).toBe(`1:${scale}`);
    const primitives = scaled?.primitives ?? [];
    const texts = primitives.flatMap((one) => (one.kind === 'text' ? [one.text] : []));
    // Base of the triangle, way to the head, angle at the head, toe.
    expect(texts).toEqual(expect.arrayContaining(['(929.4)', '(720)', '(83.7°)', '(41.9°)']));
    // Nothing but what asks for plenty of room is left out.
    const left = plan.items.filter(({ rank }) => rank !== 4);
    const circles = primitives.filter(({ kind }) => kind === 'circle').length;
    const round = left.filter((item) => item.kind === 'round' || (item.kind === 'spot' && item.mark !== 'cross'));
    expect(circles).toBe(round.length);
    const dashed = (kinds: readonly string[]) =>
      left.filter((item) => item.kind === 'outline' && kinds.includes(item.pen)).length;
    const dashes = primitives.filter((one) => one.kind === 'line' && (one.dashes?.length ?? 0) > 0).length;
    expect(dashes).toBe(dashed(['hidden', 'centre', 'phantom', 'aim', 'sight']));
  });
});
