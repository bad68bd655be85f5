import { describe, expect, it } from 'vitest';
import { circle, openPath } from '$lib/geometry/contour.ts';
import { dxfFile } from '$lib/files/dxf.ts';
import { everything, plateOf } from './plate.ts';

/** The group codes and values of a DXF text. */
function groups(text: string): [code: number, value: string][] {
  const lines = text.split('\n');
  return lines.flatMap((line, index) =>
    index % 2 === 0 && line !== '' ? [[Number(line), lines[index + 1] ?? '']] : [],
  );
}

describe('a DXF file', () => {
  it('is the same text for the same plate, also when several are written at once', async () => {
    const alone = await dxfFile(everything);
    const together = await Promise.all([dxfFile(everything), dxfFile(plateOf(circle([5, 5], 2))), dxfFile(everything)]);
    expect(together[0]).toBe(alone);
    expect(together[2]).toBe(alone);
  });

  it('holds no exponent, no negative zero and no float dust', async () => {
    const drawn = plateOf(
      openPath([[-0.00001, 0.1 + 0.2], [1e-9, 33.333333]]), // prettier-ignore
      { kind: 'path', closed: false, vertices: [{ x: 0, y: 0, bulge: 4e-7 }, { x: 9000, y: 0, bulge: 0 }] }, // prettier-ignore
    );
    const text = await dxfFile(drawn);
    const reals = groups(text).filter(([code]) => code >= 10 && code <= 59);
    expect(reals.length).toBeGreaterThan(50);
    for (const [, value] of reals) expect(value).toMatch(/^-?(?:0|[1-9]\d*)(?:\.\d*[1-9])?$/);
    expect(reals.map(([, value]) => value)).not.toContain('-0');
    const entities = groups(text.slice(text.indexOf('\nENTITIES\n') + 1 - '2\n'.length));
    for (const [code, value] of entities) if (code === 10 || code === 20) expect(value).not.toMatch(/\.\d{4}/);
    expect(reals.filter(([code]) => code === 42).map(([, value]) => value)).toContain('0.0000004');
  });

  it('carries nothing of its name: no text of the user can end a line or a section', async () => {
    const named = await dxfFile({ ...everything, name: '0\nEOF\n<script>' });
    expect(named).toBe(await dxfFile(everything));
  });

  it('names the part and layer it cannot write', async () => {
    await expect(dxfFile(plateOf(circle([0, NaN], 1)))).rejects.toThrow(
      'test part, outside: expected finite lengths, got NaN',
    );
    await expect(dxfFile(plateOf(openPath([[1, 1]])))).rejects.toThrow('test part, outside: expected a path over');
    await expect(dxfFile({ ...plateOf(), height: NaN })).rejects.toThrow('test part: expected a finite number');
  });
});
