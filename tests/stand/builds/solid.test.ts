import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { numberFrom } from '../../numbers.ts';
import { fanArea, orZero } from '../stands.ts';
import { anyPlace, bodyOf, refusalOf, soundBody, stance, type Case } from './commissions.ts';

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

  it('is ripped on its higher end: the fence at the blank’s height, the blade at the slope', () => {
    const { blocks } = bodyOf(solid());
    const [cut] = blocks[0]?.cuts ?? [];
    expect(blocks[0]?.cuts).toHaveLength(1);
    expect(cut?.bevel).toBeCloseTo(radians(10), 12);
    expect(cut?.fence).toBeCloseTo(20 + 205 * Math.sin(radians(10)), 9);
    // The blade leaves the blank at the low end, 20 mm from the fence, after the whole length of the slope.
    expect(cut?.depth).toBeCloseTo(205, 9);
    expect((cut?.fence ?? NaN) - (cut?.depth ?? NaN) * Math.sin(cut?.bevel ?? NaN)).toBeCloseTo(20, 9);
    expect(cut?.template).toContain('on its front end');
    expect(bodyOf(solid({}, { stance: { tilt: radians(-10) } })).blocks[0]?.cuts[0]?.template).toContain(
      'on its rear end',
    );
  });

  it('has two more cuts where its ends are square to the slope', () => {
    const cuts = bodyOf(solid({ ends: 'square' })).blocks[0]?.cuts ?? [];
    expect(cuts).toHaveLength(3);
    for (const cut of cuts) expect(cut.bevel).toBeCloseTo(radians(10), 9);
  });

  it('has its stop as a strip of its own, and weighs as much as with it in one', () => {
    const stop = { height: 9, thickness: 7 };
    const [one, stacked] = [bodyOf(solid({ stop })), bodyOf({ settings: { stop, rods: null, width: 54 * 3.05 } })];
    expect(one.blocks.map(({ name }) => name)).toEqual(['block', 'stop']);
    expect(one.blocks[1]?.blank.height).toBe(9);
    expect(one.blocks[1]?.blank.length).toBe(7);
    expect(one.volume / 165).toBeCloseTo(stacked.volume / (54 * 3.05), 6);
    expect(one.centre.z).toBeCloseTo(stacked.centre.z, 9);
    expect(one.centre.x).toBeCloseTo(stacked.centre.x, 9);
  });

  it('shows the line to saw along at full size', () => {
    const [block] = bodyOf(solid()).blocks;
    expect(block?.templates).toHaveLength(1);
    const outline = block?.templates[0]?.outline ?? [];
    expect(fanArea(outline)).toBeCloseTo((block?.volume ?? NaN) / 165, 6);
    expect(Math.min(...outline.flat())).toBe(0);
    const faces = bodyOf(solid({ base: 'square-to-desk' })).blocks[0]?.templates ?? [];
    expect(faces.map(({ face }) => face)).toEqual(['inboard side', 'outboard side', 'front', 'rear']);
    // Neighbouring templates share their corners' heights.
    const [inboard, outboard, front] = faces;
    expect(front?.outline[3]?.[1]).toBeCloseTo(inboard?.outline[3]?.[1] ?? NaN, 9);
    expect(front?.outline[2]?.[1]).toBeCloseTo(outboard?.outline[3]?.[1] ?? NaN, 9);
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
