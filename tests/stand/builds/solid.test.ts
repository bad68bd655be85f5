import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import { COMMON_SHOP } from '$lib/project/commonShop.ts';
import type { Workshop } from '$lib/project/project.ts';
import { numberFrom } from '../../numbers.ts';
import { runs } from '../../runs.ts';
import { fanArea, orZero } from '../stands.ts';
import { expectTrueTemplates, sawnBlock } from '../bench/sawing.ts';
import { volumeOf } from '../bench/solid.ts';
import { anyPlace, bodyOf, corners, refusalOf, shop, soundBody, stance, wordsOf, type Case } from './buildRequests.ts';

const solid = (settings: Case['settings'] = {}, more: Omit<Case, 'settings'> = {}): Case => ({
  ...more,
  settings: { build: 'solid', ...settings },
});

describe('one block', () => {
  it('holds the wedge: blank less waste is what is left, and that is the profile times the width', () => {
    fc.assert(
      fc.property(
        anyPlace,
        fc.constantFrom('plumb' as const, 'square' as const),
        orZero(numberFrom(0.3, 2)),
        (place, ends, veneer) => {
          const body = soundBody({ ...place, settings: { build: 'solid', ends, veneer } });
          const [block] = body.blocks;
          if (!block) throw new Error('there is a block');
          const wide = place.speaker.width - 2 * veneer;
          expect(block.volume).toBeCloseTo(fanArea(body.slice) * wide, 5);
          expect(block.blankVolume).toBeCloseTo(block.blank.length * block.blank.width * block.blank.height, 6);
          expect(block.volume + block.waste).toBeCloseTo(block.blankVolume, 6);
          expect(block.waste).toBeGreaterThan(-1e-6);
          for (const [u, z] of body.slice) {
            expect(u).toBeGreaterThan(Math.min(...body.slice.map(([x]) => x)) - 1e-9);
            expect(z - (body.slice[0]?.[1] ?? 0)).toBeLessThan(block.blank.height + 1e-9);
          }
          expect(body.figures).toMatchObject({ cutLength: 0, printedVolume: 0, solidWood: block.blankVolume });
          expect(body.width).toBeCloseTo(place.speaker.width, 9);
        },
      ),
    );
  });

  it('says of everything that is milled how wide, how deep and where', () => {
    const cable = { width: 12, depth: 8, fromRear: 60 };
    const under = bodyOf(solid({ cable, recess: { face: 'base', depth: 1.5, border: 4 }, lift: 25 })).steps.filter(
      ({ act }) => act === 'mill',
    );
    const lengths = (quantities: object): number[] =>
      Object.values(quantities).map(({ value }: { value: number }) => value);
    expect(under).toHaveLength(1);
    expect(under.flatMap(({ quantities }) => lengths(quantities))).toEqual([12, 8, 60, 1.5, 4]);
    const words = wordsOf(bodyOf(solid({ recess: { face: 'top', depth: 1.5, border: 4 }, lift: 25 })));
    expect(words).toMatch(/Mill the recess \(1\.5\smm deep, 4\smm of wood left at front and rear\) in the slope/);
  });

  it('is sawn lying on a side, held in a carriage, the blade tilted away from it: never on an end', () => {
    for (const side of ['left', 'right'] as const) {
      for (const tilts of ['left', 'right'] as const) {
        const tools = { ...COMMON_SHOP, saw: { depth: 400, tiltsMost: 45, tilts } };
        const one = { stance: { side }, shop: { ...shop, tools } };
        const cuts = bodyOf(solid({ base: 'square-to-desk' }, one)).blocks[0]?.cuts ?? [];
        expect(cuts).toHaveLength(1);
        expect(cuts[0]).toMatchObject({ makes: 'slope', tool: 'table saw', held: tilts === 'left' ? 'right' : 'left' });
        // The stand rises inboard where the cabinet's front does: its outboard side is the lower one.
        expect(cuts[0]?.down).toBe('outboard side');
        const words = wordsOf(bodyOf(solid({ base: 'square-to-desk' }, one)));
        expect(words).toContain(`to the ${tilts}, away from the work`);
        expect(words).toContain('clamped in a taper sled');
        expect(words).toContain('guard and riving knife stay on');
      }
    }
  });

  it('asks no machine for more than it has: a cut too deep is made by a band saw, or by hand, and that is said', () => {
    const cutOf = (tools: Workshop) => {
      const body = bodyOf(solid({}, { shop: { ...shop, tools } }));
      return { cut: body.blocks[0]?.cuts[0], words: wordsOf(body) };
    };
    const saw = { depth: 80, tiltsMost: 45, tilts: 'left' as const };
    const byHand = cutOf({ ...COMMON_SHOP, saw, bandSaw: null });
    expect(byHand.cut?.tool).toBe('hand');
    expect(byHand.words).toContain('the cut would be 165 mm deep, and the table saw cuts 80 mm');
    expect(byHand.words).toContain('the stacked build');
    expect(cutOf({ ...COMMON_SHOP, saw, bandSaw: { height: 164.9, tiltsMost: 45 } }).cut?.tool).toBe('hand');
    const banded = cutOf({ ...COMMON_SHOP, saw, bandSaw: { height: 165, tiltsMost: 45 } });
    expect(banded.cut?.tool).toBe('band saw');
    expect(banded.words).toContain('clamped in a holder');
    expect(cutOf({ ...COMMON_SHOP, saw: { ...saw, depth: 165 }, bandSaw: null }).cut?.tool).toBe('table saw');
  });

  it('is not sawn with a blade that would have to tilt further than it does', () => {
    const flat = { ...COMMON_SHOP, saw: { depth: 400, tiltsMost: 0, tilts: 'left' as const } };
    const one = { shop: { ...shop, tools: flat } };
    expect(bodyOf(solid({}, one)).blocks[0]?.cuts[0]?.tool).toBe('table saw');
    expect(bodyOf(solid({ base: 'square-to-desk' }, one)).blocks[0]?.cuts[0]?.tool).toBe('hand');
  });

  it('has two more cuts where its ends are square to the slope, lying on it with the blade square', () => {
    const cuts = bodyOf(solid({ ends: 'square' })).blocks[0]?.cuts ?? [];
    expect(cuts.map(({ makes }) => makes)).toEqual(['slope', 'front end', 'rear end']);
    for (const cut of cuts.slice(1)) expect(cut).toMatchObject({ down: 'slope', bevel: 0, mitre: 0 });
    // The front end's length, square to the slope.
    expect(cuts[1]?.depth).toBeGreaterThan(20);
    expect((cuts[1]?.depth ?? NaN) - (cuts[2]?.depth ?? NaN)).toBeCloseTo(205 * Math.tan(radians(10)), 6);
  });

  it('has its stop as a strip of its own, and weighs as much as with it in one', () => {
    const stop = { height: 9, thickness: 7 };
    const [one, stacked] = [bodyOf(solid({ stop })), bodyOf({ settings: { stop, rods: null, width: 54 * 3.05 } })];
    expect(one.blocks.map(({ name }) => name)).toEqual(['block', 'stop']);
    expect(one.blocks[1]?.blank.height).toBe(9);
    expect(one.blocks[1]?.blank.length).toBeCloseTo(7, 12);
    expect(one.volume / 165).toBeCloseTo(stacked.volume / (54 * 3.05), 6);
    expect(one.centre.z).toBeCloseTo(stacked.centre.z, 9);
    expect(one.centre.x).toBeCloseTo(stacked.centre.x, 9);
  });

  it('shows the lines to saw along at full size, each face as it is seen from outside', () => {
    for (const side of ['left', 'right'] as const) {
      const turned = bodyOf(solid({ ends: 'square' }, { stance: { side } })).blocks[0];
      expect(turned?.templates.map(({ face }) => face)).toEqual(['inboard side', 'outboard side']);
      for (const { outline } of turned?.templates ?? []) {
        expect(fanArea(corners(outline))).toBeCloseTo((turned?.volume ?? NaN) / 165, 6);
        expect(Math.min(...corners(outline).flat())).toBe(0);
      }
      const block = bodyOf(solid({ base: 'square-to-desk' }, { stance: { side } })).blocks[0];
      expect(block?.templates.map(({ face }) => face)).toEqual(['inboard side', 'outboard side', 'front', 'rear']);
      if (turned) expectTrueTemplates(turned, side);
      if (block) expectTrueTemplates(block, side);
      // Neighbouring templates share the heights of the corners in which they meet.
      const heights = Object.fromEntries(
        (block?.templates ?? []).map(({ face, outline, ends }) => {
          const tops = corners(outline)
            .filter(([, y]) => y > 1e-9)
            .sort((a, b) => a[0] - b[0]);
          return [face, { [ends[0]]: tops[0]?.[1], [ends[1]]: tops[1]?.[1] }];
        }),
      );
      for (const end of ['front', 'rear'] as const) {
        for (const edge of ['inboard', 'outboard'] as const) {
          expect(heights[end]?.[edge]).toBeCloseTo(heights[`${edge} side`]?.[end] ?? NaN, 9);
        }
      }
      expect(heights['inboard side']?.front).not.toBeCloseTo(heights['outboard side']?.front ?? NaN, 1);
    }
  });

  it('shows openings and rounded corners on its templates', () => {
    const one = bodyOf(solid({ corner: 2, cable: { width: 10, depth: 6, fromRear: 60 } }));
    for (const { outline } of one.blocks[0]?.templates ?? []) {
      expect(outline.vertices.length).toBeGreaterThan(8);
      expect(outline.vertices.filter(({ bulge }) => bulge !== 0)).toHaveLength(4);
      expect(momentsOf(outline).area * 165).toBeCloseTo(one.blocks[0]?.volume ?? NaN, 5);
    }
  });

  it('comes out as planned when it is sawn as the steps say, whatever the saw and the side', () => {
    let sawnOnes = 0;
    fc.assert(
      fc.property(
        anyPlace,
        fc.constantFrom(
          { base: 'turned', ends: 'plumb' } as const,
          { base: 'turned', ends: 'square' } as const,
          { base: 'square-to-desk', ends: 'plumb' } as const,
        ),
        fc.constantFrom('left' as const, 'right' as const),
        numberFrom(30, 400),
        (place, kind, tilts, depth) => {
          const tools = {
            ...COMMON_SHOP,
            saw: { depth, tiltsMost: 45, tilts },
            bandSaw: { height: 250, tiltsMost: 20 },
          };
          const body = soundBody({ ...place, settings: { build: 'solid', ...kind }, shop: { ...shop, tools } });
          const [block] = body.blocks;
          if (!block) throw new Error('there is a block');
          const { wedge: left } = sawnBlock(block, place.stance.side, tools);
          expect(volumeOf(left)).toBeCloseTo(block.volume, 3);
          expect(volumeOf(left)).toBeCloseTo(body.volume, 3);
          sawnOnes += 1;
        },
      ),
      { numRuns: runs(200) },
    );
    expect(sawnOnes).toBeGreaterThanOrEqual(runs(200));
  });

  it('is sawn by one compound cut where its base is square to the desk', () => {
    const [cut, ...more] = bodyOf(solid({ base: 'square-to-desk' })).blocks[0]?.cuts ?? [];
    expect(more).toEqual([]);
    // The slope shows as atan(tan θ · cos ψ) on a side, and leans from its square by asin(sin θ · sin ψ).
    expect(cut?.mitre).toBeCloseTo(Math.atan(Math.tan(stance.tilt) * Math.cos(stance.toe)), 12);
    expect(cut?.bevel).toBeCloseTo(Math.asin(Math.sin(stance.tilt) * Math.sin(stance.toe)), 12);
  });

  it('is refused with veneer that leaves no wood', () => {
    const sides = { top: false, front: false, rear: false, sides: true, base: false };
    expect(refusalOf(solid({ veneer: 85, veneerFaces: sides })).lines.join()).toContain('/stand/veneer');
  });
});
