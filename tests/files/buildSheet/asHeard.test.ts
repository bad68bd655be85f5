import { describe, expect, test } from 'vitest';
import { asHeard } from '$lib/files/buildSheet/asHeard.ts';
import { combPower, demoHearing, heardOne, measuredAs } from '../../proof/heard/combs.ts';

/** Of no surface here: dips at 3.8 and 11.4 kHz. */
const odd = measuredAs((f) => combPower(f, 45 / 343_200, 0.7), 80);

describe('measured responses on the build sheet', () => {
  test('are not there where none were measured', () => {
    expect(asHeard({ plan: demoHearing([]), sheets: [] })).toEqual([]);
  });

  test('stand as charts with what makes their dips', () => {
    const plan = demoHearing([
      heardOne(odd, { name: 'seat' }),
      heardOne(odd, { name: 'near', at: 'near', of: 'left' }),
    ]);
    const [section, ...more] = asHeard({ plan, sheets: [] });
    expect(more).toEqual([]);
    const charts = section?.blocks.filter((block) => block.kind === 'drawing') ?? [];
    expect(charts.map(({ title }) => title)).toEqual(['seat: measured over predicted, dB over Hz', 'near: measured over predicted, dB over Hz']); // prettier-ignore
    const [seat, near] = charts;
    expect(seat?.note).toMatch(/^The right loudspeaker, at the head’s place; over 1\/24 octave\. Levels moved by \u2212[78]\d\.\d dB\. Dips: 38\d\d Hz unexplained, /); // prettier-ignore
    expect(near?.note).toBe('The left loudspeaker, near the driver; over 1/24 octave.');
    // A chart has no scale, and all of it lies in its frame.
    const ids = seat?.view.items.map(({ id }) => id) ?? [];
    expect(seat?.view.toScale).toBe(false);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(expect.arrayContaining(['measured', 'predicted', 'least', 'most']));
    expect(near?.view.items.map(({ id }) => id)).not.toContain('predicted');
    for (const item of seat?.view.items ?? []) {
      if (item.kind !== 'outline') continue;
      for (const [x, y] of item.points) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(160.000001);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(72.000001);
      }
    }
    const crosses = seat?.view.items.filter((item) => item.kind === 'spot' && item.mark === 'cross') ?? [];
    expect(crosses.length).toBeGreaterThan(1);
  });
});
