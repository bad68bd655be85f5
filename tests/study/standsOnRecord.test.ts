import { describe, expect, test } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { distance } from '$lib/geometry/point.ts';
import type { Project, Recorded } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import { plan } from '$lib/solution/plan.ts';
import { standsOnRecord } from '$lib/study/standsOnRecord.ts';
import { demoWith, project } from '../projects.ts';

function of(project_: Project, index = 0): Plan {
  const layout = project_.layouts[index];
  const made = layout && plan(project_, layout);
  if (!made?.ok) throw new Error('it has an answer');
  return made.value;
}

/** A record of stands that were made for what the demo needs. */
const needs = of(project()).sides;
const entry = (side: 'left' | 'right', date: string | null, by = 0): Recorded => {
  const { tilt, toe, lift } = needs[side];
  return { side, date, note: null, readings: [], stand: { tilt: tilt + by, toe, lift }, pass: null, done: [{ act: 'leave' }] };
}; // prettier-ignore
const built = (...record: readonly Recorded[]) => ({ sides: { left: {}, right: {} }, record });

describe('stands on record', () => {
  test('are right as long as the layout needs what they were made for', () => {
    const now = project({ '/layouts/0/built': built(entry('left', null), entry('right', '2031-03-14')) });
    const [one, ...others] = standsOnRecord(now, of(now));
    expect(others).toEqual([]);
    expect(one).toMatchObject({ layout: 'window side', own: true, date: '2031-03-14', fit: { fits: true } });
    expect(one?.fit?.miss).toBeLessThan(1e-6);
  });

  test('are no longer right where the layout needs quite another slope, and the miss is what that slope misses', () => {
    const now = project({ '/layouts/0/built': built(entry('left', null, -50), entry('right', null, -50)) });
    const shown = of(now);
    const [one] = standsOnRecord(now, shown);
    expect(one?.fit?.fits).toBe(false);
    expect(one?.fit?.tilt).toBeCloseTo(-50, 9);
    // As a lever about the cabinet's front edge, within what the aimed point itself moves.
    const { aimedPoint } = shown.sides.right;
    const lever = distance(aimedPoint, shown.head) * Math.sin(radians(50));
    expect(Math.abs((one?.fit?.miss ?? 0) - lever)).toBeLessThan(distance(aimedPoint, shown.sides.right.mark));
  });

  test('count as they were read last; a side that never was counts as the other', () => {
    const now = project({ '/layouts/0/built': built(entry('right', 'old', 9), entry('right', 'new')) });
    expect(standsOnRecord(now, of(now))).toMatchObject([{ date: 'new', fit: { fits: true } }]);
  });

  test('of another layout are told too, and a layout without a record is not', () => {
    const demo = demoWith({ '/layouts/0/built': built(entry('left', 'then')) });
    const two = project({ '/layouts': [...layoutsOf(demo), { ...first(demo), name: 'door side', built: null }] });
    expect(standsOnRecord(two, of(two, 1))).toMatchObject([{ layout: 'window side', own: false, date: 'then' }]);
    const none = project();
    expect(standsOnRecord(none, of(none))).toEqual([]);
  });
});

function layoutsOf(document: unknown): readonly object[] {
  const found = typeof document === 'object' && document !== null && 'layouts' in document ? document.layouts : [];
  return Array.isArray(found) ? found : [];
}

const first = (document: unknown): object => layoutsOf(document)[0] ?? {};
