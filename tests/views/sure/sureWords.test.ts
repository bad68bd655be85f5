import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shopTolerance } from '$lib/proof/shopTolerance.ts';
import { plan } from '$lib/solution/plan.ts';
import { solutionOf } from '$lib/solution/solve.ts';
import {
  lessSure,
  measureAgain,
  ringsFor,
  shopRows,
  shopVerdict,
  sureAngles,
  sureRows,
} from '$lib/views/sure/sureWords.ts';
import { firstLayout, project } from '../../projects.ts';
import { runs } from '../../runs.ts';

function told(changes: Readonly<Record<string, unknown>> = {}) {
  const of = project(changes);
  const outcome = plan(of, firstLayout(of));
  if (!outcome.ok) throw new Error('the demo has an answer');
  const { sure } = solutionOf(outcome.value);
  if (!sure) throw new Error('the demo has an answer');
  return { plan: outcome.value, sure };
}

test('names the value that does the most, and gives each its line', () => {
  const { plan, sure } = told();
  expect(lessSure(plan, sure)).toEqual({ side: 'right', name: 'each loudspeaker' });
  expect(measureAgain(sure.sides.right)).toBe(
    'Measure this again first: setback. It makes 49 % of what is open at the head.',
  );
  const rows = sureRows(sure.sides.right, plan);
  expect(rows[0]).toMatchObject({
    value: 'setback',
    name: 'Setback',
    tool: 'tape',
    span: '±\u202f20\u202fmm',
    share: expect.closeTo(0.49, 2),
    atHead: '14\u202fmm',
  });
  // A desk's height of 735 mm within ± 2 mm is what no tape leaves open: a doubt of one's own.
  expect(rows.find(({ value }) => value === 'deskHeight')).toMatchObject({
    tool: null,
    tools: expect.arrayContaining([{ name: 'tape, class II', sure: 1.2 }]),
  });
  expect(rows.find(({ name }) => name === 'Baffle rake')?.span).toBe('±\u202f0.5°');
  expect(sureAngles(sure, 'right').map(({ text }) => text)).toEqual(['±\u202f2.2°', '±\u202f6°']);
});

test('of sides that differ tells of the less sure one; of exact values nothing', () => {
  const { plan, sure } = told({ '/layouts/0/placement/left/x': -650 });
  expect(lessSure(plan, sure).name).toMatch(/^the (left|right) loudspeaker$/);
  const keys = Object.keys(plan.project.sure);
  const exact = told({ '/sure': Object.fromEntries(keys.map((key) => [key, 0])) });
  expect(measureAgain(exact.sure.sides.right)).toBeNull();
  expect(sureRows(exact.sure.sides.right, exact.plan)).toEqual([]);
});

test('rings stand at round distances and reach round what is shown', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 2000, noNaN: true }),
      fc.constantFrom('mm' as const, 'in' as const),
      (reach, length) => {
        const rings = ringsFor(reach, { length, fraction: null });
        expect(rings.length).toBeGreaterThanOrEqual(2);
        expect(rings.length).toBeLessThanOrEqual(4);
        expect(rings.at(-1)).toBeGreaterThanOrEqual(reach * (1 - 1e-9));
      },
    ),
    { numRuns: runs(300) },
  );
});

describe('the shop’s part', () => {
  const zone = (distance: number) => {
    const reach = { distance, by: null, posture: null };
    return { box: { left: reach, right: reach, forward: reach, back: reach, up: reach, down: reach } };
  };

  test('names what is worth care, and the coarsest general tolerance that will do', () => {
    const { plan } = told();
    const shop = shopTolerance(plan, 'right');
    if (!shop) throw new Error('the demo has an answer');
    expect(shopRows(shop, plan)[0]).toMatchObject({ name: 'A rear corner, sideways', by: '1.0\u202fmm' });
    expect(shopRows(shop, plan).find(({ name }) => name === 'Each glue line')).toMatchObject({
      atHead: '0.0\u202fmm',
      wider: '5.3\u202fmm wider',
    });
    expect(shopVerdict(shop, null, plan)).toBe('Worth the most care: a rear corner, sideways.');
    expect(shopVerdict(shop, zone(500), plan)).toMatch(
      /ISO 2768-1 v \(very coarse\) will do: .* 500\smm at its narrowest\.$/,
    );
    expect(shopVerdict(shop, zone(1), plan)).toMatch(
      /No general tolerance of ISO 2768-1 keeps the axis within .* 1\smm/,
    );
  });
});
