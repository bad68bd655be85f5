import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { add, cross, dot, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Stance } from '$lib/stand/buildRequest.ts';
import { coverOf } from '$lib/stand/cover.ts';
import { squareSurface } from '$lib/stand/squareSurface.ts';
import { widthOf } from '$lib/stand/widths.ts';
import { numberFrom } from '../../numbers.ts';
import { orZero, plain } from '../stands.ts';
import { anyPlace, bodyOf, corners, refusalOf, soundBody, speaker, stance, thick, wordsOf } from './buildRequests.ts';

const square = { base: 'square-to-desk' as const };

/** The cabinet's bottom by the frame's own formulas: a point of it, its upward normal, and its two directions. */
function bottomOf({ side, mark, toe, tilt, lift }: Stance, depth: number) {
  const m = side === 'right' ? 1 : -1;
  const back = vec3(m * Math.sin(toe) * Math.cos(tilt), Math.cos(toe) * Math.cos(tilt), -Math.sin(tilt));
  const across = vec3(m * Math.cos(toe), -Math.sin(toe), 0);
  const front = add(mark, vec3(0, 0, lift + Math.max(0, depth * Math.sin(tilt))));
  const up = scale(cross(across, back), m);
  return { front, back, across, up };
}
const over = (point: Vec3, { front, up }: ReturnType<typeof bottomOf>): number => dot(subtract(point, front), up);

describe('different slices under a turned cabinet', () => {
  it('never leave a gap: as cut they reach the pad everywhere, and just touch it along one face', () => {
    fc.assert(
      fc.property(
        anyPlace,
        orZero(numberFrom(0.5, 6)),
        orZero(numberFrom(1, 8)),
        orZero(numberFrom(0.3, 2)),
        (place, pad, feet, veneer) => {
          const settings = { ...plain, ...square, pad, feet, veneer, rods: null };
          const body = soundBody({ ...place, settings });
          const at = { ...stance, ...place.stance };
          const bottom = bottomOf(at, place.speaker.depth);
          const m = at.side === 'right' ? 1 : -1;
          const [a, , c] = body.footprint;
          if (!a || !c) throw new Error('a footprint has four corners');
          const middle = (a[0] + c[0]) / 2;
          let from = -body.width / 2 + coverOf(settings).side;
          for (const piece of body.pieces.flatMap((one) => Array.from({ length: one.quantity }, () => one))) {
            const points = corners(piece.outside);
            // Base front, base rear, top rear, top front.
            const [, , rear = [0, 0], front = [0, 0]] = points;
            const faces = [from, from + piece.thickness].map((across) =>
              [front, rear].map(([u, z]) => over(vec3(middle + m * across, at.mark.y + u, z), bottom) + pad + veneer),
            );
            // Tops are straight, so their ends tell; rounding of lengths of up to 1e3 mm.
            const all = faces.flat();
            expect(Math.min(...all)).toBeGreaterThan(-1e-8);
            expect(Math.min(...faces.map((face) => Math.max(...face.map(Math.abs))))).toBeLessThan(1e-6);
            expect(points[0]?.[1]).toBeCloseTo(feet, 9);
            from += piece.thickness;
          }
          expect(from).toBeCloseTo(body.width / 2 - coverOf(settings).side, 8);
          expect(widthOf(body.widths)).toBe(body.width);
        },
      ),
    );
  });

  it('step by the slope across, decided by the higher face', () => {
    const body = bodyOf({ settings: square });
    const expected = Math.tan(radians(10)) * Math.sin(radians(30)) * 3.05;
    expect(body.sanding?.height).toBeCloseTo(expected, 12);
    expect(body.sanding?.face).toBe('inboard');
    expect(bodyOf({ settings: square, stance: { tilt: radians(-10), lift: 20 } }).sanding?.face).toBe('outboard');
    expect(body.pieces).toHaveLength(54);
    expect(body.pieces[0]?.name).toBe('slice-01');
    const tops = body.pieces.map(({ outside }) => corners(outside)[3]?.[1] ?? NaN);
    tops.slice(1).forEach((top, i) => expect((tops[i] ?? NaN) - top).toBeCloseTo(expected, 9));
    expect(wordsOf(body)).toContain('0.27 mm above the next');
  });

  it('are one part when nothing turns or nothing tilts', () => {
    for (const pose of [{ toe: 0 }, { tilt: 0 }]) {
      const body = bodyOf({ settings: square, stance: pose });
      expect(body.pieces).toMatchObject([{ name: 'slice', quantity: 54 }]);
      expect(body.sanding).toBeNull();
    }
    const turned = bodyOf({ stance: { toe: 0 } });
    const same = bodyOf({ settings: square, stance: { toe: 0 } });
    expect(same.mass).toBeCloseTo(turned.mass, 12);
    expect(same.centre.x).toBeCloseTo(turned.centre.x, 9);
    expect(same.centre.y).toBeCloseTo(turned.centre.y, 9);
    expect(same.centre.z).toBeCloseTo(turned.centre.z, 9);
    same.footprint.forEach(([x, y], i) => {
      expect(x).toBeCloseTo(turned.footprint[i]?.[0] ?? NaN, 9);
      expect(y).toBeCloseTo(turned.footprint[i]?.[1] ?? NaN, 9);
    });
  });

  it('weigh what the sanded wedge weighs, with its centre of mass, by summing small columns', () => {
    const body = bodyOf({ settings: { ...square, rods: null }, stance: { side: 'left' } });
    const bottom = bottomOf({ ...stance, side: 'left' }, speaker.depth);
    const xs = body.footprint.map(([x]) => x);
    const ys = body.footprint.map(([, y]) => y);
    const [left, right, near, far] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    const n = 200;
    const sum = { volume: 0, x: 0, y: 0, z: 0 };
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const [x, y] = [left + ((i + 0.5) / n) * (right - left), near + ((j + 0.5) / n) * (far - near)];
        const high = -over(vec3(x, y, 0), bottom) / bottom.up.z;
        const volume = (high * (right - left) * (far - near)) / n ** 2;
        sum.volume += volume;
        sum.x += volume * x;
        sum.y += volume * y;
        sum.z += (volume * high) / 2;
      }
    }
    expect(body.volume / sum.volume).toBeCloseTo(1, 6);
    expect(body.centre.x).toBeCloseTo(sum.x / sum.volume, 2);
    expect(body.centre.y).toBeCloseTo(sum.y / sum.volume, 2);
    expect(body.centre.z).toBeCloseTo(sum.z / sum.volume, 2);
    const block = bodyOf({
      settings: { ...square, build: 'solid', rods: null, width: body.width },
      stance: { side: 'left' },
    });
    expect(block.volume / sum.volume).toBeCloseTo(1, 6);
    expect(block.centre.x).toBeCloseTo(sum.x / sum.volume, 2);
    expect(block.centre.z).toBeCloseTo(sum.z / sum.volume, 2);
  });

  it('share their rods, which fit the lowest of them', () => {
    const body = bodyOf({ settings: { ...square, relief: { web: 4, corner: 2 } } });
    const holes = body.pieces.map(({ inside }) => JSON.stringify(inside));
    expect(new Set(holes).size).toBe(1);
    expect(body.rodEdge).toBeGreaterThanOrEqual(2 - 1e-9);
    const lowest = Math.min(
      ...body.pieces.map(({ outside }) => corners(outside).reduce((z, p) => Math.max(z, p[1]), 0)),
    );
    expect(Math.max(...body.slice.map(([, z]) => z))).toBeLessThanOrEqual(lowest + 1e-9);
  });

  it('lie under the part of the cabinet that both share', () => {
    const body = bodyOf({ settings: square });
    const bottom = bottomOf(stance, speaker.depth);
    const xs = body.footprint.map(([x]) => x);
    const ys = body.footprint.map(([, y]) => y);
    const contact = body.contact ?? [];
    expect(contact.length).toBeGreaterThanOrEqual(6);
    for (const [x, y] of contact) {
      expect(x).toBeGreaterThanOrEqual(Math.min(...xs) - 1e-9);
      expect(x).toBeLessThanOrEqual(Math.max(...xs) + 1e-9);
      expect(y).toBeGreaterThanOrEqual(Math.min(...ys) - 1e-9);
      expect(y).toBeLessThanOrEqual(Math.max(...ys) + 1e-9);
      // In plan, from the mark: back and across of the cabinet's own outline.
      const from = vec3(x - stance.mark.x, y - stance.mark.y, 0);
      const level = vec3(Math.sin(stance.toe), Math.cos(stance.toe), 0);
      expect(dot(from, level)).toBeGreaterThan(-1e-9);
      expect(dot(from, level)).toBeLessThan(speaker.depth * Math.cos(stance.tilt) + 1e-9);
      expect(Math.abs(dot(from, bottom.across))).toBeLessThan(speaker.width / 2 + 1e-9);
    }
    expect(bodyOf({}).contact).toBeNull();
  });

  it('take outer cheeks too, each cut for its own place', () => {
    const body = bodyOf({ settings: { ...square, cheeks: { stock: thick.name, count: 1 } } });
    expect(body.pieces[0]).toMatchObject({ name: 'cheek-01', stock: thick.name, quantity: 1 });
    expect(body.pieces.at(-1)?.name).toBe(`cheek-${body.pieces.length}`);
  });
});

describe('what a base square to the desk has no answer for', () => {
  it.each([
    [{ stop: { height: 8, thickness: 6 } }, '/stand/stop: expected no stop on a base square to the desk'],
    [{ ends: 'square' }, '/stand/ends: expected plumb ends'],
    [
      { build: 'ribbed', ribs: { count: 2, cross: 3, fit: 0.1, inset: 10, skin: thick.name } },
      '/stand/ribs/skin: expected no skin',
    ],
    [
      {
        veneer: 110,
        minimumEdge: 0.5,
        veneerFaces: { top: false, front: true, rear: true, sides: false, base: false },
      },
      '/stand/veneer: expected a veneer that leaves wood',
    ],
  ] as const)('%j', (settings, line) => {
    expect(refusalOf({ settings: { ...square, ...settings } }).lines.join()).toContain(line);
  });

  it('a thin corner: by as much more lift as the message says, it is thick enough', () => {
    const { kind, lines } = refusalOf({ settings: square, stance: { lift: 5 } });
    expect(kind).toBe('unsound');
    const missing = Number(/raise the lift by ([\d.]+) mm/.exec(lines.join())?.[1]);
    const raised = squareSurface(
      { stance: { ...stance, lift: 5 + missing }, speaker, settings: { ...plain, ...square } },
      165,
    );
    expect(raised.ok).toBe(true);
    const short = squareSurface(
      { stance: { ...stance, lift: 4.8 + missing }, speaker, settings: { ...plain, ...square } },
      165,
    );
    expect(short.ok).toBe(false);
  });

  it('more different slices than anybody sorts', () => {
    const veneerish = { name: 'veneer', thickness: 0.2, density: 700 };
    expect(refusalOf({ settings: square, board: veneerish }).lines.join()).toContain(
      '/stand/base: expected at most 400 slices that all differ, got 825',
    );
  });
});

/**
 * Facts of the apparent slopes of a wedge turned on the desk, tan θ · cos ψ and tan θ · sin ψ (computed): toe 30°, tilt
 * 10° → 8.6822° and 5.0384°; 25°, 12° → 10.9040° and 5.1331°.
 */
it.each([
  [30, 10, 8.6822, 5.0384],
  [25, 12, 10.904, 5.1331],
])('toe %d°, tilt %d° shows %d° along and %d° across', (toe, tilt, along, across) => {
  const surface = squareSurface(
    {
      stance: { ...stance, toe: radians(toe), tilt: radians(tilt), lift: 40 },
      speaker,
      settings: { ...plain, ...square },
    },
    165,
  );
  if (!surface.ok) throw new Error('there is a surface');
  expect(degrees(Math.atan(-surface.value.slope.along))).toBeCloseTo(along, 4);
  expect(degrees(Math.atan(-surface.value.slope.across))).toBeCloseTo(across, 4);
});
