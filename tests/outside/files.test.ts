import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signedArea } from '$lib/geometry/area.ts';
import { circle, type Path } from '$lib/geometry/contour.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { dxfFile } from '$lib/files/dxf.ts';
import { layerNames } from '$lib/files/plate.ts';
import { anyPath, straying } from '../files/contours.ts';
import { everything, plateOf } from '../files/plate.ts';
import { readDxf } from '../files/readDxf.ts';

/** Files read back by dxf-parser, a reader that has nothing to do with the writer. */
/** Of bulges as they are written, to 12 decimals. */
const HALF_STEP = 5e-13;

describe('DXF files, read by dxf-parser', () => {
  it('are in millimetres, metric, with the three layers', async () => {
    const { header } = readDxf(await dxfFile(everything));
    // DXF reference: $INSUNITS 4 = millimetres. $MEASUREMENT 1 = metric (from memory).
    expect(header['$INSUNITS']).toBe(4);
    expect(header['$MEASUREMENT']).toBe(1);
    expect(header['$EXTMAX']).toMatchObject({ x: 120, y: 50 });
  });

  it('keep area, bounding box, kind and layer of everything', async () => {
    const { layers } = readDxf(await dxfFile(everything));
    for (const layer of layerNames) {
      expect(layers[layer]).toHaveLength(everything.layers[layer].length);
      everything.layers[layer].forEach((contour, index) => {
        const back = layers[layer][index];
        if (!back) throw new Error(`${layer} ${index} is missing`);
        expect(back.kind).toBe(contour.kind);
        if (back.kind === 'path' && contour.kind === 'path') expect(back.closed).toBe(contour.closed);
        expect(Math.abs(signedArea(back) - signedArea(contour))).toBeLessThan(0.01);
        const [box, drawn] = [extentOf(back), extentOf(contour)];
        for (const side of ['left', 'bottom', 'right', 'top'] as const) {
          expect(Math.abs(box[side] - drawn[side])).toBeLessThan(0.01);
        }
      });
    }
  });

  it('write a quarter arc with the bulge of the DXF reference: tan of a quarter of 90°, 0.414214', async () => {
    const quarter: Path = { kind: 'path', closed: false, vertices: [{ x: 1, y: 0, bulge: Math.SQRT2 - 1 }, { x: 0, y: 1, bulge: 0 }] }; // prettier-ignore
    const [back] = readDxf(await dxfFile(plateOf(quarter))).layers.outside;
    if (back?.kind !== 'path') throw new Error('no path');
    expect(back.vertices[0]?.bulge.toFixed(6)).toBe('0.414214');
    expect(Math.abs((back.vertices[0]?.bulge ?? 0) - (Math.SQRT2 - 1))).toBeLessThanOrEqual(HALF_STEP);
  });

  it('split an arc that is nearly a full turn, so that rounding its ends leaves its radius alone', async () => {
    // A chord of 0.02 mm under an arc of radius 20: rounding the ends alone would move the radius by 5 %.
    const radius = 20;
    const half = Math.asin(0.01 / radius);
    const ends = [half, 2 * Math.PI - half].map(
      (angle) => [radius * Math.cos(angle), radius * Math.sin(angle)] as const,
    );
    const bulge = Math.tan((2 * Math.PI - 2 * half) / 4);
    const vertices = ends.map(([x, y], index) => ({ x: x + 0.00049, y, bulge: index === 0 ? bulge : 0 }));
    const [back] = readDxf(await dxfFile(plateOf({ kind: 'path', closed: true, vertices }))).layers.outside;
    if (!back) throw new Error('no path');
    const full = circle([0.00049, 0], radius);
    expect(straying(back, full)).toBeLessThan(0.001);
    expect(Math.abs(signedArea(back) - Math.PI * radius ** 2)).toBeLessThan(0.05);
  });

  it('keep any contour with arcs within a micrometre', async () => {
    await fc.assert(
      fc.asyncProperty(anyPath, async (path) => {
        const [back] = readDxf(await dxfFile(plateOf(path))).layers.outside;
        expect(back && straying(path, back)).toBeLessThan(0.001);
        expect(back && straying(back, path)).toBeLessThan(0.001);
      }),
    );
  });
});
