import { readFileSync } from 'node:fs';

/** @typedef {{ passed: number, failed: number }} Count */

/**
 * The part of Vitest's JSON report that is used here.
 * @typedef {object} Report
 * @property {number} numPassedTests
 * @property {number} numFailedTests
 * @property {{ status: string, assertionResults: { status: string }[] }[]} testResults
 */

/**
 * Counts the tests of a Vitest run. A file that failed as a whole (it could not be loaded, say) counts as one failure,
 * and so does a run that ended badly without a failed test in its report, or left no report.
 * @param {string} file the JSON report
 * @param {boolean} endedWell whether Vitest ended with status 0
 * @returns {Count}
 */
export function countTests(file, endedWell) {
  const report = read(file);
  if (!report) return { passed: 0, failed: 1 };
  const brokenFiles = report.testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
  );
  const failed = report.numFailedTests + brokenFiles.length;
  return { passed: report.numPassedTests, failed: failed === 0 && !endedWell ? 1 : failed };
}

/**
 * @param {string} file
 * @returns {Report | null}
 */
function read(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}

/**
 * @param {readonly Count[]} counts
 * @returns {Count}
 */
export function total(counts) {
  return counts.reduce((sum, one) => ({ passed: sum.passed + one.passed, failed: sum.failed + one.failed }), {
    passed: 0,
    failed: 0,
  });
}
