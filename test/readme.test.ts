import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { withForecast } from '../scripts/readme-forecast.ts';

// A check against change, no check of the numbers: those have their own. `npm run documents` brings the README up to date.
test('the forecast in the README is unchanged since `npm run documents` wrote it', async () => {
  const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
  expect(await withForecast(readme)).toBe(readme);
});
