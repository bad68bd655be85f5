import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circle, openPath, type Contour } from '$lib/geometry/contour.ts';
import { signedArea } from '$lib/geometry/area.ts';
import { svgFile } from '$lib/files/svg.ts';
import { layerNames } from '$lib/files/plate.ts';
import { anyPath, straying } from './contours.ts';
import { everything, plateOf, square } from './plate.ts';
import { readSvg } from './readSvg.ts';

describe('an SVG file', () => {
  it('is the plate with y turned down, layers in cutting order, arcs of at most a quarter turn', () => {
    const text = [
      '<?xml version="1.0" encoding="UTF-8"?>',
      '<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="50mm" viewBox="0 0 120 50">',
      '  <title>Left &amp; right &lt;wedge&gt;</title>',
      '  <g id="engrave" fill="none" stroke="#b9771f" stroke-width="0.1">',
      '    <title>engrave: lettering and centre lines, not cut through</title>',
      '    <path d="M 30 45 L 40 45"/>',
      '  </g>',
      '  <g id="inside" fill="none" stroke="#0c7a80" stroke-width="0.025">',
      '    <title>inside: holes and slots</title>',
      '    <circle cx="15" cy="40" r="3.05"/>',
      '    <path d="M 60 40 L 60 30 A 3 3 0 0 1 63 27 A 3 3 0 0 1 66 30 L 66 40 A 3 3 0 0 1 63 43 A 3 3 0 0 1 60 40 Z"/>',
      '  </g>',
      '  <g id="outside" fill="none" stroke="#8038c2" stroke-width="0.025">',
      '    <title>outside: round the parts</title>',
      '    <path d="M 0 50 L 110 50 A 10 10 0 0 0 120 40 L 120 0 L 0 30 Z"/>',
      '  </g>',
      '</svg>',
      '',
    ];
    expect(svgFile(everything).split('\n')).toEqual(text);
  });

  it('reads back as the plate, areas and all', () => {
    const read = readSvg(svgFile(everything));
    for (const layer of layerNames) {
      everything.layers[layer].forEach((contour, index) => {
        const back = read[layer][index];
        if (!back) throw new Error(`${layer} ${index} is missing`);
        expect(Math.max(straying(contour, back), straying(back, contour))).toBeLessThan(0.001);
        if (layer !== 'engrave') expect(Math.abs(signedArea(back) - signedArea(contour))).toBeLessThan(0.01);
      });
    }
  });

  it('keeps any contour within a micrometre', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const [back] = readSvg(svgFile(plateOf(path))).outside;
        expect(back && straying(path, back)).toBeLessThan(0.001);
        expect(back && straying(back, path)).toBeLessThan(0.001);
      }),
    );
  });

  it.each([
    '../../etc',
    '<script>alert(1)</script>',
    '"onload="alert(1)',
    '😀',
    '\u202eback',
    'a\nb',
    'a\u0000b',
    'CON',
    ']]>',
  ])('takes the name %j as text', (name) => {
    const text = svgFile({ ...everything, name });
    const plain = svgFile({ ...everything, name: '' });
    const title = /<title>([^<>"']*)<\/title>/.exec(text);
    expect(title).not.toBeNull();
    expect(text.replace(title?.[0] ?? '', '<title></title>')).toBe(plain);
  });

  it('names the part and layer it cannot write', () => {
    const fails = (message: string, ...contours: Contour[]) =>
      expect(() => svgFile(plateOf(...contours))).toThrow(message);
    fails('test part, outside: expected finite lengths, got NaN', openPath([[0, 0], [NaN, 1]])); // prettier-ignore
    fails('test part, outside: expected a finite bulge, got Infinity', {
      kind: 'path',
      closed: true,
      vertices: square(10).vertices.map((vertex) => ({ ...vertex, bulge: Infinity })),
    });
    fails('test part, outside: expected a path over 0.001 mm, got one without length', openPath([[5, 5], [5, 5.0001]])); // prettier-ignore
    fails('test part, outside: expected a path over 0.001 mm, got one without length', openPath([]));
    fails('test part, outside: expected a circle over 0.001 mm, got radius 0.0001', circle([1, 1], 0.0001));
    fails('test part, outside: expected a circle over 0.001 mm, got radius -3', circle([1, 1], -3));
    expect(() => svgFile({ ...plateOf(), width: Infinity })).toThrow('test part, width: expected a finite number');
  });
});
