import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COMMON_SHOP } from '$lib/project/commonShop.ts';
import type { StandSettings } from '$lib/project/project.ts';
import type { StandBody } from '$lib/stand/body.ts';
import { standParts } from '$lib/workshop/standParts.ts';
import { runs } from '../runs.ts';
import type { Where } from './bench/asked.ts';
import { examine } from './bench/examine.ts';
import { anyPlace, board, shop, soundBody, stance, thick, thin } from './builds/buildRequests.ts';
import { plain } from './stands.ts';

const tools = {
  ...COMMON_SHOP,
  saw: { ...COMMON_SHOP.saw, depth: 120 },
  bandSaw: { height: 200, tiltsMost: 30 },
};
const workshop = { ...shop, tools };

/** What may be drawn of each detail; the property counts how often it came up. */
const details = fc.record({
  corner: fc.constantFrom(null, 2),
  relief: fc.constantFrom(null, { web: 8, corner: 3 }),
  cheeks: fc.constantFrom(null, { stock: thin.name, count: 1 }, { stock: thin.name, count: 2 }),
  stop: fc.constantFrom(null, { height: 12, thickness: 9 }),
  cable: fc.constantFrom(null, { width: 12, depth: 6, fromRear: 38 }),
  recess: fc.constantFrom(
    null,
    { face: 'top' as const, depth: 1.5, border: 8 },
    { face: 'base' as const, depth: 1.5, border: 8 },
  ),
  ends: fc.constantFrom('plumb' as const, 'square' as const),
  feet: fc.constantFrom(0, 3),
  pad: fc.constantFrom(0, 1.5),
  veneer: fc.constantFrom(0, 0.6),
  glue: fc.constantFrom(0, 0.08),
  frontMargin: fc.constantFrom(0, 6),
  rearMargin: fc.constantFrom(0, 14),
});

/** Stops and square ends need a turned base: elsewhere they are refused. */
const settingsOf = (base: StandSettings['base'], chosen: Partial<StandSettings>): Partial<StandSettings> =>
  base === 'turned' ? { base, ...chosen } : { base, ...chosen, stop: null, ends: 'plumb' };

const bases = fc.constantFrom('turned' as const, 'square-to-desk' as const);

/** On paper as many parts as the steps of both stands take. */
function expectCounts(body: StandBody, other: StandBody): void {
  const { parts } = standParts({ left: other, right: body });
  const steps = [...body.steps, ...other.steps].flatMap((step) => (step.act === 'cut' ? step.pieces : []));
  const cut = steps.reduce((sum, { count }) => sum + count, 0);
  expect(parts.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(cut);
}

/** Adds up what was looked at in all runs. */
const tally = () => {
  const all: Record<string, number> = {};
  return {
    all,
    add: (seen: Record<string, number>): void => {
      for (const [what, count] of Object.entries(seen)) all[what] = (all[what] ?? 0) + count;
    },
  };
};

/** For all of the runs on a busy machine, ms. */
const LONG = 900_000;

const everyPlace = { place: anyPlace, base: bases, chosen: details };

describe('each step carried out in geometry', () => {
  test.each(['stacked', 'skinned', 'ribbed'] as const)(
    '%s: what comes out is the planned body',
    { timeout: LONG },
    (build) => {
      const met = tally();
      const ribbed = build === 'ribbed';
      const drawn = fc.record({ ...everyPlace, bit: fc.constantFrom(null, 3.175), skin: fc.boolean() });
      const property = fc.property(drawn, ({ place, base, chosen, bit, skin }) => {
        const covered = ribbed && skin && base === 'turned';
        const ribs = { count: 2, cross: 3, fit: 0.1, inset: 10, skin: covered ? thin.name : null };
        const settings: Partial<StandSettings> = {
          ...settingsOf(base, { ...chosen, ...(covered ? { stop: null } : {}) }),
          build,
          ...(ribbed ? { cheeks: null, relief: null, recess: null, ribs } : {}),
        };
        const tooled = { ...workshop, tools: { ...tools, router: { bit, tab: null } } };
        const one = { ...place, settings, board: ribbed ? thick : board, shop: tooled };
        const body = soundBody(one);
        const at = { ...stance, ...place.stance };
        const asked = { ...plain, ...settings };
        const where: Where = { stance: at, depth: place.speaker.depth, settings: asked, skin: covered ? thin.thickness : 0 }; // prettier-ignore
        met.add(examine(body, where, tooled.tools));
        for (const { size } of body.printed) {
          expect(size.x).toBeLessThanOrEqual(shop.printer.bed.x + 1e-6);
          expect(size.y).toBeLessThanOrEqual(shop.printer.bed.y + 1e-6);
          expect(size.z).toBeLessThanOrEqual(shop.printer.bed.z + 1e-6);
        }
        const side = at.side === 'right' ? 'left' : 'right';
        expectCounts(body, soundBody({ ...one, stance: { ...place.stance, side } }));
        met.add({ stands: 1, routed: bit === null ? 0 : 1, sanded: body.sanding ? 1 : 0 });
      });
      fc.assert(property, { numRuns: runs(200) });
      expect(met.all.stands).toBeGreaterThanOrEqual(runs(200));
      const kinds = ['slope', 'base', 'slot', 'end', 'stop', 'routed', 'sanded', ribbed ? 'skin' : 'mat'];
      if (build === 'stacked') kinds.push('web');
      for (const kind of kinds) expect([kind, (met.all[kind] ?? 0) > 0]).toEqual([kind, true]);
    },
  );

  test('solid: what is sawn, milled, rounded and glued on is the planned body, with no cut beyond the workshop’s saws', () => {
    const used = new Set<string>();
    const met = tally();
    const property = fc.property(fc.record(everyPlace), ({ place, base, chosen }) => {
      const details = { ...chosen, build: 'solid' as const, cheeks: null, relief: null };
      const settings = settingsOf(base, details);
      const body = soundBody({ ...place, settings, shop: workshop });
      const [block] = body.blocks;
      if (!block) throw new Error('there is a block');
      const at = { ...stance, ...place.stance };
      const where: Where = { stance: at, depth: place.speaker.depth, settings: { ...plain, ...settings }, skin: 0 };
      met.add(examine(body, where, tools));
      for (const { tool } of block.cuts) used.add(tool);
      met.add({ stands: 1 });
    });
    fc.assert(property, { numRuns: runs(200) });
    expect(met.all.stands).toBeGreaterThanOrEqual(runs(200));
    for (const kind of ['slope', 'mat', 'base', 'slot', 'end', 'stop'])
      expect([kind, (met.all[kind] ?? 0) > 0]).toEqual([kind, true]);
    // All three come up: the saws are met at their limits.
    expect([...used].sort()).toEqual(['band saw', 'hand', 'table saw']);
  });
});
