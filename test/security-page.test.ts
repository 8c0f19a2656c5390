import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

// docs/security.md promises a test for each threat: every row names tests that are there, by their titles or their file.

const read = (path: string) => readFileSync(new URL(`../${path}`, import.meta.url), 'utf8');
const page = read('docs/security.md');

const files = [
  'packages/station/src/access/threats.test.ts',
  'packages/station/src/access/network.test.ts',
  'packages/station/src/access/plain-at-tls.test.ts',
  'packages/station/src/live/live-channel.test.ts',
  'packages/station/src/exchange/import-book.test.ts',
  'packages/station/src/bench-book/bench-book.test.ts',
  'packages/station/src/bench-book/refused-places.test.ts',
  'test/kill-station.test.ts',
].map((path) => read(path));
const titles = new Set(
  files.flatMap((text) => [...text.matchAll(/^test\(\s*'((?:[^'\\]|\\.)+)'/gmu)].map(([, title]) => title)),
);

const rows = page
  .split('\n')
  .filter((line) => line.startsWith('| ') && !line.startsWith('| threat') && !line.startsWith('| ---'))
  .map((line) => line.split(' | ').map((cell) => cell.replace(/^\| | \|$/gu, '')));

test('the page has its rows', () => {
  expect(rows.length).toBeGreaterThan(20);
});

for (const [threat = '', , tests = ''] of rows) {
  test(`a test stands behind: ${threat}`, () => {
    const named = [...tests.matchAll(/`([^`]+)`/gu)]
      .map(([, title]) => title ?? '')
      .filter((name) => !name.startsWith('npm '));
    for (const name of named) expect(titles).toContain(name);
    // the check of links sees to it that a file that is named is there
    expect(named.length > 0 || /\.test\.ts\]/u.test(tests) || tests === 'below').toBe(true);
  });
}
