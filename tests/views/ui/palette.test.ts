import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { root } from '../../../tools/root.mjs';

/** Contrast as the glossary of WCAG 2.2 defines it: (L1 + 0.05) / (L2 + 0.05), the lighter one over the darker. */
function contrast(a: string, b: string): number {
  const [light = NaN, dark = NaN] = [luminance(a), luminance(b)].toSorted((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

/** Relative luminance of `#rrggbb`, 0 for black, 1 for white (WCAG 2.2, glossary). */
function luminance(colour: string): number {
  const [r = NaN, g = NaN, b = NaN] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

type Palette = ReadonlyMap<string, string>;

const css = readFileSync(`${root}src/lib/views/ui/theme.css`, 'utf8');

/** Colours of a block of the theme, for light or dark. */
const coloursIn = (block: string, theme: 0 | 1): Palette =>
  new Map(
    [...block.matchAll(/--([\w-]+): light-dark\((#[\da-f]{6}), (#[\da-f]{6})\)/g)].map(
      ([, name = '', ...both]) => [name, both[theme] ?? ''] as const,
    ),
  );

const [usual = ''] = /:root \{[^}]*\}/.exec(css) ?? [];
const [more = ''] = /@media \(prefers-contrast: more\) \{[^}]*\}/.exec(css) ?? [];

const palettes = (['light', 'dark'] as const).flatMap((name, theme) => {
  const plain = coloursIn(usual, theme === 0 ? 0 : 1);
  return [
    [name, plain],
    [`${name}, more contrast`, new Map([...plain, ...coloursIn(more, theme === 0 ? 0 : 1)])],
  ] as const;
});

/** What pages and sheets lie on. */
const GROUNDS = ['paper', 'film'];

/** Colours that words are written in, and what they are written on. */
const TEXTS: readonly (readonly [ink: string, grounds: readonly string[]])[] = [
  [
    'ink',
    [...GROUNDS, 'select-tint', 'caution-tint', 'fault-tint', 'desk', 'cabinet', 'wood', 'monitor', 'head', 'driver'],
  ],
  ['ink-soft', [...GROUNDS, 'caution-tint', 'fault-tint', 'desk']],
  ['fault', [...GROUNDS, 'fault-tint']],
  ['caution', [...GROUNDS, 'caution-tint']],
  ['note', GROUNDS],
  ['good', GROUNDS],
  ['select', GROUNDS],
  ['dimension', [...GROUNDS, 'desk']],
  ['reflection', GROUNDS],
  ['paper', ['ink']],
];

/** Lines and signs that mean something, and what they lie on. */
const LINES: readonly (readonly [line: string, grounds: readonly string[]])[] = [
  ['line', GROUNDS],
  ['aim', [...GROUNDS, 'desk', 'head', 'cabinet']],
  ['sight', [...GROUNDS, 'desk']],
  ['reflection', [...GROUNDS, 'desk']],
  ['wood-edge', [...GROUNDS, 'wood', 'desk']],
  ['cabinet-edge', [...GROUNDS, 'cabinet', 'desk', 'driver']],
  ['select', [...GROUNDS, 'desk', 'select-tint', 'caution-tint', 'fault-tint']],
  ['focus', [...GROUNDS, 'desk', 'caution-tint', 'fault-tint']],
  ['good', [...GROUNDS, 'head']],
];

/** WCAG 2.2, 1.4.3: text of the usual size; 1.4.11: what has to be seen to understand. */
const LEAST = { text: 4.5, line: 3 } as const;

const short = (
  palette: Palette,
  pairs: readonly (readonly [string, readonly string[]])[],
  least: number,
): readonly string[] =>
  pairs.flatMap(([of, grounds]) =>
    grounds.flatMap((ground) => {
      const [a, b] = [palette.get(of), palette.get(ground)];
      if (a === undefined || b === undefined) return [`no ${of} or no ${ground}`];
      const found = contrast(a, b);
      return found < least ? [`${of} on ${ground}: ${found.toFixed(2)}`] : [];
    }),
  );

describe('the palette', () => {
  test.each(palettes)('%s: words, lines and signs stand out from what they lie on', (_, palette) => {
    expect(palette.size).toBeGreaterThan(25);
    expect(short(palette, TEXTS, LEAST.text)).toEqual([]);
    expect(short(palette, LINES, LEAST.line)).toEqual([]);
  });

  test('every colour is judged, but for grounds and what carries no meaning', () => {
    const judged = new Set([...TEXTS, ...LINES].flatMap(([of, grounds]) => [of, ...grounds]));
    const [, [, palette] = ['', new Map<string, string>()]] = palettes;
    // Hatching and walls only fill: their outlines and names tell what they are.
    expect([...palette.keys()].filter((name) => !judged.has(name))).toEqual(['hatch', 'wall']);
  });

  test('the formula gives what the standard’s own examples have', () => {
    // WCAG 2.2, Understanding 1.4.3: black on white is 21:1, and #767676 on white just passes 4.5:1.
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
    expect(contrast('#767676', '#ffffff')).toBeGreaterThan(4.5);
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  });
});
