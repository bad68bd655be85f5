import { afterEach, describe, expect, it, vi } from 'vitest';
import { circle, polygonPath, type Path } from '$lib/geometry/contour.ts';
import { edgesOf } from '$lib/geometry/edge.ts';
import { edgeGap } from '$lib/geometry/edgeGap.ts';
import { solve } from '$lib/solution/solve.ts';
import { outlineFault, type Made } from '$lib/solution/outlines.ts';
import type { Part } from '$lib/workshop/part.ts';
import { solid } from '$lib/stand/builds/solid.ts';
import { faultLine } from '$lib/project/fault.ts';
import { firstLayout, project } from '../projects.ts';
import { plain } from '../stand/stands.ts';
import { plainText } from '$lib/project/sentence.ts';
import { plainly } from '../plainly.ts';

const planOf = (stand: Record<string, unknown>, more: Record<string, unknown> = {}) => {
  const of = project({ ...more, '/layouts/0/stand': stand });
  return solve(of, firstLayout(of));
};

const lines = (outcome: ReturnType<typeof planOf>): string[] => (outcome.ok ? [] : outcome.faults.map(faultLine));

describe('stands that once had outlines nobody can cut', () => {
  it('windows stay a web away from a corner as round as can be', () => {
    const outcome = planOf({ lift: 60, build: 'stacked', corner: 40, relief: { web: 8 } });
    const parts = outcome.ok ? outcome.value.parts : [];
    expect(parts.length).toBeGreaterThan(0);
    for (const { outside, inside } of parts) {
      const windows = inside.filter((hole): hole is Path => hole.kind === 'path');
      expect(windows.length).toBeGreaterThan(0);
      const gaps = windows.flatMap((window) =>
        edgesOf(window).flatMap((edge) => edgesOf(outside).map((other) => edgeGap(edge, other))),
      );
      // Not only not nearer: straight runs follow the arc within a 200th of its radius, so wood is not wasted either.
      expect(Math.min(...gaps)).toBeGreaterThan(8 - 1e-6);
      expect(Math.min(...gaps)).toBeLessThan(8 + 40 / 200);
    }
  });

  it('a recess whose wall would come out of a leaning end is refused at its border, with what to change', () => {
    const stand = (border: number) => ({ lift: 25, build: 'stacked', recess: { face: 'top', depth: 4, border } });
    const [line = ''] = lines(planOf(stand(0.5)));
    expect(line).toMatch(/^\/layouts\/0\/stand\/recess\/border: expected a border that leaves 1 mm of wood/);
    const wider = Number(/make it ([\d.]+) mm wider/.exec(line)?.[1]);
    expect(lines(planOf(stand(0.5 + wider)))).toEqual([]);
    expect(lines(planOf(stand(0.5 + wider - 0.2)))).toHaveLength(1);
  });

  it('a slot near an end that leans over it is refused at its place', () => {
    const stand = (fromRear: number) => ({
      lift: 40,
      build: 'stacked',
      ends: 'square',
      rods: null,
      cable: { width: 10, depth: 30, fromRear },
    });
    const steep = { '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 30 } };
    const [line = ''] = lines(planOf(stand(228), steep));
    expect(line).toMatch(
      /^\/layouts\/0\/stand\/cable\/fromRear: expected a slot with 3 mm of wood to the leaning ends/,
    );
    const by = Number(/move it by ([\d.]+) mm/.exec(line)?.[1]);
    expect(lines(planOf(stand(228 - by), steep))).toEqual([]);
  });

  it('of a low front skin only its inner face may be left: it is planed from a blank as long as that', () => {
    const outcome = planOf(
      { lift: 20, build: 'ribbed', ends: 'square', minimumEdge: 0.5, ribs: { skin: 'skin' } },
      {
        '/speaker/mass': null,
        '/layouts/0/aim/tilt': { rule: 'as-set', degrees: -14 },
        '/stock': [
          { name: 'rib', thickness: 3, sheet: { width: 1200, height: 800 } },
          { name: 'skin', thickness: 18, sheet: { width: 1200, height: 800 } },
        ],
      },
    );
    expect(lines(outcome)).toEqual([]);
    const skin = outcome.ok ? outcome.value.parts.find(({ name }) => name === 'front-skin') : undefined;
    expect(Math.max(...(skin?.outside.vertices.map(({ x }) => x) ?? []))).toBeGreaterThan(1);
  });
});

describe('an outline that fails its check', () => {
  const square = (size: number): Path =>
    polygonPath([
      [0, 0],
      [size, 0],
      [size, size],
      [0, size],
    ]);
  const made = (more: Partial<Part>): Made => ({
    stands: { left: { printed: [], blocks: [] }, right: { printed: [], blocks: [] } },
    parts: [
      {
        name: 'slice',
        stock: 'board',
        thickness: 3,
        quantity: 1,
        outside: square(50),
        inside: [],
        mark: [],
        labels: 'name',
        ...more,
      },
    ],
  });
  const settings = { ...plain, recess: { face: 'top' as const, depth: 2, border: 5 }, corner: 5 };

  it('is a fault at the setting without which it would pass', () => {
    const bad = made({ inside: [circle([49, 25], 3)] });
    const fault = outlineFault(bad, settings, ({ corner }) => (corner === null ? made({}) : bad));
    expect(plainly(fault)).toEqual({
      pointer: '/stand/corner',
      message: expect.stringMatching(/^expected a hole in part "slice" with wood all round it, got one that runs off/),
    });
  });

  it('is a fault of the build where no single setting is the cause', () => {
    const bad = made({ inside: [circle([46, 25], 3)] });
    expect(plainly(outlineFault(bad, settings, () => null))).toEqual({
      pointer: '/stand/build',
      message: expect.stringMatching(/at least 2 mm of wood round it, got 1 mm at/),
    });
    expect(outlineFault(made({}), settings, () => null)).toBeNull();
  });

  it('is found in printed bodies, on their roofs, and in templates', () => {
    const good = made({});
    const bow = polygonPath([
      [0, 0],
      [9, 9],
      [9, 0],
      [0, 9],
    ]);
    const size = { x: 9, y: 9, z: 9 };
    const core = {
      name: 'core',
      quantity: 1,
      size,
      volume: 1,
      mass: 1,
      levels: [{ height: 9, contours: [square(9)] }],
    };
    const withPrinted = (printed: Partial<typeof core> & { roof?: Path }): Made => ({
      ...good,
      stands: { ...good.stands, right: { blocks: [], printed: [{ ...core, ...printed }] } },
    });
    const pointerOf = (of: Made) => {
      const fault = outlineFault(of, settings, () => good);
      return fault ? plainText(fault.message) : undefined;
    };
    expect(pointerOf(withPrinted({}))).toBeUndefined();
    expect(pointerOf(withPrinted({ levels: [{ height: 9, contours: [bow] }] }))).toContain('part "core"');
    expect(pointerOf(withPrinted({ roof: bow }))).toContain('part "core"');
    const blank = { length: 9, width: 9, height: 9 };
    const block = { name: 'block', blank, blankVolume: 1, volume: 1, waste: 0, cuts: [] };
    const templates = [{ face: 'front', outline: bow, ends: ['inboard', 'outboard'] }] as const;
    const sawn = { ...good, stands: { ...good.stands, left: { printed: [], blocks: [{ ...block, templates }] } } };
    expect(pointerOf(sawn)).toContain('part "block"');
  });
});

describe('a build that throws', () => {
  afterEach(() => {
    vi.restoreAllMocks();
  });

  it('is told as a fault at the setting that was being worked on, and is never thrown', () => {
    const { body } = solid;
    const broken = vi.spyOn(solid, 'body').mockImplementation((request) => {
      if (request.settings.cable) throw new Error('wood was left over');
      return body(request);
    });
    const cable = { width: 10, depth: 3, fromRear: 100 };
    expect(planOf({ lift: 30, build: 'solid', cable, recess: { face: 'top', depth: 1 } })).toEqual({
      ok: false,
      kind: 'no-answer',
      faults: [
        {
          pointer: '/layouts/0/stand/cable',
          message: expect.stringMatching(/mistake of the program \(wood was left over\)/),
        },
      ],
    });
    expect(planOf({ lift: 30, build: 'solid' }).ok).toBe(true);
    expect(broken).toHaveBeenCalled();
  });

  it('is told at the build where it throws whatever the settings', () => {
    vi.spyOn(solid, 'body').mockImplementation(() => {
      throw new Error('no wood');
    });
    expect(lines(planOf({ lift: 30, build: 'solid', corner: 4 }))).toEqual([
      expect.stringMatching(/^\/layouts\/0\/stand\/build: .*no wood/),
    ]);
  });
});
