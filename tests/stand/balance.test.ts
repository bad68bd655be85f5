import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { edgeNames, GRAVITY } from '$lib/stand/tipping.ts';
import { anyDesk } from '../projects.ts';
import { numberFrom } from '../numbers.ts';
import { balanceWith } from '$lib/stand/remedy.ts';
import { balanceAt, bodyAt, depth, height, level, mass, siteWith, width } from './sites.ts';

describe('a cabinet on a level block', () => {
  const site = siteWith(level(60));
  const { stand } = bodyAt(site);
  const balance = balanceAt(site);

  test('has its joint centre of mass where the moments put it', () => {
    const wood = stand.mass;
    expect(balance.wood.mass).toBe(wood);
    expect(balance.joint?.mass).toBeCloseTo(mass + wood, 12);
    expect(balance.joint?.centre.z).toBeCloseTo((mass * (60 + height / 2) + wood * 30) / (mass + wood), 9);
    expect(balance.joint?.centre.y).toBeCloseTo(300 + depth / 2, 9);
    expect(balance.joint?.centre.x).toBeCloseTo(430, 9);
  });

  test('tips sideways first, at atan of half the width over the height', () => {
    const high = balance.joint?.centre.z ?? NaN;
    expect(balance.survives.least).toBeCloseTo(Math.atan(stand.width / 2 / high), 9);
    expect(balance.survives.most).toBe(balance.survives.least);
    expect(balance.weakest.what).toBe('both');
    expect(['inboard', 'outboard']).toContain(balance.weakest.edge);
    expect(balance.base.front.margin.least).toBeCloseTo(depth / 2, 9);
  });

  test('stands better on its stand than the stand on the desk', () => {
    expect(balance.contact.rear.angle).toBeCloseTo(Math.atan(depth / height), 9);
    expect(balance.contact.inboard.margin).toBeCloseTo(Math.min(width, stand.width) / 2, 9);
  });

  test('is tipped or slid by pushes that statics gives', () => {
    const whole = ((mass + stand.mass) * GRAVITY * (depth / 2)) / (60 + height);
    const alone = (mass * GRAVITY * (depth / 2)) / height;
    expect(alone).toBeLessThan(whole);
    expect(balance.push?.rear.tips).toBeCloseTo(alone, 9);
    expect(balance.push?.rear.off).toBe(true);
    expect(balance.push?.rear.slides).toBeCloseTo(0.3 * mass * GRAVITY, 9);
    expect(balance.push?.inboard.slides).toBeCloseTo(0.3 * mass * GRAVITY, 9);
  });
});

describe('on a slope', () => {
  const site = siteWith();
  const { pose } = bodyAt(site);
  const balance = balanceAt(site);

  test('slides at the friction angle, and the slope is the tilt', () => {
    expect(balance.slide.slope).toBe(pose.tilt);
    expect(balance.slide.margin).toBeCloseTo(Math.atan(0.3) - pose.tilt, 12);
  });

  test('leans on its rear edge: centre of mass over the contact less the tilt', () => {
    expect(balance.contact.rear.angle).toBeCloseTo(Math.atan(depth / height) - pose.tilt, 9);
    expect(balance.contact.front.angle).toBeCloseTo(Math.atan(depth / height) + pose.tilt, 9);
  });

  test('a stop leaves nothing to slide down the slope', () => {
    const stopped = balanceAt(siteWith({ '/layouts/0/stand/stop': { height: 10, thickness: 6 } }));
    expect(stopped.push?.rear.slides).toBeNull();
    expect(stopped.push?.front.slides).toBeGreaterThan(0);
  });

  test('a centre of mass that was measured counts before the middle of the box', () => {
    const heavyBack = balanceAt(siteWith({ '/speaker/centreOfMass': { depth: 190, height: 120 } }));
    expect(heavyBack.base.rear.margin.least).toBeLessThan(balance.base.rear.margin.least);
    expect(heavyBack.weakest.edge).toBe('rear');
  });

  test('a leaning baffle moves the middle of the box back', () => {
    const { speaker } = siteWith({ '/speaker/baffleRake': 10 });
    const raked = balanceAt(siteWith({ '/speaker/baffleRake': 10, ...level(60) }));
    // A trapezium, bottom 205 and top 205 − 270·tan 10°, by the handbook's formula for its height.
    const top = depth - height * Math.tan(radians(speaker.baffleRake));
    expect(raked.cabinet.z - 60).toBeCloseTo((height * (depth + 2 * top)) / (3 * (depth + top)), 9);
    expect(raked.cabinet.y - 300).toBeGreaterThan(depth / 2);
  });
});

describe('for any desk', () => {
  test('a mirrored room stands alike to the last digits', () => {
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const same = {
          ...changes,
          '/speaker/mirrored': true,
          '/layouts/0/listener/offset': 0,
          '/layouts/0/placement/left': {
            x: -Number(changes['/layouts/0/placement/right/x']),
            y: changes['/layouts/0/placement/right/y'],
          },
        };
        delete (same as Record<string, unknown>)['/layouts/0/placement/left/x'];
        delete (same as Record<string, unknown>)['/layouts/0/placement/left/y'];
        const [left, right] = [balanceWith(siteWith(same, 'left'), {}), balanceWith(siteWith(same, 'right'), {})];
        expect(left === null).toBe(right === null);
        if (!left || !right) return;
        for (const edge of edgeNames) {
          expect(left.base[edge].margin.least).toBeCloseTo(right.base[edge].margin.least, 8);
          expect(left.contact[edge].angle).toBeCloseTo(right.contact[edge].angle, 11);
          expect(left.push?.[edge].tips).toBeCloseTo(right.push?.[edge].tips ?? NaN, 9);
        }
        expect(left.survives.least).toBeCloseTo(right.survives.least, 11);
      }),
    );
  });

  test('without the mass the spans hold the answer for every mass', () => {
    fc.assert(
      fc.property(anyDesk, numberFrom(0.01, 100), (changes, kilograms) => {
        const unknown = balanceWith(siteWith({ ...changes, '/speaker/mass': null }), {});
        const known = balanceWith(siteWith({ ...changes, '/speaker/mass': kilograms }), {});
        if (!unknown || !known) return;
        expect(unknown.joint).toBeNull();
        expect(unknown.push).toBeNull();
        const within = (value: number, span: { least: number; most: number }): void => {
          expect(value).toBeGreaterThanOrEqual(span.least - 1e-9);
          expect(value).toBeLessThanOrEqual(span.most + 1e-9);
        };
        for (const edge of edgeNames) {
          within(known.base[edge].margin.least, unknown.base[edge].margin);
          within(known.base[edge].angle.least, unknown.base[edge].angle);
        }
        within(known.survives.least, unknown.survives);
      }),
    );
  });

  test('the heavier the cabinet, the nearer the answer comes to one end of the span', () => {
    const changes = { '/layouts/0/stand/lift': 80 };
    const angleWith = (kilograms: number | null) =>
      balanceAt(siteWith({ ...changes, '/speaker/mass': kilograms })).base.rear.angle;
    const { least, most } = angleWith(null);
    // The stand's share of 200 kg is about a hundredth, of 10 g all but a few thousandths.
    expect((angleWith(200).least - least) / (most - least)).toBeLessThan(0.02);
    expect((most - angleWith(0.01).least) / (most - least)).toBeLessThan(0.02);
  });
});
