import { describe, expect, it } from 'vitest';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { cross, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { compoundCut, setUpFor, sineBarRise } from '$lib/stand/saw.ts';
import { taperFrom } from '$lib/workshop/taper.ts';

const dot = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;

/** A board whose length is the room's x and which leans `spring` from the wall y = 0: a plane's normal in its own frame. */
function inBoard(normal: Vec3, spring: number): Vec3 {
  const length = vec3(1, 0, 0);
  const width = vec3(0, Math.sin(spring), Math.cos(spring));
  return vec3(dot(normal, length), dot(normal, width), dot(normal, cross(length, width)));
}

const settings = (normal: Vec3, spring: number) => {
  const { mitre, bevel } = compoundCut(inBoard(normal, spring));
  return { mitre: degrees(mitre), bevel: degrees(bevel) };
};

/**
 * Crown moulding at spring S in a corner C, sawn lying flat: mitre atan(sin S / tan(C/2)), bevel asin(cos S · cos(C/2)).
 * 38°/90°: 31.62° and 33.86° in a shop's table (read); 45°/90°: 35.2644° and 30.0000° (computed).
 */
describe('a compound mitre', () => {
  it.each([
    [38, 90, 31.62, 33.86, 2],
    [45, 90, 35.2644, 30, 4],
  ])('spring %d°, corner %d°: mitre %d°, bevel %d°', (spring, corner, mitre, bevel, digits) => {
    // The plane that halves the corner stands plumb, half the corner from the wall.
    const half = radians(corner / 2);
    const cut = settings(vec3(Math.sin(half), -Math.cos(half), 0), radians(spring));
    expect(cut.mitre).toBeCloseTo(mitre, digits);
    expect(cut.bevel).toBeCloseTo(bevel, digits);
  });
});

/**
 * A box of four sides that splay t from plumb: crosscut atan(sin t), mitred blade asin(cos t · sin 45°), butt blade
 * asin(sin² t); for 10°: 9.8511°, 44.1360°, 1.7279° (computed).
 */
describe('a splayed box of 10°', () => {
  const splay = radians(10);

  it('has its mitred sides sawn at 9.8511° with the blade at 44.1360°', () => {
    const cut = settings(vec3(Math.SQRT1_2, -Math.SQRT1_2, 0), splay);
    expect(cut.mitre).toBeCloseTo(9.8511, 4);
    expect(cut.bevel).toBeCloseTo(44.136, 4);
  });

  it('has its butted sides sawn at 9.8511° with the blade at 1.7279°', () => {
    // The neighbour's face leans as the board itself does, a quarter turn round.
    const cut = settings(vec3(Math.cos(splay), 0, -Math.sin(splay)), splay);
    expect(cut.mitre).toBeCloseTo(9.8511, 4);
    expect(cut.bevel).toBeCloseTo(1.7279, 4);
  });
});

/** Sine bar of 5 inches, as machinists' handbooks print the heights (read); 10° computed. Rise per 100 mm, computed. */
describe('set-up heights', () => {
  it.each([
    [34 + 25 / 60, 2.826, 3],
    [27, 2.27, 3],
    [18, 1.545, 3],
    [10, 0.8682, 4],
  ])('of a 5-inch sine bar at %d° are %d in', (angle, rise, digits) => {
    expect(sineBarRise(5, radians(angle))).toBeCloseTo(rise, digits);
  });

  it.each([
    [5, 8.71557, 8.74887],
    [10, 17.36482, 17.6327],
    [15, 25.8819, 26.79492],
  ])('for 100 mm at %d° are %d mm along the slope and %d mm of base', (angle, sine, tangent) => {
    const { sineBar, angleBlock } = setUpFor(radians(angle));
    expect(sineBar).toBeCloseTo(sine, 5);
    expect(angleBlock).toBeCloseTo(tangent, 5);
  });
});

/** A kerf of 0.30 mm at one face and 0.20 mm at the other in 3 mm of wood: 0.9548° each side (computed). */
it('the taper of 0.30 and 0.20 mm in 3 mm is 0.9548°', () => {
  expect(degrees(taperFrom(0.3, 0.2, 3))).toBeCloseTo(0.9548, 4);
});
