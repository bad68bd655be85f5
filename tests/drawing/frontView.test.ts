import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signOf } from '$lib/drawing/diameter.ts';
import { frontDrivers } from '$lib/drawing/frontDrivers.ts';
import { frontView } from '$lib/drawing/frontView.ts';
import { squareToBaffle } from '$lib/drawing/squareToBaffle.ts';
import type { Dimension, Item, View } from '$lib/drawing/view.ts';
import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import { solve } from '$lib/solution/solve.ts';
import type { Plan } from '$lib/solution/document.ts';
import { sideNames, type Project } from '$lib/project/project.ts';
import { checkProject } from '$lib/project/parse.ts';
import { anyDesk, demoWith, firstLayout, project } from '../projects.ts';

/** Float dust of coordinates of some metres. mm. */
const DUST = 1e-9;

interface Made {
  readonly project: Project;
  readonly plan: Plan;
}

function made(changes: Readonly<Record<string, unknown>>): Made | null {
  const parsed = checkProject(demoWith(changes));
  if (!parsed.ok) return null;
  const outcome = solve(parsed.value, firstLayout(parsed.value));
  return outcome.ok ? { project: parsed.value, plan: outcome.value } : null;
}

function sound(changes: Readonly<Record<string, unknown>> = {}): Made {
  const one = made(changes);
  if (!one) throw new Error('This desk has no plan.');
  return one;
}

const anyMade = anyDesk.map(made).filter((one) => one !== null);

const itemOf = (view: View, id: string): Item | undefined => view.items.find((one) => one.id === id);
const dimensions = (view: View): Dimension[] =>
  view.items.filter((item): item is Dimension => item.kind === 'dimension');

function outlineOf(view: View, id: string): readonly Point[] {
  const item = itemOf(view, id);
  if (item?.kind !== 'outline') throw new Error(`no outline ${id}`);
  return item.points;
}

const near = (a: Point, b: Point): void => {
  expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(1e-6);
};

describe('square to the baffle', () => {
  it('drivers stand at their own heights and offsets, inboard towards the middle of the desk', () => {
    fc.assert(
      fc.property(anyMade, fc.constantFrom(...sideNames), ({ project: { speaker }, plan }, side) => {
        const inboard = side === 'right' ? -1 : speaker.mirrored ? 1 : -1;
        frontDrivers(speaker, plan.sides[side]).forEach(({ centre, radius }, index) => {
          const driver = speaker.drivers[index];
          near(centre, [inboard * (driver?.offset ?? NaN), driver?.height ?? NaN]);
          expect(2 * radius).toBe(driver?.diameter);
        });
      }),
    );
  });

  it('the baffle is as wide as the cabinet and as long as its height over the cosine of its rake', () => {
    fc.assert(
      fc.property(anyMade, fc.constantFrom(...sideNames), ({ project: { speaker }, plan }, side) => {
        const { flat } = squareToBaffle(plan.sides[side]);
        const corners = [0, 1, 5, 4].map((index) =>
          flat(plan.sides[side].cabinet[index] ?? { x: NaN, y: NaN, z: NaN }),
        );
        const length = speaker.height / Math.cos(radians(speaker.baffleRake));
        const half = (side === 'right' ? 1 : -1) * (speaker.width / 2);
        const [a, b, c, d] = corners;
        if (!a || !b || !c || !d) throw new Error('four corners');
        near(a, [half, 0]);
        near(b, [-half, 0]);
        near(c, [-half, length]);
        near(d, [half, length]);
      }),
    );
  });

  it('the two cabinets of a pair in the middle of its desk mirror each other', () => {
    const { project: of, plan: planned } = sound({ '/speaker/drivers/0/offset': 30 });
    const [left, right] = sideNames.map((side) => frontView(of.speaker, planned, side));
    const centre = (view: View | undefined): Point => {
      const item = view && itemOf(view, 'driver-0');
      return item?.kind === 'round' ? item.centre : [NaN, NaN];
    };
    near(centre(left), [30, 205]);
    near(centre(right), [-30, 205]);
  });

  it('of a leaning baffle the top is in sight over it, of an overhanging one the bottom below', () => {
    const top = (rake: number): number[] => {
      const { project: of, plan: planned } = sound({ '/speaker/baffleRake': rake });
      const heights = outlineOf(frontView(of.speaker, planned, 'right'), 'cabinet-right').map(([, y]) => y);
      return [Math.min(...heights), Math.max(...heights)];
    };
    // The rear lies behind the face by the depth, and by its sine higher; at the top the depth is less by height · tangent.
    const back = (rake: number): number => 205 * Math.sin(radians(rake));
    const face = (rake: number): number => 270 / Math.cos(radians(rake));
    const topDepth = (rake: number): number => 205 - 270 * Math.tan(radians(rake));
    expect(top(0)).toEqual([expect.closeTo(0, 9), expect.closeTo(270, 9)]);
    const [low = NaN, high = NaN] = top(8);
    expect(low).toBeCloseTo(0, 9);
    expect(high).toBeCloseTo(face(8) + topDepth(8) * Math.sin(radians(8)), 9);
    expect(top(-5)[0]).toBeCloseTo(back(-5), 9);
  });
});

describe('its dimensions', () => {
  const valueAt = (document: unknown, pointer: string): unknown =>
    pointer
      .split('/')
      .slice(1)
      .reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], document);

  it('are the project’s own values at their pointers, and as long as what they measure', () => {
    fc.assert(
      fc.property(anyMade, fc.constantFrom(...sideNames), (one, side) => {
        for (const { id, from, to, run, value, input, inputSign = 1 } of dimensions(
          frontView(one.project.speaker, one.plan, side),
        )) {
          const axis = run === 'across' ? 0 : 1;
          expect(Math.abs(Math.abs(to[axis] - from[axis]) - value), id).toBeLessThan(1e-6);
          if (input !== undefined) expect(valueAt(one.project, input), id).toBe(inputSign * value);
        }
      }),
    );
  });

  it('are all there: width, length, and height and diameter of every driver, offsets where there are any', () => {
    const inputs = (changes: Readonly<Record<string, unknown>>): (string | undefined)[] => {
      const { project: of, plan: planned } = sound(changes);
      return dimensions(frontView(of.speaker, planned, 'right')).map(({ input }) => input);
    };
    expect(inputs({}).sort()).toEqual([
      '/speaker/drivers/0/diameter',
      '/speaker/drivers/0/height',
      '/speaker/drivers/1/diameter',
      '/speaker/drivers/1/height',
      '/speaker/height',
      '/speaker/width',
    ]);
    expect(inputs({ '/speaker/drivers/0/offset': -20 })).toContain('/speaker/drivers/0/offset');
    // The length of a leaning baffle is a result.
    expect(inputs({ '/speaker/baffleRake': 8 })).not.toContain('/speaker/height');
  });

  it('give the aimed point as a result only where it is no driver’s centre', () => {
    const { project: of, plan: planned } = sound({
      '/layouts/0/aim/through': { between: ['tweeter', 'woofer'], fraction: 0.5 },
    });
    const view = frontView(of.speaker, planned, 'right');
    const [height] = dimensions(view).filter(({ id }) => id === 'aimed-height');
    // Half way between 205 and 95 mm.
    expect(height?.value).toBeCloseTo(150, 9);
    expect(height?.input).toBeUndefined();
    const { project: plain, plan: planned2 } = sound();
    expect(itemOf(frontView(plain.speaker, planned2, 'right'), 'aimed-height')).toBeUndefined();
  });

  it('stand in rows of their own: nothing shares a row with what lies beside it', () => {
    fc.assert(
      fc.property(anyMade, ({ project: of, plan: planned }) => {
        const all = dimensions(frontView(of.speaker, planned, 'right'));
        for (const [index, a] of all.entries()) {
          const axis = a.run === 'across' ? 0 : 1;
          const span = (one: Dimension) => [one.from[axis], one.to[axis]].sort((p, q) => p - q) as [number, number];
          for (const b of all.slice(index + 1)) {
            if (b.run !== a.run || b.row !== a.row) continue;
            const overlap = Math.min(span(a)[1], span(b)[1]) - Math.max(span(a)[0], span(b)[0]);
            expect(overlap, `${a.id} and ${b.id}`).toBeLessThanOrEqual(DUST);
          }
        }
      }),
    );
  });

  it('mark diameters, and nothing else, as such', () => {
    const { project: of, plan: planned } = sound();
    const marked = dimensions(frontView(of.speaker, planned, 'right')).filter((one) => signOf(one) === '⌀');
    expect(marked.map(({ id }) => id)).toEqual(['driver-0-diameter', 'driver-1-diameter']);
  });
});

describe('what stands round it', () => {
  it('names and ids are unique, every number finite, the extent holds what is drawn', () => {
    fc.assert(
      fc.property(anyMade, fc.constantFrom(...sideNames), ({ project: of, plan: planned }, side) => {
        const view = frontView(of.speaker, planned, side);
        expect(new Set(view.items.map(({ id }) => id)).size).toBe(view.items.length);
        expect(view.extent.every(Number.isFinite)).toBe(true);
        const [left, bottom, right, top] = view.extent;
        for (const item of view.items) {
          const points = item.kind === 'outline' ? item.points : item.kind === 'spot' ? [item.at] : [];
          for (const [x, y] of points) {
            expect(x >= left && x <= right && y >= bottom && y <= top).toBe(true);
          }
        }
      }),
    );
  });

  it('a stop at the front stands before the cabinet, one at the rear behind it', () => {
    const stop = { height: 25, thickness: 12 };
    const forward = sound({
      '/layouts/0/aim/tilt': { rule: 'as-set', degrees: -12 },
      '/layouts/0/stand/lift': 20,
      '/layouts/0/stand/stop': stop,
    });
    const backward = sound({ '/layouts/0/stand/stop': stop });
    const view = ({ project: of, plan: planned }: Made): View => frontView(of.speaker, planned, 'right');
    const heights = outlineOf(view(forward), 'stand-right-stop').map(([, y]) => y);
    // Square to the slope, which is square to a baffle without rake.
    expect(Math.max(...heights)).toBeCloseTo(25, 9);
    expect(itemOf(view(backward), 'stand-right-stop')).toBeUndefined();
  });

  it('says which way is inboard', () => {
    const of = project();
    const outcome = solve(of, firstLayout(of));
    if (!outcome.ok) throw new Error('The demo has a plan.');
    const label = (side: 'left' | 'right'): unknown =>
      itemOf(frontView(of.speaker, outcome.value, side), 'inboard-label');
    expect(label('right')).toMatchObject({ text: '← inboard', anchor: 'end' });
    expect(label('left')).toMatchObject({ text: 'inboard →', anchor: 'end' });
  });
});
