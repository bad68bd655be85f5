import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { detoursAt, alongDescent } from '$lib/acoustics/descent.ts';
import { scatteringOf } from '$lib/acoustics/diffraction.ts';
import { frequencies } from '$lib/acoustics/grid.ts';
import { countedOf, plateBetween, surfacesAround, type RoomSurface } from '$lib/acoustics/surface.ts';
import { solve } from '$lib/solution/solve.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { distance, mirrorX, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { numberFrom } from '../numbers.ts';
import { firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

const SPEED = 343.2;
const shelf = { name: 'shelf', x: 0, y: 400, width: 900, depth: 300, height: 1180, thickness: 24, turn: 20 };
const layout = firstLayout(project({ '/layouts/0/surfaces': [shelf], '/layouts/0/room/walls': [], '/layouts/0/monitors': [] })); // prettier-ignore
/** Over the desk's top. */
const TOP = 1180 - 735;
const faces = surfacesAround(layout).filter(({ face }) => face !== undefined);
const detours = detoursAt(SPEED);

/** What the plate adds to the direct sound of a source of strength 1 at one of the grid's frequencies. */
function scatteredAt(index: number, source: Vec3, head: Vec3): readonly [number, number] {
  let [re, im] = [0, 0];
  const add = (size: number, length: number): void => {
    const phase = (-2 * Math.PI * (frequencies[index] ?? 0) * length) / (1000 * SPEED);
    re += size * Math.cos(phase);
    im += size * Math.sin(phase);
  };
  for (const one of faces) {
    const plate = plateBetween(one, source, head);
    if (!plate) continue;
    const counted = countedOf(one, plate, source, head);
    const { mirrors, blocks, edges } = scatteringOf(plate, source, head, 1, detours);
    const [corner] = plate.corners;
    if (mirrors && corner) {
      const way = distance(mirrored(source, corner.z), head);
      add(counted / way, way);
    }
    if (blocks) add(-counted / distance(source, head), distance(source, head));
    for (const { length, theta } of edges) {
      const bent = { re: new Float64Array(frequencies.length), im: new Float64Array(frequencies.length) };
      alongDescent(theta, bent);
      const phase = (-2 * Math.PI * (frequencies[index] ?? 0) * length) / (1000 * SPEED);
      const [a, b] = [counted * (bent.re[index] ?? 0), counted * (bent.im[index] ?? 0)];
      re += a * Math.cos(phase) - b * Math.sin(phase);
      im += a * Math.sin(phase) + b * Math.cos(phase);
    }
  }
  return [re, im];
}

const mirrored = ({ x, y, z }: Vec3, plane: number): Vec3 => vec3(x, y, 2 * plane - z);

const near = (z: readonly [number, number]) =>
  fc.tuple(numberFrom(-600, 600), numberFrom(-300, 900), numberFrom(...z)).map(([x, y, at]) => vec3(x, y, at));

describe('a shelf', () => {
  test('is one plate to any two points: its top over it, its underside under it', () => {
    const [over, under] = [near([TOP + 1, TOP + 600]), near([TOP - 900, TOP - 25])];
    const seen = (a: Vec3, b: Vec3): (number | undefined)[] =>
      faces.flatMap((one: RoomSurface) => plateBetween(one, a, b)?.corners[0]?.z ?? []);
    fc.assert(
      fc.property(over, over, under, under, (a, b, c, d) => {
        expect(seen(a, b)).toEqual([TOP]);
        expect(seen(c, d)).toEqual([TOP - 24]);
        expect(seen(a, c)).toEqual([TOP - 24]);
        expect(seen(c, a)).toEqual(seen(a, c));
      }),
      { numRuns: runs(200) },
    );
  });

  test('does not make the sound jump as anything goes past its heights', () => {
    let steps = 0;
    fc.assert(
      fc.property(near([TOP - 400, TOP + 400]), numberFrom(800, 1200), numberFrom(-400, 400), (head, y, x) => {
        // Beside and behind the plate, through the heights of both its faces.
        let before: readonly [number, number] | null = null;
        for (let z = TOP - 40; z <= TOP + 16; z += 0.5) {
          const now = scatteredAt(120, vec3(x, y, z), head);
          if (before) {
            steps++;
            const direct = 1 / distance(vec3(x, y, z), head);
            expect(Math.hypot(now[0] - before[0], now[1] - before[1])).toBeLessThan(0.1 * direct);
          }
          before = now;
        }
      }),
      { numRuns: runs(30) },
    );
    expect(steps).toBeGreaterThan(1000);
  });
});

function solved(changes: Readonly<Record<string, unknown>>): Solution {
  const of = project(changes);
  const made = solve(of, firstLayout(of));
  if (!made.ok) throw new Error(made.faults.map(({ pointer }) => pointer).join());
  return made.value;
}

describe('a loudspeaker and shelves', () => {
  const onShelf = {
    '/layouts/0/surfaces': [{ ...shelf, turn: 0, y: 560, depth: 250, height: 1000 }],
    '/layouts/0/placement': { left: { x: -300, y: 600, on: 'shelf' }, right: { x: 300, y: 600, on: 'shelf' } },
    '/layouts/0/listener/earHeight': 1300,
    '/layouts/0/monitors': [],
  };

  test('on its own shelf sends sound back from the top, by its mirror image', () => {
    const { sides, head } = solved(onShelf);
    const own = sides.right.reflections.filter(({ surface }) => surface === 'surface:shelf');
    expect(own.length).toBeGreaterThan(0);
    for (const { driver, point, pathDifference } of own) {
      const source = sides.right.drivers.find(({ name }) => name === driver)?.acousticCentre ?? head;
      expect(point.z).toBeCloseTo(1000 - 735, 9);
      const image = mirrored(source, 1000 - 735);
      expect(pathDifference).toBeCloseTo(distance(image, head) - distance(source, head), 6);
    }
  });

  test('under one gets it from the underside', () => {
    const { sides, head } = solved({ '/layouts/0/surfaces': [{ ...shelf, turn: 0, y: 100, height: 1500 }] });
    const over = sides.left.reflections.filter(({ surface }) => surface === 'surface:shelf');
    expect(over.map(({ point }) => point.z - (1500 - 24 - 735)).every((off) => Math.abs(off) < 1e-9)).toBe(true);
    expect(over).toHaveLength(2);
    expect(head.z).toBeLessThan(1500 - 24 - 735);
  });

  test('the pair mirrored hears the same on the other side', () => {
    const aside = { ...shelf, x: 500, y: 100, width: 500, turn: 30, height: 1450 };
    const [here, there] = [aside, { ...aside, x: -500, turn: -30 }].map((one) => solved({ '/layouts/0/surfaces': [one] })); // prettier-ignore
    const [a, b] = [here?.sound.sides.right.response.smooth ?? [], there?.sound.sides.left.response.smooth ?? []];
    expect(a.length).toBeGreaterThan(10);
    a.forEach((level, index) => expect(level).toBeCloseTo(b[index] ?? NaN, 6));
    const points = (of: Solution | undefined, side: 'left' | 'right') =>
      (of?.sides[side].reflections ?? [])
        .filter(({ surface }) => surface === 'surface:shelf')
        .map(({ point }) => point);
    points(here, 'right').forEach((point, index) => {
      const image = mirrorX(points(there, 'left')[index] ?? point);
      expect(distance(point, image)).toBeLessThan(1e-6);
    });
  });

  test('one that lies between loudspeaker and head takes treble, as a screen does', () => {
    const open = solved({ '/layouts/0/monitors': [] });
    // Over the cabinets and under the ears, across the ways between them.
    const between = { name: 'between', x: 0, y: -150, width: 1300, depth: 420, height: 1085, turn: 0 };
    const shut = solved({ '/layouts/0/monitors': [], '/layouts/0/surfaces': [between] });
    const treble = ({ sound }: Solution, side: 'left' | 'right'): number => {
      const { smooth } = sound.sides[side].response;
      const high = smooth.filter((_, index) => (sound.frequencies[index] ?? 0) > 4000);
      return high.reduce((sum, level) => sum + level, 0) / high.length;
    };
    for (const side of ['left', 'right'] as const) {
      expect(treble(open, side) - treble(shut, side)).toBeGreaterThan(3);
    }
  });
});
