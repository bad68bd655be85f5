import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { countTests, total } from '../../tools/testCount.mjs';

const folder = mkdtempSync(join(tmpdir(), 'wedgewright-count-'));
const file = join(folder, 'report.json');
afterAll(() => rmSync(folder, { recursive: true }));

interface Suite {
  status: string;
  assertionResults: { status: string }[];
}

function report(passed: number, failed: number, testResults: Suite[]): string {
  writeFileSync(file, JSON.stringify({ numPassedTests: passed, numFailedTests: failed, testResults }));
  return file;
}

const sound = { status: 'passed', assertionResults: [{ status: 'passed' }] };
const broken = { status: 'failed', assertionResults: [] };
const failing = { status: 'failed', assertionResults: [{ status: 'passed' }, { status: 'failed' }] };

test('a sound run', () => {
  expect(countTests(report(1, 0, [sound]), true)).toEqual({ passed: 1, failed: 0 });
});

test('a failed test counts once, its file not again', () => {
  expect(countTests(report(2, 1, [sound, failing]), false)).toEqual({ passed: 2, failed: 1 });
});

test('a file that could not be loaded counts as a failure', () => {
  expect(countTests(report(1, 0, [sound, broken]), false)).toEqual({ passed: 1, failed: 1 });
});

test('a run that ended badly for no told reason counts as a failure', () => {
  expect(countTests(report(1, 0, [sound]), false)).toEqual({ passed: 1, failed: 1 });
});

test('no report, or half of one, is a failure', () => {
  expect(countTests(join(folder, 'none.json'), true)).toEqual({ passed: 0, failed: 1 });
  writeFileSync(file, '{"numPassedTests":');
  expect(countTests(file, true)).toEqual({ passed: 0, failed: 1 });
});

test('counts add up', () => {
  const counts = [
    { passed: 2, failed: 1 },
    { passed: 3, failed: 0 },
  ];
  expect(total(counts)).toEqual({ passed: 5, failed: 1 });
  expect(total([])).toEqual({ passed: 0, failed: 0 });
});
