import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balanceWith } from '$lib/stand/remedy.ts';
import { edgeNames, GRAVITY } from '$lib/stand/tipping.ts';
import { anyDesk } from '../projects.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';
import { balanceAt, level, mass, siteWith } from './sites.ts';

const stand = (settings: object) => siteWith({ '/layouts/0/stand': { lift: 12, ...settings } });

describe('the verdict', () => {
  test('is the least of tipping and sliding, and so is the push', () => {
    const counts = { slides: 0, tips: 0 };
    fc.assert(
      fc.property(anyDesk, numberFrom(0.1, 1), fc.boolean(), (changes, friction, stop) => {
        const settings = { friction, stop: stop ? { height: 10, thickness: 6 } : null };
        const balance = balanceWith(siteWith(changes), settings);
        if (!balance) return;
        const { verdict, survives, slide, push, grip, joint } = balance;
        counts[verdict.first.how] += 1;
        const desk = Math.atan(grip.base.friction.least);
        expect(verdict.holds.least).toBe(Math.min(survives.least, slide.survives.least, desk));
        expect(verdict.holds.most).toBeGreaterThanOrEqual(verdict.holds.least);
        const force = verdict.push?.force ?? NaN;
        for (const edge of edgeNames) {
          expect(force).toBeLessThanOrEqual(push?.[edge].tips ?? NaN);
          expect(force).toBeLessThanOrEqual((push?.[edge].slides ?? Infinity) * (1 + 1e-12));
        }
        expect(force).toBeLessThanOrEqual(friction * (joint?.mass ?? NaN) * GRAVITY * (1 + 1e-12));
      }),
      { numRuns: runs(400) },
    );
    expect(Math.min(counts.slides, counts.tips)).toBeGreaterThan(runs(400) / 40);
  });

  test('of the demo: 2° past its slope it slides, at a push of W·tan 2°', () => {
    const { verdict, slide, survives } = balanceAt(siteWith());
    expect(survives.least).toBeGreaterThan(verdict.holds.least);
    expect(verdict.first).toEqual({ how: 'slides', what: 'cabinet', towards: 'rear' });
    expect(verdict.holds.least).toBe(slide.margin);
    expect(verdict.push?.force).toBeCloseTo(mass * GRAVITY * Math.tan(slide.margin), 9);
    expect(verdict.push?.starts).toEqual(verdict.first);
  });

  test('on the level names the stand or the cabinet that slides, whichever takes less', () => {
    const { verdict } = balanceAt(
      siteWith(level(60, { '/layouts/0/stand': { lift: 60, rods: null, friction: 0.05 } })),
    );
    expect(verdict.first).toMatchObject({ how: 'slides', towards: null });
    expect(verdict.push?.force).toBeCloseTo(0.05 * mass * GRAVITY, 9);
  });
});

describe('friction counts where it is', () => {
  test('of a pad only where one is laid, of feet only where there are some', () => {
    const grips = (settings: object) => balanceAt(stand(settings)).grip;
    expect(grips({ padFriction: 0.9 }).cabinet).toEqual({ friction: { least: 0.3, most: 0.75 }, by: 'wood' });
    expect(grips({ pad: 2, padFriction: 0.9 }).cabinet).toEqual({ friction: { least: 0.9, most: 0.9 }, by: 'pad' });
    expect(grips({ pad: 2, padFriction: 0.9 }).base.friction.least).toBe(0.3);
    expect(grips({ feet: 3, feetFriction: 0.6 }).base).toEqual({ friction: { least: 0.6, most: 0.6 }, by: 'feet' });
    expect(grips({ feet: 3, feetFriction: 0.6 }).cabinet.friction.least).toBe(0.3);
    expect(grips({ pad: 2 }).cabinet.by).toBe('wood');
  });

  test('is a range: as set, else up to what dry wood has', () => {
    expect(balanceAt(stand({ friction: 0.2, frictionMost: 0.5 })).slide.friction).toEqual({ least: 0.2, most: 0.5 });
    expect(balanceAt(stand({ friction: 0.9 })).slide.friction).toEqual({ least: 0.9, most: 0.9 });
  });
});
