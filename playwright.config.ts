import { defineConfig } from '@playwright/test';

/** Where to leave a report for machines; .ci/run counts with it. */
const report = process.env.COREWARD_SCREENS_REPORT;

export default defineConfig({
  testDir: 'test/screens',
  testMatch: '**/*.screens.ts',
  outputDir: 'coverage/screens',
  // much of a test is waiting: for a hand, for a pause, for a browser to start
  workers: 2,
  fullyParallel: false,
  // a whole page read by axe takes a third of it beside another test
  timeout: 120_000,
  expect: { timeout: 10_000 },
  reporter: report === undefined ? [['list']] : [['list'], ['json', { outputFile: report }]],
  use: {
    launchOptions: {
      executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
      // --no-sandbox only because tests may run as root; the rest keeps the browser off the network
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});
