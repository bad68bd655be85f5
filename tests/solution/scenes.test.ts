import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lookedAt } from '$lib/drawing/lookedAt.ts';
import { viewOf } from '$lib/drawing/sheet.ts';
import type { Plan } from '$lib/solution/document.ts';
import { plan, planIn } from '$lib/solution/plan.ts';
import { posturesOf } from '$lib/solution/postures.ts';
import { numberFrom } from '../numbers.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

type Changes = Readonly<Record<string, unknown>>;

function both(changes: Changes): { readonly seat: Plan; readonly scene: Plan | null } | null {
  const of = project(changes);
  const layout = firstLayout(of);
  const [posture] = layout.listener.postures;
  const planned = plan(of, layout);
  if (!planned.ok || !posture) return null;
  return { seat: planned.value, scene: planIn(of, layout, posture) };
}

describe('a plan in a posture', () => {
  test('keeps the stands as they are cut, and passes the head there as the postures say', () => {
    let answered = 0;
    fc.assert(
      fc.property(
        anyDesk,
        numberFrom(-200, 500),
        numberFrom(-200, 200),
        numberFrom(-60, 600),
        (changes, up, aside, back) => {
          const made = both({
            ...changes,
            '/layouts/0/listener/postures': [{ name: 'standing', setback: back, earHeight: 1200 + up, offset: aside, deskHeight: 740 + up }], // prettier-ignore
          });
          if (!made?.scene) return;
          answered++;
          const { seat, scene } = made;
          const [, told] = posturesOf(seat);
          for (const side of ['left', 'right'] as const) {
            for (const key of ['toe', 'tilt', 'lift'] as const)
              expect(scene.sides[side][key]).toBe(seat.sides[side][key]);
            expect(scene.sides[side].miss).toBeCloseTo(told?.sides[side].miss ?? NaN, 6);
            expect(scene.stand[side].profile).toEqual(seat.stand[side].profile);
          }
          expect(scene.head).toEqual(told?.head);
          expect(scene.triangle.angle).toBeCloseTo(told?.triangle.angle ?? NaN, 9);
          expect(scene.layout.desk.height).toBe(740 + up);
        },
      ),
      { numRuns: runs(120) },
    );
    expect(answered).toBeGreaterThan(runs(120) / 3);
  });

  test('leaves a shelf where it is, and takes a riser along with the desk', () => {
    const made = both({
      '/layouts/0/room/walls': [],
      '/layouts/0/surfaces': [
        { name: 'shelf', x: 1000, y: 300, width: 300, depth: 300, height: 800 },
        { name: 'riser', on: 'desk', x: -430, y: 250, width: 300, depth: 300, height: 860 },
      ],
      '/layouts/0/placement': { left: { x: -430, y: 280, on: 'riser' }, right: { x: 1000, y: 320, on: 'shelf' } },
      '/layouts/0/listener/postures': [{ name: 'standing', setback: 200, earHeight: 1550, deskHeight: 1085 }],
    });
    expect(made?.scene?.sides.left.mark.z).toBe(860 - 735);
    expect(made?.scene?.sides.right.mark.z).toBe(800 - 1085);
    expect(made?.scene?.sides.left.miss).not.toBe(made?.seat.sides.left.miss);
  });

  test('where the head is in a cabinet is none', () => {
    const made = both({
      '/layouts/0/listener/postures': [{ name: 'in it', setback: -380, earHeight: 880, offset: 440 }],
    });
    expect(made?.scene).toBeNull();
  });

  test('is drawn without numbers to type over', () => {
    const made = both({});
    if (!made?.scene) throw new Error('leaning in has a plan');
    const { project: of, layout, layoutIndex } = made.scene;
    const view = viewOf('top', { project: of, layout, layoutIndex, plan: made.scene, side: 'right' }, 'true');
    expect(view.items.some((item) => 'input' in item)).toBe(true);
    expect(lookedAt(view).items.some((item) => 'input' in item)).toBe(false);
    expect(lookedAt(view).items.map(({ id }) => id)).toEqual(view.items.map(({ id }) => id));
  });
});
