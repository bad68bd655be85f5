import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Solution } from '$lib/solution/solution.ts';
import { sources } from '$lib/solution/findings/sources.ts';
import { findingText } from '$lib/solution/findings/findingText.ts';
import { isStanding } from '$lib/solution/findings/testPlane.ts';
import { verdict } from '$lib/solution/findings/verdict.ts';
import { plainText } from '$lib/project/sentence.ts';
import { solve } from '$lib/solution/solve.ts';
import { edgeNames } from '$lib/stand/tipping.ts';
import { faultLine } from '$lib/project/fault.ts';
import { runs } from '../../runs.ts';
import { anyDesk, firstLayout, project } from '../../projects.ts';
import { inWords, type FindingInWords } from '../inWords.ts';

type Changes = Record<string, unknown>;

function planned(changes: Changes = {}): Solution {
  const of = project(changes);
  const result = solve(of, firstLayout(of));
  if (!result.ok) throw new Error(result.faults.map(faultLine).join('; '));
  return result.value;
}

const standing = (changes: Changes = {}): FindingInWords[] => planned(changes).checks.filter(isStanding).map(inWords);
const right = (changes: Changes): FindingInWords | undefined =>
  standing(changes).find(({ sides }) => sides.includes('right'));

const tilted = (degrees: number, stand: object): Changes => ({
  '/layouts/0/aim/tilt': { rule: 'as-set', degrees },
  '/layouts/0/stand': { rods: null, ...stand },
});

describe('tipping on a plane of 10°', () => {
  const narrow = tilted(0, { lift: 300, width: 70 });

  test('is a caution with what is enough, which is silent once done', () => {
    const found = right(narrow);
    expect(found).toMatchObject({ code: 'tips', level: 'caution', limit: 10, unit: '°' });
    expect(found?.value).toBeCloseTo(planned(narrow).balance.right.survives.least, 12);
    expect(found?.text).toMatch(
      /^The right stand tips over (in|out)wards when the desk tilts by \d+(\.\d)?°; it should stand 10°\. Make the stand \d+(\.\d)? mm wide, or set the lift to \d+(\.\d)? mm\.$/,
    );
    const [, width, lift] = /stand (\S+) mm wide, or set the lift to (\S+) mm/.exec(found?.text ?? '') ?? [];
    expect(standing(tilted(0, { lift: 300, width: Number(width) }))).toEqual([]);
    expect(standing(tilted(0, { lift: Number(lift), width: 70 }))).toEqual([]);
    expect(found && sources[found.source]).toContain('UL 1678');
  });

  test('is a fault when it falls by itself', () => {
    const found = right({
      ...tilted(25, { lift: 12, friction: 2 }),
      '/speaker/centreOfMass': { depth: 200, height: 200 },
    });
    expect(found).toMatchObject({ code: 'falls-over', level: 'fault' });
    expect(found?.value).toBeLessThan(0);
    expect(found?.text).toMatch(/^The right cabinet tips off its stand backwards by itself/);
  });

  test('says what depends on a mass that is not given', () => {
    const found = right({ ...tilted(0, { lift: 150, width: 70 }), '/speaker/mass': null });
    expect(found).toMatchObject({ code: 'may-tip', level: 'note' });
    expect(found?.text).toMatch(/at \d+(\.\d)?° to \d+(\.\d)?° of tilt, depending on the cabinet’s mass/);
  });

  test('a single change that would do is not made up', () => {
    const found = right({
      ...tilted(0, { lift: 40, width: 165 }),
      '/speaker/centreOfMass': { depth: 200, height: 200 },
      '/speaker/mass': 20,
    });
    expect(found?.text).toContain('Use a lower, wider and deeper stand.');
  });
});

describe('sliding on the slope', () => {
  test('is a fault where no friction holds it, a caution where little may, and nothing with grip or a stop', () => {
    // tan 20° = 0.364.
    expect(right(tilted(20, { lift: 12, frictionMost: 0.36 }))).toMatchObject({ code: 'slides', level: 'fault' });
    expect(right(tilted(20, { lift: 12, frictionMost: 0.37 }))).toMatchObject({ code: 'slides', level: 'caution' });
    // tan 30° = 0.577: what holds 20° on a plane of 10°.
    expect(right(tilted(20, { lift: 12, friction: 0.577 }))).toMatchObject({
      code: 'slides',
      level: 'caution',
    });
    expect(right(tilted(20, { lift: 12, friction: 0.578 }))).toBeUndefined();
    expect(right(tilted(20, { lift: 20, pad: 2, padFriction: 0.6 }))).toBeUndefined();
    expect(right(tilted(20, { lift: 12, stop: { height: 10, thickness: 6 } }))).toBeUndefined();
    // A stop does not hold it sideways.
    expect(right(tilted(20, { lift: 12, friction: 0.1, stop: { height: 10, thickness: 6 } }))?.text).toContain(
      'sideways along its stop',
    );
  });

  test('suggests a stop that can be built, or says that there is no room', () => {
    const found = right(tilted(20, { lift: 12 }));
    expect(found?.value).toBeCloseTo((Math.atan(0.3) * 180) / Math.PI - 20, 9);
    expect(found?.text).toBe(
      'The right cabinet may slide off its slope of 20°: that needs a friction of 0.36; 0.3 to 0.75 assumed. Add a stop 10 mm high and 6 mm thick, or a pad with more grip.',
    );
    // Seven and three sixteenths of an inch: what the button that adds it says as well.
    const inches = { length: 'in', fraction: 16 } as const;
    const inInches = right({ ...tilted(20, { lift: 12 }), '/display': inches });
    expect(inInches && findingText(inInches, inches)).toContain('Add a stop 7/16″ high and 3/16″ thick, or');
    expect(right(tilted(20, { lift: 3 }))?.text).toContain('raise the lift to make room for a stop');
    const square = right(tilted(20, { lift: 40, base: 'square-to-desk' }));
    expect(square?.text).toContain('a base turned with the cabinet');
  });

  test('of the demo is said: 2.0° past its slope, at a push of 1.4 N', () => {
    const { findings, balance } = planned();
    expect(findings.map(inWords).find(({ code, sides }) => code === 'slides' && sides.includes('left'))?.text).toMatch(
      /when the desk tilts by 2° or at a push of 1\.4 N; it should stay at 10°/,
    );
    expect(plainText(verdict(balance.left))).toBe(
      'Stays on a plane of 2° to 22.2°, depending on the friction, whichever way that is turned, where 10° is asked for; beyond, the cabinet slides backwards on its slope, as at a push of 1.4 N at the cabinet’s top.',
    );
  });

  test('of a stand on the desk is told as well', () => {
    const found = standing(tilted(0, { lift: 60, friction: 0.12 })).filter(({ sides }) => sides.includes('right'));
    expect(found.map(({ code }) => code).toSorted()).toEqual(['slides', 'stand-slides']);
    expect(found.map(({ value }) => value)).toEqual([expect.closeTo(6.84, 2), expect.closeTo(6.84, 2)]);
    expect(
      standing(tilted(0, { lift: 60, friction: 0.12, feet: 4, feetFriction: 0.4, pad: 2, padFriction: 0.4 })),
    ).toEqual([]);
  });
});

test('the verdict passes exactly where nothing is found, on any desk', () => {
  const counts = { passes: 0, fails: 0 };
  fc.assert(
    fc.property(anyDesk, fc.double({ min: 0.1, max: 1, noNaN: true }), (changes, friction) => {
      const of = project({ ...changes, '/layouts/0/stand/friction': friction });
      const result = solve(of, firstLayout(of));
      fc.pre(result.ok);
      for (const side of ['left', 'right'] as const) {
        const found = result.value.findings.filter((one) => isStanding(one) && one.sides.includes(side));
        const { least } = result.value.balance[side].verdict.holds;
        expect(found.length > 0).toBe(least < 10);
        counts[found.length > 0 ? 'fails' : 'passes'] += 1;
        if (found.length > 0) expect(Math.min(...found.map(({ value }) => value))).toBeCloseTo(least, 9);
        const text = plainText(verdict(result.value.balance[side]));
        expect(text).toMatch(/^[A-Z][^.]*(\.\d[^.]*)*\.$/);
        expect(text).not.toContain('NaN');
      }
    }),
    { numRuns: runs(400) },
  );
  expect(Math.min(counts.passes, counts.fails)).toBeGreaterThan(runs(400) / 20);
});

describe('the balance in the plan', () => {
  test('is in degrees, mm and N', () => {
    const { balance, sides } = planned();
    expect(balance.right.slide.slope).toBeCloseTo(sides.right.tilt, 12);
    expect(balance.right.slide.frictionAngle).toBeCloseTo(16.7, 2);
    expect(balance.right.slide.margin).toBeCloseTo(balance.right.slide.frictionAngle - sides.right.tilt, 12);
    expect(balance.right.slide.stopLoad).toBe(0);
    expect(balance.right.survives.least).toBeGreaterThan(10);
    expect(balance.right.missing).toBeNull();
    const { margin, angle } = balance.right.base.rear;
    const height = balance.right.joint?.z ?? NaN;
    expect(Math.tan((angle.least * Math.PI) / 180) * height).toBeCloseTo(margin.least, 9);
  });

  test('never makes a mass up', () => {
    const { right: unknown } = planned({ '/speaker/mass': null }).balance;
    expect(unknown).toMatchObject({ joint: null, mass: null, push: null, slide: { stopLoad: null } });
    expect(unknown.missing).toMatch(/mass is not given/);
    expect(unknown.base.rear.angle.least).toBeLessThan(unknown.base.rear.angle.most);
  });

  test('survives the least of its edges’ angles', () => {
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const of = project(changes);
        const result = solve(of, firstLayout(of));
        fc.pre(result.ok);
        const { base, contact, survives, weakest } = result.value.balance.left;
        const angles = edgeNames.flatMap((edge) => [base[edge].angle.least, contact[edge].angle]);
        expect(survives.least).toBe(Math.min(...angles));
        const named = weakest.what === 'both' ? base[weakest.edge].angle.least : contact[weakest.edge].angle;
        expect(named).toBe(survives.least);
      }),
    );
  });
});
