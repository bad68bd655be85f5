import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { allFiles } from '$lib/files/allFiles.ts';
import { parseProject } from '$lib/project/parse.ts';
import { faultLine } from '$lib/project/fault.ts';
import type { Project } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { spaceScene } from '$lib/drawing/space/spaceScene.ts';
import { exampleFiles, loadExample } from '$lib/views/document/exampleFiles.ts';
import { root } from '../tools/root.mjs';
import { rowsOf } from './inRows.ts';

const textOf = (file: string): string => readFileSync(`${root}examples/${file}.json`, 'utf8');

function opened(file: string): Project {
  const parsed = parseProject(textOf(file));
  if (!parsed.ok) throw new Error(parsed.faults.map(faultLine).join('\n'));
  return parsed.value;
}

function solved(file: string): Solution {
  const project = opened(file);
  const [layout] = project.layouts;
  if (!layout) throw new Error('an example has a layout');
  const solution = solve(project, layout);
  if (!solution.ok) throw new Error(solution.faults.map(faultLine).join('\n'));
  return solution.value;
}

describe('the examples', () => {
  test('are the files of their folder, each under its own title', async () => {
    expect(exampleFiles.map(({ file }) => `${file}.json`).sort()).toEqual(readdirSync(`${root}examples`).sort());
    expect(exampleFiles).toHaveLength(8);
    for (const example of exampleFiles) {
      expect(opened(example.file).title).toBe(example.title);
      expect(await loadExample(example)).toEqual(JSON.parse(textOf(example.file)));
    }
    await expect(loadExample({ file: 'none', title: '', about: '' })).rejects.toThrow('There is no example none.');
  });

  test.each(exampleFiles.map(({ file }) => file))(
    '%s opens without a fault, aims at the head and counts as an example',
    (file) => {
      const { findings, sides, project } = solved(file);
      expect(findings.filter(({ level }) => level === 'fault').map(({ code }) => code)).toEqual([]);
      expect(project.example).toBe(true);
      expect(project.speaker.entered).toEqual([]);
      if (project.layouts[0]?.aim.over === null)
        for (const { miss } of [sides.left, sides.right]) expect(miss).toBeLessThan(1e-6);
    },
  );

  test.each(exampleFiles.map(({ file }) => file))('%s makes all its files', async (file) => {
    const solution = solved(file);
    const made = await allFiles(solution, rowsOf(solution));
    if (!made.ok) throw new Error(made.faults.map(faultLine).join('\n'));
    const paths = made.value.files.map(({ path }) => path);
    for (const path of ['plan.json', 'build-sheet.pdf', 'cut-list.csv', 'manifest.json']) expect(paths).toContain(path);
    for (const { name } of solution.parts)
      expect(paths.some((path) => path.startsWith('parts/') && path.includes(name))).toBe(true);
    for (const { content } of made.value.files) expect(content.length).toBeGreaterThan(0);
    const list: unknown = JSON.parse(String(made.value.files.at(-1)?.content));
    expect(JSON.stringify(list)).not.toContain('NaN');
  });

  test('show what they say', () => {
    const corner = solved('corner-desk').layout;
    expect(corner.desk.outline.rule).toBe('corner');
    expect(corner.room.walls.map(({ bearing }) => bearing)).toEqual([-45, 45]);
    expect(solved('tiny-desk').layout.desk.outline).toMatchObject({ rule: 'rectangle', width: 800 });
    for (const side of Object.values(solved('shelf').sides)) expect(side.tilt).toBeLessThan(-5);
    expect(solved('shelf').layout.stand.stop).not.toBeNull();
    expect(opened('on-their-side').speaker.lying).toBe('tweeter-inboard');
    const [tweeter, woofer] = opened('coaxial').speaker.drivers;
    expect([tweeter?.height, tweeter?.offset, tweeter?.acousticDepth]).toEqual([
      woofer?.height,
      woofer?.offset,
      woofer?.acousticDepth,
    ]);
    for (const { pathDifference } of solved('coaxial').sides.left.crossovers) expect(pathDifference).toBeCloseTo(0, 9);
    expect(opened('three-way').speaker.drivers.map(({ offset }) => offset === 0)).toEqual([false, false, true]);
    const { postures } = solved('sit-stand').layout.listener;
    expect(postures.map(({ deskHeight }) => deskHeight)).toEqual([1080]);
    const floor = solved('floor-stands').layout;
    expect(floor.surfaces.map(({ on }) => on)).toEqual(['floor', 'floor']);
    const [screen] = floor.monitors;
    expect((screen?.width ?? 0) / (screen?.height ?? 1)).toBeGreaterThan(2.3);
  });

  test('are seen in space, each with all its surfaces', () => {
    for (const { file } of exampleFiles) {
      const solution = solved(file);
      const { faces, radius } = spaceScene(solution);
      expect(radius).toBeGreaterThan(300);
      expect(radius).toBeLessThan(4000);
      // A plate alone has six faces, a stand on the floor more.
      const plates = faces.filter(({ subject }) => subject === 'surface').length;
      if (solution.layout.surfaces.length === 0) expect(plates).toBe(0);
      else expect(plates).toBeGreaterThanOrEqual(6 * solution.layout.surfaces.length);
    }
  });
});
