import fc from 'fast-check';
import { expect, test } from 'vitest';
import { alongDescent, detoursAt } from '$lib/acoustics/descent.ts';
import { scatteringOf } from '$lib/acoustics/diffraction.ts';
import { FREQUENCIES, frequencies } from '$lib/acoustics/grid.ts';
import { silence } from '$lib/acoustics/wave.ts';
import { rectangularPlate, type Plate } from '$lib/acoustics/plate.ts';
import { between, cross, distance, dot, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { expi, magnitude, plus, times, type Complex } from './complex.ts';
import { numberFrom } from '../numbers.ts';
import { pointIn } from './placed.ts';
import { runs } from '../runs.ts';
import { fresnelTable } from './fresnelTable.ts';

const SPEED = 343.2;

/** Wavenumber, per mm. */
const wavenumber = (frequency: number): number => (2 * Math.PI * frequency) / (1000 * SPEED);
const wave = (length: number, size: number, k: number): Complex => times([size, 0], expi(-k * length));

/** A plate's scattering and the sum of its edges' waves at one frequency. */
function edgesAt(plate: Plate, source: Vec3, head: Vec3, frequency: number, kept = 1) {
  // The kernel works on its grid: there a wave of another speed is as long. The place is one between those worked out in full.
  const place = FREQUENCIES / 2 + 4;
  const speed = (SPEED * (frequencies[place] ?? NaN)) / frequency;
  const found = scatteringOf(plate, source, head, kept, detoursAt(speed));
  let sum: Complex = [0, 0];
  for (const { length, theta } of found.edges) {
    const { re, im } = alongDescent(theta, silence());
    sum = plus(sum, times([re[place] ?? NaN, im[place] ?? NaN], wave(length, 1, wavenumber(frequency))));
  }
  return { ...found, sum };
}

/** Direct sound, mirror image and edges together, as complex pressure of a source of strength 1. */
function pressureAt(plate: Plate, source: Vec3, head: Vec3, frequency: number, kept = 1): Complex {
  const { mirrors, blocks, sum } = edgesAt(plate, source, head, frequency, kept);
  const overPlate = (point: Vec3): number => dot(subtract(point, plate.corners[0] ?? point), plate.normal);
  const way = distance(source, head);
  const image = Math.sqrt(way ** 2 + 4 * overPlate(source) * overPlate(head));
  const k = wavenumber(frequency);
  const direct = blocks ? sum : plus(sum, wave(way, 1 / way, k));
  return mirrors ? plus(direct, wave(image, kept / image, k)) : direct;
}

const levelAt = (plate: Plate, source: Vec3, head: Vec3, frequency: number): number =>
  20 * Math.log10(magnitude(pressureAt(plate, source, head, frequency)) * distance(source, head));

const desk = rectangularPlate(vec3(-700, 0, 0), vec3(1400, 0, 0), vec3(0, 700, 0));
const FAR = 1e8;
const halfPlane = rectangularPlate(vec3(-FAR, 0, 0), vec3(2 * FAR, 0, 0), vec3(0, FAR, 0));

test.each<[string, Vec3, Vec3, readonly number[]]>([
  [
    'square to the edge',
    vec3(0, 300, 205),
    vec3(0, -180, 445),
    [2.2569, 2.2957, -0.943, 0.8119, -9.4881, 3.9383, -1.3581, -0.9869],
  ],
  [
    'aslant',
    vec3(-430, 300, 205),
    vec3(0, -180, 445),
    [2.4285, 2.7332, 0.894, -4.465, 1.3313, -1.2881, -0.9675, -3.1247],
  ],
  [
    'where the bounce just misses',
    vec3(-430, 60, 205),
    vec3(0, -180, 445),
    [1.2359, 1.0265, -1.0681, 0.3613, -2.227, 1.4223, -0.0818, -2.0366],
  ],
  [
    'below it, still lit',
    vec3(0, 300, 205),
    vec3(0, -180, -100),
    [-1.3361, -1.6899, -2.1799, -2.7339, -3.2113, -3.4572, -3.3733, -2.9196],
  ],
])('a half plane is Macdonald’s: %s', (_, source, head, levels) => {
  // Computed from his integral over a Hankel function with scipy.
  levels.forEach((level, octave) => {
    expect(
      Math.abs(levelAt(halfPlane, source, head, 125 * 2 ** octave) - level),
      `${125 * 2 ** octave} Hz`,
    ).toBeLessThan(2e-3);
  });
});

test.each<[string, Vec3, Vec3, readonly number[], readonly number[]]>([
  [
    'A',
    vec3(-430, 300, 205),
    vec3(0, -180, 445),
    [4.077, -0.269, -4.109, 1.693, -2.261, -0.914],
    [3.877, -0.203, -4.649, 1.634, -2.151, -0.831],
  ],
  [
    'B, leaning back',
    vec3(-430, 300, 205),
    vec3(0, -550, 445),
    [2.959, 1.01, -1.644, 2.462, 3.294, 3.243],
    [2.921, 1.576, -1.638, 2.45, 3.307, 3.22],
  ],
  [
    'C, the bounce misses',
    vec3(-430, 60, 205),
    vec3(0, -180, 445),
    [1.223, -0.599, 0.606, -2.692, 1.598, -0.194],
    [0.842, -1.721, 0.508, -2.829, 1.571, -0.2],
  ],
  [
    'D, low ear',
    vec3(-430, 300, 205),
    vec3(0, -180, 150),
    [2.573, 1.493, 1.78, -3.578, 2.654, 3.116],
    [3.096, 1.272, 2.2, -4.372, 2.593, 3.183],
  ],
])('a whole desk: %s', (_, source, head, truth, line) => {
  truth.forEach((level, octave) => {
    const frequency = 250 * 2 ** octave;
    const found = levelAt(desk, source, head, frequency);
    // Boundary elements on two grids, extrapolated.
    expect(Math.abs(found - level), `${frequency} Hz`).toBeLessThan(1.2);
    // The line integral over all four edges, by an integrator of a library.
    expect(Math.abs(found - (line[octave] ?? NaN)), `${frequency} Hz`).toBeLessThan(1e-3);
  });
});

test('a plate without end is a mirror', () => {
  // Ten kilometres away, edges still send a millionth or so.
  const side = 1e7;
  const floor = rectangularPlate(vec3(-side, -side, 0), vec3(2 * side, 0, 0), vec3(0, 2 * side, 0));
  fc.assert(
    fc.property(
      pointIn([-500, 500], [-500, 500], [10, 800]),
      pointIn([-500, 500], [-500, 500], [10, 800]),
      numberFrom(100, 16000),
      (source, head, frequency) => {
        fc.pre(distance(source, head) > 10);
        const k = wavenumber(frequency);
        const [direct, image] = [distance(source, head), distance(source, vec3(head.x, head.y, -head.z))];
        const mirror = plus(wave(direct, 1 / direct, k), wave(image, 1 / image, k));
        const found = pressureAt(floor, source, head, frequency);
        expect(magnitude(plus(found, times([-1, 0], mirror))) * direct).toBeLessThan(1e-5);
      },
    ),
    { numRuns: runs(200) },
  );
});

test.each(fresnelTable)('a black knife edge far from both ends is the Fresnel integral: v = %s', (v, C, S) => {
  // v = h·√(2(d₁ + d₂)/(λd₁d₂)), h over the straight way.
  const loss = -20 * Math.log10(Math.hypot(1 - C - S, C - S) / 2);
  const [away, wave] = [1e6, SPEED];
  const h = v * Math.sqrt((wave * away) / 4);
  const found = -levelAtBlack(vec3(0, h, away), vec3(0, h, -away));
  expect(Math.abs(found - loss)).toBeLessThan(5e-3);
});

/** At 1 kHz behind a half plane that sends nothing back. */
const levelAtBlack = (source: Vec3, head: Vec3): number =>
  20 * Math.log10(magnitude(pressureAt(halfPlane, source, head, 1000, 0)) * distance(source, head));

test('the edge takes half of the sound that just grazes it', () => {
  expect(levelAtBlack(vec3(0, 0, 400), vec3(0, 0, -300))).toBeCloseTo(-20 * Math.log10(2), 3);
  expect(levelAtBlack(vec3(-200, 0, 400), vec3(150, 0, -300))).toBeCloseTo(-20 * Math.log10(2), 3);
});

/** The same edges by the integral over their length with four angles, as printed, by the trapezoidal rule. */
function edgesByLength(plate: Plate, source: Vec3, head: Vec3, k: number): Complex {
  const STEPS = 20000;
  let sum: Complex = [0, 0];
  plate.corners.forEach((start, index) => {
    const end = plate.corners[(index + 1) % plate.corners.length] ?? start;
    const reach = distance(start, end);
    const unit = scale(subtract(end, start), 1 / reach);
    const inward = cross(plate.normal, unit);
    const seen = (point: Vec3) => {
      const from = subtract(point, start);
      const [into, over] = [dot(from, inward), dot(from, plate.normal)];
      const angle = Math.atan2(over, into);
      return { z: dot(from, unit), r: Math.hypot(into, over), angle: angle < 0 ? angle + 2 * Math.PI : angle };
    };
    const [a, b] = [seen(source), seen(head)];
    for (let i = 0; i <= STEPS; i++) {
      const z = (reach * i) / STEPS;
      const [m, l] = [Math.hypot(a.r, z - a.z), Math.hypot(b.r, z - b.z)];
      const eta = Math.acosh(Math.max(1, (m * l + (z - a.z) * (z - b.z)) / (a.r * b.r)));
      let beta = 0;
      for (const first of [1, -1])
        for (const second of [1, -1]) {
          const turn = (Math.PI + first * a.angle + second * b.angle) / 2;
          beta += Math.sin(turn) / (Math.cosh(eta / 2) - Math.cos(turn));
        }
      const size = (-beta / (8 * Math.PI * m * l)) * (reach / STEPS) * (i === 0 || i === STEPS ? 0.5 : 1);
      sum = plus(sum, times([size, 0], expi(-k * (m + l))));
    }
  });
  return sum;
}

test('the edges’ waves are the line integral as it is printed', () => {
  let found = 0;
  fc.assert(
    fc.property(
      pointIn([-600, 600], [50, 650], [100, 600]),
      pointIn([-900, 900], [-900, 900], [100, 600]),
      fc.constantFrom(1, -1),
      numberFrom(100, 4000),
      (source, over, side, frequency) => {
        // Where a way meets the plane close to the outline the integrand is a peak between two steps of the rule.
        const meets = between(source, vec3(over.x, over.y, -over.z), source.z / (source.z + over.z));
        fc.pre([Math.abs(meets.x) - 700, meets.y, meets.y - 700].every((off) => Math.abs(off) > 30));
        const head = vec3(over.x, over.y, side * over.z);
        fc.pre(distance(source, head) > 100);
        const { sum } = edgesAt(desk, source, head, frequency);
        const by = edgesByLength(desk, source, head, wavenumber(frequency));
        expect(magnitude(plus(sum, times([-1, 0], by))) * distance(source, head)).toBeLessThan(1e-4);
        found++;
      },
    ),
    { numRuns: runs(100) },
  );
  expect(found).toBeGreaterThan(10);
});

test('source and head may change places', () => {
  const anywhere = pointIn([-1500, 1500], [-1000, 1500], [-500, 900]);
  fc.assert(
    fc.property(anywhere, anywhere, numberFrom(100, 16000), numberFrom(0, 1), (source, head, frequency, kept) => {
      fc.pre(distance(source, head) > 10);
      const [there, back] = [
        pressureAt(desk, source, head, frequency, kept),
        pressureAt(desk, head, source, frequency, kept),
      ];
      expect(magnitude(plus(there, times([-1, 0], back))) * distance(source, head)).toBeLessThan(1e-9);
    }),
    { numRuns: runs(300) },
  );
});

/** How far the pressure changes, re the direct sound, when the head moves by so much from where a way meets a point of the plate's outline. */
function leap(source: Vec3, outline: Vec3, beyond: number, up: 1 | -1, step: Vec3, frequency: number): number {
  // The head on the line from the source, or from its mirror image, through the point.
  const from = vec3(source.x, source.y, up * -source.z);
  const head = vec3(
    outline.x + (outline.x - from.x) * beyond,
    outline.y + (outline.y - from.y) * beyond,
    outline.z + (outline.z - from.z) * beyond,
  );
  const at = (by: number): Complex =>
    pressureAt(desk, source, vec3(head.x + by * step.x, head.y + by * step.y, head.z + by * step.z), frequency);
  return magnitude(plus(at(1), times([-1, 0], at(-1)))) * distance(source, head);
}

test('nothing jumps as a way passes over an edge or a corner: a micrometre changes no more than a wave turns in it', () => {
  const onEdge = fc.tuple(fc.constantFrom(0, 1, 2, 3), fc.oneof(numberFrom(0, 1), fc.constantFrom(0, 1, 1e-6, 0.5)));
  const direction = pointIn([-1, 1], [-1, 1], [-1, 1]);
  fc.assert(
    fc.property(
      pointIn([-600, 600], [20, 680], [50, 600]),
      onEdge,
      numberFrom(0.3, 2),
      fc.constantFrom(1 as const, -1 as const),
      direction,
      numberFrom(100, 16000),
      (source, [edge, share], beyond, up, step, frequency) => {
        const [a, b] = [desk.corners[edge], desk.corners[(edge + 1) % 4]];
        if (!a || !b) throw new Error('a desk has four edges');
        const point = vec3(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share, 0);
        // Half a millimetre, and a thousandth and a millionth of it: what jumps would not shrink.
        const leaps = [5e-4, 5e-7].map((size) =>
          leap(source, point, beyond, up, vec3(size * step.x, size * step.y, size * step.z), frequency),
        );
        const [micrometre, nanometre] = leaps;
        expect(micrometre).toBeLessThan(5e-3);
        expect(nanometre).toBeLessThan(1e-3);
      },
    ),
    { numRuns: runs(1000) },
  );
});

test('every number is finite, wherever source and head are', () => {
  const awkward = fc.constantFrom(-700, 1e-300, 0, 350, 700, 1e-9);
  const corner = fc
    .tuple(awkward, awkward, fc.constantFrom(0, 1e-9, -1e-9, 300, -300))
    .map(([x, y, z]) => vec3(x, y, z));
  fc.assert(
    fc.property(corner, corner, (source, head) => {
      fc.pre(distance(source, head) > 1e-6);
      expect(pressureAt(desk, source, head, 1000).every(Number.isFinite)).toBe(true);
    }),
    { numRuns: runs(2000) },
  );
});

test('over a plate that turns inwards nothing jumps where the way by the mirror image leaves it, notch and all', () => {
  const point = (x: number, y: number): Vec3 => vec3(x, y, 0);
  const plate: Plate = {
    normal: vec3(0, 0, 1),
    convex: false,
    corners: [point(-800, -900), point(-100, -900), point(-100, 0), point(800, 0), point(800, 700), point(-800, 700)],
  };
  const onPlate = ({ x, y }: Vec3): boolean => Math.abs(x) < 800 && y < 700 && (y > 0 || (x < -100 && y > -900));
  const mirrors = (source: Vec3, head: Vec3): boolean => edgesAt(plate, source, head, 1000).mirrors;
  let crossed = 0;
  fc.assert(
    fc.property(
      pointIn([-750, 750], [-850, 650], [50, 400]),
      pointIn([-900, 900], [-1500, 500], [100, 700]),
      pointIn([-900, 900], [-1500, 500], [100, 700]),
      (source, one, other) => {
        const metAt = (head: Vec3): Vec3 => between(source, { ...head, z: source.z }, source.z / (source.z + head.z));
        for (const head of [one, other]) expect(mirrors(source, head)).toBe(onPlate(metAt(head)));
        let [here, there] = [one, other];
        if (mirrors(source, here) === mirrors(source, there)) return;
        crossed += 1;
        while (distance(here, there) > 1e-4) {
          const middle = between(here, there, 0.5);
          if (mirrors(source, middle) === mirrors(source, here)) here = middle;
          else there = middle;
        }
        const [a, b] = [here, there].map((head) => pressureAt(plate, source, head, 1000));
        const jump = plus(a ?? [0, 0], times([-1, 0], b ?? [0, 0]));
        expect(magnitude(jump) * distance(source, here)).toBeLessThan(1e-3);
      },
    ),
    { numRuns: runs(400) },
  );
  expect(crossed).toBeGreaterThan(runs(400) / 30);
});
