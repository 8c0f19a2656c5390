// Counts what the two test runners report: `tsx scripts/count-tests.ts UNIT [SCREENS]` prints `N passed, N failed`.
import { existsSync, readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

/** What is used of vitest's JSON report; nothing of it is relied upon to be there. */
export interface TestReport {
  readonly success?: boolean;
  readonly testResults?: readonly {
    readonly status: string;
    readonly assertionResults?: readonly { readonly status: string }[];
  }[];
}

/** What is used of Playwright's JSON report. A test that passed only when repeated (`flaky`) did not pass. */
export interface ScreensReport {
  readonly stats?: { readonly expected?: number; readonly unexpected?: number; readonly flaky?: number };
  /** What broke outside any test. */
  readonly errors?: readonly unknown[];
}

export interface TestCount {
  readonly passed: number;
  readonly failed: number;
}

/**
 * Tests that passed and failed. A file that broke before its tests could run has none to fail and counts as one failure,
 * and so does a run that failed for any other reason.
 */
export function countTests({ success, testResults = [] }: TestReport): TestCount {
  let passed = 0;
  let failed = 0;
  for (const { status, assertionResults = [] } of testResults) {
    const failures = assertionResults.filter((one) => one.status === 'failed').length;
    passed += assertionResults.filter((one) => one.status === 'passed').length;
    failed += status === 'failed' ? Math.max(1, failures) : failures;
  }
  const unexplained = failed === 0 && (success !== true || passed === 0);
  return { passed, failed: unexplained ? 1 : failed };
}

/** The same for the tests in a real browser. */
export function countScreens({ stats = {}, errors = [] }: ScreensReport): TestCount {
  const passed = stats.expected ?? 0;
  const failed = (stats.unexpected ?? 0) + (stats.flaky ?? 0) + errors.length;
  return { passed, failed: failed === 0 && passed === 0 ? 1 : failed };
}

const read = (path: string | undefined) =>
  path !== undefined && existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : {};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const counts = [countTests(read(process.argv[2])), countScreens(read(process.argv[3]))];
  const [passed, failed] = [counts.map((one) => one.passed), counts.map((one) => one.failed)].map((each) =>
    each.reduce((sum, one) => sum + one, 0),
  );
  console.log(`${passed} passed, ${failed} failed`);
  process.exitCode = failed === 0 ? 0 : 1;
}
