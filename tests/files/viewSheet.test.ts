import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frontView } from '$lib/drawing/frontView.ts';
import { isoView } from '$lib/drawing/isoView.ts';
import { sideView } from '$lib/drawing/sideView.ts';
import { topView } from '$lib/drawing/topView.ts';
import type { View } from '$lib/drawing/view.ts';
import { textWidth } from '$lib/drawing/dimensionStyle.ts';
import { fittedText } from '$lib/drawing/primitive.ts';
import { papers, type PaperName } from '$lib/files/paper.ts';
import { printScales } from '$lib/files/printSheet.ts';
import { projectionSymbol } from '$lib/files/projectionSymbol.ts';
import { sheetPdf } from '$lib/files/sheetPdf.ts';
import { sheetSvg } from '$lib/files/sheetSvg.ts';
import { viewSheet, type PrintOptions, type ViewSheet } from '$lib/files/viewSheet.ts';
import { solve } from '$lib/solution/solve.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { faultLine } from '$lib/project/fault.ts';
import { numberFrom } from '../numbers.ts';
import { scenes } from '../drawing/arbitraries.ts';
import { firstLayout, project } from '../projects.ts';
import { everyElement, readXml, type Element } from './readXml.ts';
import { readPdf } from './readPdf.ts';
import { runs } from '../runs.ts';

const MM: LengthDisplay = { length: 'mm', fraction: null };
const options: PrintOptions = {
  sheet: 'A4',
  display: MM,
  title: 'Bindery desk',
  layout: 'window side',
  date: '2031-05-04',
};

const of = project();
const outcome = solve(of, firstLayout(of));
if (!outcome.ok) throw new Error('The demo has a plan.');
const planned = outcome.value;
const front = frontView(of.speaker, planned, 'right');
const views: readonly View[] = [
  front,
  isoView(of.speaker, planned, 'left'),
  topView(of.speaker, firstLayout(of), 0, planned),
  sideView(of.speaker, firstLayout(of), 0, planned, 'right', 'true'),
];

function sheetOf(view: View, more: Partial<PrintOptions> = {}): ViewSheet {
  const result = viewSheet(view, { ...options, ...more });
  if (!result.ok) throw new Error(result.faults.map(faultLine).join('\n'));
  return result.value;
}

const written = (view: View, more: Partial<PrintOptions> = {}): Element => readXml(sheetSvg(sheetOf(view, more)));

const groupOf = (svg: Element, id: string): Element => {
  const found = svg.children.find(({ attributes }) => attributes.id === id);
  if (!found) throw new Error(`no group ${id}`);
  return found;
};
const numbersIn = (text = ''): number[] => (text.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);

/** Places that an element draws at: corners of paths, boxes of circles. Lines have no width here. */
function placesOf({ name, attributes }: Element): [number, number][] {
  const [cx = NaN, cy = NaN, r = NaN] = [attributes.cx, attributes.cy, attributes.r].map(Number);
  if (name === 'circle') return [[cx - r, cy - r], [cx + r, cy + r]]; // prettier-ignore
  if (name === 'text') return [[Number(attributes.x), Number(attributes.y)]];
  const numbers = numbersIn(attributes.d);
  return numbers.flatMap((x, index): [number, number][] => (index % 2 === 0 ? [[x, numbers[index + 1] ?? NaN]] : []));
}

function boxOf(elements: readonly Element[]): { left: number; top: number; right: number; bottom: number } {
  const places = elements.flatMap(placesOf);
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

/** Places in the file are written to a micrometre. */
const WRITTEN = 0.0015;

describe('a view on paper', () => {
  it.each(Object.keys(papers) as PaperName[])('is a sheet of %s in true millimetres', (sheet) => {
    const { attributes } = written(front, { sheet });
    const { width, height } = papers[sheet];
    const [across = NaN, down = NaN] = [attributes.width, attributes.height].map((text) =>
      Number(/^([\d.]+)mm$/.exec(text ?? '')?.[1]),
    );
    expect([across, down].sort((a, b) => a - b)).toEqual([width, height]);
    // One user unit is one millimetre.
    expect(attributes.viewBox).toBe(`0 0 ${across} ${down}`);
  });

  it('has the sheets’ sizes: ISO 216 has the sides of A as 1 : √2 and A0 as a square metre; Letter is 8½ × 11 in', () => {
    for (const [name, halvings] of [
      ['A4', 4],
      ['A3', 3],
    ] as const) {
      // prettier-ignore
      const { width, height } = papers[name];
      // Sizes are rounded to whole millimetres at every halving.
      expect(Math.abs(height / width - Math.SQRT2)).toBeLessThan(0.003);
      expect(Math.abs(width * height - 1e6 / 2 ** halvings)).toBeLessThan(1e6 / 2 ** halvings / 100);
    }
    expect(papers.Letter.width).toBeCloseTo(8.5 * 25.4, 9);
    expect(papers.Letter.height).toBeCloseTo(11 * 25.4, 9);
  });

  it.each(printScales.filter((scale) => scale > 1))('draws the cabinet at 1:%d in true size', (scale) => {
    const [cabinet] = groupOf(written(front, { scale }), 'view').children.filter(
      ({ attributes }) => attributes.fill === '#f3f5f6',
    );
    if (!cabinet) throw new Error('no cabinet');
    const { left, right, top, bottom } = boxOf([cabinet]);
    expect(Math.abs(right - left - 165 / scale)).toBeLessThan(WRITTEN);
    expect(Math.abs(bottom - top - 270 / scale)).toBeLessThan(WRITTEN);
  });

  it('takes the largest scale that fits, and says it', () => {
    const scaleOf = (view: View, sheet: PaperName): string | undefined =>
      everyElement(written(view, { sheet })).find(({ text }) => /^1:\d+$/.test(text))?.text;
    const [, , top] = views;
    // From the wall to the back of the head are more than 1100 mm, 220 mm at 1:5: A3 has no room for that and its dimensions.
    expect(top && [scaleOf(top, 'A4'), scaleOf(top, 'A3')]).toEqual(['1:10', '1:10']);
    expect(scaleOf(front, 'A4')).toBe('1:2');
  });

  it('refuses in words what does not fit', () => {
    const [, , top] = views;
    const refused = top && viewSheet(top, { ...options, scale: 1 });
    expect(refused).toEqual({
      ok: false,
      faults: [
        {
          pointer: '',
          message: 'expected a smaller scale or a larger sheet than A4 for “Plan, as seen from the chair”, got 1:1',
        },
      ],
    });
    const huge: View = { ...front, items: [{ kind: 'spot', id: 'a', subject: 'desk', at: [0, 0], mark: 'dot' }, { kind: 'spot', id: 'b', subject: 'desk', at: [1e5, 0], mark: 'dot' }] }; // prettier-ignore
    expect(viewSheet(huge, options)).toMatchObject({
      ok: false,
      faults: [{ message: 'expected a view that fits A4 at 1:50: choose a larger sheet' }],
    });
  });

  it('keeps clear of title block, bar and border, whatever the view, the sheet and the scale', () => {
    fc.assert(
      fc.property(
        scenes,
        fc.constantFrom<PaperName>('A4', 'A3', 'Letter'),
        fc.constantFrom<LengthDisplay>(MM, { length: 'in', fraction: 64 }),
        fc.nat({ max: 3 }),
        (scene, sheet, display, which) => {
          const { speaker } = scene.project;
          const view = [
            () => frontView(speaker, scene.plan, 'left'),
            () => isoView(speaker, scene.plan, 'right'),
            () => topView(speaker, scene.layout, 0, scene.plan),
            () => sideView(speaker, scene.layout, 0, scene.plan, 'left', 'true'),
          ][which]?.();
          if (!view) throw new Error('no view');
          const svg = written(view, { sheet, display });
          const border = boxOf(groupOf(svg, 'border').children);
          const title = boxOf(groupOf(svg, 'title-block').children);
          const bar = boxOf(groupOf(svg, 'scale-bar').children);
          const drawn = boxOf([...groupOf(svg, 'view').children, ...groupOf(svg, 'dimensions').children]);
          for (const inner of [drawn, title, bar]) {
            expect(inner.left).toBeGreaterThanOrEqual(border.left);
            expect(inner.right).toBeLessThanOrEqual(border.right);
            expect(inner.top).toBeGreaterThanOrEqual(border.top);
            expect(inner.bottom).toBeLessThanOrEqual(border.bottom);
          }
          const apart = (a: typeof title, b: typeof title): boolean =>
            a.right < b.left || b.right < a.left || a.bottom < b.top || b.bottom < a.top;
          expect(apart(drawn, title)).toBe(true);
          expect(apart(drawn, bar)).toBe(true);
          expect(apart(bar, title)).toBe(true);
        },
      ),
      { numRuns: runs(60) },
    );
  });
});

describe('the scale bar', () => {
  it.each([
    [MM, 50, '100\u202fmm'],
    // Two inches of 25.4 mm.
    [{ length: 'in', fraction: null }, 50.8, '4″'],
    [{ length: 'in', fraction: 16 }, 50.8, '4″'],
  ] as const)('for %j is %d mm long on the paper and says %j at 1:2', (display, length, real) => {
    const bar = groupOf(written(front, { scale: 2, display }), 'scale-bar').children;
    const { left, right } = boxOf(bar.filter(({ name }) => name === 'path'));
    expect(Math.abs(right - left - length)).toBeLessThan(WRITTEN);
    const texts = bar.filter(({ name }) => name === 'text');
    expect(texts.map(({ text }) => text)).toContain(real);
    const zero = texts.find(({ text }) => text === '0');
    expect(Number(zero?.attributes.x)).toBeCloseTo(left, 3);
    expect(Number(texts.find(({ text }) => text === real)?.attributes.x)).toBeCloseTo(right, 3);
  });

  it('has dark fields of equal length from one end, every second one', () => {
    const dark = groupOf(written(front, { scale: 2 }), 'scale-bar').children.filter(
      ({ attributes }) => attributes.fill === '#000000' && attributes.d,
    );
    const { left } = boxOf(dark);
    const fields = dark.map((field) => boxOf([field])).map((box) => [box.left - left, box.right - left]);
    [
      [0, 10],
      [20, 30],
      [40, 50],
    ].forEach((field, index) =>
      // prettier-ignore
      field.forEach((x, end) => expect(fields[index]?.[end]).toBeCloseTo(x, 3)),
    );
  });
});

describe('lines and lettering', () => {
  it('are of the widths of ISO 128, a wide line twice a narrow one', () => {
    const widths = new Set(
      everyElement(written(front))
        .flatMap(({ attributes }) => attributes['stroke-width'] ?? [])
        .map(Number),
    );
    // 0.7 for the border; all four of the series that textbooks give after ISO 128: 0.18, 0.25, 0.35, 0.5, 0.7.
    expect([...widths].sort()).toEqual([0.25, 0.5, 0.7]);
  });

  it('show values as the project does: results in brackets, diameters with their sign, fractions with theirs', () => {
    const texts = (display: LengthDisplay): string[] =>
      groupOf(written(front, { display }), 'dimensions').children.flatMap(({ name, text }) =>
        name === 'text' ? text : [],
      );
    expect(texts(MM).sort()).toEqual(['165', '205', '270', '95', '⌀25', '⌀95']);
    expect(texts({ length: 'in', fraction: 16 })).toContain('≈⌀3\u00a03/4');
    expect(texts({ length: 'in', fraction: null })).toContain('⌀3.740');
    const [, , top] = views;
    const results = top ? groupOf(written(top), 'dimensions').children.map(({ text }) => text) : [];
    expect(results).toContain('(83.7°)');
  });

  it('take any text as text, in a well-formed document', () => {
    const hostile = ['<script>alert(1)</script>', '"/><g onload="x', ']]>', '&amp;&lt;', 'a\u0000b', '\ud800', '日本語 𝄞', '']; // prettier-ignore
    const plain = JSON.stringify(skeleton(written(front)));
    for (const text of hostile) {
      const svg = written(front, { title: text, layout: text, date: text });
      expect(JSON.stringify(skeleton(svg))).toBe(plain);
    }
    const named = groupOf(written(front, { title: 'Bench <2> & "sons"' }), 'title-block');
    expect(named.children.map(({ text }) => text)).toContain('Bench <2> & "sons"');
  });

  /** Names of the elements alone. */
  const skeleton = ({ name, children }: Element): unknown => [name, children.map(skeleton)];

  it('are well-formed for every view, with nothing but shapes and text, no scripts and no links', () => {
    for (const view of views) {
      const elements = everyElement(written(view));
      const names = new Set(elements.map(({ name }) => name));
      expect([...names].every((name) => ['svg', 'title', 'desc', 'defs', 'pattern', 'rect', 'g', 'path', 'circle', 'text'].includes(name))).toBe(true); // prettier-ignore
      for (const { attributes } of elements) {
        for (const [key, value] of Object.entries(attributes)) {
          expect(key.startsWith('on')).toBe(false);
          expect(value).not.toMatch(/NaN|Infinity|undefined|\de[+-]?\d/);
        }
      }
    }
  });
});

describe('the PDF of a sheet', () => {
  it.each(views)('has the lines, areas and texts of the SVG, each at its place: $name', (view) => {
    const sheet = sheetOf(view, { sheet: 'A3' });
    const elements = everyElement(readXml(sheetSvg(sheet)));
    const [page] = readPdf(sheetPdf(sheet)).pages;
    if (!page) throw new Error('no page');
    expect([page.width, page.height].map((mm) => mm.toFixed(3))).toEqual([sheet.width, sheet.height].map((mm) => mm.toFixed(3))); // prettier-ignore
    const texts = elements.filter(({ name, text }) => name === 'text' && text !== '');
    const plain = (text: string): string => text.replace(/\p{Zs}/gu, ' ');
    expect(page.texts.map(({ text }) => text)).toEqual(texts.map(({ text }) => plain(text)));
    const shapes = elements.filter(({ name, attributes }) => (name === 'path' || name === 'circle') && !attributes.d?.includes('V')); // prettier-ignore
    expect(page.paths).toHaveLength(shapes.length);
    page.paths.forEach(({ points, width, dashes, fill }, index) => {
      const shape = shapes[index];
      if (!shape) throw new Error('as many shapes');
      const { attributes } = shape;
      const own = boxOf([shape]);
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      const drawn = { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
      for (const edge of ['left', 'top', 'right', 'bottom'] as const) {
        expect(Math.abs(drawn[edge] - own[edge])).toBeLessThan(WRITTEN);
      }
      expect(width?.toFixed(3)).toBe(attributes['stroke-width'] && Number(attributes['stroke-width']).toFixed(3));
      expect(dashes.map((dash) => dash.toFixed(3))).toEqual(numbersIn(attributes['stroke-dasharray']).map((dash) => dash.toFixed(3))); // prettier-ignore
      expect(fill === null).toBe(attributes.fill === undefined);
      expect(fill === '/H').toBe(attributes.fill === 'url(#hatch)');
    });
  });
});

describe('a title block', () => {
  it('says project, layout, view, scale, unit, date and sheet', () => {
    const texts = groupOf(written(front, { scale: 5 }), 'title-block').children.map(({ text }) => text);
    for (const text of [
      'Bindery desk',
      'window side',
      'Front view, right loudspeaker',
      '1:5',
      'mm',
      '2031-05-04',
      'A4',
    ]) {
      expect(texts).toContain(text);
    }
  });

  it('fits a text to its room: smaller first, then cut, never longer', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 200 }),
        numberFrom(10, 100),
        numberFrom(2.5, 6),
        (text, room, size) => {
          const fitted = fittedText({ kind: 'text', text, at: [0, 0], anchor: 'start', size }, room);
          expect(textWidth(fitted.text, { textSize: fitted.size })).toBeLessThanOrEqual(room + 1e-9);
          expect(fitted.size).toBeLessThanOrEqual(size);
          expect(fitted.size).toBeGreaterThanOrEqual(2.5);
          if (textWidth(text, { textSize: 2.5 }) <= room) expect(fitted.text).toBe(text);
          else expect(fitted.text.endsWith('…')).toBe(true);
        },
      ),
    );
  });

  it('shows the cone’s rings at the side they are seen from in third angle, at the other in first (ISO 5456-2)', () => {
    const middles = (angle: 'first' | 'third'): { rings: number; thin: number; thick: number } => {
      const drawn = projectionSymbol([0, 0], 10, angle);
      const ring = drawn.find(({ kind }) => kind === 'circle');
      const cone = drawn.find((one) => one.kind === 'line' && one.closed);
      if (ring?.kind !== 'circle' || cone?.kind !== 'line') throw new Error('rings and a cone');
      const thin = cone.points.filter(([, y]) => Math.abs(y) === 2.5).map(([x]) => x);
      const thick = cone.points.filter(([, y]) => Math.abs(y) === 5).map(([x]) => x);
      return { rings: ring.centre[0], thin: thin[0] ?? NaN, thick: thick[0] ?? NaN };
    };
    const [third, first] = [middles('third'), middles('first')];
    // Both rings can only be seen from the thin end.
    expect(third.rings < third.thin && third.thin < third.thick).toBe(true);
    expect(first.thin < first.thick && first.thick < first.rings).toBe(true);
  });
});
