import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgesOf } from '$lib/geometry/edge.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { accents } from '$lib/workshop/lettering/accents.ts';
import {
  canLetter,
  letter,
  LETTERING_ABOVE,
  LETTERING_BELOW,
  letteringWidth,
  unlettered,
} from '$lib/workshop/lettering/lettering.ts';
import { smallLetters } from '$lib/workshop/lettering/smallLetters.ts';
import { lookalikes, shapes } from '$lib/workshop/lettering/strokes.ts';

const HEIGHT = 10;
const at = { height: HEIGHT, x: 0, y: 0, anchor: 'start' } as const;
/** Shapes are drawn to two decimals of a tenth of the height, so an arc may stand over its box by that much. */
const DRAWN = 0.011;

const everyShape = [...shapes.keys(), ...lookalikes.keys(), ...smallLetters.keys()];
const accented = [...'AbcdehiIjlLOoquZ'].flatMap((base) => [...accents.keys()].map((accent) => base + accent));
const lettered = accented.filter(canLetter);

describe('every letter', () => {
  it.each([...everyShape, ...lettered, '日'])('%j stays inside its box', (text) => {
    const paths = letter(text, at);
    if (text.trim() === '') {
      expect(paths).toEqual([]);
      return;
    }
    const extent = extentOf(...paths);
    expect(extent.left).toBeGreaterThanOrEqual(-DRAWN);
    expect(extent.right).toBeLessThanOrEqual(letteringWidth(text, HEIGHT) + DRAWN);
    expect(extent.bottom).toBeGreaterThanOrEqual(-LETTERING_BELOW * HEIGHT - DRAWN);
    expect(extent.top).toBeLessThanOrEqual(LETTERING_ABOVE * HEIGHT + DRAWN);
  });

  it.each([...everyShape, ...lettered])(
    '%j is made of open strokes, no piece without length, arcs of a sensible radius',
    (text) => {
      for (const path of letter(text, at)) {
        expect(path.closed).toBe(false);
        const edges = edgesOf(path);
        expect(edges).toHaveLength(path.vertices.length - 1);
        for (const edge of edges) {
          if (edge.kind === 'straight') continue;
          // Nothing finer than a beam can follow at 3 mm lettering, nothing flatter than a bracket.
          expect(edge.radius).toBeGreaterThanOrEqual(0.4 - DRAWN);
          expect(edge.radius).toBeLessThanOrEqual(HEIGHT);
        }
      }
    },
  );

  it('has a shape of its own: no two of them draw the same', () => {
    const drawn = [...shapes.keys()].filter((key) => key !== ' ').map((key) => JSON.stringify(letter(key, at)));
    const alike = drawn.filter((one, index) => drawn.indexOf(one) !== index);
    // The minus is the dash of arithmetic: they differ in height.
    expect(alike).toEqual([]);
  });
});

/** Every assigned letter, figure, mark, sign and space of a stretch of Unicode. */
const printable = (from: number, to: number): string[] =>
  Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i)).filter((one) =>
    /[\p{L}\p{N}\p{P}\p{S}\p{Zs}]/u.test(one),
  );

describe('the set of letters', () => {
  // Unicode's blocks: Basic Latin and Latin-1 Supplement to U+00FF, Latin Extended-A from U+0100 to U+017F.
  it('holds all of Latin-1 and Latin Extended-A', () => {
    const [latin1, extendedA] = [printable(0x20, 0xff), printable(0x100, 0x17f)];
    expect([latin1.length, extendedA.length]).toEqual([190, 128]);
    expect([...latin1, ...extendedA].filter((one) => !canLetter(one))).toEqual([]);
  });

  it('draws whatever it has no shape for as a box, of any script, never as nothing', () => {
    const others = [
      ...printable(0x180, 0x24f),
      ...printable(0x1e00, 0x1eff),
      ...'Ωλφ Жщы אבג عربى हिन्दी ไทย 한국 日本語 ♥ ☂ 🎛 𝔄'.replaceAll(' ', ''),
    ];
    const without = others.filter((one) => !canLetter(one));
    expect(without.length).toBeGreaterThan(100);
    for (const one of others) expect(letter(one, at).length).toBeGreaterThan(0);
    for (const one of without.filter((one) => !/\p{M}/u.test(one))) expect(letter(one, at)).toEqual(letter('日', at));
  });

  it('sets fractions and exponents small, the figures of a fraction over and under its slash', () => {
    const [over, under] = [letter('½', at)[0], letter('½', at).at(-1)];
    expect(Math.min(...(over?.vertices ?? []).map(({ y }) => y))).toBeGreaterThan(4);
    expect(Math.max(...(under?.vertices ?? []).map(({ y }) => y))).toBeLessThan(6);
    expect(letteringWidth('½', HEIGHT)).toBeLessThan(letteringWidth('1/2', HEIGHT));
    expect(letteringWidth('²', HEIGHT)).toBeLessThan(letteringWidth('2', HEIGHT));
  });

  it('covers ASCII, the signs of a drawing and Latin letters with accents', () => {
    const ascii = Array.from({ length: 0x7f - 0x20 }, (_, index) => String.fromCodePoint(0x20 + index)).join('');
    expect(canLetter(ascii)).toBe(true);
    expect(canLetter('–—·±×−°′″←→↑↓▲‘’“”\u00a0')).toBe(true);
    expect(canLetter('ÀÉÎÕÜÅÇŠŽŁĐØÆŒ àéîõüåçšžłđøæœß ąęșğőű ïíĵ')).toBe(true);
    expect(canLetter('é'.normalize('NFD'))).toBe(true);
    expect(canLetter('')).toBe(true);
    expect(canLetter('½ ¼ ⅛ ≈ ° µ № × − ′ ″ … € ™ ² ³ ﬁ Ǆ ℃')).toBe(true);
  });

  it.each(['日', '😀', '\u202e', '\n', '\u0000', '\ud800', 'ế', '\u0301', 'g\u0323', '1\u0301', '한'])(
    'draws %j as one crossed box',
    (text) => {
      expect(canLetter(text)).toBe(false);
      expect(letter(text, at)).toEqual(letter('日', at));
      expect(letter(`a${text}`, at).length).toBeGreaterThan(letter('a', at).length);
    },
  );

  it('puts the accent in place of the dot', () => {
    // Body, two dots of the diaeresis; the i's own dot would be a fourth.
    expect(letter('ï', at)).toHaveLength(3);
    expect(letter('i', at)).toHaveLength(2);
  });
});

const readable = fc.array(fc.constantFrom(...everyShape), { maxLength: 12 }).map((letters) => letters.join(''));
const anyText = fc.oneof(readable, fc.string({ unit: 'binary', maxLength: 12 }));
const height = fc.double({ noNaN: true, min: 0.5, max: 50 });

describe('a line of lettering', () => {
  it('is as wide as its letters and the gaps between them', () => {
    const gap = letteringWidth('II', HEIGHT);
    fc.assert(
      fc.property(readable, (text) => {
        const widths = [...text].map((one) => letteringWidth(one, HEIGHT));
        const sum = widths.reduce((total, width) => total + width, 0) + Math.max(0, widths.length - 1) * gap;
        expect(letteringWidth(text, HEIGHT)).toBeCloseTo(sum, 9);
      }),
    );
  });

  it('scales with its height', () => {
    fc.assert(
      fc.property(anyText, height, (text, size) => {
        expect(letteringWidth(text, size)).toBeCloseTo(letteringWidth(text, 1) * size, 9);
      }),
    );
  });

  it('lies to the side that its anchor says', () => {
    fc.assert(
      fc.property(anyText, height, (text, size) => {
        const width = letteringWidth(text, size);
        const left = (anchor: 'start' | 'middle' | 'end') =>
          letter(text, { height: size, x: 100, y: 50, anchor }).flatMap((path) => path.vertices.map(({ x }) => x));
        const start = left('start');
        left('middle').forEach((x, index) => expect(x).toBeCloseTo((start[index] ?? NaN) - width / 2, 9));
        left('end').forEach((x, index) => expect(x).toBeCloseTo((start[index] ?? NaN) - width, 9));
      }),
    );
  });

  it('turns about its anchor and keeps its bulges', () => {
    const upright = letter('Front 7°', { height: 4, x: 20, y: 30, anchor: 'end' }).flatMap((path) => path.vertices);
    const turned = letter('Front 7°', { height: 4, x: 20, y: 30, anchor: 'end', turn: Math.PI / 2 });
    turned
      .flatMap((path) => path.vertices)
      .forEach((vertex, index) => {
        const before = upright[index];
        expect(vertex.x - 20).toBeCloseTo(-((before?.y ?? NaN) - 30), 9);
        expect(vertex.y - 30).toBeCloseTo((before?.x ?? NaN) - 20, 9);
        expect(vertex.bulge).toBe(before?.bulge);
      });
  });

  it('holds only finite numbers for any text', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const { vertices } of letter(text, at)) {
          for (const { x, y, bulge } of vertices) expect([x, y, bulge].every(Number.isFinite)).toBe(true);
        }
      }),
    );
  });

  it('refuses a height that is not over 0 and a place that is nowhere', () => {
    expect(() => letter('a', { ...at, height: 0 })).toThrow('lettering: expected a height over 0 mm, got 0');
    expect(() => letter('a', { ...at, height: NaN })).toThrow('lettering: expected a finite height, got NaN');
    expect(() => letter('a', { ...at, turn: Infinity })).toThrow('lettering: expected a finite turn, got Infinity');
  });
});

it('keeps round letters round: O and o are arcs and straights that meet without a corner', () => {
  for (const round of ['O', 'o', '0', 'S', 's', '6', '9']) {
    for (const path of letter(round, at)) {
      const edges = edgesOf(path);
      edges.slice(1).forEach((edge, index) => {
        const before = edges[index];
        if (!before) return;
        const turn = direction(edge, 0) - direction(before, 1);
        // A third of a degree is what two decimals leave; no eye sees it at this size.
        expect(Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn)))).toBeLessThan(0.006);
      });
    }
  }
});

/** Direction of travel at an edge's start (0) or end (1): its chord's, turned by half the sweep. Radians. */
function direction(edge: ReturnType<typeof edgesOf>[number], end: 0 | 1): number {
  const chord = Math.atan2(edge.end[1] - edge.start[1], edge.end[0] - edge.start[0]);
  return edge.kind === 'arc' ? chord + (end - 0.5) * edge.sweep : chord;
}

it('letters without a shape are named, each once; those of Latin names with accents and signs are none of them', () => {
  expect(unlettered(['Łódź, Ångström & ½ µm №', 'Schreibtisch 2'])).toEqual([]);
  expect(unlettered(['Стол', 'стол Ω', 'desk'])).toEqual(expect.arrayContaining(['С', 'т', 'л']));
  const all = unlettered(['Стол Ω', 'Стол Ω']);
  expect(new Set(all).size).toBe(all.length);
});
