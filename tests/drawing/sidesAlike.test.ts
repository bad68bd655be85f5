import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sidesAlike } from '$lib/drawing/sidesAlike.ts';
import { sideView } from '$lib/drawing/sideView.ts';
import { drawings } from '$lib/files/buildSheet/drawings.ts';
import { sideNames } from '$lib/project/project.ts';
import { runs } from '../runs.ts';
import { scenes } from './arbitraries.ts';
import { scene, type Scene } from './scene.ts';

const views = ({ project, layout, plan }: Scene) =>
  sideNames.map((name) => sideView(project.speaker, layout, 0, plan, name, 'true'));

/** Every number that a side view gives, in the order in which they stand. */
const given = (made: Scene): number[][] =>
  views(made).map(({ items }) => items.flatMap((item) => ('value' in item ? [item.value] : [])));

const whole = (min: number, max: number) => fc.integer({ min, max });

describe('sides that are alike', () => {
  it('are those of a mirrored arrangement, and both their views give the same numbers in the same room', () => {
    fc.assert(
      fc.property(whole(300, 600), whole(200, 350), whole(1000, 1300), (x, y, earHeight) => {
        const made = scene({ left: { x: -x, y }, right: { x, y }, earHeight });
        expect(sidesAlike(made.plan)).toBe(true);
        const [left = [], right = []] = given(made);
        expect(left).toHaveLength(right.length);
        left.forEach((value, index) => expect(value).toBeCloseTo(right[index] ?? NaN, 6));
        const [one, other] = views(made);
        expect(one?.name).toBe('Left and right side');
        expect(other?.name).toBe(one?.name);
        one?.extent.forEach((edge, index) => expect(edge).toBeCloseTo(other?.extent[index] ?? NaN, 6));
      }),
      { numRuns: runs(20) },
    );
  });

  it('are not those of any other arrangement: each view names its side', () => {
    let askew = 0;
    fc.assert(
      fc.property(scenes, (made) => {
        const { left, right } = made.layout.placement;
        const alike = left.x === -right.x && left.y === right.y && made.layout.listener.offset === 0;
        expect(sidesAlike(made.plan)).toBe(alike);
        if (alike) return;
        askew += 1;
        expect(views(made).map(({ name }) => name)).toEqual(['Left side', 'Right side']);
      }),
      { numRuns: runs(30) },
    );
    expect(askew).toBeGreaterThan(10);
  });

  it('are one drawing on the build sheet, others two', () => {
    const sides = (made: Scene): string[] =>
      drawings({ plan: made.plan, sheets: [] }).blocks.flatMap((block) =>
        block.kind === 'drawing' && / side$/.test(block.view.name) ? [block.view.name] : [],
      );
    expect(sides(scene())).toEqual(['Left and right side']);
    expect(sides(scene({ left: { x: -400, y: 250 } }))).toEqual(['Left side', 'Right side']);
  });
});
