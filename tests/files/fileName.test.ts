import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileStem, fileStems } from '$lib/files/fileName.ts';
import { runs } from '../runs.ts';

describe('file stems', () => {
  it.each([
    ['Left slice 3.05 mm', 'Left slice 3.05 mm'],
    ['größer – 日本', 'größer - 日本'],
    ['../../etc/passwd', 'etc-passwd'],
    ['C:\\Windows\\x', 'C-Windows-x'],
    ['a $(rm -rf) `b` %c% !d', 'a -(rm -rf) -b- -c- -d'],
    ['<script>alert(1)</script>', 'script-alert(1)-script'],
    ['"onload=x', 'onload-x'],
    ['a\nb\u0000c', 'a b-c'],
    ['\u202etxt.exe\u200f', 'txt.exe'],
    ['😀', 'unnamed'],
    ['', 'unnamed'],
    ['...', 'unnamed'],
    ['.hidden. ', 'hidden'],
    ['--help', 'help'],
    ['CON', '_CON'],
    ['nul.svg', '_nul.svg'],
    ['COM¹', '_COM1'],
    ['ｌｅｆｔ／ｒｉｇｈｔ', 'left-right'],
    ['\ud800', 'unnamed'],
  ])('%j becomes %j', (text, stem) => {
    expect(fileStem(text)).toBe(stem);
  });

  it('is safe on every system for any text', () => {
    const unit = fc.oneof(
      fc.constantFrom('.', ' ', '/', '\\', 'CON', '\u202e', '\u0000', '-', '日', '😀', '\u0301'),
      fc.string(),
    );
    fc.assert(
      fc.property(fc.array(unit, { maxLength: 60 }), (pieces) => {
        const stem = fileStem(pieces.join(''));
        expect(stem).toMatch(/^[^\p{C}/\\:*?"<>|$%&!;'`~#{}=@^]+$/u);
        expect(stem).not.toMatch(/^[-. ]|[. ]$/);
        expect(stem).not.toMatch(/^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i);
        expect(stem.length).toBeLessThanOrEqual(70);
        expect(new TextEncoder().encode(stem).length).toBeLessThanOrEqual(240);
        expect(fileStem(stem)).toBe(stem);
      }),
      { numRuns: runs(3000) },
    );
  });
});

describe('a set of file stems', () => {
  it('numbers what would meet, also where case is ignored', () => {
    expect(fileStems(['a', 'A', 'a', 'a 2', 'b/', 'b'])).toEqual(['a', 'A 2', 'a 3', 'a 2 2', 'b', 'b 2']);
  });

  it('is unique and of bounded length for any texts', () => {
    const text = fc.oneof(fc.string(), fc.constantFrom('x'.repeat(200), `${'x'.repeat(199)}y`, 'X'.repeat(80)));
    fc.assert(
      fc.property(fc.array(text, { maxLength: 30 }), (texts) => {
        const stems = fileStems(texts);
        expect(new Set(stems.map((stem) => stem.toLowerCase())).size).toBe(texts.length);
        for (const stem of stems) expect(fileStem(stem)).toBe(stem);
      }),
    );
  });
});
