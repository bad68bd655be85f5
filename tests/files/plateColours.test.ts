import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dxfFile } from '$lib/files/dxf.ts';
import { indexColour } from '$lib/files/indexColour.ts';
import { layerNames } from '$lib/files/plate.ts';
import { svgFile } from '$lib/files/svg.ts';
import { everything } from './plate.ts';
import { readDxfLayers } from './readDxf.ts';

const colours = { outside: '#ff0000', inside: '#0000FF', mark: '#336699' };

/** Stroke of each group of an SVG text. */
const strokes = (text: string): Record<string, string> =>
  Object.fromEntries([...text.matchAll(/<g id="(\w+)"[^>]* stroke="([^"]*)"/g)].map(([, id, stroke]) => [id, stroke]));

/** Relative luminance (WCAG 2.2, glossary). */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const share = parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

describe('the colours of layers', () => {
  it('are our own unless named: none that drivers give a meaning to, apart on white, on black and in grey', async () => {
    const shown = strokes(svgFile(everything));
    expect(Object.keys(shown)).toEqual([...layerNames]);
    expect(await dxfFile(everything, null)).toBe(await dxfFile(everything));
    const layers = readDxfLayers(await dxfFile(everything));
    // 1 to 7: red, yellow, green, cyan, blue, magenta, black or white.
    for (const layer of layerNames) expect(layers[layer]?.colorIndex).toBeGreaterThan(9);
    expect(new Set(layerNames.map((layer) => layers[layer]?.colorIndex)).size).toBe(3);
    const lights = Object.values(shown).map(luminance);
    for (const light of lights) {
      // WCAG 2.2, 1.4.11: 3:1 for what has to be seen; the contrast as its glossary defines it.
      expect(1.05 / (light + 0.05)).toBeGreaterThanOrEqual(3);
      expect((light + 0.05) / 0.05).toBeGreaterThanOrEqual(3);
    }
    const [dark = 0, middle = 0, light = 0] = [...lights].sort((a, b) => a - b);
    expect(Math.min(middle / dark, light / middle)).toBeGreaterThan(1.3);
  });

  it('are not all that tells layers apart: engraving is wider, groups and layers have names', () => {
    const text = svgFile(everything);
    const widths = [...text.matchAll(/<g id="(\w+)"[^>]* stroke-width="([\d.]+)">\s*<title>(\w+): /g)];
    expect(widths.map(([, id, width, title]) => [id, width, title])).toEqual([
      ['engrave', '0.1', 'engrave'],
      ['inside', '0.025', 'inside'],
      ['outside', '0.025', 'outside'],
    ]);
  });

  it('are the strokes of an SVG file', () => {
    const { mark: engrave, ...cut } = colours;
    expect(strokes(svgFile(everything, colours))).toEqual({ engrave, ...cut });
  });

  it('are the true colours of DXF layers, and the nearest indexed ones', async () => {
    const text = await dxfFile(everything, colours);
    const layers = readDxfLayers(text);
    // The ends of DXF's palette: 1 is red and 5 blue.
    expect([layers['outside']?.colorIndex, layers['inside']?.colorIndex]).toEqual([1, 5]);
    for (const layer of layerNames) {
      const value = parseInt(colours[layer === 'engrave' ? 'mark' : layer].slice(1), 16);
      expect(text).toMatch(new RegExp(`\\n2\\n${layer}\\n70\\n0\\n62\\n\\d+\\n420\\n${value}\\n`));
    }
  });
});

describe('an indexed colour', () => {
  // Nearest by the sum of squares in the palette that ezdxf 0.18 lists, its entries looked up with Python.
  it.each([
    ['#ff0000', 1],
    ['#ffff00', 2],
    ['#00ff00', 3],
    ['#00ffff', 4],
    ['#0000ff', 5],
    ['#ff00ff', 6],
    ['#ffffff', 7],
    ['#808080', 8],
    ['#ff7f00', 30],
    ['#7f00ff', 190],
    ['#a50000', 12],
    ['#336699', 155],
    ['#c8a064', 53],
    ['#101010', 19],
    ['#e0e0e0', 254],
  ])('of %s is %i', (hex, index) => {
    expect(indexColour(hex)).toBe(index);
  });

  it('of black is the one that shows on any ground', () => {
    expect(indexColour('#000000')).toBe(7);
  });

  it('is one of 1 to 255 for any colour', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (value) => {
        const index = indexColour(`#${value.toString(16).padStart(6, '0')}`);
        expect(Number.isInteger(index) && index >= 1 && index <= 255).toBe(true);
      }),
    );
  });
});
