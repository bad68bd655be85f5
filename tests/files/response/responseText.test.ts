import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Commas } from '$lib/files/response/columns.ts';
import { readResponse, type ResponseReading } from '$lib/files/response/responseText.ts';
import type { MeasuredCurve } from '$lib/proof/heard/curve.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { runs } from '../../runs.ts';
import { bytesOf, PLAIN, written, type Way } from './written.ts';

const read = (text: string | Uint8Array, commas: Commas | null = null): ResponseReading =>
  toTheEnd(readResponse(typeof text === 'string' ? bytesOf(text) : text, commas));

function curveOf(reading: ResponseReading): MeasuredCurve {
  if (reading.kind !== 'read') throw new Error(JSON.stringify(reading));
  return reading.curve;
}

const refusal = (reading: ResponseReading): string => (reading.kind === 'refused' ? reading.message : reading.kind);
const numbers = ({ frequencies, levels, phases }: MeasuredCurve) => [[...frequencies], [...levels], phases && [...phases]]; // prettier-ignore

const three = 'frequency level\n20 80.5\n200 81.25\n2000 79\n';
const expected = [[20, 200, 2000], [80.5, 81.25, 79], null];

describe('the text of a measured response', () => {
  const fixtures: readonly (readonly [name: string, text: string])[] = [
    ['tabs', '20\t80.5\n200\t81.25\n2000\t79\n'],
    ['spaces', three],
    ['semicolons', '20;80.5\n200;81.25\n2000;79'],
    ['commas', '20,80.5\n200,81.25\n2000,79'],
    ['commas and spaces', '20, 80.5\n200, 81.25\n2000, 79'],
    ['decimal commas and tabs', '20,0\t80,5\n200,0\t81,25\n2000,0\t79,0'],
    ['decimal commas and semicolons', 'Hz;dB\n20;80,5\n200;81,25\n2000;79'],
    ['decimal commas and spaces', '20,0 80,5\n200,0 81,25\n2000,0 79,0'],
    ['points between thousands', '20;80,5\n200;81,25\n2.000,0;79'],
    ['commas between thousands', '20.0;80.5\n200.0;81.25\n2,000.0;79'],
    ['comments of all the usual signs', '* one\n# two\n; three\n"four"\n% five\n// six\n! seven\n20 80.5\n\n# eight\n200 81.25\n2000 79'],
    ['words that begin with a figure', '2 channels\n48 kHz\nf(Hz) L(dB)\n20 80.5\n200 81.25\n2000 79'],
    ['quoted cells', '"f","L"\n"20","80.5"\n"200","81.25"\n"2000","79"'],
    ['a mark at the front and lines of two characters', '\uFEFF20 80.5\r\n200 81.25\r\n2000 79\r\n'],
    ['lines that end with a return alone', '20 80.5\r200 81.25\r2000 79\r'],
    ['exponents', '2.0E+01 8.05e1\n2e2 81.25\n2.000000E+03 79.0'],
    ['out of order', '2000 79\n20 80.5\n200 81.25'],
    ['0 Hz first', '0 -120\n20 80.5\n200 81.25\n2000 79'],
    ['a frequency twice, with its mean', '20 80.5\n200 81\n200 81.5\n2000 79'],
    ['a separator at each end', '20;80.5;\n200;81.25;\n2000;79;'],
    ['minus signs as printed', '20 80.5\n200 81.25\n2000 79\n3000 \u22121'],
  ]; // prettier-ignore

  test.each(fixtures)('with %s', (name, text) => {
    const [f, levels, phases] = expected;
    const more = name === 'minus signs as printed';
    expect(numbers(curveOf(read(text)))).toEqual([more ? [...(f ?? []), 3000] : f, more ? [...(levels ?? []), -1] : levels, phases]); // prettier-ignore
  });

  test('with a third column as its phase, and more columns passed over', () => {
    expect(numbers(curveOf(read('20 80 -10\n200 81 -170.5\n2000 79 90')))).toEqual([
      [20, 200, 2000],
      [80, 81, 79],
      [-10, -170.5, 90],
    ]);
    const five = read('20\t80\t-10\t1\t2\n200\t81\t-170\t1\t2\n2000\t79\t90\t1\t2');
    expect(five.kind === 'read' && five.columns).toBe(5);
  });

  test('in UTF-16 and in Windows-1252', () => {
    const wide = Uint8Array.from([0xff, 0xfe, ...[...three].flatMap((one) => [one.charCodeAt(0), 0])]);
    expect(numbers(curveOf(read(wide)))).toEqual(expected);
    const swapped = Uint8Array.from([0xfe, 0xff, ...[...three].flatMap((one) => [0, one.charCodeAt(0)])]);
    expect(numbers(curveOf(read(swapped)))).toEqual(expected);
    const degrees = Uint8Array.from([...bytesOf('Hz dB '), 0xb0, ...bytesOf(`\n${three}`)]);
    expect(numbers(curveOf(read(degrees)))).toEqual(expected);
  });

  test('counts what it passes over', () => {
    const reading = read('words\n\n# c\n0 1\n20 80\n20 82\n10 3\n200 81\n2000 79\n');
    expect(reading).toMatchObject({ kind: 'read', passedOver: 2, atZero: 1, repeated: 1, sorted: false, columns: 2 });
  });
});

describe('a comma', () => {
  test('is asked about where the file cannot tell, and read as answered', () => {
    const text = '1,125;80\n1,250;81\n1,375;79';
    expect(read(text)).toEqual({ kind: 'ask', line: 1, field: '1,125', decimal: 1.125, thousands: 1125 });
    expect([...curveOf(read(text, 'thousands')).frequencies]).toEqual([1125, 1250, 1375]);
    expect(refusal(read(text, 'decimal'))).toBe('expected at least 3 frequencies from 20 Hz to 20 kHz, got 0');
  });

  test.each([
    ['a level in thousands is none', '20,125 80,125\n20,250 81\n20,375 79', [20.125, 20.25, 20.375]],
    ['two digits after it', '20,125 80\n20,25 81\n20,375 79', [20.125, 20.25, 20.375]],
    ['a zero before it', '0,125 80\n20,125 80\n20,250 81\n20,375 79', [0.125, 20.125, 20.25, 20.375]],
    ['two in one number', '20 80\n200 81\n20,000 79\n1,000,000 70', [20, 200, 20000, 1e6]],
    ['a decimal point elsewhere', '20 80.5\n1,250 81\n2,375 79', [20, 1250, 2375]],
    ['frequencies that rise only with thousands', '20 80\n500 81\n1,000 79\n2,000 79', [20, 500, 1000, 2000]],
    ['four digits before it', '1000,125 80\n1000,250 81\n1000,375 79', [1000.125, 1000.25, 1000.375]],
  ])('is told by %s', (_, text, frequencies) => {
    expect([...curveOf(read(text)).frequencies]).toEqual(frequencies);
  });

  test('that is used both ways is refused with both lines', () => {
    expect(refusal(read('20,5 80\n200 81\n2,000.5 79'))).toBe(
      'line 3: expected commas as in line 1 ("20,5 80"), got "2,000.5 79": one has decimal commas, one commas between thousands',
    );
  });

  test('between columns and in numbers is refused', () => {
    expect(refusal(read('20,5,80,1\n200,5,81,2\n2000,5,79,1'))).toMatch(/^line 1: expected two or three columns, got four by commas and no decimal point/); // prettier-ignore
  });
});

describe('a file that is no response is refused with what is wrong and in which line', () => {
  test.each([
    ['empty', '', 'expected a text with frequencies and levels, got an empty file'],
    ['words', 'nothing\nhere\n', 'expected a frequency in Hz and a level in dB on each line, got no line that begins with a number'],
    ['one column', '# f\n20\n200\n', 'line 2: expected a frequency in Hz and a level in dB, got "20"'],
    ['a frequency below zero', '20 80\n-5 80\n200 81\n', 'line 2: expected a frequency of 0 to 1000000 Hz, got "-5"'],
    ['NaN', '20 80\n200 NaN\n', 'line 2: expected a level of -300 to 300 dB, got "NaN"'],
    ['NaN as a frequency', '20 80\nnan 80\n', 'line 2: expected a frequency of 0 to 1000000 Hz, got "nan"'],
    ['infinity', '20 80\n200 -inf\n', 'line 2: expected a level of -300 to 300 dB, got "-inf"'],
    ['levels of a thousand million', '20 80\n200 1e9\n', 'line 2: expected a level of -300 to 300 dB, got "1e9"'],
    ['and under zero', '20 80\n200 -1000000000\n', 'line 2: expected a level of -300 to 300 dB, got "-1000000000"'],
    ['a row without a level', '20 80\n200\n2000 79', 'line 2: expected a level of -300 to 300 dB, got nothing'],
    ['words in the place of a level', '20 80\n200 loud\n2000 79', 'line 2: expected a level of -300 to 300 dB, got "loud"'],
    ['words in the place of a phase', '20 80 0\n200 80 late\n2000 79 0', 'line 2: expected a phase in degrees, got "late"'],
    ['two frequencies', '20 80\n200 81\n', 'expected at least 3 frequencies from 20 Hz to 20 kHz, got 2'],
    ['kilohertz', '0.1 80\n1 81\n10 79\n', 'expected at least 3 frequencies from 20 Hz to 20 kHz, got 0'],
  ])('%s', (_, text, message) => {
    expect(refusal(read(text))).toBe(message);
  }); // prettier-ignore

  test('binary', () => {
    const png = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d]);
    expect(refusal(read(png))).toBe('expected a text with frequencies and levels, got a file that is no text');
  });

  test('a million lines, and more than 20 MB', () => {
    expect(refusal(read('20 80\n'.repeat(1e6)))).toBe('line 500001: expected at most 500000 lines, got 1000001');
    expect(refusal(read(new Uint8Array(20e6 + 1).fill(0x20)))).toBe('expected at most 20 MB, got 20.0 MB');
  });

  test('whatever it is, without a throw, and never with a number that is none', () => {
    let answered = 0;
    const text = fc.string({ unit: fc.constantFrom(...'0123456789.,;-+eE \t\nN#"') });
    const near = fc
      .tuple(
        fc.array(fc.tuple(fc.nat(9999), fc.integer({ min: -200, max: 200 })), { minLength: 3 }),
        fc.constantFrom(' ', ';', ',', '\t'),
        text,
        fc.nat(),
      )
      .map(([rows, between, odd, at]) =>
        rows.flatMap((row, i) => (i === at % 40 ? [odd, row.join(between)] : [row.join(between)])).join('\n'),
      );
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), text, near, (bytes, odd, some) => {
        for (const reading of [read(bytes), read(odd), read(some)]) {
          if (reading.kind !== 'read') continue;
          answered += 1;
          const { frequencies, levels } = reading.curve;
          expect([...frequencies, ...levels].every(Number.isFinite)).toBe(true);
          expect(frequencies.every((f, i) => f > (frequencies[i - 1] ?? 0))).toBe(true);
        }
      }),
      { numRuns: runs(2000) },
    ); // prettier-ignore
    expect(answered).toBeGreaterThan(runs(2000) / 4);
  });
});

test('what is written in any usual way is read back as it was', () => {
  const way = fc.record<Way>({
    between: fc.constantFrom('\t', ';', ',', ' ', '  ', '; ', ', '),
    decimal: fc.constantFrom('.', ','),
    end: fc.constantFrom('\n', '\r\n', '\r'),
    mark: fc.constantFrom('', '\uFEFF'),
    head: fc.array(fc.constantFrom('* a', '# 20 Hz', '; 1;2', '"Frequency" "SPL"', 'Hz, dB', '', '48 kHz'), { maxLength: 4 }),
    padded: fc.boolean(),
    trailing: fc.boolean(),
    plus: fc.boolean(),
    quoted: fc.boolean(),
  }).filter(({ between, decimal }) => !(decimal === ',' && between.includes(','))); // prettier-ignore
  const curve = fc
    .uniqueArray(fc.double({ min: 20, max: 20000, noNaN: true }), { minLength: 3, maxLength: 40 })
    .chain((some) => {
      const level = fc.double({ min: -300, max: 300, noNaN: true }).map((one) => one + 0);
      const all = { minLength: some.length, maxLength: some.length };
      return fc.record({
        frequencies: fc.constant(Float64Array.from(some).sort()),
        levels: fc.array(level, all).map((list) => Float64Array.from(list)),
        phases: fc.option(fc.array(level, all).map((list) => Float64Array.from(list))),
      });
    });
  let asked = 0;
  fc.assert(
    fc.property(curve, way, fc.infiniteStream(fc.nat()), (of, as, next) => {
      const order = [...of.frequencies.keys()]
        .map((at) => [next.next().value ?? 0, at] as const)
        .sort((a, b) => a[0] - b[0])
        .map(([, at]) => at);
      const text = written(of, as, order);
      const told = read(text);
      if (told.kind === 'ask') asked += 1;
      const reading = told.kind === 'ask' ? read(text, as.decimal === ',' ? 'decimal' : 'thousands') : told;
      expect(numbers(curveOf(reading))).toEqual(numbers(of));
    }),
    { numRuns: runs(2000) },
  );
  expect(asked).toBeLessThan(runs(2000) / 10);
});

test('thousands of rows in a plain file are read back too', () => {
  const frequencies = Float64Array.from({ length: 20_001 }, (_, i) => 20 + i * 0.999);
  const of = { frequencies, levels: frequencies.map((f) => 80 + Math.sin(f)), phases: null };
  expect(numbers(curveOf(read(written(of, PLAIN))))).toEqual(numbers(of));
});
