import { describe, expect, test } from 'vitest';
import { sweepFile } from '$lib/files/sweepFile.ts';
import { measures, measuresNamed } from '$lib/study/measures.ts';
import { sweep } from '$lib/study/sweep.ts';
import { demoWith, firstLayout, project } from '../projects.ts';
import { command } from './ran.ts';

const { run, file } = command('sweep');

const range = ['--over', '/stand/lift', '--from', '0', '--to', '40', '--steps', '5'];

describe('sweep', () => {
  test('prints what the engine finds as JSON', () => {
    const of = project();
    const by = measuresNamed(['tilt', 'slip-margin']);
    if (!by.ok) throw new Error('they are measures');
    const asked = { over: '/stand/lift', from: 0, to: 40, steps: 5, of: by.value, mirror: false };
    const swept = sweep(of, firstLayout(of), asked);
    if (!swept.ok) throw new Error('the range is a sound one');
    const { status, out, lines } = run(file(demoWith()), ...range, '--of', 'tilt,slip-margin');
    expect({ status, lines }).toEqual({ status: 0, lines: [] });
    expect(out).toBe(sweepFile(swept.value, by.value));
    expect(JSON.parse(out)).toMatchObject({
      format: 'wedgewright/sweep',
      version: 1,
      over: { pointer: '/stand/lift', unit: 'mm', now: 12 },
      rows: [{ at: 0, ok: false, reason: [{ pointer: expect.any(String) }] }, { at: 10, ok: true }, {}, {}, { at: 40 }],
      gaps: [{ from: 0 }],
      limits: { 'slip-margin': { value: 0 } },
    });
  });

  test('prints a table, and all of it for reading', () => {
    const { out } = run(file(demoWith()), ...range, '--of', 'tilt', '--csv');
    expect(out.split('\r\n').slice(0, 3)).toEqual(['\ufeff/stand/lift (mm),tilt (°)', '0.0000,', expect.stringMatching(/^10\.0000,\d+\.\d{3}$/)]); // prettier-ignore
    const read = run(file(demoWith()), ...range, '--of', 'tilt', '--text').out;
    expect(read).toMatch(/^0 +none\n/m);
    expect(read).toMatch(/^No answer from 0 to 2\.9\d*: expected a thin end/m);
    expect(read).toMatch(/^caution from 3[\d.]* to 40: The loudspeakers stand/m);
  });

  test('refuses bad input at its place, before anything is printed', () => {
    const path = file(demoWith());
    const lines = (...words: string[]) => {
      const { status, out, lines } = run(path, ...words);
      expect([status, out]).toEqual([2, '']);
      return lines;
    };
    expect(lines(...range, '--of', 'beauty')[0]).toMatch(/^\/of\/0: expected the name of a measure \(/);
    expect(lines('--over', '/stand/lift', '--from', 'low', '--to', '4', '--of', 'tilt')[0]).toBe(
      '/: expected a number after --from, got "low"',
    );
    expect(lines('--over', '/stand/lift', '--from', '-1', '--to', '4', '--of', 'tilt')).toEqual([
      expect.stringMatching(/^\/from: expected a length .*, got -1$/),
    ]);
    expect(lines('--over', '/stand/lift', '--from', '9', '--to', '4', '--of', 'tilt')).toEqual([
      '/to: expected more than 9, where the range begins, got 4',
    ]);
    expect(lines('--from', '9', '--to', '4', '--of', 'tilt')[0]).toBe(
      '/: expected --over and the pointer of a number, got nothing',
    );
    expect(lines(...range)[0]).toBe('/: expected --of and measures, got nothing');
    expect(lines(...range, '--of', 'tilt', '--layout', 'attic')[0]).toBe(
      '/: expected the name of a layout ("window side"), got "attic"',
    );
  });

  test('says how it is used', () => {
    const { status, out } = run('-h');
    expect(status).toBe(0);
    for (const { name, says } of measures) expect(out).toContain(`${name.padEnd(17)} ${says}`);
  });
});
