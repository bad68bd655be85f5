import { describe, expect, test } from 'vitest';
import { degrees } from '$lib/geometry/angle.ts';
import { aimSpread } from '$lib/layout/aimSpread.ts';
import type { Lengths } from '$lib/project/units.ts';
import { countText, formatNumber, lengthText, quantityText, tapeText } from '$lib/views/ui/formatNumber.ts';
import { limitText } from '$lib/views/results/findings.ts';
import { tablesOf } from '$lib/views/results/tables.ts';
import { fileGroups } from '$lib/views/files/groups.ts';
import { steppedText } from '$lib/document/stepSize.ts';
import { limitsText } from '$lib/project/range.ts';
import { tiltRule, toeRule } from '$lib/views/form/rules.ts';
import { cutter } from '$lib/project/fields/machines.ts';
import { speaker } from '$lib/project/fields/speaker.ts';
import { rods } from '$lib/project/fields/stand.ts';
import { rangeIn } from '$lib/project/entry.ts';
import { settleProject } from '$lib/document/settle.ts';
import { project } from '../../projects.ts';

describe('figures', () => {
  test('have a true minus, and none before nothing', () => {
    expect(formatNumber(-1.25, 1)).toBe('\u22121.3');
    expect(formatNumber(-0.04, 1)).toBe('0.0');
    expect(formatNumber(0, 2)).toBe('0.00');
  });

  test('stand with their unit, in mm or inches', () => {
    expect(lengthText(165.1, 'mm')).toBe('165.1\u202fmm');
    expect(lengthText(165.1, 'in')).toBe('6.500\u202fin');
    const sixteenths = { length: 'in', fraction: 16 } as const;
    expect(lengthText(0, sixteenths)).toBe('0″');
    expect(lengthText(1e-13, sixteenths)).toBe('0″');
    expect(lengthText(-1e-13, sixteenths)).toBe('0″');
    expect(lengthText(0.1, sixteenths)).toBe('0.004\u202fin');
    expect(lengthText(-25.4, sixteenths)).toBe('\u22121″');
    expect(quantityText(-2.8, 1, 'dB')).toBe('\u22122.8\u202fdB');
    expect(countText(1, 'slice', 'slices')).toBe('1 slice');
    expect(countText(54, 'slice', 'slices')).toBe('54 slices');
  });

  test('of a finding, with its limit', () => {
    const finding = { value: 14.72, limit: 10, unit: '°' } as const;
    expect(limitText(finding)).toBe('14.7°, limit 10.0°');
    expect(limitText({ ...finding, value: 0.256, limit: 0.2, unit: 'ratio' })).toBe('0.26, limit 0.20');
    expect(limitText({ ...finding, unit: 'mm' })).toBe('14.7\u202fmm, limit 10.0\u202fmm');
  });
});

test('a tape shows whole millimetres, sixteenths of an inch at the finest, or tenths', () => {
  expect(tapeText(26.2, 'mm')).toBe('26\u202fmm');
  expect(tapeText(30, { length: 'in', fraction: 64 })).toBe('≈\u202f1\u00a03/16″');
  expect(tapeText(30, { length: 'in', fraction: 8 })).toBe('≈\u202f1\u00a01/8″');
  expect(tapeText(30, { length: 'in', fraction: null })).toBe('1.2\u202fin');
});

describe('tables', () => {
  const { shown } = settleProject(project(), 0);
  const tables = shown ? tablesOf(shown, 'mm') : [];
  const aside = settleProject(project({ '/layouts/0/listener/offset': 60 }), 0).shown;
  const uneven = aside ? tablesOf(aside, 'mm') : [];

  test('say what the plan says', () => {
    expect(tables.map(({ title }) => title)).toEqual([
      'Aim',
      'Postures',
      'Triangle',
      'Screens',
      'Stand',
      'Drivers',
      'Crossovers',
      'Reflections',
    ]);
    const toe = tables[0]?.groups[0]?.rows[0];
    const open = shown && aimSpread(shown.project.speaker, shown.layout, 'left', shown.project.sure);
    const spread = degrees(open?.all.toe ?? NaN).toFixed(1);
    expect(toe).toEqual({ name: 'Toe', cells: [`${shown?.sides.left.toe.toFixed(1)}° ±\u202f${spread}°`] });
    expect(tables.find(({ title }) => title === 'Drivers')?.groups.map(({ name }) => name)).toEqual([
      'tweeter',
      'woofer',
    ]);
  });

  test('tell of sides that are alike once, of others each by itself', () => {
    const columns = tables.map((table) => table.columns);
    const ofNoSide: Readonly<Record<string, string>> = { Triangle: 'Pair', Screens: 'From the head' };
    expect(columns).toEqual(tables.map(({ title }) => [ofNoSide[title] ?? 'Each']));
    const { left, right } = aside?.sides ?? {};
    const [aim] = uneven;
    expect(aim?.columns).toEqual(['Left', 'Right']);
    expect(aim?.groups[0]?.rows[0]?.cells).toEqual(
      [left, right].map((side) => expect.stringMatching(new RegExp(`^${side?.toe.toFixed(1)}°\\s±\\s\\d\\.\\d°$`))),
    );
    expect(left?.toe).not.toBeCloseTo(right?.toe ?? 0, 1);
  });

  test('show of what a tape has measured no digit that it cannot carry', () => {
    const cells = (lengths: Lengths) =>
      (shown ? tablesOf(shown, lengths) : [])
        .filter(({ title }) => title !== 'Stand')
        .flatMap(({ groups }) => groups.flatMap(({ rows }) => rows.flatMap((row) => row.cells)));
    expect(cells('mm').filter((cell) => / ?mm/.test(cell)).length).toBeGreaterThan(8);
    expect(cells('mm').filter((cell) => /\.\d+\smm/.test(cell))).toEqual([]);
    const tenths = cells({ length: 'in', fraction: null }).filter((cell) => /\sin$/.test(cell));
    expect(tenths.length).toBeGreaterThan(8);
    for (const cell of tenths) expect(cell).toMatch(/\d\.\d\sin$/);
  });

  test('say of an angle that nothing is left open of only what it is', () => {
    const exact = settleProject(project({ '/layouts/0/aim/toe': { rule: 'as-set', degrees: 30 } }), 0).shown;
    const rows = exact ? (tablesOf(exact, 'mm')[0]?.groups[0]?.rows ?? []) : [];
    expect(rows[0]).toEqual({ name: 'Toe', cells: ['30.0°'] });
    expect(rows.find(({ name }) => name === 'Miss at the head')?.cells[0]).toMatch(/^\d+\smm\s±\s\d+\smm$/);
  });

  test('have a cell for every column', () => {
    for (const { columns, groups } of [...tables, ...uneven]) {
      for (const { rows } of groups) for (const { cells } of rows) expect(cells).toHaveLength(columns.length);
    }
  });

  test('without crossovers have no table of them', () => {
    const bare = settleProject(project({ '/speaker/crossovers': [] }), 0).shown;
    expect(bare && tablesOf(bare, 'in').map(({ title }) => title)).not.toContain('Crossovers');
  });
});

test('files stand by folder, those to cut first', () => {
  const files = ['plan.json', 'parts/a.svg', 'sheets/b-1.dxf'].map((path) => ({ path, text: '' }));
  expect(fileGroups(files).map(({ name, files: held }) => [name, held.length])).toEqual([
    ['Sheets', 1],
    ['Parts', 1],
    ['Plan', 1],
  ]);
  expect(fileGroups([])).toEqual([]);
});

test('limits stand with their unit', () => {
  expect(limitsText(speaker.baffleRake)).toBe('\u221230 to 45°');
  expect(limitsText(rods.count)).toBe('2 to 8, a whole number');
  expect(limitsText(cutter.kerf)).toBe('0 to 13 mm');
});

test('an arrow key steps without dust and stays in the range', () => {
  expect(steppedText(0.2, 0.1, cutter.kerf)).toBe('0.3');
  expect(steppedText(165, -10, speaker.width)).toBe('155');
  expect(steppedText(20, -1, speaker.width)).toBe('20');
  expect(steppedText(6.5, 1 / 16, rangeIn(speaker.width, 'in'))).toBe('6.5625');
});

test('a rule with a number of its own starts where the drawing stands', () => {
  const side = settleProject(project(), 0).shown?.sides.right;
  expect(toeRule('to-head', side)).toEqual({ rule: 'to-head' });
  expect(toeRule('behind-head', side)).toEqual({ rule: 'behind-head', distance: 300 });
  expect(toeRule('as-set', side)).toEqual({ rule: 'as-set', degrees: Number(side?.toe.toFixed(1)) });
  expect(tiltRule('tilt-to-ear', side)).toEqual({ rule: 'tilt-to-ear' });
  expect(tiltRule('as-set', undefined)).toEqual({ rule: 'as-set', degrees: 0 });
});

test('lengths are fractions of an inch where those are shown and say something', () => {
  const sixteenths = { length: 'in', fraction: 16 } as const;
  expect(lengthText(25.4 * 1.5, sixteenths)).toBe('1\u00a01/2″');
  expect(lengthText(30, sixteenths)).toBe('≈\u202f1\u00a03/16″');
  expect(lengthText(0, sixteenths)).toBe('0″');
  expect(lengthText(0.254, sixteenths)).toBe('0.010\u202fin');
  expect(lengthText(30, { length: 'mm', fraction: 16 })).toBe('30.0\u202fmm');
  expect(limitText({ value: 25.4, limit: 0, unit: 'mm' }, sixteenths)).toBe('1″, limit 0″');
});
