import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { between } from '../scripts/between-marks.ts';
import { simulators } from '../scripts/calibrate/simulators.ts';
import { gaugesPart } from '../scripts/gauges-page.ts';

const page = readFileSync(new URL('../docs/gauges.md', import.meta.url), 'utf8');

test('docs/gauges.md is what `npm run documents` writes', () => {
  expect(between(page, 'gauges', gaugesPart())).toBe(page);
});

test('the page tells a calibration for every simulator, all of it between 85 and 97 per cent', () => {
  const rows = page.split('\n').filter((line) => /^\| `[a-z-]+` \| .* % \|/u.test(line));
  for (const { gauge, what } of simulators)
    expect(
      rows.some((row) => row.includes(`\`${gauge}\` | ${what}`)),
      what,
    ).toBe(true);
  for (const row of rows) {
    const held = [...row.split('|')[3]!.matchAll(/(\d+\.\d) %/gu)].map(([, share]) => Number(share));
    expect(held.length).toBeGreaterThan(0);
    for (const share of held) expect(share).toBeGreaterThanOrEqual(85);
    for (const share of held) expect(share).toBeLessThanOrEqual(97);
  }
});
