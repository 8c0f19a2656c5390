import { defineConfig } from 'vitest/config';

/** Where to leave a report for machines, besides the one on the screen; .ci/run counts with it. */
const report = process.env.COREWARD_TEST_REPORT;

export default defineConfig({
  test: {
    include: ['packages/*/src/**/*.test.ts', 'test/**/*.test.ts'],
    setupFiles: ['test/seeded-draws.ts'],
    testTimeout: 30_000,
    // files share what they import: none leaves anything behind that another could see, and reading it
    // all anew for each of them took longer than their tests
    isolate: false,
    maxWorkers: '100%',
    reporters: report === undefined ? ['default'] : ['default', ['json', { outputFile: report }]],
  },
});
