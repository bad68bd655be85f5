import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frequencies } from '$lib/acoustics/grid.ts';
import { distance, type Vec3 } from '$lib/geometry/point.ts';
import type { HeardOne } from '$lib/project/project.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { hearSteps, type Heard } from '$lib/proof/heard/heard.ts';
import { runs } from '../../runs.ts';
import { combPower, demoHearing, heardOne, measuredAs, STILL } from './combs.ts';

const hear = (...heard: readonly HeardOne[]) => toTheEnd(hearSteps(demoHearing(heard)));
function first(...heard: readonly HeardOne[]): Heard & { readonly matched: NonNullable<Heard['matched']> } {
  const [one] = hear(...heard).all;
  if (!one?.matched) throw new Error('one was heard at the seat');
  return { ...one, matched: one.matched };
}

const bare = demoHearing([]);
const tweeter = bare.sides.right.drivers.find(({ name }) => name === 'tweeter');
if (!tweeter) throw new Error('the demo has a tweeter');
const speed = bare.speedOfSound * 1000;

/** Delay and gain of the tweeter's sound by the desk at a place, by the mirror image under it. */
function byDesk(place: Vec3): { readonly delay: number; readonly gain: number } {
  const { acousticCentre } = tweeter ?? { acousticCentre: place };
  const straight = distance(acousticCentre, place);
  const reflected = distance({ ...acousticCentre, z: -acousticCentre.z }, place);
  return { delay: (reflected - straight) / speed, gain: straight / reflected };
}
const desk = byDesk(bare.head);
const deskComb = measuredAs((f) => combPower(f, desk.delay, desk.gain), 84);

describe('a known comb laid over the prediction', () => {
  const { overlay, matched, trials } = first(heardOne(deskComb));

  test('has its dips where its delay puts them', () => {
    const first8 = matched.dips.slice(0, 8).map(({ frequency }) => frequency);
    first8.forEach((f, n) => {
      // To half a step of the grid, and the ripple of a window of 1/24 octave.
      expect(Math.abs(Math.log2((f * 2 * desk.delay) / (2 * n + 1)))).toBeLessThan(1 / 40);
    });
    expect(first8).toHaveLength(8);
  });

  test('is matched to the desk wherever the desk’s notches are predicted near', () => {
    const above = matched.dips.filter(({ frequency }) => frequency > 2500 && frequency < 12_000);
    expect(above.length).toBeGreaterThan(6);
    for (const { by } of above) expect(by !== null && by !== 'loudspeaker' && by.notch.cause).toBe('desk');
    // Under the crossover the woofer plays, lower and by another way: there the tweeter's comb is not explained.
    expect(matched.dips[0]?.by).toBeNull();
    expect(matched.missing.map(({ notch }) => notch.frequency < 2500)).toContain(true);
  });

  test('is aligned: an offset of its levels changes the offset and nothing else', () => {
    const louder = first(heardOne(measuredAs((f) => combPower(f, desk.delay, desk.gain), 61)));
    expect(louder.overlay.aligned.by).toBeCloseTo(overlay.aligned.by - 23, 9);
    overlay.measured.forEach((level, i) => expect(louder.overlay.measured[i]).toBeCloseTo(level, 9));
    expect(overlay.aligned.from).toBeGreaterThan(299);
    expect(overlay.aligned.to).toBeLessThan(3001);
  });

  test('has moves of the microphone proposed that shift its dips as the mirror image says', () => {
    expect(trials.length).toBeGreaterThan(3);
    for (const { by, from, to } of trials) {
      const there = byDesk({ x: bare.head.x + by.x, y: bare.head.y + by.y, z: bare.head.z + by.z });
      // The desk's edges move its notches by some hundredths of an octave.
      expect(Math.abs(Math.log2(to / from) - Math.log2(desk.delay / there.delay))).toBeLessThan(0.06);
      expect(Math.abs(Math.log2(to / from))).toBeGreaterThan(1 / 12);
    }
  });
});

test('a comb that no surface makes is left unexplained, with the detour that would make it', () => {
  // Of 45 mm: dips at 3.8 and 11.4 kHz, between those of the desk.
  const delay = 45 / speed;
  const { matched } = first(heardOne(measuredAs((f) => combPower(f, delay, 0.7))));
  const [lowest] = matched.dips;
  expect(lowest?.by).toBeNull();
  expect(lowest && Math.abs(lowest.detour - 45)).toBeLessThan(1);
  expect(matched.missing.length).toBeGreaterThan(5);
});

test('a dip that the loudspeaker has near its driver too is its own, and matched to no surface', () => {
  const own = measuredAs((f) => combPower(f, desk.delay, 0.5));
  const alone = first(heardOne(deskComb), heardOne(own, { name: 'near', at: 'near' }));
  expect(new Set(alone.matched.dips.map(({ by }) => by))).toEqual(new Set(['loudspeaker']));
  expect(alone.trials).toEqual([]);
  const other = first(heardOne(deskComb), heardOne(own, { name: 'near', at: 'near', of: 'left' }));
  expect(other.matched.dips.some(({ by }) => by !== null && by !== 'loudspeaker')).toBe(true);
});

test('the prediction itself, measured, is explained whole', () => {
  const { fine } = bare.sound.sides.right.response;
  const { matched, overlay } = first(
    heardOne({ frequencies: Float64Array.from(frequencies), levels: fine.map((level) => level + 70), phases: null }),
  );
  expect(matched.dips.length).toBeGreaterThan(5);
  expect(matched.dips.filter(({ by }) => by === null)).toEqual([]);
  expect(matched.missing.length).toBeLessThanOrEqual(1);
  expect(Math.abs(overlay.aligned.by - 70)).toBeLessThan(0.2);
});

test('after a move, predicted and measured changes stand side by side; a dip that stays is seen to stay', () => {
  const moved = { x: 0, y: 0, z: 60 };
  const there = byDesk({ ...bare.head, z: bare.head.z + 60 });
  const after = measuredAs((f) => combPower(f, there.delay, there.gain), 84);
  const { followed } = hear(heardOne(deskComb), heardOne(after, { name: 'b', moved }));
  expect(followed.length).toBeGreaterThan(3);
  for (const { predicted, measured } of followed) {
    expect(measured[1]).not.toBeNull();
    expect(Math.abs(Math.log2(predicted[1] / predicted[0]) - Math.log2((measured[1] ?? 0) / measured[0]))).toBeLessThan(1 / 12);
  }
  const stays = hear(heardOne(deskComb), heardOne(deskComb, { name: 'b', moved })).followed;
  expect(stays.filter(({ measured }) => measured[1] === null).length).toBeGreaterThan(1);
}); // prettier-ignore

test('what is smoothed already has the prediction smoothed as well', () => {
  const plain = first(heardOne(deskComb));
  const third = first(heardOne(deskComb, { smoothed: '1/3' }));
  expect(plain.overlay.window).toBeCloseTo(1 / 24, 12);
  expect(third.overlay.window).toBeCloseTo(1 / 3, 12);
  const deepest = (curve: Float64Array): number => Math.min(...curve.subarray(200));
  expect(deepest(third.overlay.predicted)).toBeGreaterThan(deepest(plain.overlay.predicted) + 3);
  expect(third.matched.within).toBeGreaterThan(plain.matched.within);
});

test('any range and any of the pair: every dip and every notch once, nothing NaN', () => {
  let dips = 0;
  fc.assert(
    fc.property(
      fc.record({
        of: fc.constantFrom('left', 'right', 'both'),
        smoothed: fc.constantFrom('none', '1/24', '1/12', '1/6', '1/3'),
        low: fc.double({ min: 18, max: 4000, noNaN: true }),
        octaves: fc.double({ min: 1.2, max: 10, noNaN: true }),
        delay: fc.double({ min: 0.0001, max: 0.003, noNaN: true }),
      }),
      ({ of, smoothed, low, octaves, delay }) => {
        const whole = measuredAs((f) => combPower(f, delay, 0.8));
        const within = [...whole.frequencies.keys()].filter((i) => (whole.frequencies[i] ?? 0) >= low && (whole.frequencies[i] ?? 0) <= low * 2 ** octaves); // prettier-ignore
        const part = {
          frequencies: Float64Array.from(within, (i) => whole.frequencies[i] ?? 0),
          levels: Float64Array.from(within, (i) => whole.levels[i] ?? 0),
          phases: null,
        };
        const { overlay, matched } = first(heardOne(part, { of, smoothed, moved: STILL }));
        const notches = matched.dips.flatMap(({ by }) => (by && by !== 'loudspeaker' ? [by.notch] : []));
        expect(new Set([...notches, ...matched.missing.map(({ notch }) => notch)]).size).toBe(
          notches.length + matched.missing.length,
        );
        dips += matched.dips.length;
        for (const curve of [
          overlay.measured,
          overlay.predicted,
          overlay.band?.least ?? [],
          overlay.band?.most ?? [],
        ]) {
          expect(curve.every(Number.isFinite)).toBe(true);
          expect(curve).toHaveLength(overlay.frequencies.length);
        }
      },
    ),
    { numRuns: Math.min(12, runs(100)) },
  );
  expect(dips).toBeGreaterThan(12);
});
