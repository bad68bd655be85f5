import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding, Plan } from '$lib/plan/document.ts';
import { plan } from '$lib/plan/plan.ts';
import { edgeNames } from '$lib/stand/tipping.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';

type Changes = Record<string, unknown>;

function planned(changes: Changes = {}): Plan {
  const of = project(changes);
  const result = plan(of, firstLayout(of));
  if (!result.ok) throw new Error(result.faults.map(({ pointer, message }) => `${pointer}: ${message}`).join('; '));
  return result.value;
}

const ours = ['falls-over', 'tips', 'may-tip', 'slides', 'little-friction'];
const standing = (changes: Changes = {}): Finding[] =>
  planned(changes).findings.filter(({ code }) => ours.includes(code));
const right = (changes: Changes): Finding | undefined => standing(changes).find(({ side }) => side === 'right');

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
    expect(found?.source).toContain('UL 1678');
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
  test('is a caution past the friction angle, a note with little to spare, and neither with grip or a stop', () => {
    expect(right(tilted(20, { lift: 12 }))).toMatchObject({ code: 'slides', level: 'caution', limit: 0.3 });
    // tan 20° = 0.364; half as much again is 0.546.
    expect(right(tilted(20, { lift: 12, friction: 0.54 }))).toMatchObject({ code: 'little-friction', level: 'note' });
    expect(right(tilted(20, { lift: 12, friction: 0.55 }))).toBeUndefined();
    expect(right(tilted(20, { lift: 12, stop: { height: 10, thickness: 6 } }))).toBeUndefined();
  });

  test('suggests a stop that can be built, or says that there is no room', () => {
    const found = right(tilted(20, { lift: 12 }));
    expect(found?.value).toBeCloseTo(Math.tan(Math.PI / 9), 12);
    expect(found?.text).toBe(
      'The right cabinet slides off its slope of 20°: that takes a friction of 0.36, and 0.3 is set. Add a stop 10 mm high and 6 mm thick, or a pad with more grip.',
    );
    expect(right(tilted(20, { lift: 3 }))?.text).toContain('raise the lift to make room for a stop');
  });
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
        const result = plan(of, firstLayout(of));
        if (!result.ok) return;
        const { base, contact, survives, weakest } = result.value.balance.left;
        const angles = edgeNames.flatMap((edge) => [base[edge].angle.least, contact[edge].angle]);
        expect(survives.least).toBe(Math.min(...angles));
        const named = weakest.what === 'both' ? base[weakest.edge].angle.least : contact[weakest.edge].angle;
        expect(named).toBe(survives.least);
      }),
    );
  });
});
