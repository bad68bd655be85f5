import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hearingAt, HEAD_LIMITS, strainOf, type HeadHearing, type Voices } from '$lib/acoustics/headHearing.ts';
import { headMap, type HeadMap } from '$lib/acoustics/headMap.ts';
import { FURTHEST, reachOf, stepFor, type HeadWay } from '$lib/acoustics/headReach.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { listeningAreaSteps } from '$lib/acoustics/listeningArea.ts';
import { along, distance, mirrorX, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { headOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Project } from '$lib/project/project.ts';
import { numberFrom } from '../numbers.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

const SPEED = 343.2;

interface Scene {
  readonly of: Project;
  readonly head: Vec3;
  readonly voices: Voices;
  readonly hear: (head: Vec3) => HeadHearing;
}

/** Lined up on the tweeter's axis at 1 m, unless told otherwise. Null where the aim has no answer. */
function sceneOf(changes: Record<string, unknown> = {}): Scene | null {
  const of = project({ '/speaker/designPoint': { driver: 'tweeter', distance: 1000 }, ...changes });
  const layout = firstLayout(of);
  const [left, right] = [placeSide(of.speaker, layout, 'left'), placeSide(of.speaker, layout, 'right')];
  if (!left.ok || !right.ok) return null;
  const head = headOf(layout.listener, layout.desk);
  const voices = { left: left.value, right: right.value };
  return { of, head, voices, hear: hearingAt(of.speaker, voices, head, SPEED) };
}

function demoScene(changes: Record<string, unknown> = {}): Scene {
  const scene = sceneOf(changes);
  if (!scene) throw new Error('the demo can be aimed');
  return scene;
}

const ways: readonly HeadWay[] = ['left', 'right', 'forward', 'back', 'up', 'down'];
const stepAlong: Record<HeadWay, Vec3> = {
  left: vec3(-1, 0, 0),
  right: vec3(1, 0, 0),
  forward: vec3(0, 1, 0),
  back: vec3(0, -1, 0),
  up: vec3(0, 0, 1),
  down: vec3(0, 0, -1),
};

describe('what a head hears', () => {
  test('at the planned head nothing has changed, and on the axis no treble is lost', () => {
    const { hear, head } = demoScene();
    const { treble, crossover, time, level } = hear(head);
    expect(crossover).toBe(0);
    expect(time).toBe(0);
    expect(level).toBe(0);
    // The axis leaves the tweeter and passes through the head.
    expect(Math.abs(treble)).toBeLessThan(1e-9);
  });

  test('treble is the worse side’s', () => {
    const { hear, head } = demoScene();
    const aside = hear(along(head, vec3(1, 0, 0), 300));
    expect(aside.treble).toBeLessThan(0);
    expect(aside.treble).toBe(hear(along(head, vec3(-1, 0, 0), 300)).treble);
  });

  test('the crossover’s sum is that of two waves from the drivers’ places', () => {
    const { hear, head, voices } = demoScene();
    const k = (2 * Math.PI * 2800) / (1000 * SPEED);
    const sum = (at: Vec3, side: 'left' | 'right'): number => {
      let [re, im] = [0, 0];
      for (const { acousticCentre, driver } of voices[side].drivers) {
        // The design point from the tweeter at 205 mm and from the woofer at 95 mm, 18 mm deep.
        const design = driver.name === 'tweeter' ? 1000 : Math.hypot(205 - 95, 1000 + 18);
        const turn = k * (distance(acousticCentre, at) - design);
        re += Math.cos(turn);
        im += Math.sin(turn);
      }
      return Math.hypot(re, im);
    };
    const change = (at: Vec3, side: 'left' | 'right'): number => 20 * Math.log10(sum(at, side) / sum(head, side));
    fc.assert(
      fc.property(numberFrom(-300, 300), numberFrom(-300, 200), numberFrom(-200, 200), (x, y, z) => {
        const at = vec3(head.x + x, head.y + y, head.z + z);
        const expected = Math.min(change(at, 'left'), change(at, 'right'));
        fc.pre(expected > -60);
        expect(hear(at).crossover).toBeCloseTo(expected, 6);
      }),
    );
  });

  test('a loudspeaker without crossovers has none to lose', () => {
    const { hear, head } = demoScene({ '/speaker/crossovers': [] });
    expect(hear(along(head, vec3(1, 0, 0), 200)).crossover).toBe(0);
  });

  test('of drivers that nobody said to be lined up nothing is known, and their crossover limits nothing', () => {
    const [known, unknown] = [demoScene(), demoScene({ '/speaker/designPoint': null })];
    const without = demoScene({ '/speaker/crossovers': [] });
    fc.assert(
      fc.property(numberFrom(-300, 300), numberFrom(-300, 200), numberFrom(-200, 200), (x, y, z) => {
        const at = vec3(known.head.x + x, known.head.y + y, known.head.z + z);
        expect(unknown.hear(at)).toEqual({ ...known.hear(at), crossover: null });
        expect(strainOf(unknown.hear(at))).toEqual(strainOf(without.hear(at)));
      }),
    );
    const { of, voices, head } = unknown;
    const { side, box } = toTheEnd(listeningAreaSteps(of.speaker, voices, [{ posture: null, head }], SPEED));
    expect(side.crossover).toBeNull();
    for (const way of ways) expect(box[way].by).not.toBe('crossover');
  });

  test('a mirrored head in a mirrored room hears the same, sides changed over', () => {
    const { hear, head } = demoScene();
    fc.assert(
      fc.property(numberFrom(-400, 400), numberFrom(-400, 200), numberFrom(-300, 300), (x, y, z) => {
        const at = vec3(x, head.y + y, head.z + z);
        const [here, there] = [hear(at), hear(mirrorX(at))];
        expect(there.treble).toBe(here.treble);
        expect(there.crossover).toBe(here.crossover);
        expect(there.time).toBeCloseTo(-here.time, 9);
        expect(there.level).toBeCloseTo(-here.level, 9);
      }),
    );
  });

  test('strain names what is used up most', () => {
    expect(strainOf({ treble: -1.5, crossover: -6, time: 20, level: 0 })).toEqual({ by: 'crossover', used: 2 });
    expect(strainOf({ treble: 0, crossover: 2, time: -150, level: 0.1 })).toEqual({ by: 'time', used: 1.5 });
    expect(strainOf({ treble: -0, crossover: 0, time: 0, level: 0.9 })).toEqual({
      by: 'level',
      used: 0.9 / HEAD_LIMITS.level.limit,
    });
  });
});

describe('the safe zone', () => {
  test('ends where a limit does: free at every place within, not beyond', () => {
    const seen = { free: 0, none: 0 };
    fc.assert(
      fc.property(anyDesk, fc.constantFrom(...ways), (changes, way) => {
        const scene = sceneOf(changes);
        fc.pre(scene !== null);
        const { hear, head } = scene;
        const used = (away: number): number => strainOf(hear(along(head, stepAlong[way], away))).used;
        const reach = reachOf(hear, head, way, stepFor(2800, SPEED));
        if (used(0) > 1) {
          seen.none++;
          expect(reach.distance).toBe(0);
          expect(reach.by).toBe(strainOf(hear(head)).by);
          return;
        }
        seen.free++;
        for (let part = 0; part <= 200; part++) expect(used((reach.distance * part) / 200)).toBeLessThanOrEqual(1);
        if (reach.by === null) expect(reach.distance).toBe(FURTHEST);
        else expect(used(reach.distance + 0.1)).toBeGreaterThan(1);
      }),
    );
    // At one desk in ten a head that is planned where nothing is over its limit.
    expect(seen.free).toBeGreaterThan(runs(100) / 20);
  });

  test('agrees with the map', () => {
    const cells = 301;
    const half = 300;
    const lanes: [HeadWay, HeadWay, 'plan' | 'side', 'across' | 'up'][] = [
      ['left', 'right', 'plan', 'across'],
      ['back', 'forward', 'plan', 'up'],
      ['back', 'forward', 'side', 'across'],
      ['down', 'up', 'side', 'up'],
    ];
    for (const earHeight of [1120, 1180, 1240]) {
      const { hear, head } = demoScene({ '/layouts/0/listener/earHeight': earHeight });
      for (const [low, high, plane, axis] of lanes) {
        const [across, up, at] = plane === 'plan' ? [head.x, head.y, head.z] : [head.y, head.z, head.x];
        const size = (2 * half) / cells;
        // An odd number of cells along the lane, one across it: the head is in the middle of the middle one.
        const along = (middle: number) => [middle - half, middle + half] as const;
        const once = (middle: number) => [middle - size / 2, middle + size / 2] as const;
        const map =
          axis === 'across'
            ? headMap(hear, { plane, at, across: along(across), up: once(up) }, cells, 1)
            : headMap(hear, { plane, at, across: once(across), up: along(up) }, 1, cells);
        const middle = (cells - 1) / 2;
        const free = (steps: number): boolean => (map.used[middle + steps] ?? NaN) <= 1;
        for (const [way, sign] of [
          [low, -1],
          [high, 1],
        ] as const) {
          let steps = 0;
          while (steps < middle && free(sign * (steps + 1))) steps++;
          const { distance: reach } = reachOf(hear, head, way, stepFor(2800, SPEED));
          expect(reach + 0.1).toBeGreaterThanOrEqual(steps * size);
          if (steps < middle) expect(reach).toBeLessThan((steps + 1) * size);
        }
      }
    }
  });

  test('takes the least of all postures, each way, and says whose', () => {
    const { of, voices, head } = demoScene();
    const seats = [
      { posture: null, head },
      { posture: 'leaning in', head: vec3(head.x, head.y + 120, head.z - 30) },
      { posture: 'far aside', head: vec3(head.x + 200, head.y, head.z) },
    ] as const;
    const alone = toTheEnd(listeningAreaSteps(of.speaker, voices, [seats[0]], SPEED));
    const room = toTheEnd(listeningAreaSteps(of.speaker, voices, seats, SPEED));
    expect(alone.box.left).toEqual({ ...alone.seats[0]?.reach.left, posture: null });
    expect(room.seats[2]?.out).toBe('time');
    for (const way of ways) {
      expect(room.box[way].distance).toBe(Math.min(...room.seats.map(({ reach }) => reach[way].distance)));
      expect(room.box[way]).toEqual({ distance: 0, by: 'time', posture: 'far aside' });
    }
    const two = toTheEnd(listeningAreaSteps(of.speaker, voices, [seats[0], seats[1]], SPEED));
    expect(two.box.left.distance).toBeLessThan(alone.box.left.distance);
    expect(two.box.left.posture).toBe('leaning in');
  });

  test('is as wide to the left as to the right in a mirrored room', () => {
    const { of, voices, head } = demoScene();
    const { box } = toTheEnd(listeningAreaSteps(of.speaker, voices, [{ posture: null, head }], SPEED));
    expect(box.left).toEqual(box.right);
  });
});

describe('a map', () => {
  const every = (map: HeadMap): number[] =>
    [map.used, map.treble, map.crossover ?? [], map.time, map.level].flatMap((values) => [...values]);

  test('holds what each cell’s middle hears, row by row', () => {
    const { hear, head } = demoScene();
    const map = headMap(hear, { plane: 'plan', at: head.z, across: [-300, 300], up: [-500, 100] });
    expect(map.used).toHaveLength(3600);
    const [column, row] = [17, 42];
    const at = vec3(-300 + 10 * 17.5, -500 + 10 * 42.5, head.z);
    const hearing = hear(at);
    const cell = row * 60 + column;
    expect(map.treble[cell]).toBe(hearing.treble);
    expect(map.time[cell]).toBe(hearing.time);
    expect(map.used[cell]).toBe(strainOf(hearing).used);
    const side = headMap(hear, { plane: 'side', at: head.x, across: [-500, 100], up: [300, 600] }, 4, 2);
    expect(side.crossover?.[5]).toBe(hear(vec3(head.x, -275, 525)).crossover);
  });

  test('has only finite numbers, heads in and behind the cabinets among them', () => {
    const { hear, head } = demoScene();
    const wide = headMap(hear, { plane: 'plan', at: head.z - 200, across: [-1500, 1500], up: [-1500, 1500] });
    expect(every(wide).every(Number.isFinite)).toBe(true);
  });

  test('is mirrored with the room', () => {
    const { hear, head } = demoScene();
    const map = headMap(hear, { plane: 'plan', at: head.z, across: [-300, 300], up: [-500, 100] });
    for (let row = 0; row < 60; row += 7) {
      for (let column = 0; column < 30; column++) {
        const [here, there] = [row * 60 + column, row * 60 + 59 - column];
        expect(map.used[here]).toBeCloseTo(map.used[there] ?? NaN, 9);
        expect(map.time[here]).toBeCloseTo(-(map.time[there] ?? NaN), 9);
      }
    }
  });

  test('from the side takes in every posture', () => {
    const { of, voices, head } = demoScene();
    const leaning = { posture: 'leaning in', head: vec3(head.x, head.y + 120, head.z - 30) };
    const { side, seats } = toTheEnd(listeningAreaSteps(of.speaker, voices, [{ posture: null, head }, leaning], SPEED));
    expect(side.across).toEqual([head.y - 300, head.y + 420]);
    expect(side.up).toEqual([head.z - 330, head.z + 300]);
    expect(seats.map(({ plan }) => plan.at)).toEqual([head.z, head.z - 30]);
    expect(subtract(leaning.head, head).x).toBe(0);
  });
});
