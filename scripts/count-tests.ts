// Counts what vitest's JSON report says: `tsx scripts/count-tests.ts REPORT` prints `N passed, N failed`.
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

/** What is used of the report; nothing of it is relied upon to be there. */
export interface TestReport {
  readonly success?: boolean;
  readonly testResults?: readonly {
    readonly status: string;
    readonly assertionResults?: readonly { readonly status: string }[];
  }[];
}

/**
 * Tests that passed and failed. A file that broke before its tests could run has none to fail and counts as one failure,
 * and so does a run that failed for any other reason.
 */
export function countTests({ success, testResults = [] }: TestReport): { passed: number; failed: number } {
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

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const { passed, failed } = countTests(JSON.parse(readFileSync(process.argv[2] ?? '', 'utf8')));
  console.log(`${passed} passed, ${failed} failed`);
  process.exitCode = failed === 0 ? 0 : 1;
}
