import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaD, FillRule, intersectD } from 'clipper2-ts';
import { radians } from '$lib/geometry/angle.ts';
import { cross, dot, length, subtract, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import { cabinetSeat } from '$lib/solution/cabinetSeat.ts';
import { planGauges } from '$lib/solution/gauges.ts';
import type { Plan } from '$lib/solution/document.ts';
import { solve } from '$lib/solution/solve.ts';
import { checkProject } from '$lib/project/parse.ts';
import { sideNames, type Project, type SideName } from '$lib/project/project.ts';
import type { Part } from '$lib/workshop/part.ts';
import { labelsOf } from '$lib/workshop/lettering/pieceLabel.ts';
import { numberFrom } from '../numbers.ts';
import { demoWith, firstLayout, project } from '../projects.ts';

/** Rounding of coordinates of a few metres, mm. */
const DUST = 1e-6;

/** Both stands and what they are checked by. */
interface Made {
  readonly plan: Plan;
  readonly of: Project;
  readonly gauges: readonly Part[];
}

const madeOf = (of: Project): Made | null => {
  const layout = firstLayout(of);
  const made = solve(of, layout);
  return made.ok ? { plan: made.value, of, gauges: planGauges(made.value, layout.stand) } : null;
};

const sound = (changes: Readonly<Record<string, unknown>>): Made => {
  const made = madeOf(project(changes));
  if (!made) throw new Error('the layout has a plan');
  return made;
};

/** The gauge of that name for a side, or the one for both. */
const gaugeFor = ({ gauges }: Made, name: string, side: SideName): Part | undefined =>
  gauges.find((one) => one.name === `${name}-${side}`) ?? gauges.find((one) => one.name === name);

const angleOn = (part: Part | undefined): number => {
  if (!part) throw new Error('there is a gauge');
  return Number(/(-?[\d.]+)°/.exec(labelsOf(part)[0]?.text ?? '')?.[1]);
};

/** A stand's own axes in the desk's: rearwards along its base, and outboard. */
function axesOf({ plan: { sides, stand } }: Made, side: SideName) {
  const mirror = side === 'right' ? 1 : -1;
  const turn = stand[side].base === 'turned' ? radians(sides[side].toe) : 0;
  return {
    back: [mirror * Math.sin(turn), Math.cos(turn)] as Point,
    outboard: [mirror * Math.cos(turn), -Math.sin(turn)] as Point,
  };
}

/**
 * Height of the wood's top over the desk, from what is built: the section through the stand's middle and, with the base
 * square to the desk, its fall to the side, tan θ · sin ψ (a wedge cut square to the loudspeaker and then turned).
 */
function builtTop({ plan: { sides, stand } }: Made, side: SideName): (u: number, outboard: number) => number {
  const { profile, base } = stand[side];
  const tilt = radians(sides[side].tilt);
  const toe = base === 'turned' ? 0 : radians(sides[side].toe);
  // A corner of the top that no stop stands on: a stop stands at the low end.
  const front = profile.at(tilt < 0 ? 2 : -1) ?? [NaN, NaN];
  return (u, outboard) =>
    front[1] - (u - front[0]) * Math.tan(tilt) * Math.cos(toe) - outboard * Math.tan(tilt) * Math.sin(toe);
}

/** Middle of the base's front edge, and half the width: where the stand's own axes begin. */
function baseOf(made: Made, side: SideName) {
  const { stand } = made.plan;
  const { profile, footprint, width } = stand[side];
  const [a = [NaN, NaN], , , b = [NaN, NaN]] = footprint;
  return { front: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as Point, from: profile[0]?.[0] ?? NaN, to: profile[1]?.[0] ?? NaN, half: width / 2 }; // prettier-ignore
}

const anyStand = fc.record({
  build: fc.constantFrom('stacked', 'skinned', 'ribbed', 'solid'),
  base: fc.constantFrom('turned', 'square-to-desk'),
  lift: numberFrom(8, 250),
  ends: fc.constantFrom('plumb', 'square'),
  frontMargin: fc.constantFrom(0, 5, 40),
  rearMargin: fc.constantFrom(0, 5, 40),
  width: fc.constantFrom(null, 120, 190),
  veneer: fc.constantFrom(0, 0.6),
  pad: fc.constantFrom(0, 2, 6),
  feet: fc.constantFrom(0, 4),
  stop: fc.option(fc.record({ height: numberFrom(2, 30), thickness: numberFrom(2, 20) }), { freq: 2, nil: null }),
});
const anyAim = fc.record({ toe: numberFrom(-20, 45), tilt: numberFrom(-12, 20), x: numberFrom(300, 600) });

/** Stands of all builds with a plan, and what they are checked by. */
const stands = fc.sample(fc.tuple(anyStand, anyAim), { numRuns: 120, seed: 5 }).flatMap(([one, { toe, tilt, x }]) => {
  const { ends, stop, ...stand } = one;
  const turned = stand.base === 'turned';
  const read = checkProject(
    demoWith({
      '/layouts/0/stand': { ...stand, ends: turned ? ends : 'plumb', stop: turned ? stop : null },
      '/layouts/0/placement/right/x': x,
      '/layouts/0/aim/toe': { rule: 'as-set', degrees: toe },
      '/layouts/0/aim/tilt': { rule: 'as-set', degrees: tilt },
    }),
  );
  const made = read.ok ? madeOf(read.value) : null;
  return made ? [made] : [];
});

describe('gauges for the edges of a stand', () => {
  it('show the slopes that its edges have, along the side and along the front', () => {
    for (const [toe, tilt, along, across] of [
      // atan(tan θ cos ψ), atan(tan θ sin ψ), computed.
      [30, 10, 8.6822, 5.0384],
      [25, 12, 10.904, 5.1331],
    ] as const) {
      const made = sound({
        '/layouts/0/stand': { lift: 40, base: 'square-to-desk' },
        '/layouts/0/aim/toe': { rule: 'as-set', degrees: toe },
        '/layouts/0/aim/tilt': { rule: 'as-set', degrees: tilt },
      });
      for (const name of ['wedge-gauge-inboard', 'wedge-gauge-outboard']) {
        expect(angleOn(gaugeFor(made, name, 'right'))).toBeCloseTo(along, 2);
      }
      expect(angleOn(gaugeFor(made, 'front-gauge', 'left'))).toBeCloseTo(across, 2);
      expect(made.gauges.map(({ name }) => name)).toEqual([
        'wedge-gauge-inboard',
        'wedge-gauge-outboard',
        'front-gauge',
        'baffle-gauge',
      ]);
    }
  });

  it('stand on the desk against it, flush with its end, their tops in the edge of the wood', () => {
    let touching = 0;
    for (const made of stands) {
      for (const side of sideNames) {
        const top = builtTop(made, side);
        const { from, to, half } = baseOf(made, side);
        const names = made.gauges.some(({ name }) => name.startsWith('front-gauge'))
          ? ([['wedge-gauge-inboard', -half], ['wedge-gauge-outboard', half]] as const) // prettier-ignore
          : ([['wedge-gauge', half], ['wedge-gauge', -half]] as const); // prettier-ignore
        for (const [name, outboard] of names) {
          const part = gaugeFor(made, name, side);
          const [a, b, c, d] = part?.outside.vertices ?? [];
          if (!a || !b || !c || !d) continue;
          touching += 1;
          expect([a.x, a.y, b.y]).toEqual([0, 0, 0]);
          expect(b.x).toBeLessThanOrEqual(to - from + DUST);
          expect(Math.abs(d.y - top(from, outboard))).toBeLessThan(0.021);
          expect(Math.abs(c.y - top(from + b.x, outboard))).toBeLessThan(0.021);
        }
        const front = gaugeFor(made, 'front-gauge', side);
        const [, b, c, d] = front?.outside.vertices ?? [];
        if (!b || !c || !d) continue;
        expect(Math.abs(d.y - top(from, -half))).toBeLessThan(0.021);
        expect(Math.abs(c.y - top(from, b.x - half))).toBeLessThan(0.021);
      }
    }
    expect(touching).toBeGreaterThan(150);
  });
});

describe('the gauge for the baffle', () => {
  /** Where a point of the gauge stands, held before the baffle so far from its middle, its tip's height on the baffle. */
  function placeOf(made: Made, side: SideName, part: Part) {
    const { sides } = made.plan;
    const { mark, toe, frontEdgeHeight, axisElevation } = sides[side];
    const mirror = side === 'right' ? 1 : -1;
    const back: Point = [mirror * Math.sin(radians(toe)), Math.cos(radians(toe))];
    const right: Point = [back[1], -back[0]];
    const [, , , tip] = part.outside.vertices;
    if (!tip) throw new Error('a baffle gauge has a tip');
    const lean = (tip.y - frontEdgeHeight) * Math.tan(radians(axisElevation));
    return (x: number, y: number, aside: number): Vec3 => {
      const u = x - tip.x + lean;
      return vec3(mark.x + u * back[0] + aside * right[0], mark.y + u * back[1] + aside * right[1], y);
    };
  }

  it('lies on the baffle, stands on the desk and goes round the stand, wherever it is held', () => {
    let held = 0;
    for (const made of stands) {
      for (const side of sideNames) {
        const part = gaugeFor(made, 'baffle-gauge', side);
        if (!part) continue;
        held += 1;
        const { cabinet } = made.plan.sides[side];
        const [outboard, inboard, , , above] = cabinet;
        if (!outboard || !inboard || !above) throw new Error('a cabinet has eight corners');
        const place = placeOf(made, side, part);
        const face = cross(subtract(inboard, outboard), subtract(above, outboard));
        const off = (at: Vec3): number => Math.abs(dot(subtract(at, outboard), face)) / length(face);
        const [foot, , , tip, top] = part.outside.vertices;
        if (!foot || !tip || !top) throw new Error('a baffle gauge has six corners');
        for (const { x, y } of [tip, top]) {
          // Two stands whose baffles lean alike to a few hundredths of a millimetre share a gauge.
          expect(off(place(x, y, 0))).toBeLessThan(0.05);
          expect(y).toBeGreaterThan(outboard.z);
          expect(y).toBeLessThanOrEqual(above.z + DUST);
        }
        expect(top.y - tip.y).toBeGreaterThanOrEqual(20 - DUST);
        const wide = length(subtract(outboard, inboard)) / 2;
        const built = builtTop(made, side);
        const { front, from, half } = baseOf(made, side);
        const axes = axesOf(made, side);
        const stop = Math.max(...made.plan.stand[side].profile.map(([u, z]) => (u <= 0 ? z : 0)));
        for (const aside of [-wide, -wide / 3, wide / 3, wide]) {
          expect(place(foot.x, 0, aside).y).toBeGreaterThanOrEqual(-1);
          for (const { x, y } of pointsRound(part)) {
            const at = place(x, y, aside);
            const [dx, dy] = [at.x - front[0], at.y - front[1]];
            const u = from + dx * axes.back[0] + dy * axes.back[1];
            const across = dx * axes.outboard[0] + dy * axes.outboard[1];
            const over = Math.abs(across) <= half && u >= from;
            if (over && made.plan.stand[side].base === 'turned') expect(y).toBeGreaterThanOrEqual(stop);
            else if (over) expect(y).toBeGreaterThanOrEqual(built(u, across));
          }
        }
      }
    }
    expect(held).toBeGreaterThan(60);
  });

  const pointsRound = (part: Part): { x: number; y: number }[] =>
    part.outside.vertices.flatMap((a, i, all) => {
      const b = all[(i + 1) % all.length] ?? a;
      return Array.from({ length: 20 }, (_, k) => ({
        x: a.x + ((b.x - a.x) * k) / 20,
        y: a.y + ((b.y - a.y) * k) / 20,
      }));
    });

  it('reaches a baffle that begins high over the desk', () => {
    const made = sound({ '/layouts/0/stand/lift': 200 });
    const { frontEdgeHeight } = made.plan.sides.right;
    expect(frontEdgeHeight).toBeGreaterThan(200);
    const high = gaugeFor(made, 'baffle-gauge', 'right')?.outside.vertices.map(({ y }) => y) ?? [];
    expect(Math.max(...high)).toBeGreaterThan(frontEdgeHeight + 20);
  });

  it('does not cut into the side view of a stand that reaches out before the baffle', () => {
    const made = sound({ '/layouts/0/stand': { lift: 30, frontMargin: 25 } });
    const part = gaugeFor(made, 'baffle-gauge', 'right');
    if (!part) throw new Error('there is a gauge');
    const { frontEdgeHeight, axisElevation } = made.plan.sides.right;
    const [, , , tip] = part.outside.vertices;
    if (!tip) throw new Error('a baffle gauge has a tip');
    const shift = (tip.y - frontEdgeHeight) * Math.tan(radians(axisElevation)) - tip.x;
    const ring = part.outside.vertices.map(({ x, y }) => ({ x: x + shift, y }));
    const stand = made.plan.stand.right.profile.map(([x, y]) => ({ x, y }));
    const common = intersectD([ring], [stand], FillRule.NonZero, 6);
    expect(common.reduce((sum, path) => sum + Math.abs(areaD(path)), 0)).toBe(0);
  });

  it('is left out, not drawn short, where the baffle is out of its reach', () => {
    const made = sound({ '/layouts/0/stand/lift': 700 });
    expect(made.gauges).toEqual([]);
  });
});

describe('the line of the cabinet’s front edge on the stand', () => {
  it('lies square under the edge itself, from the corners that it is measured from', () => {
    let ends = 0;
    for (const made of stands) {
      const { pad } = firstLayout(made.of).stand;
      for (const side of sideNames) {
        const [outboard, inboard, rear] = made.plan.sides[side].cabinet;
        if (!outboard || !inboard || !rear) throw new Error('a cabinet has eight corners');
        const square = cross(subtract(inboard, outboard), subtract(rear, inboard));
        const up = square.z < 0 ? vec3(-square.x, -square.y, -square.z) : square;
        const { front, from, half } = baseOf(made, side);
        const top = builtTop(made, side);
        const axes = axesOf(made, side);
        const start =
          made.plan.stand[side].base === 'turned' ? (made.plan.stand[side].profile.at(-1)?.[0] ?? NaN) : from;
        /** A place on the stand's top. */
        const on = (u: number, across: number): Vec3 =>
          vec3(
            front[0] + (u - from) * axes.back[0] + across * axes.outboard[0],
            front[1] + (u - from) * axes.back[1] + across * axes.outboard[1],
            top(u, across),
          );
        for (const { end, edge, fromCorner, beyond } of cabinetSeat(made.plan, side, firstLayout(made.of).stand)) {
          ends += 1;
          const own = end === 'inboard' ? -half : half;
          const corner = on(start, own);
          const far = edge === 'side' ? on(start + 1, own) : on(start, own - Math.sign(own));
          const way = subtract(far, corner);
          const share = fromCorner / length(way);
          const at = vec3(corner.x + way.x * share, corner.y + way.y * share, corner.z + way.z * share);
          const lifted = vec3(at.x + (up.x * pad) / length(up), at.y + (up.y * pad) / length(up), at.z + (up.z * pad) / length(up)); // prettier-ignore
          const [tip, other] = end === 'inboard' ? [inboard, outboard] : [outboard, inboard];
          const line = subtract(tip, other);
          const along = dot(subtract(lifted, other), line) / length(line);
          expect(length(cross(subtract(lifted, other), line)) / length(line)).toBeLessThan(DUST);
          expect(length(line) - along).toBeCloseTo(beyond, 6);
        }
      }
    }
    expect(ends).toBeGreaterThan(150);
  });

  it('keeps the front margin from the wood’s front edge', () => {
    const made = sound({ '/layouts/0/stand': { lift: 30, frontMargin: 25, width: 145, pad: 2, ends: 'square' } });
    for (const { edge, fromCorner, beyond } of cabinetSeat(made.plan, 'left', firstLayout(made.of).stand)) {
      expect(edge).toBe('side');
      expect(fromCorner).toBeCloseTo(25, 9);
      // The cabinet is 165 mm wide, the stand as many slices as come nearest to 145.
      expect(beyond).toBeCloseTo((165 - made.plan.stand.left.width) / 2, 9);
    }
  });
});
