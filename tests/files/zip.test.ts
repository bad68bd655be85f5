import { strFromU8, unzipSync } from 'fflate';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileStems } from '$lib/files/fileName.ts';
import { zipFile } from '$lib/files/zip.ts';

describe('zip archives', () => {
  it('hold texts and bytes under their paths', () => {
    const bytes = new Uint8Array([0, 255, 7]);
    const read = unzipSync(
      zipFile([
        { path: 'parts/größe.svg', content: 'é日😀' },
        { path: 'a.bin', content: bytes },
      ]),
    );
    expect(Object.keys(read).sort()).toEqual(['a.bin', 'parts/größe.svg']);
    expect(strFromU8(read['parts/größe.svg'] ?? bytes)).toBe('é日😀');
    expect([...(read['a.bin'] ?? [])]).toEqual([0, 255, 7]);
  });

  it('are the same bytes for the same entries, stamped 1 January 1980', () => {
    const entries = [{ path: 'a.txt', content: 'text' }];
    const archive = zipFile(entries);
    expect(zipFile(entries)).toEqual(archive);
    // DOS date of the first local header, bytes 12 and 13 (zip format, from memory): day 1, month 1, year 0 = 1980.
    expect((archive[12] ?? 0) | ((archive[13] ?? 0) << 8)).toBe((0 << 9) | (1 << 5) | 1);
    expect([archive[10], archive[11]]).toEqual([0, 0]);
  });

  it.each([
    '',
    '/etc/passwd',
    '../x',
    'a/../../x',
    'a/./b',
    'a//b',
    'a/',
    'a\\b',
    'C:x',
    'a\u0000b',
    'a\nb',
    '\u202ex',
    '.hidden',
    'x.',
    'x ',
    '__proto__',
    'a/*',
    'n'.repeat(256),
  ])('refuse the path %j', (path) => {
    expect(() => zipFile([{ path, content: '' }])).toThrow(
      `zip: expected a plain relative path, got ${JSON.stringify(path)}`,
    );
  });

  it('refuse a path twice, whatever its case or composition, and a file that is also a folder', () => {
    const zip = (...paths: string[]) => zipFile(paths.map((path) => ({ path, content: '' })));
    expect(() => zip('a/B.svg', 'a/b.svg')).toThrow('expected every path once, got "a/b.svg" twice');
    expect(() => zip('\u00e9', 'e\u0301')).toThrow('expected every path once');
    expect(() => zip('a/b', 'a')).toThrow('expected a file or a folder, got both at "a"');
  });

  it('take the stem of any text as a path', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary' }), { maxLength: 8 }), (texts) => {
        const paths = fileStems(texts).map((stem) => `parts/${stem}.svg`);
        const read = unzipSync(zipFile(paths.map((path) => ({ path, content: path }))));
        expect(Object.keys(read).sort()).toEqual([...paths].sort());
      }),
    );
  });
});
