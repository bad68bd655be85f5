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

describe('the colours of layers', () => {
  it('are black in SVG and 7 in DXF unless named', async () => {
    expect(strokes(svgFile(everything))).toEqual({ mark: '#000000', inside: '#000000', outside: '#000000' });
    const layers = readDxfLayers(await dxfFile(everything));
    for (const layer of layerNames) expect(layers[layer]).toMatchObject({ colorIndex: 7 });
    expect(await dxfFile(everything, null)).toBe(await dxfFile(everything));
  });

  it('are the strokes of an SVG file', () => {
    expect(strokes(svgFile(everything, colours))).toEqual(colours);
  });

  it('are the true colours of DXF layers, and the nearest indexed ones', async () => {
    const text = await dxfFile(everything, colours);
    const layers = readDxfLayers(text);
    // The ends of DXF's palette: 1 is red and 5 blue.
    expect([layers['outside']?.colorIndex, layers['inside']?.colorIndex]).toEqual([1, 5]);
    for (const layer of layerNames) {
      const value = parseInt(colours[layer].slice(1), 16);
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
