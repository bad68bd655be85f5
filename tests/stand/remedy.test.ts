import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { lastHolding } from '$lib/stand/lastHolding.ts';
import { balanceWith, stopRemedy, tipRemedies, type Remedy, type Site } from '$lib/stand/remedy.ts';
import { numberFrom } from '../numbers.ts';
import { balanceAt, bodyAt, level, siteWith } from './sites.ts';
import { runs } from '../runs.ts';

const TEST = radians(10);
const STEP = 0.1;

const remediesOf = (site: Site): Remedy[] => tipRemedies(site, balanceAt(site), TEST);
const survives = (site: Site, change: object): number => balanceWith(site, change)?.survives.least ?? -Infinity;

/** Each remedy passes, and a tenth of a millimetre less does not. */
function smallestThatPass(site: Site, remedies: readonly Remedy[]): void {
  for (const { key, value } of remedies) {
    if (key === 'stop') throw new Error('a stop does not keep a stand from tipping');
    expect(survives(site, { [key]: value })).toBeGreaterThanOrEqual(TEST);
    const back = key === 'lift' ? value + STEP : value - STEP;
    expect(survives(site, { [key]: back })).toBeLessThan(TEST);
  }
}

const keys = (remedies: readonly Remedy[]): string[] => remedies.map(({ key }) => key);

describe('what to change', () => {
  test('nothing when it passes', () => {
    expect(remediesOf(siteWith())).toEqual([]);
  });

  test('a narrow stand: wider or lower', () => {
    const site = siteWith(level(300, { '/layouts/0/stand': { lift: 300, width: 70 } }));
    const found = remediesOf(site);
    expect(keys(found)).toContain('width');
    smallestThatPass(site, found);
  });

  test('a cabinet that tips off its stand: no deeper stand', () => {
    const heavyBack = { '/speaker/centreOfMass': { depth: 190, height: 120 }, '/layouts/0/stand': { lift: 60 } };
    const site = siteWith({ ...level(60), ...heavyBack });
    const found = remediesOf(site);
    expect(balanceAt(site).weakest).toEqual({ what: 'cabinet', edge: 'rear' });
    expect(keys(found)).not.toContain('rearMargin');
    smallestThatPass(site, found);
  });

  test('a tall stand that ends with the cabinet: deeper where it tips', () => {
    const tall = { '/speaker/centreOfMass': { depth: 190, height: 20 }, '/stock/0/density': 60 };
    const wide = { '/layouts/0/stand': { lift: 300, width: 400 } };
    const site = siteWith({ ...level(300), ...tall, ...wide });
    expect(balanceAt(site).weakest).toEqual({ what: 'both', edge: 'rear' });
    const found = remediesOf(site);
    expect(keys(found)).toEqual(['rearMargin', 'lift']);
    smallestThatPass(site, found);
  });

  test('no lift is suggested where the rule solves it', () => {
    const site = siteWith({
      '/layouts/0/listener/earHeight': 1500,
      '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 0 },
      '/layouts/0/stand': { width: 60 },
    });
    expect(keys(remediesOf(site))).toEqual(['width']);
  });

  test('whatever stands badly, what is suggested is enough and no more', () => {
    let suggested = 0;
    fc.assert(
      fc.property(
        numberFrom(40, 400),
        numberFrom(40, 165),
        numberFrom(20, 200),
        numberFrom(-8, 12),
        (lift, width, depth, tilt) => {
          const site = siteWith({
            '/speaker/centreOfMass': { depth, height: 80 },
            '/layouts/0/aim/tilt': { rule: 'as-set', degrees: tilt },
            '/layouts/0/stand': { lift, width, rods: null },
          });
          const found = remediesOf(site);
          suggested += found.length;
          for (const { key, value } of found) expect(survives(site, { [key]: value })).toBeGreaterThanOrEqual(TEST);
        },
      ),
      { numRuns: runs(60) },
    );
    expect(suggested).toBeGreaterThan(runs(60) / 3);
  });
});

describe('a stop', () => {
  const stopFor = (site: Site): Remedy | null => stopRemedy(site.layout.stand, site.speaker.depth, bodyAt(site).pose);

  test('is suggested as thick as the low end leaves room for', () => {
    expect(stopFor(siteWith())).toEqual({ key: 'stop', value: { height: 10, thickness: 6 } });
    const thin = siteWith({ '/layouts/0/stand/lift': 4.2, '/layouts/0/stand/rods': null });
    const found = stopFor(thin);
    if (found?.key !== 'stop') throw new Error('a stop fits');
    expect(found.value.thickness).toBeLessThan(6);
    expect(balanceWith(thin, { stop: found.value })).not.toBeNull();
    expect(balanceWith(thin, { stop: { height: 10, thickness: found.value.thickness + STEP } })).toBeNull();
  });

  test('is never thinner than the least edge', () => {
    const sturdy = siteWith({ '/layouts/0/stand/lift': 40, '/layouts/0/stand/minimumEdge': 8 });
    expect(stopFor(sturdy)).toEqual({ key: 'stop', value: { height: 10, thickness: 8 } });
  });

  test('is not suggested twice, nor where it has no room', () => {
    expect(stopFor(siteWith({ '/layouts/0/stand/stop': { height: 10, thickness: 6 } }))).toBeNull();
    expect(stopFor(siteWith({ '/layouts/0/stand/lift': 3, '/layouts/0/stand/rods': null }))).toBeNull();
  });

  test('can be built wherever it is suggested, rods and veneer too', () => {
    fc.assert(
      fc.property(numberFrom(3, 40), numberFrom(-20, 25), numberFrom(0, 6), (lift, tilt, veneer) => {
        const site = siteWith({
          '/layouts/0/aim/tilt': { rule: 'as-set', degrees: tilt },
          '/layouts/0/stand': { lift, veneer },
        });
        fc.pre(balanceWith(site, {}) !== null);
        const found = stopFor(site);
        if (found?.key === 'stop') expect(balanceWith(site, { stop: found.value })).not.toBeNull();
      }),
    );
  });
});

test('halving finds the last place that holds', () => {
  fc.assert(
    fc.property(fc.nat(1000), fc.integer({ min: -1, max: 1000 }), (count, last) => {
      const found = lastHolding(count, (index) => index <= last);
      expect(found).toBe(last < 0 ? null : Math.min(last, count));
    }),
  );
});
