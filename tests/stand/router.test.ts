import { areaPathsD, differenceD, FillRule, type PathsD } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import type { Path } from '$lib/geometry/contour.ts';
import { edgesOf, type ArcEdge, type Edge } from '$lib/geometry/edge.ts';
import { growContour } from '$lib/geometry/growContour.ts';
import { COMMON_SHOP } from '$lib/project/commonShop.ts';
import type { StandBody } from '$lib/stand/body.ts';
import { cutterOf } from '$lib/workshop/beam.ts';
import { plainText } from '$lib/project/sentence.ts';
import { project } from '../projects.ts';
import { bodyOf, refusalOf, ring, shop, thick, type Case } from './builds/buildRequests.ts';

const routed = (bit: number | null, one: Case): Case => ({
  ...one,
  shop: { ...shop, tools: { ...COMMON_SHOP, router: { bit, tab: null } } },
});

const ribs: Case = { board: thick, stance: { lift: 40 }, settings: { build: 'ribbed', rods: null } };

const isArc = (edge: Edge): edge is ArcEdge => edge.kind === 'arc';
const areaOf = (paths: PathsD): number => Math.abs(areaPathsD(paths));

describe('parts that a router cuts', () => {
  test('a bit as wide as a rod’s hole goes in, a wider one does not', () => {
    const one = { settings: { rods: { diameter: 6, count: 2, clearance: 0.1, edge: 2 } } };
    expect(bodyOf(routed(6.1, one)).pieces).toHaveLength(1);
    expect(refusalOf(routed(6.2, one)).lines).toEqual([
      '/stand/build: expected inner corners of at least the router bit’s radius of 3.1 mm, got a radius of 3.05 mm in part "slice": use a smaller bit, larger radii, wider slots or none, or a cutter with a beam or blade',
    ]);
  });

  test('windows have corners that the bit follows, and their webs', () => {
    const one = { settings: { rods: null, relief: { web: 8, corner: 2 } } };
    const corners = (body: StandBody) =>
      (body.pieces[0]?.inside ?? []).flatMap((window) =>
        edgesOf(window)
          .filter(isArc)
          .map(({ radius }) => radius),
      );
    expect(Math.min(...corners(bodyOf(routed(3.8, one))))).toBeCloseTo(2, 9);
    const larger = bodyOf(routed(4.2, one));
    expect(Math.min(...corners(larger))).toBeCloseTo(2.2, 9);
    expect(larger.notes.map(plainText).join()).toContain('The windows’ corners have a radius of 2.2 mm');
  });

  test('a halving joint’s corners are relieved, so that the square rib seats: less wood by their area, and nowhere more', () => {
    const [bit, radius] = [3.175, 3.175 / 2 + 0.1];
    const sharp = bodyOf(ribs);
    const relieved = bodyOf(routed(bit, ribs));
    for (const [i, { name, outside }] of relieved.pieces.entries()) {
      const drawn = sharp.pieces[i];
      if (drawn?.name !== name) throw new Error('both have the same pieces');
      expect(areaOf(differenceD([ring(outside)], [ring(drawn.outside)], FillRule.NonZero, 8))).toBeLessThan(1e-4);
      const arcs = edgesOf(outside).filter(isArc);
      expect(arcs).toHaveLength(name.startsWith('cross') ? 2 * 2 : 2 * 3);
      for (const arc of arcs) {
        expect(arc.radius).toBeCloseTo(radius, 9);
        expect(arc.radius).toBeGreaterThan(bit / 2);
      }
      // The middle of the bit has a way round the part.
      expect(growContour(outside, bit / 2)).not.toBeNull();
    }
    // Two ribs and three cross ribs: six joints, each with two corners in either part.
    const less = 24 * (Math.PI / 2 - 1) * radius ** 2 * thick.thickness;
    expect(sharp.volume - relieved.volume).toBeCloseTo(less, 5);
    expect(sharp.mass - relieved.mass).toBeCloseTo((less * thick.density) / 1e9, 12);
    // A relief takes √2·r of both its edges: walls and floors hold glue between reliefs only.
    const [reach, t] = [Math.SQRT2 * radius, thick.thickness];
    const [whole, held] = [sharp, relieved].map(({ joints }) => joints[0]?.area ?? NaN);
    expect((whole ?? 0) - (held ?? 0)).toBeCloseTo(4 * t * reach + t ** 2 - (t - 2 * reach) ** 2, 9);
    expect(relieved.notes.map(plainText).join()).toContain('Inner corners are relieved with a radius of 1.69 mm');
    expect(sharp.notes.map(plainText).join()).not.toContain('relieved');
  });

  const deep: Case = {
    ...ribs,
    stance: { lift: 60 },
    settings: { ...ribs.settings, ribs: { count: 2, cross: 3, fit: 0, inset: 25, skin: null } },
  };

  test('a joint too narrow for two arcs has half circles in its walls, its floor whole: the square rib seats on it', () => {
    // A slot of 11.8 mm: two arcs take 4r·cos 45°, so r up to 4.172 mm, a bit up to 8.14 mm; half circles 2r, up to 11.6 mm.
    const sharp = bodyOf(deep);
    for (const bit of [8.16, 9.525, 11.5]) {
      const radius = bit / 2 + 0.1;
      const relieved = bodyOf(routed(bit, deep));
      let floors = 0;
      for (const [i, { name, outside }] of relieved.pieces.entries()) {
        const drawn = sharp.pieces[i];
        if (drawn?.name !== name) throw new Error('both have the same pieces');
        expect(areaOf(differenceD([ring(outside)], [ring(drawn.outside)], FillRule.NonZero, 8))).toBeLessThan(1e-4);
        const edges = edgesOf(outside);
        const arcs = edges.filter(isArc);
        expect(arcs).toHaveLength(name.startsWith('cross') ? 2 * 2 : 2 * 3);
        for (const arc of arcs) expect(arc.radius).toBeCloseTo(radius, 9);
        // Between two half circles the floor is as it was, a slot wide.
        for (const [k, edge] of edges.entries()) {
          const [before, after] = [edges.at(k - 1), edges[(k + 1) % edges.length]];
          if (edge.kind === 'arc' || before?.kind !== 'arc' || after?.kind !== 'arc') continue;
          expect(Math.hypot(edge.end[0] - edge.start[0], edge.end[1] - edge.start[1])).toBeCloseTo(thick.thickness, 9);
          floors += 1;
        }
        expect(growContour(outside, bit / 2)).not.toBeNull();
      }
      // Three slots in the one drawn for both ribs, two in each of three cross ribs.
      expect(floors).toBe(3 + 3 * 2);
      const less = 24 * (Math.PI / 2) * radius ** 2 * thick.thickness;
      expect(sharp.volume - relieved.volume).toBeCloseTo(less, 4);
    }
  });

  test('a joint narrower than the bit’s relief is refused, by the part’s name; wood is left beside half circles', () => {
    const { lines } = refusalOf(routed(11.8, deep));
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^\/stand\/build: .*got a sharp one without room for its relief in part "rib"/);
    // 25 mm less the half circle of 5.1 mm leave 19.9 mm; a rib 8 mm in leaves less than 3.
    const near = { ...deep.settings, ribs: { count: 2, cross: 3, fit: 0, inset: 8, skin: null } };
    expect(refusalOf(routed(10, { ...deep, settings: near })).lines.join()).toContain(
      '/stand/ribs/inset: expected ribs that stand in far enough',
    );
  });

  test('what a relief takes counts where wood has to be left', () => {
    const inset = (bit: number | null, mm: number): Case =>
      routed(bit, {
        ...ribs,
        settings: { ...ribs.settings, ribs: { count: 2, cross: 3, fit: 0, inset: mm, skin: null } },
      });
    // 3 mm beyond the slot, and (3 + 0.1)(1 − 1/√2) = 0.908 mm for a bit of 6 mm.
    expect(bodyOf(inset(null, 3)).pieces.length).toBeGreaterThan(1);
    expect(refusalOf(inset(6, 3.9)).lines.join()).toContain(
      '/stand/ribs/inset: expected ribs that stand in far enough',
    );
    expect(bodyOf(inset(6, 3.91)).pieces.length).toBeGreaterThan(1);
  });

  test('a cable slot through slices and cheeks, and the corner under a stop, are relieved, a printed core is not', () => {
    const details = { rods: null, cable: { width: 12, depth: 5, fromRear: 60 }, stop: { height: 8, thickness: 8 } };
    // Two in the slot, one before the stop, one behind it, where the plumb front leans away from it.
    const inner = ({ outside }: { outside: Path }) => edgesOf(outside).filter((edge) => isArc(edge) && edge.sweep < 0);
    const stacked = bodyOf(routed(3, { settings: details }));
    expect(stacked.pieces.map((piece) => inner(piece).length)).toEqual([4]);
    const skinned = bodyOf(routed(3, { settings: { ...details, build: 'skinned' } }));
    expect(skinned.pieces.map((piece) => inner(piece).length)).toEqual([4]);
    expect(skinned.printed).toEqual(bodyOf({ settings: { ...details, build: 'skinned' } }).printed);
    expect(skinned.notes.map(plainText).join()).toContain('Inner corners are relieved');
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
