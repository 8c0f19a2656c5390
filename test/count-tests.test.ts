import { expect, test } from 'vitest';
import { countTests } from '../scripts/count-tests.ts';

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
