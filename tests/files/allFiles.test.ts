import { createHash } from 'node:crypto';
import { unzipSync } from 'fflate';
import { describe, expect, it, vi } from 'vitest';
import { signedArea } from '$lib/geometry/area.ts';
import { planFile } from '$lib/files/planFile.ts';
import { allFiles, type AllFiles } from '$lib/files/allFiles.ts';
import { cutFiles } from '$lib/files/bundle.ts';
import { manifest } from '$lib/files/manifest.ts';
import { zipFile } from '$lib/files/zip.ts';
import { solve } from '$lib/solution/solve.ts';
import type { Project } from '$lib/project/project.ts';
import { faultLine } from '$lib/project/fault.ts';
import { rowsOf } from '../inRows.ts';
import { firstLayout, project } from '../projects.ts';
import { readCsv } from './readCsv.ts';
import { facetVolume, readStl } from './readStl.ts';

async function made(of: Project): Promise<AllFiles> {
  const planned = solve(of, firstLayout(of));
  if (!planned.ok) throw new Error(planned.faults.map(faultLine).join('; '));
  const result = await allFiles(planned.value, rowsOf(planned.value));
  if (!result.ok) throw new Error(result.faults.map(faultLine).join('; '));
  return result.value;
}

/** Those of the demo, made once for the tests that only look at them. */
const ofDemo = made(project());

const bytesOf = (content: string | Uint8Array | undefined): Buffer =>
  typeof content === 'string' ? Buffer.from(content) : Buffer.from(content ?? []);

interface Listed {
  readonly path: string;
  readonly about: string;
  readonly bytes: number;
  readonly sha256: string;
}

describe('all files of a layout', () => {
  it('are cut files, templates, solids, the cut list and their list', async () => {
    const of = project();
    const { files, document } = await ofDemo;
    const planned = solve(of, firstLayout(of));
    if (!planned.ok) throw new Error('the demo has a plan');
    const cut = await cutFiles(planned.value, rowsOf(planned.value));
    if (!cut.ok) throw new Error('the demo has cut files');
    expect(files.map(({ path }) => path)).toEqual([
      'plan.json',
      'project.json',
      ...cut.value.cut.map(({ path }) => path),
      'templates/slice.pdf',
      'solids/stand.stl',
      'solids/stands.3mf',
      'cut-list.csv',
      'materials.csv',
      'coupons/coupon MDF 3 mm.svg',
      'coupons/coupon MDF 3 mm.dxf',
      'gauges/wedge-gauge.svg',
      'gauges/wedge-gauge.dxf',
      'gauges/baffle-gauge.svg',
      'gauges/baffle-gauge.dxf',
      'sight-card.pdf',
      'sight-card.svg',
      'build-sheet.pdf',
      'manifest.json',
    ]);
    expect(files[0]?.content).toBe(document);
    expect(document).toBe(planFile(planned.value, cut.value.sheets));
    for (const { path, text } of cut.value.cut) {
      expect(files.find((file) => file.path === path)?.content).toBe(text);
    }
  });

  it('say in degrees how each part is turned on its sheet', async () => {
    const of = project();
    const planned = solve(of, firstLayout(of));
    if (!planned.ok) throw new Error('the demo has a plan');
    const cut = await cutFiles(planned.value, rowsOf(planned.value));
    if (!cut.ok) throw new Error('the demo has cut files');
    const { sheets } = JSON.parse(planFile(planned.value, cut.value.sheets)) as {
      sheets: { placements: { turn: number }[] }[];
    };
    const told = sheets.flatMap(({ placements }) => placements.map(({ turn }) => turn));
    const laid = cut.value.sheets.flatMap(({ placements }) => placements.map(({ turn }) => turn));
    expect(told).toEqual(laid.map((turn) => (turn * 180) / Math.PI));
    expect(told.filter((turn) => ![0, 90, 180, 270].includes(turn))).toEqual([]);
  });

  it('are listed with their bytes and SHA-256, as Node finds them', async () => {
    const { files } = await ofDemo;
    const list = JSON.parse(String(files.at(-1)?.content)) as { files: Listed[]; leftOut: unknown[] };
    expect(list).toMatchObject({
      project: 'Bindery desk',
      layout: 'window side',
      format: 'wedgewright/manifest',
      projectVersion: 2,
    });
    expect(list.leftOut).toEqual([]);
    expect(list.files.map(({ path }) => path)).toEqual(files.slice(0, -1).map(({ path }) => path));
    for (const [i, { bytes, sha256, about }] of list.files.entries()) {
      const content = bytesOf(files[i]?.content);
      expect([bytes, sha256]).toEqual([content.length, createHash('sha256').update(content).digest('hex')]);
      expect(about).not.toBe('');
    }
  });

  it('pack into one archive, the same bytes every time', async () => {
    const { files } = await ofDemo;
    const [one, again] = [zipFile(files), zipFile((await made(project())).files)];
    expect(Buffer.from(one).equals(Buffer.from(again))).toBe(true);
    expect(Object.keys(unzipSync(one))).toEqual(files.map(({ path }) => path));
  });

  it('hold the stand as one body: the area of its layers times its width', async () => {
    const of = project();
    const planned = solve(of, firstLayout(of));
    if (!planned.ok) throw new Error('the demo has a plan');
    const { stand, parts } = planned.value;
    const [part] = parts;
    if (!part) throw new Error('a stand has parts');
    const stl = (await ofDemo).files.find(({ path }) => path === 'solids/stand.stl')?.content;
    const { facets } = readStl(bytesOf(stl));
    const area = part.inside.reduce((sum, hole) => sum - Math.abs(signedArea(hole)), signedArea(part.outside));
    // Two rod holes of about 3 mm radius as chords: a few tenths of a mm², and a micrometre along the outline.
    expect(Math.abs(facetVolume(facets) / stand.left.width - area)).toBeLessThan(1.5);
  });

  it('list what to cut', async () => {
    const csv = (await ofDemo).files.find(({ path }) => path === 'cut-list.csv')?.content;
    const [head, row, ...more] = readCsv(String(csv).slice(1));
    expect(head?.slice(0, 4)).toEqual(['Part', 'Stock', 'Thickness mm', 'Left stand']);
    expect(row?.slice(0, 4)).toEqual(['slice', 'MDF 3 mm', '3.05', '54']);
    expect(row?.slice(4, 6)).toEqual(['54', '108']);
    expect(row?.[10]).toMatch(/^1( & \d+)*$/);
    expect(more).toEqual([]);
  });

  it('come in two bodies and templates where the stands differ, on Letter where inches are read', async () => {
    const { files } = await made(
      project({
        '/layouts/0/placement/right': { x: 380, y: 420 },
        '/layouts/0/listener/offset': 40,
        '/display/length': 'in',
      }),
    );
    const paths = files.map(({ path }) => path);
    expect(paths.filter((path) => path.startsWith('solids/'))).toEqual([
      'solids/stand left.stl',
      'solids/stand right.stl',
      'solids/stands.3mf',
    ]);
    const templates = files.filter(({ path }) => path.startsWith('templates/'));
    expect(templates).toHaveLength(2);
    // Letter: 8.5 inches of 72 points, or 11 where the page lies.
    for (const { content } of templates)
      expect(bytesOf(content).toString('latin1')).toMatch(/MediaBox \[0 0 (612|792)\.? /);
  });

  it('carry the colours that the project names', async () => {
    const colours = { outside: '#ff0000', inside: '#0000ff', mark: '#00aa00' };
    const { files } = await made(project({ '/cutter/colours': colours }));
    // What is cut: the sight card is only printed.
    const drawings = files.filter(({ path }) => path.endsWith('.svg') && path !== 'sight-card.svg');
    expect(drawings.length).toBeGreaterThan(1);
    for (const { content } of drawings) expect(content).toContain('<g id="outside" fill="none" stroke="#ff0000"');
  });

  it('take hostile names for text', async () => {
    const hostile = '=cmd|"/C calc"!A1;=2 </title><script>alert(1)</script> ../../x';
    const { files } = await made(
      project({
        '/title': hostile,
        '/stock/0/name': hostile,
        '/layouts/0/name': hostile,
        '/layouts/0/stand/stock': hostile,
      }),
    );
    for (const { path } of files)
      expect(path).toMatch(/^([\w-]+\.\w+|(sheets|parts|templates|solids|coupons|gauges)\/[^/<>|"]+)$/);
    const of = (name: string) => files.find(({ path }) => path === name)?.content;
    expect(readCsv(String(of('cut-list.csv')).slice(1))[1]?.[1]).toBe(`'${hostile.replace(';=', ";'=")}`);
    const model = unzipSync(bytesOf(of('solids/stands.3mf')))['3D/3dmodel.model'];
    expect(bytesOf(model).toString()).not.toContain('<script>');
    expect(JSON.parse(String(of('manifest.json')))).toMatchObject({ project: hostile, layout: hostile, leftOut: [] });
    expect(zipFile(files).length).toBeGreaterThan(1000);
  });
});

describe('the list of files', () => {
  const file = { path: 'a.txt', about: 'an example', content: 'abc' };

  it('has the sum that FIPS 180 gives for "abc", and what was left out', async () => {
    const leftOut = [{ path: 'b.pdf', reason: 'too large' }];
    const list: unknown = JSON.parse(await manifest({ project: 'p', layout: 'l' }, [file], leftOut));
    // The example of the Secure Hash Standard (from memory).
    const sha256 = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
    expect(list).toMatchObject({ files: [{ path: 'a.txt', about: 'an example', bytes: 3, sha256 }], leftOut });
  });

  it('does without sums where there is no cryptography', async () => {
    vi.stubGlobal('crypto', {});
    const list: unknown = JSON.parse(await manifest({ project: 'p', layout: 'l' }, [file], []));
    vi.unstubAllGlobals();
    expect(list).toMatchObject({ files: [{ bytes: 3, sha256: null }] });
  });
});
