import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COMMON_SHOP } from '$lib/project/commonShop.ts';
import type { StandSettings } from '$lib/project/project.ts';
import type { StandBody } from '$lib/stand/body.ts';
import type { Stance } from '$lib/stand/commission.ts';
import { standParts } from '$lib/workshop/standParts.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';
import { carryOut, type Made } from './bench/bench.ts';
import { expectTrueTemplates, sawnBlock } from './bench/sawing.ts';
import { cornersOf, volumeOf } from './bench/solid.ts';
import { anyPlace, board, bodyOf, shop, soundBody, speaker, stance, thick, thin } from './builds/commissions.ts';
import { plain } from './stands.ts';

const tools = {
  ...COMMON_SHOP,
  saw: { ...COMMON_SHOP.saw, depth: 120 },
  bandSaw: { height: 200, tiltsMost: 30 },
};
const workshop = { ...shop, tools };

const details = fc.record({
  corner: fc.constantFrom(null, 2),
  relief: fc.constantFrom(null, { web: 8, corner: 3 }),
  cheeks: fc.constantFrom(null, { stock: thin.name, count: 1 }, { stock: thin.name, count: 2 }),
  feet: fc.constantFrom(0, 3),
  pad: fc.constantFrom(0, 1.5),
  veneer: fc.constantFrom(0, 0.6),
  glue: fc.constantFrom(0, 0.08),
  frontMargin: fc.constantFrom(0, 6),
  rearMargin: fc.constantFrom(0, 4),
});

interface Where {
  readonly stance: Stance;
  readonly depth: number;
  readonly settings: StandSettings;
}

/** Height of the cabinet's bottom over the desk, less what lies between it and the wood. */
function woodUnder({ stance: { mark, toe, tilt, lift, side }, depth, settings }: Where) {
  const way = side === 'right' ? 1 : -1;
  const front = lift + Math.max(0, depth * Math.sin(tilt));
  const between = settings.pad + (settings.veneerFaces.top ? settings.veneer : 0);
  return (x: number, y: number): number => {
    const back = (x - mark.x) * Math.sin(toe) * way + (y - mark.y) * Math.cos(toe);
    return mark.z + front - back * Math.tan(tilt) - between / Math.cos(tilt);
  };
}

/** From the wood's front edge and from inboard to the desk, by the planned footprint. */
function onDesk(body: StandBody, width: number, { stance: { side }, settings }: Where) {
  const [frontRight, rearRight, , frontLeft] = body.footprint;
  if (!frontRight || !rearRight || !frontLeft) throw new Error('a footprint has four corners');
  const unit = (a: readonly number[], b: readonly number[]): [number, number] => {
    const [x, y] = [(b[0] ?? 0) - (a[0] ?? 0), (b[1] ?? 0) - (a[1] ?? 0)];
    return [x / Math.hypot(x, y), y / Math.hypot(x, y)];
  };
  const [back, right] = [unit(frontRight, rearRight), unit(frontLeft, frontRight)];
  const inset = settings.veneerFaces.front ? settings.veneer : 0;
  const middle = [(frontRight[0] + frontLeft[0]) / 2, (frontRight[1] + frontLeft[1]) / 2] as const;
  return (across: number, u: number): [number, number] => {
    const aside = (side === 'right' ? 1 : -1) * (across - width / 2);
    return [0, 1].map((axis) => (middle[axis] ?? 0) + (right[axis] ?? 0) * aside + (back[axis] ?? 0) * (u + inset)) as [number, number]; // prettier-ignore
  };
}

/** Heights in the middle of the wood's run, away from rounded corners and veneered ends. */
const SHARES = [0.15, 0.32, 0.5, 0.68, 0.85];

/** The tolerance of the whole bench, mm: nothing is rounded on the way, and arcs do not reach the places looked at. */
const DIGITS = 6;

function expectAsPlanned(made: Made, body: StandBody, where: Where): void {
  const { settings } = where;
  const veneer = settings.veneerFaces.sides ? settings.veneer : 0;
  expect(made.left).toEqual([]);
  expect(made.width + 2 * veneer).toBeCloseTo(body.width, DIGITS);
  expect(body.widths.reduce((sum, { each, count }) => sum + each * count, 0)).toBeCloseTo(body.width, 9);
  const base = settings.feet + (settings.veneerFaces.base ? settings.veneer : 0);
  const [place, bottom] = [onDesk(body, made.width, where), woodUnder(where)];
  const run = Math.max(...body.slice.map(([u]) => u)) - Math.min(...body.slice.map(([u]) => u));
  let seen = 0;
  for (const { from, to, name } of made.layers) {
    // A core is a hair under the cheeks where it is to be sanded flush with them, never above.
    for (const across of [from + 0.01 * (to - from), (from + to) / 2, to - 0.01 * (to - from)]) {
      for (const share of SHARES) {
        const u = share * run;
        // A rib has no top where a slot is.
        if (made.crosses.some(({ at, thickness }) => Math.abs(at - u) < 0.6 * thickness)) continue;
        const top = made.top(across, u);
        if (top === null) continue;
        seen += 1;
        expect([name, (top + base).toFixed(5)]).toEqual([name, bottom(...place(across, u)).toFixed(5)]);
      }
    }
  }
  expect(seen).toBeGreaterThan(made.layers.length);
  for (const { at, thickness, ring } of made.crosses) {
    for (const u of [at - thickness / 2, at + thickness / 2]) {
      for (const share of [0.02, 0.98]) {
        const across = share * made.width;
        const high = Math.max(...ring.filter(([x]) => Math.abs(x - across) < 1e4).map(([, z]) => z));
        expect(high).toBeGreaterThan(0);
        const own = ring.length > 0 ? heightOn(ring, across) : 0;
        expect(own + base - bottom(...place(across, u))).toBeLessThan(1e-6);
      }
    }
  }
}

function heightOn(ring: readonly (readonly [number, number])[], across: number): number {
  const met = ring.flatMap(([x, y], i) => {
    const [u, z] = ring[(i + 1) % ring.length] ?? [x, y];
    return Math.min(x, u) <= across && Math.max(x, u) >= across && x !== u ? [y + ((z - y) * (across - x)) / (u - x)] : []; // prettier-ignore
  });
  return Math.max(...met);
}

const bases = fc.constantFrom('turned' as const, 'square-to-desk' as const);

/** Chords for arcs; and where corners are rounded, what sanding takes of them, which the plan counts as of sharp ones. */
const SHARE_OF_VOLUME = { sharp: 1e-5, rounded: 1e-3 };

function expectVolume(found: number, planned: number, rounded: boolean): void {
  expect(Math.abs(found / planned - 1)).toBeLessThan(rounded ? SHARE_OF_VOLUME.rounded : SHARE_OF_VOLUME.sharp);
}

/** On paper as many parts as the steps of both stands take. */
function expectCounts(body: StandBody, other: StandBody): void {
  const { parts } = standParts({ left: other, right: body });
  const steps = [...body.steps, ...other.steps].flatMap((step) => (step.act === 'cut' ? step.pieces : []));
  const cut = steps.reduce((sum, { count }) => sum + count, 0);
  expect(parts.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(cut);
}

describe('each step carried out in geometry', () => {
  test.each(['stacked', 'skinned', 'ribbed'] as const)('%s: what comes out is the planned body', (build) => {
    let count = 0;
    fc.assert(
      fc.property(anyPlace, bases, details, (place, base, chosen) => {
        const wood = build === 'ribbed' ? thick : board;
        const settings: Partial<StandSettings> = {
          build,
          base,
          ...chosen,
          ...(build === 'ribbed' ? { cheeks: null, relief: null, ribs: { count: 2, cross: 3, fit: 0.1, inset: 10, skin: null } } : {}), // prettier-ignore
        };
        const one = { ...place, settings, board: wood, shop: workshop };
        const body = soundBody(one);
        const at = { ...stance, ...place.stance };
        const where = { stance: at, depth: place.speaker.depth, settings: { ...plain, ...settings } };
        const made = carryOut(body, chosen.glue, at.side === 'right');
        expectAsPlanned(made, body, where);
        if (build !== 'skinned')
          expectVolume(made.volume, body.volume, chosen.corner !== null || chosen.relief !== null);
        for (const { size } of body.printed) {
          expect(size.x).toBeLessThanOrEqual(shop.printer.bed.x + 1e-6);
          expect(size.y).toBeLessThanOrEqual(shop.printer.bed.y + 1e-6);
          expect(size.z).toBeLessThanOrEqual(shop.printer.bed.z + 1e-6);
        }
        expectCounts(body, soundBody({ ...one, stance: { ...place.stance, side: at.side === 'right' ? 'left' : 'right' } })); // prettier-ignore
        count += 1;
      }),
      { numRuns: runs(200) },
    );
    expect(count).toBeGreaterThanOrEqual(runs(200));
  });

  test('solid: what is sawn lies under the cabinet as planned, with no cut beyond the workshop’s saws', () => {
    const met = new Set<string>();
    fc.assert(
      fc.property(anyPlace, bases, numberFrom(0, 1.5), (place, base, pad) => {
        const settings: Partial<StandSettings> = { build: 'solid', base, pad };
        const body = soundBody({ ...place, settings, shop: workshop });
        const [block] = body.blocks;
        if (!block) throw new Error('there is a block');
        const at = { ...stance, ...place.stance };
        expectTrueTemplates(block, at.side);
        const wedge = sawnBlock(block, at.side, tools);
        expect(volumeOf(wedge)).toBeCloseTo(body.volume, 3);
        const where = { stance: at, depth: place.speaker.depth, settings: { ...plain, ...settings } };
        const [onTop, bottom] = [onDesk(body, block.blank.width, where), woodUnder(where)];
        for (const { x, y, z } of cornersOf(wedge)) {
          if (z < 1e-6) continue;
          const across = at.side === 'right' ? x : block.blank.width - x;
          expect(z).toBeCloseTo(bottom(...onTop(across, y)), DIGITS);
        }
        for (const { tool } of block.cuts) met.add(tool);
      }),
      { numRuns: runs(200) },
    );
    // All three come up: the saws are met at their limits.
    expect([...met].sort()).toEqual(['band saw', 'hand', 'table saw']);
  });
});

describe('the bench notices', () => {
  const one = { settings: { base: 'square-to-desk' as const }, shop: workshop };
  const where = { stance, depth: speaker.depth, settings: { ...plain, base: 'square-to-desk' as const } };
  const tryOut = (body: StandBody) => () => {
    expectAsPlanned(carryOut(body, 0, true), body, where);
  };

  test('nothing where nothing is wrong', () => {
    tryOut(bodyOf(one))();
  });

  test('a layer too few, two layers that change places, a layer cut a tenth of a millimetre too low', () => {
    const body = bodyOf(one);
    const steps = (
      change: (layers: readonly { name: string; count: number }[]) => readonly { name: string; count: number }[],
    ) =>
      // prettier-ignore
      body.steps.map((step) => (step.act === 'stack' ? { ...step, layers: change(step.layers) } : step));
    expect(tryOut({ ...body, steps: steps((layers) => layers.slice(1)) })).toThrow();
    expect(tryOut({ ...body, steps: steps(([a, b, ...more]) => (a && b ? [b, a, ...more] : [])) })).toThrow();
    const low = body.pieces.map((piece, i) =>
      i === 20
        ? { ...piece, outside: { ...piece.outside, vertices: piece.outside.vertices.map((v) => ({ ...v, y: v.y > 10 ? v.y - 0.1 : v.y })) } } // prettier-ignore
        : piece,
    );
    expect(tryOut({ ...body, pieces: low })).toThrow();
  });

  test('a rod hole out of line, and a rod too thick', () => {
    const body = bodyOf(one);
    const askew = body.pieces.map(
      (piece, i) =>
      i === 3 ? { ...piece, inside: piece.inside.map((hole) => (hole.kind === 'circle' ? { ...hole, centre: [hole.centre[0] + 0.1, hole.centre[1]] as const } : hole)) } : piece, // prettier-ignore
    );
    expect(tryOut({ ...body, pieces: askew })).toThrow();
    const steps = body.steps.map((step) => (step.act === 'rod' ? { ...step, diameter: 8, quantities: { ...step.quantities, diameter: { value: 8, unit: 'mm' as const, fine: true } } } : step)); // prettier-ignore
    expect(tryOut({ ...body, steps })).toThrow();
  });

  test('a saw set wrongly: the other end first, another side down, half a degree off, a blade too short', () => {
    const solid = bodyOf({ ...one, settings: { ...one.settings, build: 'solid' } });
    const [block] = solid.blocks;
    const [cut] = block?.cuts ?? [];
    if (!block || !cut) throw new Error('there is a cut');
    const after = (change: Partial<typeof cut>) => () =>
      expect(volumeOf(sawnBlock({ ...block, cuts: [{ ...cut, ...change }] }, 'right', tools))).toBeCloseTo(block.volume, 3); // prettier-ignore
    after({})();
    expect(after({ leads: cut.leads === 'front' ? 'rear' : 'front' })).toThrow();
    expect(after({ down: 'inboard side' })).toThrow();
    expect(after({ held: 'left' })).toThrow();
    expect(after({ bevel: cut.bevel + 0.009 })).toThrow();
    expect(after({ mitre: cut.mitre + 0.009 })).toThrow();
    expect(after({ tool: 'table saw' })).toThrow();
  });
});
