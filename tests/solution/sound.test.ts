import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance } from '$lib/geometry/point.ts';
import { plainFindingText } from '$lib/solution/findings/findingText.ts';
import { heardFindings } from '$lib/solution/findings/heard.ts';
import { leadingReflections } from '$lib/solution/leadingReflections.ts';
import { causeName } from '$lib/solution/causeName.ts';
import { tablesOf } from '$lib/views/results/tables.ts';
import { allFindings } from '$lib/solution/findings/suggest.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { listeningAreaSteps } from '$lib/solution/listeningArea.ts';
import { solve } from '$lib/solution/solve.ts';
import { soundOf } from '$lib/solution/sound.ts';
import type { ResponsePlan, SoundPlan } from '$lib/solution/soundDocument.ts';
import { sideNames } from '$lib/project/project.ts';
import { magnitude, plus } from '../acoustics/complex.ts';
import { numberFrom } from '../numbers.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { pressure, type Planned } from './bruteForce.ts';
import { runs } from '../runs.ts';
import { inRoom, type PlainRoom } from '../rooms.ts';

type Changes = Readonly<Record<string, unknown>>;

const anyRoom = fc.constantFrom<Changes>(
  {},
  inRoom({ left: 1500, right: 1900, ceiling: 2500 }),
  inRoom({ left: 1300, absorbs: { desk: 0.5, wall: 1, sides: 0.2 } }),
  { '/speaker/designPoint': { driver: 'woofer', distance: 700 } },
  { '/layouts/0/monitors': [], '/speaker/crossovers': [] },
);

function planned(changes: Changes): Planned | null {
  const of = project(changes);
  const layout = firstLayout(of);
  const result = solve(of, layout);
  return result.ok ? { project: of, layout, plan: result.value } : null;
}

function certainly(changes: Changes): Planned {
  const all = planned(changes);
  if (!all) throw new Error('expected a plan');
  return all;
}

const heard = (changes: Changes, options = {}): SoundPlan => {
  const { project: of, layout, plan: result } = certainly(changes);
  return soundOf(of, layout, result, options);
};

const nothingNear = {
  '/layouts/0/monitors': [],
  ...inRoom({ gap: null, absorbs: { desk: 1 } }),
};
const bareDesk = inRoom({ gap: null });
const withRoom = inRoom({
  left: 1500,
  right: 1900,
  ceiling: 2500,
  absorbs: { desk: 0.1, wall: 0.2, sides: 0.3, ceiling: 0.4 },
});
const unlined = { '/speaker/designPoint': { rule: 'none' } };
const design = { '/speaker/designPoint': { driver: 'tweeter', distance: 900 } };

describe('the response is the sum of the waves, added one by one', () => {
  test.each<[string, Changes]>([
    ['on the desk', unlined],
    ['in a room', { ...unlined, ...withRoom }],
    ['without a monitor', { ...unlined, ...withRoom, '/layouts/0/monitors': [] }],
    [
      'in quadrature, head to one side',
      { ...unlined, ...withRoom, '/speaker/crossovers/0/alignment': 'quadrature', '/layouts/0/listener/offset': 90 },
    ],
    ['straight ahead', { ...unlined, ...withRoom, '/layouts/0/aim/toe': { rule: 'straight' } }],
  ])('%s', (_, changes) => {
    const all = certainly(changes);
    const sound = soundOf(all.project, all.layout, all.plan);
    const reference = (side: 'left' | 'right'): number => 1 / distance(all.plan.sides[side].aimedPoint, all.plan.head);
    for (let i = 0; i < sound.frequencies.length; i += 23) {
      const f = sound.frequencies[i] ?? NaN;
      const [left, right] = [pressure(all, 'left', f), pressure(all, 'right', f)];
      const cases = [
        [sound.sides.left.response, magnitude(left) / reference('left')],
        [sound.sides.right.response, magnitude(right) / reference('right')],
        [sound.both, magnitude(plus(left, right)) / (reference('left') + reference('right'))],
      ] as const;
      // The table of the pistons errs by 1e-9 on each of a dozen waves, that of Fresnel's functions by 2e-6 of what bodies near them take.
      for (const [{ level }, size] of cases) expect(Math.abs(10 ** ((level[i] ?? NaN) / 20) - size)).toBeLessThan(5e-7);
    }
  });

  test('with a design point too, evened out there', () => {
    const all = certainly({ ...withRoom, ...design, '/speaker/drivers/1/diameter': 20 });
    const sound = soundOf(all.project, all.layout, all.plan);
    for (let i = 0; i < sound.frequencies.length; i += 23) {
      const size = magnitude(pressure(all, 'right', sound.frequencies[i] ?? NaN));
      const level = size * distance(all.plan.sides.right.aimedPoint, all.plan.head);
      // So small a woofer beams less than 0.1 dB past the point: that is all there is to even out.
      expect(Math.abs((sound.sides.right.response.level[i] ?? NaN) - 20 * Math.log10(level))).toBeLessThan(0.1);
    }
  });
});

test.each<[string, PlainRoom]>([
  ['a room of hard walls', { left: 1500, right: 1900, ceiling: 2500 }],
  ['a wide, high room', { left: 3100, right: 2600, ceiling: 3600, absorbs: { wall: 0.3 } }],
])('in %s no smoothed level is off by half a decibel: against a grid as dense as the ripples ask for', (_, room) => {
  const all = certainly({ '/layouts/0/monitors': [], ...inRoom({ ...room, absorbs: { ...room.absorbs, desk: 1 } }) });
  const sound = soundOf(all.project, all.layout, all.plan);
  const reference = 1 / distance(all.plan.sides.right.aimedPoint, all.plan.head);
  const longest = Math.max(...all.plan.sides.right.reflections.map(({ delay }) => delay)) / 1000;
  const meanOver = (octaves: number, f: number): number => {
    const steps = 8 * Math.ceil(2 + f * octaves * longest);
    let sum = 0;
    for (let step = 0; step < steps; step++)
      sum += magnitude(pressure(all, 'right', f * 2 ** (octaves * ((step + 0.5) / steps - 0.5)))) ** 2;
    return 10 * Math.log10(sum / steps / reference ** 2);
  };
  const { fine, smooth } = sound.sides.right.response;
  for (let i = 31; i < 460; i += 39) {
    const f = sound.frequencies[i] ?? NaN;
    expect(Math.abs((fine[i] ?? NaN) - meanOver(1 / 24, f)), `1/24 octave at ${f} Hz`).toBeLessThan(0.5);
    if (f < 8000) expect(Math.abs((smooth[i] ?? NaN) - meanOver(1 / 3, f)), `1/3 octave at ${f} Hz`).toBeLessThan(0.5);
  }
});

describe('at the design point', () => {
  test.each(['in-phase', 'quadrature'] as const)('the loudspeaker is flat: %s', (alignment) => {
    const base = { ...nothingNear, '/speaker/crossovers/0/alignment': alignment, '/layouts/0/aim/through': 'tweeter' };
    const { plan: first } = certainly(base);
    const there = distance(first.sides.right.aimedPoint, first.head);
    const sound = heard({ ...base, '/speaker/designPoint': { driver: 'tweeter', distance: there } });
    for (const curve of [sound.sides.right.response, sound.both])
      for (const level of curve.level) expect(level).toBeCloseTo(0, 6);
    const [crossover] = sound.sides.right.crossovers;
    expect(crossover?.sum?.relativePhase).toBeCloseTo(0, 6);
    expect(crossover?.sum?.level).toBeCloseTo(0, 9);
    expect(crossover?.sum?.lineUp.tilt?.value).toBeCloseTo(first.sides.right.tilt, 4);
  });
});

describe('the crossovers', () => {
  test('are the plan’s own, sum and all', () => {
    const all = certainly({ ...design, '/speaker/crossovers/0/alignment': 'quadrature' });
    for (const side of sideNames) {
      const [sound] = soundOf(all.project, all.layout, all.plan).sides[side].crossovers;
      const [inPlan] = all.plan.sides[side].crossovers;
      expect(inPlan?.sumKnown).toBe(true);
      expect(sound).toMatchObject({ pathDifference: inPlan?.pathDifference, phase: inPlan?.phase });
      expect(sound?.sum?.level).toBeCloseTo(inPlan?.sumLevel ?? NaN, 12);
    }
  });

  test('have no sum, no lobe and no advice where nobody said how the drivers were lined up', () => {
    let plans = 0;
    const claims = ({ project: of, layout, plan: result }: Planned): string[] => {
      const sound = soundOf(of, layout, result);
      const found = allFindings(result);
      return [
        ...found.map(({ code }) => code).filter((code) => code === 'crossover-sum'),
        ...found.map(plainFindingText).filter((text) => text.includes('a crossover falls')),
        ...[...sideNames.map((side) => sound.sides[side].response), sound.both].flatMap(({ notches }) =>
          notches.flatMap(({ cause }) => (cause === 'drivers' ? ['drivers apart'] : [])),
        ),
        ...toTheEnd(listeningAreaSteps(of, layout, result)).seats.flatMap(({ out }) =>
          out === 'crossover' ? ['out'] : [],
        ),
      ];
    };
    let known = 0;
    fc.assert(
      fc.property(anyDesk, numberFrom(-35, 10), (changes, tilt) => {
        const steep = { ...unlined, ...changes, '/layouts/0/aim/tilt': { rule: 'as-set', degrees: tilt } };
        const all = planned(steep);
        if (!all) return;
        plans++;
        expect(claims(all)).toEqual([]);
        for (const side of sideNames) {
          expect(soundOf(all.project, all.layout, all.plan).sides[side].crossovers[0]?.sum).toBeNull();
          expect(all.plan.sides[side].crossovers[0]).toMatchObject({ sumKnown: false, sumLevel: null });
        }
        const told = planned({ ...steep, ...design });
        known += told ? claims(told).length : 0;
      }),
      { numRuns: 25 },
    );
    expect(plans).toBeGreaterThan(10);
    // The same desks do have something to say once it is known.
    expect(known).toBeGreaterThan(10);
  });

  test('nowhere lose anything in the response where nobody said so', () => {
    const off = { ...unlined, ...nothingNear, '/layouts/0/aim/tilt': { rule: 'as-set', degrees: -20 } };
    const flat = (changes: Changes): number => {
      const { frequencies, sides } = heard({
        ...off,
        '/speaker/drivers/0/radiating': 3,
        '/speaker/drivers/1/radiating': 3,
        ...changes,
      });
      return Math.min(
        ...frequencies.map((f, i) => (f > 1400 && f < 5600 ? (sides.right.response.level[i] ?? NaN) : 0)),
      );
    };
    const { plan: of } = certainly(off);
    const farthest = Math.max(...of.sides.right.drivers.map((driver) => driver.distance));
    // The longer way to the farther driver spreads its sound: that, and what pistons of 3 mm lose by beaming, is all.
    const spread = 20 * Math.log10(distance(of.sides.right.aimedPoint, of.head) / farthest);
    expect(flat({})).toBeGreaterThan(spread - 0.05);
    expect(flat(design)).toBeLessThan(-6);
  });
});

test('a rim changes nothing that is heard where it is stated what radiates', () => {
  const stated = { '/speaker/drivers/0/radiating': 25, '/speaker/drivers/1/radiating': 70 };
  const withRims = (tweeter: number, woofer: number) =>
    certainly({ ...stated, '/speaker/drivers/0/diameter': tweeter, '/speaker/drivers/1/diameter': woofer });
  const acoustics = ({ project: of, layout, plan: result }: Planned) => ({
    sides: result.sides,
    sound: soundOf(of, layout, result),
    room: toTheEnd(listeningAreaSteps(of, layout, result)),
    findings: allFindings(result).map(plainFindingText),
  });
  const before = acoustics(withRims(25, 95));
  fc.assert(
    fc.property(numberFrom(25, 125), numberFrom(70, 160), (tweeter, woofer) => {
      expect(acoustics(withRims(tweeter, woofer))).toEqual(before);
    }),
    { numRuns: runs(15) },
  );
});

test('a rim taken for the dome no longer narrows the safe zone nor makes a finding', () => {
  const flange = certainly({ '/speaker/drivers/0/diameter': 104 });
  const dome = certainly({ '/speaker/drivers/0/diameter': 104, '/speaker/drivers/0/radiating': 25 });
  const wrong = certainly({ '/speaker/drivers/0/diameter': 104, '/speaker/drivers/0/radiating': 104 });
  const treble = ({ project: of, layout, plan: result }: Planned) =>
    Math.min(...toTheEnd(listeningAreaSteps(of, layout, result)).seats.flatMap(({ plan: map }) => [...map.treble]));
  expect(treble(flange)).toBe(treble(dome));
  // At the maps' far corners, some 25° off its axis, a piston of 104 mm is near its first null at 10 kHz.
  expect(treble(wrong)).toBeLessThan(treble(dome) - 15);
  const [estimated, stated] = [flange, dome].map(({ plan: { sides } }) => sides.right.drivers[0]);
  expect(estimated).toMatchObject({ radiating: 25, radiatingEstimated: true });
  expect(stated).toMatchObject({ radiating: 25, radiatingEstimated: false });
});

test('a finding that hangs on an estimated diameter says so', () => {
  const off = { '/layouts/0/aim/toe': { rule: 'straight' }, '/speaker/drivers/0/role': 'full-range' };
  const textOf = (changes: Changes) => {
    const { plan: result } = certainly({ ...off, ...changes });
    return result.findings.filter(({ code }) => code === 'treble-off-axis').map(plainFindingText)[0];
  };
  const wide = { '/speaker/drivers/0/diameter': 100 };
  expect(textOf(wide)).toContain('for a radiating diameter of 78 mm, which is an estimate: measure it.');
  expect(textOf({ ...wide, '/speaker/drivers/0/radiating': 78 })).toMatch(/less at 10 kHz\.$/);
});

describe('for any desk', () => {
  test('every number is finite', () => {
    let sounds = 0;
    fc.assert(
      fc.property(anyDesk, anyRoom, (changes, room) => {
        const all = planned({ ...changes, ...room });
        if (!all) return;
        sounds++;
        const walk = (value: unknown, at: string): void => {
          if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${at} is ${value}`);
          if (typeof value !== 'object' || value === null) return;
          for (const [key, inner] of Object.entries(value)) walk(inner, `${at}/${key}`);
        };
        walk(soundOf(all.project, all.layout, all.plan), '');
      }),
      { numRuns: runs(60) },
    );
    expect(sounds).toBeGreaterThan(runs(60) / 3);
  });

  test('a mirrored room sounds mirrored', () => {
    const round = (curve: Float64Array): number[] => Array.from(curve, (level) => 10 ** (level / 20));
    const alike = (a: ResponsePlan, b: ResponsePlan): void => {
      const [here, there] = [round(a.level), round(b.level)];
      here.forEach((size, i) => expect(Math.abs(size - (there[i] ?? NaN))).toBeLessThan(1e-9));
      expect(b.notches.map(({ index }) => index)).toEqual(a.notches.map(({ index }) => index));
    };
    const turned: Record<string, string> = { 'wall:left': 'wall:right', 'wall:right': 'wall:left' };
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const mirror = {
          ...changes,
          '/speaker/mirrored': true,
          ...inRoom({ left: 1900, right: 1500, ceiling: 2500 }),
          '/layouts/0/listener/offset': -Number(changes['/layouts/0/listener/offset']),
          '/layouts/0/placement/right/x': -Number(changes['/layouts/0/placement/left/x']),
          '/layouts/0/placement/right/y': changes['/layouts/0/placement/left/y'],
          '/layouts/0/placement/left/x': -Number(changes['/layouts/0/placement/right/x']),
          '/layouts/0/placement/left/y': changes['/layouts/0/placement/right/y'],
        };
        const here = planned({
          ...changes,
          '/speaker/mirrored': true,
          ...inRoom({ left: 1500, right: 1900, ceiling: 2500 }),
        });
        const there = planned(mirror);
        if (!here || !there) return;
        const [a, b] = [
          soundOf(here.project, here.layout, here.plan),
          soundOf(there.project, there.layout, there.plan),
        ];
        alike(a.sides.left.response, b.sides.right.response);
        alike(a.sides.right.response, b.sides.left.response);
        alike(a.both, b.both);
        const surfaces = (sound: SoundPlan, side: 'left' | 'right') =>
          sound.sides[side].early.map(({ surface, level }) => [surface, level.toFixed(6)] as const);
        const swapped = surfaces(a, 'left').map(([surface, level]) => [turned[surface] ?? surface, level]);
        expect([...surfaces(b, 'right')].sort()).toEqual(swapped.sort());
      }),
      { numRuns: runs(40) },
    );
  });
});

test.each([
  ['leans back', '/layouts/0/listener/setback', 200, 1500],
  ['sits lower', '/layouts/0/listener/earHeight', 1200, 760],
])('nothing jumps as the listener %s and the way by the desk’s mirror image leaves the desk', (_, field, on, off) => {
  const at = (value: number) => certainly({ ...nothingNear, ...bareDesk, [field]: value });
  const lands = (value: number): boolean =>
    at(value).plan.sides.right.reflections.some(({ driver, lands: held }) => driver === 'tweeter' && held);
  let [held, missed] = [on, off];
  expect([lands(held), lands(missed)]).toEqual([true, false]);
  // Down to a micrometre.
  while (Math.abs(missed - held) > 1e-3) {
    const middle = (held + missed) / 2;
    if (lands(middle)) held = middle;
    else missed = middle;
  }
  const [before, after] = [held, missed].map((value) => {
    const { project: of, layout, plan: result } = at(value);
    return soundOf(of, layout, result).sides.right.response.level;
  });
  before?.forEach((level, i) => expect(Math.abs(level - (after?.[i] ?? NaN))).toBeLessThan(0.01));
});

describe('early reflections', () => {
  test('a bare desk misses the rule: its detour is short, so spreading alone takes off about 2 dB', () => {
    const sound = heard({ ...nothingNear, ...bareDesk });
    for (const side of sideNames) {
      const [desk, ...more] = sound.sides[side].early;
      expect(more).toEqual([]);
      expect(desk).toMatchObject({ surface: 'desk', within: true, passes: false });
      expect(desk?.spreading).toBeGreaterThan(-3);
      expect(desk?.level).toBeLessThan(desk?.spreading ?? NaN);
      expect(sound.sides[side].earlyPasses).toBe(false);
    }
    expect(sound.early).toMatchObject({ level: -10, window: 15 });
    expect(sound.early.plainly).toContain('A bare desk cannot meet this by distance alone');
  });

  test('an absorbing desk meets it', () => {
    const sound = heard({ ...nothingNear, ...inRoom({ gap: null, absorbs: { desk: 0.95 } }) });
    const [bare] = heard({ ...nothingNear, ...bareDesk }).sides.right.early;
    const [soft] = sound.sides.right.early;
    expect(soft?.level).toBeCloseTo((bare?.level ?? NaN) + 10 * Math.log10(0.05), 9);
    expect(soft?.passes).toBe(true);
    expect(sound.sides.right.earlyPasses).toBe(true);
  });

  test('a wall so far that its sound comes after the window is let pass', () => {
    const sound = heard({ ...nothingNear, ...inRoom({ gap: null, left: 4000, absorbs: { desk: 1 } }) });
    const wall = sound.sides.left.early.find(({ surface }) => surface === 'wall:left');
    expect(wall).toMatchObject({ within: false, passes: true });
    expect(wall?.delay).toBeGreaterThan(15);
  });
});

describe('reflections', () => {
  test('add up: spreading, absorption and, at low frequencies, hardly anything else', () => {
    const roomed = (absorbs: PlainRoom['absorbs']) =>
      heard({
        ...nothingNear,
        '/speaker/drivers/0/radiating': 3,
        '/layouts/0/aim/toe': { rule: 'straight' },
        ...inRoom({ gap: null, right: 1300, absorbs }),
      }).sides.right;
    const tweeters = ({ reflections }: ReturnType<typeof roomed>, name: string) =>
      reflections.find(({ surface, driver }) => surface === name && driver === 'tweeter');
    const half = 10 * Math.log10(0.5);
    const sound = roomed({ desk: 0.5, sides: 0.5 });
    const wall = tweeters(sound, 'wall:right');
    expect(wall).toMatchObject({ screenedBy: null });
    expect(wall?.absorption).toBeCloseTo(half, 9);
    // The cabinet stands 300 mm beside the way back. A piston 3 mm across hardly beams at 1 kHz: D = 1 − x²/8 and no more; the grid's next frequency is within 1 % of it.
    const beamTo = (angle = NaN): number =>
      20 * Math.log10(1 - (Math.sin((angle * Math.PI) / 180) * ((2 * Math.PI * 1000 * 1.5) / 343200)) ** 2 / 8);
    const beam = beamTo(wall?.leaving) - beamTo(sound.drivers.find(({ name }) => name === 'tweeter')?.offAxis);
    expect(Math.abs((wall?.levels[0]?.level ?? NaN) - (wall?.relativeLevel ?? NaN) - half - beam)).toBeLessThan(0.05);
    // What a desk's edges send it keeps from as well.
    const desk = tweeters(sound, 'desk');
    const bare = tweeters(roomed({ sides: 0.5 }), 'desk');
    desk?.levels.forEach(({ level }, i) => expect(level).toBeCloseTo((bare?.levels[i]?.level ?? NaN) + half, 9));
    // The tweeter plays from 2.8 kHz: the first odd multiples of c/2Δ over that.
    const first = 1000 / (2 * (desk?.delay ?? NaN));
    const played = [1, 3, 5, 7, 9, 11, 13, 15].map((odd) => odd * first).filter((frequency) => frequency >= 2800);
    expect(desk?.notches).toHaveLength(3);
    desk?.notches.forEach((notch, i) => expect(notch).toBeCloseTo(played[i] ?? NaN, 6));
  });

  test('a monitor low over the desk is in the way of the wall’s', () => {
    const wall = heard({}).sides.right.reflections.filter(({ surface }) => surface === 'wall:behind');
    expect(wall.map(({ screenedBy }) => screenedBy)).toEqual(['monitor', 'monitor']);
    // Results and finding say so too.
    const all = certainly({});
    const table = tablesOf(all.plan, 'mm').find(({ title }) => title === 'Reflections');
    const group = table?.groups.find(({ name }) => name === 'Wall behind');
    expect(group?.rows.find(({ name }) => name === 'In the way')?.cells).toEqual(['the screen']);
    const desk = table?.groups.find(({ name }) => name === 'Desk');
    expect(desk?.rows.find(({ name }) => name === 'In the way')?.cells).toEqual(['nothing']);
    const sound = soundOf(all.project, all.layout, all.plan);
    const early = sound.sides.right.early.find(({ surface }) => surface === 'wall:behind');
    expect(early?.screenedBy).toBe('monitor');
    const loud = sound.sides.right.early.map((one) => ({ ...one, passes: false }));
    const right = { ...sound.sides.right, early: loud };
    const ofSurface = (surface: string) =>
      heardFindings({ ...sound, sides: { ...sound.sides, right } })
        .filter((one) => one.code === 'early-reflection' && one.subject.surface === surface && one.sides[0] === 'right')
        .map(plainFindingText);
    expect(ofSurface('wall:behind')).toEqual([expect.stringContaining('Counted with the screen in its way')]);
    expect(ofSurface('desk')).toEqual([expect.not.stringContaining('in its way')]);
  });
});

describe('of a surface one thing is told everywhere', () => {
  test('the first notch over the demo’s desk is the woofer’s, not the tweeter’s far under its crossover', () => {
    const all = certainly(nothingNear);
    const { reflections } = all.plan.sides.right;
    const [tweeter, woofer] = ['tweeter', 'woofer'].map((name) =>
      reflections.find(({ surface, driver }) => surface === 'desk' && driver === name),
    );
    expect(tweeter?.firstNotch).toBeGreaterThan(2800);
    expect(1000 / (2 * (tweeter?.delay ?? NaN))).toBeLessThan(1000);
    expect(woofer?.firstNotch).toBeCloseTo(1000 / (2 * (woofer?.delay ?? NaN)), 9);
    // In the response the desk's edges move it up, from 1.03 kHz to 1.24 (by a line integral along them).
    const bare = heard({ ...nothingNear, ...bareDesk }).sides.right.response.notches;
    const [first] = bare.filter(({ cause }) => cause === 'desk');
    expect(woofer?.firstNotch).toBeCloseTo(1030, -2);
    expect(Math.abs(Math.log2((first?.frequency ?? NaN) / 1240))).toBeLessThan(1 / 24);
  });

  test('by plan, results, findings and sound, on any desk in any room', () => {
    let told = 0;
    fc.assert(
      fc.property(anyDesk, anyRoom, (changes, room) => {
        const all = planned({ ...changes, ...room });
        if (!all) return;
        const { project: of, layout, plan: result } = all;
        const sound = soundOf(of, layout, result);
        const text = JSON.stringify(tablesOf(result, 'mm').find(({ title }) => title === 'Reflections') ?? null);
        const found = heardFindings(sound);
        for (const side of sideNames) {
          const { early, reflections } = sound.sides[side];
          const plain = result.sides[side].reflections;
          expect(reflections).toHaveLength(plain.length);
          reflections.forEach((one, i) => expect(one).toMatchObject(plain[i] ?? {}));
          const landing = new Set(
            reflections.flatMap(({ surface, monitor, lands }) => (lands ? [`${surface} ${monitor}`] : [])),
          );
          const leading = leadingReflections(result.sides[side].reflections);
          expect(new Set(leading.map(({ surface, monitor }) => `${surface} ${monitor}`))).toEqual(landing);
          // The edges of desk and screens send something where the way by its mirror image misses it.
          for (const one of early)
            if (one.surface !== 'desk' && one.surface !== 'monitor')
              expect(landing).toContain(`${one.surface} ${one.monitor}`);
          for (const { surface, monitor, firstNotch, driver } of leading) {
            const inEarly = early.find((one) => one.surface === surface && one.monitor === monitor)?.firstNotch ?? null;
            if (firstNotch === null) continue;
            told++;
            expect(text).toContain(`${firstNotch.toFixed(0)}\u202fHz, ${driver}`);
            if (inEarly !== null) expect(inEarly).toEqual({ frequency: firstNotch, driver });
          }
          for (const finding of found) {
            if (finding.code !== 'early-reflection' || !finding.sides.includes(side)) continue;
            const { subject } = finding;
            const one = early.find(
              ({ surface, monitor }) => surface === subject.surface && monitor === subject.monitor,
            );
            if (one?.firstNotch) expect(plainFindingText(finding)).toContain(`of the ${one.firstNotch.driver}.`);
          }
        }
        const missed = /mirror image’s way passes beside: ([^.]*)\./.exec(text)?.[1]?.split(', ') ?? [];
        for (const side of sideNames)
          for (const { surface, monitor } of leadingReflections(result.sides[side].reflections))
            expect(missed).not.toContain(causeName(surface, monitor));
      }),
      { numRuns: 30 },
    );
    expect(told).toBeGreaterThan(40);
  });
});

describe('notches', () => {
  test('under a low ceiling with one driver lie at odd multiples of c/2Δ and name the ceiling', () => {
    const one = {
      ...nothingNear,
      ...inRoom({ gap: null, ceiling: 1700, absorbs: { desk: 1 } }),
      '/speaker/crossovers': [],
      '/speaker/drivers': [{ name: 'one', role: 'full-range', diameter: 10, height: 150 }],
      '/layouts/0/aim/through': 'one',
    };
    const { response, reflections } = heard(one).sides.right;
    const [first, second, third] = reflections.find(({ surface }) => surface === 'ceiling')?.notches ?? [];
    expect(response.notches.slice(0, 3).map(({ cause }) => cause)).toEqual(['ceiling', 'ceiling', 'ceiling']);
    [first, second, third].forEach((frequency, i) => {
      // Within the width of two places of the grid, 1/24 octave.
      expect(Math.abs(Math.log2((response.notches[i]?.frequency ?? NaN) / (frequency ?? NaN)))).toBeLessThan(1 / 24);
    });
  });

  test('of drivers half a wave apart names the drivers', () => {
    const apart = { ...nothingNear, ...design, '/layouts/0/aim/tilt': { rule: 'as-set', degrees: -25 } };
    const { notches } = heard(apart).sides.right.response;
    expect(notches.map(({ cause }) => cause)).toContain('drivers');
  });

  test('of two loudspeakers that arrive apart name the pair', () => {
    const { both } = heard({ ...nothingNear, ...design, '/layouts/0/listener/offset': 60 });
    expect(both.notches[0]?.cause).toBe('pair');
    const { plan: of } = certainly({ ...nothingNear, ...design, '/layouts/0/listener/offset': 60 });
    const late = Math.abs(of.triangle.timeDifference) / 1e6;
    expect(Math.abs(Math.log2((both.notches[0]?.frequency ?? NaN) * 2 * late))).toBeLessThan(0.1);
  });
});

test('the step of a baffle is a hint, counted only when asked for', () => {
  const [plain, stepped] = [heard({}), heard({}, { baffleStep: true })];
  expect(plain.baffleStep).toMatchObject({ counted: false, source: 'rule of thumb' });
  expect(plain.baffleStep.corner).toBeCloseTo(343.2 / (Math.PI * 0.165), 9);
  const difference = (i: number): number => (stepped.both.level[i] ?? NaN) - (plain.both.level[i] ?? NaN);
  expect(difference(0)).toBeCloseTo(-6, 1);
  expect(difference(479)).toBeCloseTo(0, 1);
});

test('says what it leaves out', () => {
  const text = heard({}).leftOut.join(' ');
  for (const what of ['resonances', 'bends round', '250 Hz', 'break up', 'crossover', 'Head and body'])
    expect(text).toContain(what);
});
