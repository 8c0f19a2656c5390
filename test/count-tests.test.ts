import { expect, test } from 'vitest';
import { countScreens, countTests } from '../scripts/count-tests.ts';

// The shape of the report as vitest 4 writes it with its json reporter (read in such a report).
const file = (status: string, ...tests: readonly string[]) => ({
  status,
  assertionResults: tests.map((one) => ({ status: one })),
});

test('tests are counted over all files', () => {
  const testResults = [file('passed', 'passed', 'passed'), file('failed', 'passed', 'failed')];
  expect(countTests({ success: false, testResults })).toEqual({ passed: 3, failed: 1 });
  expect(countTests({ success: true, testResults: [file('passed', 'passed')] })).toEqual({
    passed: 1,
    failed: 0,
  });
});

test('a file that breaks before its tests is a failure', () => {
  const testResults = [file('passed', 'passed'), file('failed')];
  expect(countTests({ success: false, testResults })).toEqual({ passed: 1, failed: 1 });
});

test('a run that failed although every test passed is a failure', () => {
  expect(countTests({ success: false, testResults: [file('passed', 'passed')] })).toEqual({
    passed: 1,
    failed: 1,
  });
});

test('no test at all is a failure', () => {
  expect(countTests({ success: true, testResults: [] })).toEqual({ passed: 0, failed: 1 });
  expect(countTests({})).toEqual({ passed: 0, failed: 1 });
});

// The shape of Playwright's JSON report (its own documentation of the json reporter).
test('tests in the browser are counted, and one that passed only when repeated did not pass', () => {
  expect(countScreens({ stats: { expected: 7, unexpected: 1, flaky: 1 } })).toEqual({ passed: 7, failed: 2 });
  expect(countScreens({ stats: { expected: 7, unexpected: 0, flaky: 0 }, errors: [] })).toEqual({
    passed: 7,
    failed: 0,
  });
});

test('no browser, no report or an error outside any test is a failure', () => {
  expect(countScreens({})).toEqual({ passed: 0, failed: 1 });
  expect(countScreens({ stats: { expected: 3 }, errors: [{}] })).toEqual({ passed: 3, failed: 1 });
});
