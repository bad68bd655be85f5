import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Piece, StandBody } from '$lib/stand/body.ts';
import { numberFrom } from '../../numbers.ts';
import { runs } from '../../runs.ts';
import { fanArea, orZero } from '../stands.ts';
import { anyPlace, bodyOf, corners, refusalOf, shop, soundBody, thick, thin, type Case } from './buildRequests.ts';

const DUST = 1e-9;

interface Slot {
  readonly from: number;
  readonly to: number;
  /** Height of its floor in the piece's own axes, and whether it opens upwards. */
  readonly floor: number;
}

/** The slots of a piece, found by their floors: level edges between two plumb ones that leave on the same side. */
function slotsOf({ outside }: Piece, opens: 'up' | 'down'): Slot[] {
  const points = corners(outside);
  const at = (i: number): Point => points[(i + points.length) % points.length] ?? [NaN, NaN];
  return points.flatMap((from, i) => {
    const [before, to, after] = [at(i - 1), at(i + 1), at(i + 2)];
    const level = Math.abs(from[1] - to[1]) < DUST;
    const plumb = Math.abs(before[0] - from[0]) < DUST && Math.abs(after[0] - to[0]) < DUST;
    const up = before[1] > from[1] && after[1] > to[1] && to[0] < from[0];
    const down = before[1] < from[1] && after[1] < to[1] && to[0] > from[0];
    return level && plumb && (opens === 'up' ? up : down)
      ? [{ from: Math.min(from[0], to[0]), to: Math.max(from[0], to[0]), floor: from[1] }]
      : [];
  });
}

const named = (body: StandBody, prefix: string): Piece[] => body.pieces.filter(({ name }) => name.startsWith(prefix));
const ribbed = (settings: Case['settings'] = {}, more: Omit<Case, 'settings'> = {}): Case => ({
  ...more,
  settings: { build: 'ribbed', ...settings },
});

describe('profile ribs and cross ribs', () => {
  const anyRibs = fc.record({
    count: fc.constantFrom(2, 3),
    cross: fc.integer({ min: 2, max: 5 }),
    fit: orZero(numberFrom(0.02, 0.4)),
    inset: numberFrom(3.5, 20),
    skin: fc.constant(null),
  });

  it.each([
    ['plumb' as const, 0],
    ['plumb' as const, 30],
    ['square' as const, 0],
    ['square' as const, 30],
  ])('have no slot under a stop, with %s ends and %d mm beyond the cabinet', (ends, margin) => {
    const stop = { height: 10, thickness: 6 };
    const body = soundBody(ribbed({ stop, ends, frontMargin: margin, rearMargin: margin, lift: 20 }));
    for (const rib of named(body, 'rib')) expect(slotsOf(rib, 'up')).toHaveLength(named(body, 'cross-rib').length);
    expect(named(body, 'cross-rib').length).toBeGreaterThan(1);
  });

  it('halve each other: slots wide enough for the wood, depths that make up the height, floors that meet', () => {
    let built = 0;
    fc.assert(
      fc.property(
        anyPlace,
        anyRibs,
        numberFrom(2, 12),
        numberFrom(0, 0.05),
        fc.constantFrom('turned' as const, 'square-to-desk' as const),
        (place, ribs, thickness, taper, base) => {
          const wood = { name: 'wood', thickness, density: 700 };
          const body = soundBody({
            ...place,
            board: wood,
            shop: { ...shop, stocks: [{ ...wood, taper }] },
            settings: { build: 'ribbed', base, ribs },
          });
          built++;
          const crosses = named(body, 'cross-rib');
          const profiles = named(body, 'rib').flatMap((rib) => Array.from({ length: rib.quantity }, () => rib));
          expect(crosses).toHaveLength(ribs.cross);
          expect(profiles).toHaveLength(ribs.count);
          const least = thickness + ribs.fit + thickness * Math.tan(taper);
          profiles.forEach((profile, i) => {
            const slots = slotsOf(profile, 'up').sort((a, b) => a.from - b.from);
            expect(slots).toHaveLength(ribs.cross);
            slots.forEach((slot, j) => {
              const cross = crosses[j];
              if (!cross) throw new Error('a slot for every cross rib');
              expect(slot.to - slot.from).toBeCloseTo(least, 8);
              expect(slot.to - slot.from).toBeGreaterThanOrEqual(thickness + ribs.fit - DUST);
              const other = slotsOf(cross, 'down').sort((a, b) => a.from - b.from)[i];
              if (!other) throw new Error('a slot for every profile rib');
              expect(other.to - other.from).toBeCloseTo(least, 8);
              // Base to floor in both: together they are as high as the cross rib is there.
              const base = corners(profile.outside)[0]?.[1] ?? NaN;
              expect(slot.floor - base).toBeCloseTo(other.floor, 8);
              const points = corners(cross.outside);
              const across = (other.from + other.to) / 2;
              const [right = [0, 0], left = [0, 0]] = points.slice(-2);
              const high = left[1] + ((right[1] - left[1]) * (across - left[0])) / (right[0] - left[0]);
              expect(2 * other.floor).toBeCloseTo(high, 8);
            });
          });
        },
      ),
    );
    expect(built).toBeGreaterThan(runs(100) * 0.3);
  });

  it('cross ribs reach from side to side and stay under the slope, touching it along one edge', () => {
    fc.assert(
      fc.property(anyPlace, anyRibs, orZero(numberFrom(0.3, 1.5)), (place, ribs, veneer) => {
        const body = soundBody({ ...place, settings: { build: 'ribbed', ribs, veneer } });
        const slope = (u: number): number => {
          const [, , rear = [0, 0], front = [0, 0]] = body.slice;
          return front[1] + ((rear[1] - front[1]) * (u - front[0])) / (rear[0] - front[0]);
        };
        const profile = named(body, 'rib')[0];
        if (!profile) throw new Error('there are ribs');
        const slots = slotsOf(profile, 'up').sort((a, b) => a.from - b.from);
        named(body, 'cross-rib').forEach((cross, j) => {
          const slot = slots[j];
          if (!slot) throw new Error('a slot for every cross rib');
          const points = corners(cross.outside);
          const high = Math.max(...points.map(([, z]) => z)) + (body.slice[0]?.[1] ?? NaN);
          const faces = [-1, 1].map((side) => slope((slot.from + slot.to) / 2 + (side * 3.05) / 2) - high);
          expect(Math.min(...faces)).toBeCloseTo(0, 8);
          expect(Math.max(...points.map(([x]) => x))).toBeCloseTo(place.speaker.width - 2 * veneer, 9);
        });
      }),
    );
  });

  it('weigh what is left of them', () => {
    const body = bodyOf(ribbed());
    const wood = body.pieces.reduce(
      (sum, { outside, quantity }) => sum + fanArea(corners(outside)) * quantity * 3.05,
      0,
    );
    expect(body.volume).toBeCloseTo(wood, 6);
    expect(body.mass).toBeCloseTo((wood / 1e9) * 880, 12);
    expect(body.centre.x).toBeGreaterThan(430);
    expect(body.notes).toEqual([]);
  });
});

describe('skins', () => {
  const ribs = { count: 2, cross: 3, fit: 0.1, inset: 10, skin: thin.name };
  it('lie on ribs that give way for them: the slope stays where it was', () => {
    const [bare, body] = [bodyOf(ribbed()), bodyOf(ribbed({ ribs }))];
    expect(body.profile).toEqual(bare.profile);
    const [, , bareRear = [0, 0], bareFront = [0, 0]] = bare.slice;
    const [, , , front = [0, 0]] = body.slice;
    // The new corner lies 3.175 mm under the old slope and 3.175 mm behind the old front.
    const along = Math.atan2(bareRear[1] - bareFront[1], bareRear[0] - bareFront[0]);
    const under = (bareFront[1] - front[1]) * Math.cos(along) + (front[0] - bareFront[0]) * Math.sin(along);
    expect(under).toBeCloseTo(3.175, 9);
    expect(front[0] - bareFront[0]).toBeCloseTo(3.175, 9);
    const [top, face] = [named(body, 'top-skin')[0], named(body, 'front-skin')[0]];
    expect(corners(top?.outside ?? { kind: 'path', closed: true, vertices: [] })[2]).toEqual([
      // With plumb ends its lower face lies back from the upper one: a blank that holds both.
      expect.closeTo(205 + 3.175 * Math.tan(radians(10)), 9),
      165,
    ]);
    // From the base to the underside of the top skin at the outer face.
    const high = 20 + 205 * Math.sin(radians(10)) - 3.175 / Math.cos(radians(10));
    expect(corners(face?.outside ?? { kind: 'path', closed: true, vertices: [] })[2]?.[0]).toBeCloseTo(high, 9);
    expect(top?.stock).toBe(thin.name);
  });

  it('are refused where they swallow the wood or meet a stop', () => {
    expect(refusalOf(ribbed({ ribs, stop: { height: 8, thickness: 6 } })).lines.join()).toContain(
      '/stand/stop: expected no stop under a top skin',
    );
    const heavy = { ...ribs, skin: thick.name };
    const { kind, lines } = refusalOf(ribbed({ ribs: heavy }, { stance: { lift: 16 } }));
    expect(kind).toBe('no-answer');
    expect(lines.join()).toContain('cross ribs with 3 mm of wood left at each slot');
    expect(refusalOf(ribbed({ ribs: heavy, minimumEdge: 12 })).lines.join()).toContain('under the skin');
    expect(
      refusalOf(ribbed({ ribs: heavy, minimumEdge: 0.5 }, { stance: { lift: 6, tilt: 0 } })).lines.join(),
    ).toContain('/stand/ribs/skin: expected skins that leave wood in the profile');
  });
});

describe('what ribs have no answer for', () => {
  it.each<[Case, string]>([
    [
      ribbed({ ribs: { count: 2, cross: 3, fit: 0.1, inset: 2, skin: null } }),
      '/stand/ribs/inset: expected ribs that stand in far enough for 3 mm of wood beyond the outer slots, got 2 mm: make it 3.1 mm or more',
    ],
    [ribbed({ width: 25 }), '/stand/ribs: expected a width of at least 29.4 mm for 2 ribs'],
    [
      ribbed({}, { speaker: { depth: 22 } }),
      '/stand/ribs/cross: expected a depth of at least 21.9 mm for 3 cross ribs',
    ],
    [ribbed({ recess: { face: 'top', depth: 2, border: 5 } }), '/stand/recess: expected no recess in the ribbed build'],
    [ribbed({}, { stance: { lift: 5 } }), '/stand/ribs: expected cross ribs with 3 mm of wood left'],
    [
      ribbed({ cable: { width: 10, depth: 5, fromRear: 101 } }),
      '/stand/cable/fromRear: expected a cable slot 3 mm clear of the cross ribs',
    ],
    [
      ribbed({ veneer: 85, veneerFaces: { top: false, front: false, rear: false, sides: true, base: false } }),
      '/stand/veneer: expected a veneer under half',
    ],
  ])('%#', (one, line) => {
    expect(refusalOf(one).lines.join()).toContain(line);
  });
});
