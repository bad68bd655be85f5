import { describe, expect, test } from 'vitest';
import { compareBuilds } from '$lib/solution/builds.ts';
import { solve } from '$lib/solution/solve.ts';
import { arrange } from '$lib/workshop/nesting/arrange.ts';
import { bodyMesh } from '$lib/files/solid.ts';
import { faultLine } from '$lib/project/fault.ts';
import { firstLayout, project } from '../projects.ts';

const roomy = { '/layouts/0/stand/lift': 25 };
const planned = (changes: Record<string, unknown>) => {
  const of = project({ ...roomy, ...changes });
  const result = solve(of, firstLayout(of));
  if (!result.ok) throw new Error(result.faults.map(faultLine).join('; '));
  return result.value;
};

describe('builds side by side', () => {
  test('are all four, each with what it takes', () => {
    const of = project(roomy);
    const choices = compareBuilds(of, firstLayout(of));
    expect(choices.map(({ build, chosen, ok }) => [build, chosen, ok])).toEqual([
      ['stacked', true, true],
      ['skinned', false, true],
      ['ribbed', false, true],
      ['solid', false, true],
    ]);
    const [stacked, skinned, ribbed, solid] = choices;
    if (!stacked?.ok || !skinned?.ok || !ribbed?.ok || !solid?.ok) throw new Error('all builds can be had');
    const own = planned({});
    expect(stacked.figures.cutLength).toBeCloseTo(
      own.stand.left.figures.cutLength + own.stand.right.figures.cutLength,
      9,
    );
    expect(stacked.parts).toEqual(own.parts);
    expect(stacked.figures.finishedMass).toBeCloseTo(own.stand.left.mass + own.stand.right.mass, 12);
    expect(skinned.figures.printedVolume).toBeGreaterThan(0);
    expect(stacked.figures.printedVolume).toBe(0);
    expect(solid.parts).toEqual([]);
    expect(solid.sheets).toBe(0);
    expect(solid.figures.solidWood * 1e-9 * 880).toBeGreaterThan(solid.figures.finishedMass);
    expect(ribbed.figures.finishedMass).toBeLessThan(stacked.figures.finishedMass);
    expect(stacked.sheets).toBeNull();
    expect(stacked.estimates.cost.missing).toEqual(['the number of sheets']);
  });

  test('count sheets where somebody counts them', () => {
    const of = project({ ...roomy, '/stock/0/price': 5 });
    const [stacked, , ribbed] = compareBuilds(of, firstLayout(of), (parts) => {
      const sheets = arrange(parts, of.stock, of.cutter);
      return sheets.ok ? { 'MDF 3 mm': sheets.value.length } : null;
    });
    if (!stacked?.ok || !ribbed?.ok) throw new Error('both builds can be had');
    expect(stacked.sheets).toBeGreaterThan(ribbed.sheets ?? NaN);
    expect(stacked.estimates.cost.value).toBe(5 * (stacked.sheets ?? NaN));
  });

  test('cost a block what its blanks cost by the cubic metre', () => {
    const of = project({ ...roomy, '/stock/0/solidPrice': 1200 });
    const solid = compareBuilds(of, firstLayout(of)).find(({ build }) => build === 'solid');
    if (!solid?.ok) throw new Error('the block can be had');
    const blanks = [solid.plan.stand.left, solid.plan.stand.right].flatMap(({ blocks }) => blocks);
    const volume = blanks.reduce((sum, { blank }) => sum + blank.length * blank.width * blank.height, 0);
    expect(solid.estimates.cost.value).toBeCloseTo((volume / 1e9) * 1200, 9);
    const unpriced = compareBuilds(project(roomy), firstLayout(project(roomy))).find(({ build }) => build === 'solid');
    if (!unpriced?.ok) throw new Error('the block can be had');
    expect(unpriced.estimates.cost.missing).toEqual(['the price of a cubic metre of "MDF 3 mm", solid']);
  });

  test('say why one cannot be had, with pointers from the project', () => {
    const of = project({ '/printer': { bed: { x: 60, y: 60, z: 60 } }, ...roomy });
    const second = { ...firstLayout(of), name: 'other seat' };
    const both = { ...of, layouts: [firstLayout(of), second] };
    const skinned = compareBuilds(both, second).find(({ build }) => build === 'skinned');
    expect(skinned).toMatchObject({ ok: false, faults: [{ pointer: '/layouts/1/stand/build' }] });
  });
});

describe('the plan of each build', () => {
  test('says how its width adds up, in its own words', () => {
    for (const build of ['stacked', 'skinned', 'ribbed', 'solid']) {
      const { stand } = planned({ '/layouts/0/stand/build': build, '/layouts/0/stand/veneer': 0.6 });
      for (const side of [stand.left, stand.right]) {
        expect(side.build).toBe(build);
        expect(side.widths.reduce((sum, { each, count }) => sum + each * count, 0)).toBe(side.width);
        expect(side.steps.length).toBeGreaterThan(2);
        expect(side.steps.map(({ text }) => text).join('')).not.toMatch(/NaN|undefined|null/);
      }
    }
  });

  test('gives saw settings in degrees', () => {
    const { stand, sides } = planned({ '/layouts/0/stand/build': 'solid' });
    expect(stand.right.blocks[0]?.cuts[0]?.mitre).toBeCloseTo(Math.abs(sides.right.tilt), 9);
    expect(stand.right.part).toBeNull();
  });

  test('gives cores that close as meshes of their stated volume, the same for both sides', () => {
    const { stand } = planned({
      '/layouts/0/stand/build': 'skinned',
      '/layouts/0/stand/relief': { web: 4, corner: 0 },
      '/layouts/0/stand/pockets': { count: 2, diameter: 8, depth: 12 },
      '/printer': { bed: { x: 150, y: 130, z: 250 } },
    });
    expect(stand.left.printed.map(({ name }) => name)).toEqual(['core-front', 'core-rear']);
    expect(stand.left.printed.map(({ volume }) => volume.toFixed(6))).toEqual(
      stand.right.printed.map(({ volume }) => volume.toFixed(6)),
    );
    for (const body of stand.right.printed) {
      const { vertices, triangles } = bodyMesh(body);
      const volume = triangles.reduce((sum, [a, b, c]) => {
        const [p, q, r] = [vertices[a], vertices[b], vertices[c]];
        if (!p || !q || !r) throw new Error('a triangle has corners');
        return (
          sum + (p.x * (q.y * r.z - q.z * r.y) + p.y * (q.z * r.x - q.x * r.z) + p.z * (q.x * r.y - q.y * r.x)) / 6
        );
      }, 0);
      // Circles are chords in a mesh: a share of their own small volume.
      expect(volume / body.volume).toBeCloseTo(1, 3);
    }
  });

  test('takes cheeks of another stock, and refuses one that is not there', () => {
    const second = { name: 'ply', thickness: 6.4, sheet: { width: 600, height: 400 } };
    const { parts } = planned({ '/stock/1': second, '/layouts/0/stand/cheeks': { stock: 'ply', count: 1 } });
    expect(parts.map(({ name, stock, thickness, quantity }) => [name, stock, thickness, quantity])).toEqual([
      ['slice', 'MDF 3 mm', 3.05, 100],
      ['cheek', 'ply', 6.4, 4],
    ]);
    expect(() => project({ '/layouts/0/stand/cheeks': { stock: 'oak' } })).toThrow(
      '/layouts/0/stand/cheeks/stock: expected the name of a stock ("MDF 3 mm"), got "oak"',
    );
    expect(() => project({ '/layouts/0/stand/ribs': { skin: 'oak' } })).toThrow(
      '/layouts/0/stand/ribs/skin: expected the name of a stock ("MDF 3 mm"), got "oak"',
    );
  });

  test.each([
    [{ '/stock/0/thickness': 0.01 }, '/stock/0/thickness: expected a length from 0.2 to 100 mm, got 0.01'],
    [{ '/printer': { bed: { x: 5, y: 220, z: 250 } } }, '/printer/bed/x: expected a length from 20 to 2000 mm, got 5'],
    [
      { '/layouts/0/stand/cheeks': { count: 1e6 } },
      '/layouts/0/stand/cheeks/count: expected a whole number from 1 to 20, got 1000000',
    ],
    [
      { '/layouts/0/stand/build': 'cast' },
      '/layouts/0/stand/build: expected "stacked" or "skinned" or "ribbed" or "solid", got "cast"',
    ],
    [{ '/stock/0/kerf': -1 }, '/stock/0/kerf: expected a width from 0 to 13 mm, got -1'],
  ])('is refused before any work: %j', (changes, line) => {
    expect(() => project(changes)).toThrow(line);
  });
});
