import { describe, expect, test } from 'vitest';
import { signedArea } from '$lib/geometry/area.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { cutFiles, type CutFile } from '$lib/files/bundle.ts';
import { solve } from '$lib/solution/solve.ts';
import type { Plan } from '$lib/solution/document.ts';
import { readDxf } from '../files/readDxf.ts';
import { firstLayout, project } from '../projects.ts';
import { useBrowser } from './page.ts';

/** What the writers promise of areas and boxes, mm and mm². */
const CLOSE = 0.01;

interface Measured {
  readonly id: string;
  readonly shapes: readonly { readonly kind: string; readonly box: DOMRectLike; readonly length: number }[];
}
interface DOMRectLike {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

async function demoFiles(): Promise<{ planned: Plan; files: readonly CutFile[] }> {
  const of = project();
  const planned = solve(of, firstLayout(of));
  if (!planned.ok) throw new Error('the demo has a plan');
  const files = await cutFiles(planned.value);
  if (!files.ok) throw new Error('the demo has files');
  return { planned: planned.value, files: files.value.cut };
}

function text(files: readonly CutFile[], path: string): string {
  const file = files.find((one) => one.path === path);
  if (!file) throw new Error(`expected ${path} among ${files.map((one) => one.path).join(', ')}`);
  return file.text;
}

const firstSheet = (files: readonly CutFile[]): string =>
  files.find(({ path }) => /^sheets\/MDF 3 mm-1\b.*\.svg$/.test(path))?.path ?? '';

describe('cut files, read by the browser', () => {
  const visit = useBrowser();

  /** What Chromium makes of an SVG file: its size in mm, and every shape's box and length in the file's own units. */
  async function measure(svg: string): Promise<{ width: number; height: number; layers: readonly Measured[] }> {
    const { page } = await visit();
    return page.evaluate((source) => {
      const parsed = new DOMParser().parseFromString(source, 'image/svg+xml');
      const root = document.body.appendChild(document.adoptNode(parsed.documentElement)) as unknown as SVGSVGElement;
      const mm = (value: SVGAnimatedLength): number => {
        value.baseVal.convertToSpecifiedUnits(SVGLength.SVG_LENGTHTYPE_MM);
        return value.baseVal.valueInSpecifiedUnits;
      };
      const layers = [...root.querySelectorAll('g')].map((group) => ({
        id: group.id,
        shapes: [...group.querySelectorAll('path, circle')].map((shape) => {
          const { x, y, width, height } = (shape as SVGGeometryElement).getBBox();
          const length = (shape as SVGGeometryElement).getTotalLength();
          return { kind: shape.tagName, box: { x, y, width, height }, length };
        }),
      }));
      const size = { width: mm(root.width), height: mm(root.height), layers };
      root.remove();
      return size;
    }, svg);
  }

  test('a part’s SVG has the size, outline and holes of the plan', async () => {
    const { planned, files } = await demoFiles();
    const [part] = planned.parts;
    if (!part) throw new Error('the demo has a part');
    const { width, height, layers } = await measure(text(files, 'parts/slice.svg'));
    const box = extentOf(part.outside);
    expect(Math.abs(width - (box.right - box.left))).toBeLessThan(CLOSE);
    expect(Math.abs(height - (box.top - box.bottom))).toBeLessThan(CLOSE);
    expect(layers.map(({ id }) => id)).toEqual(['engrave', 'inside', 'outside']);

    const [outline] = layers[2]?.shapes ?? [];
    const corners = part.outside.vertices;
    const round = corners.reduce((sum, { x, y }, i) => {
      const next = corners[(i + 1) % corners.length] ?? { x, y };
      return sum + Math.hypot(next.x - x, next.y - y);
    }, 0);
    // Corners are written to 0.001 mm, and Chromium measures in single precision.
    expect(Math.abs((outline?.length ?? 0) - round)).toBeLessThan(CLOSE);
    const holes = layers[1]?.shapes ?? [];
    expect(holes).toHaveLength(part.inside.length);
    for (const [i, hole] of part.inside.entries()) {
      if (hole.kind !== 'circle') throw new Error('a rod hole is a circle');
      expect(Math.abs((holes[i]?.box.width ?? 0) - 2 * hole.radius)).toBeLessThan(CLOSE);
      expect(Math.abs((holes[i]?.box.x ?? 0) - (hole.centre[0] - hole.radius))).toBeLessThan(CLOSE);
      // SVG counts down from the top.
      expect(Math.abs((holes[i]?.box.y ?? 0) - (height - hole.centre[1] - hole.radius))).toBeLessThan(CLOSE);
    }
  });

  test('a sheet’s SVG is the sheet, with every outline grown and every hole shrunk by half the kerf', async () => {
    const { planned, files } = await demoFiles();
    const [part] = planned.parts;
    if (!part) throw new Error('the demo has a part');
    const { width, height, layers } = await measure(text(files, firstSheet(files)));
    expect([width, height].map((side) => Math.round(side * 1000) / 1000)).toEqual([600, 400]);
    const inside = layers.find(({ id }) => id === 'inside')?.shapes ?? [];
    const outside = layers.find(({ id }) => id === 'outside')?.shapes ?? [];
    expect(outside.length).toBeGreaterThan(1);
    expect(inside).toHaveLength(outside.length * part.inside.length);
    const [hole] = part.inside;
    if (hole?.kind !== 'circle') throw new Error('a rod hole is a circle');
    for (const { box } of inside) expect(Math.abs(box.width - (2 * hole.radius - 0.2))).toBeLessThan(CLOSE);
    for (const { box } of outside) {
      expect(box.x > 0 && box.y > 0 && box.x + box.width < 600 && box.y + box.height < 400).toBe(true);
    }
  });

  test('SVG and DXF of every sheet say the same', async () => {
    const { files } = await demoFiles();
    for (const { path, text: svg } of files.filter((file) => file.path.endsWith('.svg'))) {
      const { height, layers } = await measure(svg);
      const dxf = readDxf(text(files, path.replace('.svg', '.dxf'))).layers;
      for (const { id, shapes } of layers.filter((layer) => layer.id !== 'engrave')) {
        const contours = id === 'inside' ? dxf.inside : dxf.outside;
        expect(contours).toHaveLength(shapes.length);
        for (const [i, { box }] of shapes.entries()) {
          const contour = contours[i];
          if (!contour) throw new Error(`${path}: ${id} ${i} is missing in the DXF`);
          const { left, right, bottom, top } = extentOf(contour);
          expect(Math.abs(left - box.x) + Math.abs(right - box.x - box.width)).toBeLessThan(CLOSE);
          expect(Math.abs(height - top - box.y) + Math.abs(height - bottom - box.y - box.height)).toBeLessThan(CLOSE);
        }
      }
    }
  });
});

test('a part’s DXF has the area of the plan', async () => {
  const { planned, files } = await demoFiles();
  const { layers } = readDxf(text(files, 'parts/slice.dxf'));
  const outline = layers.outside.reduce((sum, contour) => sum + signedArea(contour), 0);
  const holes = layers.inside.reduce((sum, contour) => sum + Math.abs(signedArea(contour)), 0);
  // Corners are written to 0.001 mm, so each edge may lie 0.0005 mm aside: that much area for every mm of edge.
  const edges = planned.stand.right.slice.reduce((sum, [u, z], i, all) => {
    const [nextU, nextZ] = all[(i + 1) % all.length] ?? [u, z];
    return sum + Math.hypot(nextU - u, nextZ - z);
  }, 0);
  expect(Math.abs(outline - holes - planned.stand.right.sliceArea)).toBeLessThan(0.0005 * edges);
  expect(layers.outside).toHaveLength(1);
});
