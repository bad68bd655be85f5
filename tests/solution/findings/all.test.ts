import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sources } from '$lib/solution/findings/sources.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { solve } from '$lib/solution/solve.ts';
import { faultLine } from '$lib/project/fault.ts';
import { anyDesk, firstLayout, project } from '../../projects.ts';
import { inWords, type FindingInWords } from '../inWords.ts';
import { withGap } from '../../rooms.ts';

function planned(changes: Record<string, unknown> = {}): Solution {
  const of = project(changes);
  const result = solve(of, firstLayout(of));
  if (!result.ok) throw new Error(result.faults.map(faultLine).join('; '));
  return result.value;
}

const found = (changes: Record<string, unknown>, code: string): FindingInWords[] =>
  planned(changes)
    .checks.filter((one) => one.code === code)
    .map(inWords);

const codes = (changes: Record<string, unknown> = {}): string[] => planned(changes).checks.map(({ code }) => code);

/** A seat and marks that no check has anything to say about. */
const calm = {
  '/layouts/0/listener/setback': 450,
  '/layouts/0/listener/earHeight': 1130,
  '/layouts/0/placement/left': { x: -430, y: 250 },
  '/layouts/0/placement/right': { x: 430, y: 250 },
  '/layouts/0/monitors': [],
  '/layouts/0/stand/friction': 0.6,
};

test('a calm desk has no findings', () => {
  expect(codes(calm)).toEqual([]);
});

describe('triangle-angle', () => {
  test('passes within 5° of 60°, is noted within 15° and a caution beyond', () => {
    const at = (x: number): string | undefined => {
      const marks = { '/layouts/0/placement/left': { x: -x, y: 250 }, '/layouts/0/placement/right': { x, y: 250 } };
      return found({ ...calm, ...marks }, 'triangle-angle')[0]?.level;
    };
    expect(at(430)).toBeUndefined();
    expect(at(520)).toBe('note');
    expect(at(240)).toBe('caution');
  });

  test('gives the angle it found and the standard it is held against', () => {
    const [finding] = found({}, 'triangle-angle');
    // Between the lines from the head to the two aimed points, seen from above.
    const { head, sides } = planned();
    const bearing = ({ x, y }: { readonly x: number; readonly y: number }) => Math.atan2(x - head.x, y - head.y);
    const apart = bearing(sides.right.aimedPoint) - bearing(sides.left.aimedPoint);
    expect(finding?.value).toBeCloseTo((apart * 180) / Math.PI, 9);
    expect(finding?.limit).toBe(60);
    expect(finding && sources[finding.source]).toContain('ITU-R BS.775');
    expect(finding?.text).toBe(
      'The loudspeakers stand 83.7° apart as the head sees them; a stereo triangle has 60°. To get closer to 60°, move the marks together or sit further back.',
    );
  });
});

test('inclination: an axis over 10° is noted for each side', () => {
  const [left, right] = found({}, 'inclination');
  expect(left?.sides).toEqual(['left']);
  // The demo's axis rises from the aimed point to the head.
  const { head, sides } = planned();
  const { x, y, z } = sides.right.aimedPoint;
  expect(right?.value).toBeCloseTo((Math.atan2(head.z - z, Math.hypot(head.x - x, head.y - y)) * 180) / Math.PI, 9);
  expect(right?.limit).toBe(10);
  expect(found({ ...calm, '/layouts/0/listener/earHeight': 760 }, 'inclination')[0]?.text).toContain('falls');
});

describe('axis-misses-head', () => {
  test('speaks when the axis passes outside the head, not when it passes through the ear', () => {
    expect(codes({ ...calm, '/layouts/0/aim/toe': { rule: 'to-ear' } })).not.toContain('axis-misses-head');
    const [finding] = found({ ...calm, '/layouts/0/aim/toe': { rule: 'straight' } }, 'axis-misses-head');
    // Straight ahead it passes the middle as far aside as the mark.
    expect(finding?.value).toBeCloseTo(430, 9);
    expect(finding?.limit).toBe(76);
  });

  test('leaves how high the axis passes to a check of its own', () => {
    expect(codes({ ...calm, ...lined, ...tilt(-20) })).toContain('axis-misses-ears');
    expect(codes({ ...calm, ...lined, ...tilt(-20) })).not.toContain('axis-misses-head');
  });
});

const unlined = { '/speaker/designPoint': { rule: 'none' } };
const lined = { '/speaker/designPoint': { driver: 'tweeter', distance: 1000 } };
const tilt = (degrees: number) => ({ '/layouts/0/aim/tilt': { rule: 'as-set', degrees } });

describe('axis-misses-ears', () => {
  /** The demo with its axis so many millimetres under the ears, in the plumb plane of the axis. */
  function under(mm: number, more: Record<string, unknown> = {}) {
    const before = planned(more).sides.right;
    const head = planned(more).head;
    const run = Math.hypot(head.x - before.aimedPoint.x, head.y - before.aimedPoint.y);
    // The aimed point moves with the tilt: a few rounds settle where the axis passes.
    let set = before.tilt;
    for (let round = 0; round < 30; round++) {
      const { aimedPoint, axis } = planned({ ...more, ...tilt(set) }).sides.right;
      const far = Math.hypot(head.x - aimedPoint.x, head.y - aimedPoint.y);
      const passes = aimedPoint.z + (far * axis.z) / Math.hypot(axis.x, axis.y);
      set -= ((passes - (head.z - mm)) / run) * (180 / Math.PI);
    }
    return planned({ ...more, ...tilt(set) })
      .findings.map(inWords)
      .find(({ code }) => code === 'axis-misses-ears' || code === 'lobe-unknown');
  }

  test('tells an axis under or over the ears by more than the lobe of drivers lined up allows, in mm and degrees', () => {
    const told = under(250, lined);
    expect(told?.code).toBe('axis-misses-ears');
    expect(told?.text).toMatch(
      /^The left axis passes 250 mm or \d+\.\d° under the ears; up to \d+(\.\d)? mm or \d+(\.\d)?° it still sounds as on the axis, for tweeter and woofer where they meet, at /,
    );
    expect(told?.value).toBeGreaterThan(told?.limit ?? Infinity);
    expect(under(20, lined)).toBeUndefined();
    expect(under(-400, lined)?.text).toContain('over the ears');
  });

  test('claims nothing of a lobe where nobody said how the drivers were lined up: notes what is not known, and advises no tilt', () => {
    const told = under(74.5, unlined);
    expect(told).toMatchObject({ code: 'lobe-unknown', level: 'note', sides: ['left'], unit: '°', limit: 30 });
    expect(told?.text).toMatch(
      /^The left axis passes 74\.5 mm or \d\.\d° under the ears\. On the way there tweeter and woofer turn by /,
    );
    expect(told?.text).toContain('is not known: the design point is not given');
    expect(told?.text).not.toMatch(/still sounds|worst case|dB|tilt/);
    expect(under(20, unlined)).toBeUndefined();
    expect(under(74.5, lined)).toBeUndefined();
    expect(under(300, { ...unlined, '/speaker/crossovers': [] })).toBeUndefined();
  });

  test('a beam that is left is told with the crossover unknown, and without it where there is none', () => {
    const narrow = {
      ...unlined,
      '/speaker/drivers/0/diameter': 120,
      '/speaker/drivers/0/height': 205,
      '/speaker/drivers/0/radiating': 110,
    };
    const told = under(150, narrow);
    expect(told?.code).toBe('axis-misses-ears');
    expect(told?.text).toContain('the beam of the tweeter at 10 kHz. What the crossover does there is not known');
    const alone = under(150, { ...narrow, '/speaker/crossovers': [] });
    expect(alone?.text).toContain('the beam of the tweeter at 10 kHz. Let the tilt');
    expect(alone?.limit).toBeCloseTo(told?.limit ?? NaN, 9);
  });
});

test('cut-by-hand: told for a block that no saw of the workshop gets through, with what its saws do', () => {
  const solid = { ...calm, '/layouts/0/stand/build': 'solid', '/layouts/0/stand/rods': null };
  const [told, ...more] = found(solid, 'cut-by-hand');
  expect(more.map(({ sides }) => sides)).toEqual([['right']]);
  expect(told).toMatchObject({ level: 'note', sides: ['left'], limit: 0 });
  const { blocks } = planned(solid).stand.left;
  const byHand = blocks.flatMap(({ cuts }) => cuts.filter(({ tool }) => tool === 'hand'));
  expect(told?.value).toBe(byHand.length);
  expect(told?.text).toMatch(
    /^No saw of this workshop makes these cuts of the left stand: slope.* The slope is 165 mm deep; the table saw cuts 80 mm\. /,
  );
  // The step says the same.
  expect(planned(solid).stand.left.steps.some(({ text }) => text.includes('No saw of this workshop makes it'))).toBe(
    true,
  );
  const bandSaw = { '/shop': { bandSaw: { height: 250 } } };
  expect(codes({ ...solid, ...bandSaw })).not.toContain('cut-by-hand');
  expect(found({ ...solid, '/shop': { bandSaw: { height: 150 } } }, 'cut-by-hand')[0]?.text).toContain(
    'the band saw takes 150 mm',
  );
  expect(codes(calm)).not.toContain('cut-by-hand');
});

describe('the screen and the wall', () => {
  const inwards = (by: number) => ({
    '/layouts/0/placement/left/x': by - 430,
    '/layouts/0/placement/right/x': 430 - by,
  });

  test('marks of the demo 153 mm inwards: 1.0 mm to the screen, 1.8 % of it hidden, 0.4° before it slides', () => {
    const close = found(inwards(153), 'close-to-screen');
    expect(close.flatMap(({ sides }) => sides)).toEqual(['left', 'right']);
    expect(close[0]?.value).toBeCloseTo(1.0, 0);
    expect(close[0]?.text).toMatch(/^The left cabinet stands 1(\.\d)? mm from the screen: too near to turn it/);
    const hidden = found(inwards(153), 'screen-hidden');
    expect(hidden[0]?.value).toBeCloseTo(1.8, 1);
    expect(hidden[0]).toMatchObject({ level: 'note', limit: 0, unit: '%' });
    expect(found(inwards(153), 'slides')[0]?.value).toBeCloseTo(0.4, 1);
    for (const code of ['close-to-screen', 'screen-hidden']) expect(codes({})).not.toContain(code);
  });

  test('more of a screen hidden is a caution', () => {
    const large = { '/layouts/0/monitors': [{ y: 560, width: 1300, height: 365, bottom: 60 }] };
    const [told] = found({ ...large, ...inwards(0) }, 'screen-hidden');
    expect(told?.value).toBeGreaterThan(5);
    expect(told?.level).toBe('caution');
  });

  test('a plug needs its room: told under 40 mm to the wall, and no longer once a cabinet is in it', () => {
    const near = { ...calm, '/layouts/0/placement/right/y': 560 };
    const back = Math.max(...planned(near).sides.right.cabinet.map(({ y }) => y));
    const at = (gap: number | null) =>
      found({ ...near, ...withGap(gap === null ? null : back - 700 + gap) }, 'close-to-wall').map(({ value }) => value);
    expect(at(41)).toEqual([]);
    expect(at(39)).toEqual([expect.closeTo(39, 9)]);
    expect(at(-1)).toEqual([]);
    expect(at(null)).toEqual([]);
  });

  test('as much room as the cabinet asks for behind its back is kept from a wall', () => {
    const near = { ...calm, '/layouts/0/placement/right/y': 560 };
    const back = Math.max(...planned(near).sides.right.cabinet.map(({ y }) => y));
    const told = (rearClearance: number) =>
      found({ ...near, ...withGap(back - 700 + 90), '/speaker/rearClearance': rearClearance }, 'close-to-wall');
    expect(told(89)).toEqual([]);
    const [one] = told(120);
    expect([one?.value, one?.limit]).toEqual([expect.closeTo(90, 9), 120]);
    expect(told(0)).toEqual([]);
  });
});

describe('the room', () => {
  test('a stand past the edge is a fault, a cabinet past it a caution, by how far', () => {
    const off = found({ ...calm, '/layouts/0/placement/right': { x: 680, y: 250 } }, 'stand-over-edge');
    const corners = planned({ ...calm, '/layouts/0/placement/right': { x: 680, y: 250 } }).stand.right.footprint;
    expect(off[0]?.value).toBeCloseTo(Math.max(...corners.map(([x]) => x)) - 700, 9);
    expect(off[0]?.level).toBe('fault');
    const leaning = {
      ...calm,
      '/layouts/0/placement/right': { x: 430, y: 480 },
      '/layouts/0/listener/earHeight': 1400,
    };
    expect(found({ ...leaning, ...withGap(null) }, 'cabinet-over-edge')[0]?.text).toMatch(
      /^The right cabinet juts out \d+(\.\d)? mm over the desk's back edge/,
    );
  });

  test('a cabinet into the wall is a fault, and no wall means none', () => {
    const near = { ...calm, ...withGap(0), '/layouts/0/placement/left': { x: -430, y: 560 } };
    const [finding] = found(near, 'into-wall');
    expect(finding?.level).toBe('fault');
    expect(finding?.value).toBeCloseTo(Math.max(...planned(near).sides.left.cabinet.map(({ y }) => y)) - 700, 9);
    expect(codes({ ...near, ...withGap(null) })).not.toContain('into-wall');
  });

  test('a monitor in the cabinet’s place is a fault', () => {
    const wide = [{ x: 0, y: 350, width: 900, height: 365, bottom: 110 }];
    expect(found({ ...calm, '/layouts/0/monitors': wide }, 'monitor-collision').flatMap(({ sides }) => sides)).toEqual([
      'left',
      'right',
    ]);
  });

  test('a monitor between driver and head is told by driver, with how far the line passes inside its edge', () => {
    const before = [{ x: 0, y: 60, width: 700, height: 400, bottom: 100, depth: 0 }];
    const changes = { ...calm, '/layouts/0/monitors': before };
    const hidden = found(changes, 'monitor-in-sight-line');
    expect(hidden.map(({ sides: [side], text }) => [side, /hides the (\w+ \w+)/.exec(text)?.[1]])).toEqual([
      ['left', 'left tweeter'],
      ['left', 'left woofer'],
      ['right', 'right tweeter'],
      ['right', 'right woofer'],
    ]);
    // By hand: where the line from the tweeter to the head crosses the plane y = 60.
    const { head, sides } = planned(changes);
    const from = sides.right.drivers[0]?.position;
    if (!from) throw new Error('there is a tweeter');
    const part = (from.y - 60) / (from.y - head.y);
    const x = from.x + (head.x - from.x) * part;
    const z = from.z + (head.z - from.z) * part;
    expect(hidden[2]?.value).toBeCloseTo(Math.min(350 - x, z - 100, 500 - z), 0);
  });
});

describe('balance', () => {
  test('a head to the side hears the nearer loudspeaker sooner and louder', () => {
    const aside = { ...calm, '/layouts/0/listener/offset': 90 };
    const { head, sides, speedOfSound } = planned(aside);
    // From the chair: 90 mm to the right of the middle, the setback before the desk, the ears over its top.
    const { desk, listener } = firstLayout(project(aside));
    expect(head).toEqual({ x: 90, y: -listener.setback, z: expect.closeTo(listener.earHeight - desk.height, 9) });
    const [left, right] = [sides.left, sides.right].map(({ aimedPoint: { x, y, z } }) =>
      Math.hypot(x - head.x, y - head.y, z - head.z),
    );
    if (left === undefined || right === undefined) throw new Error('a pair has two sides');
    const [sooner, louder] = [found(aside, 'time-difference')[0], found(aside, 'level-difference')[0]];
    // mm over m/s are ms; sound falls by 20 dB for ten times the distance.
    expect(sooner?.value).toBeCloseTo(((left - right) / speedOfSound) * 1000, 9);
    expect(sooner?.text).toMatch(/^The right loudspeaker is heard \d+ µs sooner/);
    expect(louder?.value).toBeCloseTo(20 * Math.log10(left / right), 9);
    expect(louder?.value).toBeGreaterThan(0.5);
  });
});

test('findings come worst first and none twice, each with a number, a limit, a source and a sentence', () => {
  const harm = ['fault', 'caution', 'note'];
  fc.assert(
    fc.property(anyDesk, (changes) => {
      const of = project(changes);
      const result = solve(of, firstLayout(of));
      fc.pre(result.ok);
      const findings = result.value.findings.map(inWords);
      const order = findings.map(({ level }) => harm.indexOf(level));
      expect(order).toEqual([...order].sort((a, b) => a - b));
      expect(new Set(findings.map(({ text }) => text)).size).toBe(findings.length);
      for (const { value, limit, text, source } of findings) {
        expect(Number.isFinite(value) && Number.isFinite(limit)).toBe(true);
        expect(text).toMatch(/\.$/);
        expect(text).not.toMatch(/NaN|undefined|-0/);
        expect(sources[source]).not.toBe('');
      }
    }),
  );
});

test('idle-mat: a mat in the base under which feet stand never touches the desk', () => {
  const under = (face: string, feet: number) => ({
    ...calm,
    '/layouts/0/stand': { lift: 30, friction: 0.6, feet, recess: { face, depth: 1.5, border: 12 } },
  });
  expect(found(under('base', 3), 'idle-mat')).toMatchObject([{ level: 'caution', value: 3, limit: 0, unit: 'mm' }]);
  expect(found(under('base', 0), 'idle-mat')).toEqual([]);
  expect(found(under('top', 3), 'idle-mat')).toEqual([]);
});
