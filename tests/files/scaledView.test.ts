import { describe, expect, it } from 'vitest';
import { topView } from '$lib/drawing/topView.ts';
import { printScales } from '$lib/files/printSheet.ts';
import { scaledView } from '$lib/files/scaledView.ts';
import { solve } from '$lib/solution/solve.ts';
import { firstLayout, project } from '../projects.ts';

const of = project();
const outcome = solve(of, firstLayout(of));
if (!outcome.ok) throw new Error('The demo has a plan.');
const plan = topView(of.speaker, firstLayout(of), 0, outcome.value);

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
