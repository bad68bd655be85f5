import { describe, expect, test } from 'vitest';
import { COMMON_SHOP } from '$lib/project/commonShop.ts';
import { cutterOf } from '$lib/workshop/beam.ts';
import { project } from '../projects.ts';
import { bodyOf, refusalOf, shop, thick, type Case } from './builds/commissions.ts';

const routed = (bit: number | null, one: Case): Case => ({
  ...one,
  shop: { ...shop, tools: { ...COMMON_SHOP, router: { bit, tab: null } } },
});

describe('parts that a router cuts', () => {
  test('a bit as wide as a rod’s hole goes in, a wider one does not', () => {
    const one = { settings: { rods: { diameter: 6, count: 2, clearance: 0.1, edge: 2 } } };
    expect(bodyOf(routed(6.1, one)).pieces).toHaveLength(1);
    expect(refusalOf(routed(6.2, one)).lines).toEqual([
      '/stand/build: expected inner corners of at least the router bit’s radius of 3.1 mm, got a radius of 3.05 mm in part "slice": use a smaller bit, larger radii, no slots, or a cutter with a beam or blade',
    ]);
  });

  test('windows are cut with a bit that follows their corners', () => {
    const one = { settings: { rods: null, relief: { web: 8, corner: 2 } } };
    expect(bodyOf(one).pieces[0]?.inside.length).toBeGreaterThan(0);
    expect(bodyOf(routed(4, one)).pieces[0]?.inside.length).toBeGreaterThan(0);
    expect(refusalOf(routed(4.01, one)).lines.join()).toContain('got a radius of 2 mm in part "slice"');
  });

  test('halving joints have sharp inner corners, in which a square rib would not seat: refused, but for a beam', () => {
    const ribs = { board: thick, stance: { lift: 40 }, settings: { build: 'ribbed' as const, rods: null } };
    expect(bodyOf(routed(null, ribs)).pieces.length).toBeGreaterThan(1);
    expect(refusalOf(routed(3, ribs)).lines.join()).toContain('got a sharp one in part "rib"');
  });

  test('rounded outer corners, and sharp ones, are no hindrance: the bit goes round them', () => {
    const one = { settings: { rods: null, corner: 1 } };
    expect(bodyOf(routed(12.7, one)).pieces).toHaveLength(1);
    expect(bodyOf(routed(12.7, { settings: { rods: null } })).pieces).toHaveLength(1);
  });
});

test('the bit’s diameter is the kerf', () => {
  expect(cutterOf(project()).kerf).toBe(0.2);
  expect(cutterOf(project({ '/shop': { router: { bit: 6.35 } } })).kerf).toBe(6.35);
});
