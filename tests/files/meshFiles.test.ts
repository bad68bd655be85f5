import fc from 'fast-check';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { circle } from '$lib/geometry/contour.ts';
import { volumeOf } from '$lib/files/mesh.ts';
import { bodyMesh } from '$lib/files/solid.ts';
import { stlFile } from '$lib/files/stl.ts';
import { threeMfFile } from '$lib/files/threeMf.ts';
import { extruded } from '$lib/workshop/body.ts';
import { anySteppedBody, rectangle } from './bodies.ts';
import { facetVolume, readStl } from './readStl.ts';

const drilled = bodyMesh(
  extruded('drilled', { outside: rectangle(-20, -5, 100, 40), inside: [circle([10, 10], 5)] }, 12.3),
);

describe('an STL file', () => {
  it('does not begin with the word that marks text', () => {
    const { header, facets } = readStl(stlFile(drilled));
    expect(header).toBe('Wedgewright, lengths in millimetres');
    expect(facets).toHaveLength(drilled.triangles.length);
  });

  it('keeps corners apart, edges shared and the volume, for any body', () => {
    fc.assert(
      fc.property(anySteppedBody, (body) => {
        const mesh = bodyMesh(body);
        const { facets } = readStl(stlFile(mesh));
        const names = facets.map(({ corners }) => corners.map((corner) => corner.join(' ')));
        expect(new Set(names.flat()).size).toBe(mesh.vertices.length);
        const runs = new Set(names.flatMap(([a, b, c]) => [`${a}, ${b}`, `${b}, ${c}`, `${c}, ${a}`]));
        expect(runs.size).toBe(3 * facets.length);
        for (const run of runs) expect(runs.has(run.split(', ').reverse().join(', '))).toBe(true);
        // Single precision: seven digits of each coordinate.
        expect(Math.abs(facetVolume(facets) / volumeOf(mesh) - 1)).toBeLessThan(1e-5);
      }),
    );
  });

  it('has normals of length 1 that point away from the body', () => {
    const { facets } = readStl(stlFile(bodyMesh(extruded('block', { outside: rectangle(0, 0, 4, 3), inside: [] }, 2))));
    for (const { normal, corners } of facets) {
      expect(Math.hypot(...normal)).toBeCloseTo(1, 6);
      const outward = corners.every((corner) => {
        return (
          corner.reduce((sum, value, axis) => sum + (value - ([2, 1.5, 1][axis] ?? 0)) * (normal[axis] ?? 0), 0) > 0
        );
      });
      expect(outward).toBe(true);
    }
  });
});

describe('a 3MF file', () => {
  const hostile = 'A <b>"left" & \'right\'</b> \u0000]]> 😀 Keil';
  const bytes = threeMfFile(hostile, [
    { name: hostile, mesh: drilled },
    { name: 'second', mesh: drilled },
  ]);
  const entries = unzipSync(bytes);
  const text = (path: string): string => strFromU8(entries[path] ?? new Uint8Array());
  const model = text('3D/3dmodel.model');

  it('holds content types, relationships and the model', () => {
    // 3MF Core Specification and Open Packaging Conventions: these parts, types and relation (from memory).
    expect(Object.keys(entries)).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model']);
    expect(text('[Content_Types].xml')).toContain(
      '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>',
    );
    expect(text('_rels/.rels')).toContain('Target="/3D/3dmodel.model"');
    expect(text('_rels/.rels')).toContain('Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"');
  });

  it('is in millimetres, with titles and names as text', () => {
    expect(model).toContain('<model unit="millimeter"');
    const escaped = 'A &lt;b&gt;&quot;left&quot; &amp; &#39;right&#39;&lt;/b&gt; \ufffd]]&gt; 😀 Keil';
    expect(model).toContain(`<metadata name="Title">${escaped}</metadata>`);
    expect(model).toContain(`<object id="1" type="model" name="${escaped}">`);
    expect(model).toContain('<object id="2" type="model" name="second">');
  });

  it('holds the corners and triangles of every body as they are', () => {
    const [first = ''] = model.split('</object>');
    const numbers = (tag: string, names: readonly string[]): number[][] =>
      [...first.matchAll(new RegExp(`<${tag} ${names.map((name) => `${name}="([^"]*)"`).join(' ')}/>`, 'g'))].map(
        (match) => match.slice(1).map(Number),
      );
    expect(numbers('triangle', ['v1', 'v2', 'v3'])).toEqual(drilled.triangles);
    expect(numbers('vertex', ['x', 'y', 'z'])).toEqual(drilled.vertices.map(({ x, y, z }) => [x, y, z]));
    expect(model).not.toMatch(/"[^"]*\de[-+]?\d/i);
  });

  it('stands the bodies side by side where no coordinate is negative', () => {
    const spots = [...model.matchAll(/<item objectid="(\d)" transform="1 0 0 0 1 0 0 0 1 ([^"]*)"\/>/g)];
    expect(spots.map(([, id, spot]) => [id, spot])).toEqual([
      ['1', '20 5 0'],
      ['2', '130 5 0'],
    ]);
  });

  it('holds a body once and stands it on the bed as often as it is needed', () => {
    const twice = threeMfFile('two', [{ name: 'core', mesh: drilled, copies: 2 }]);
    const text = strFromU8(unzipSync(twice)['3D/3dmodel.model'] ?? new Uint8Array());
    expect(text.match(/<object /g)).toHaveLength(1);
    const spots = [...text.matchAll(/<item objectid="(\d)" transform="1 0 0 0 1 0 0 0 1 ([^"]*)"\/>/g)];
    expect(spots.map(([, id, spot]) => [id, spot])).toEqual([
      ['1', '20 5 0'],
      ['1', '130 5 0'],
    ]);
  });

  it('is the same every time', () => {
    const again = threeMfFile(hostile, [
      { name: hostile, mesh: drilled },
      { name: 'second', mesh: drilled },
    ]);
    expect(Buffer.from(again).equals(Buffer.from(bytes))).toBe(true);
  });
});
