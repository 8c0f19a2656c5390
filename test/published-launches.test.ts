import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { measuredLaunches, publishedForecast } from '../scripts/published/measured-launches.ts';
import { withPublishedLaunches } from '../scripts/published/published-page.ts';
import { workedExamples } from '../scripts/published/worked-examples.ts';

// What these can show and what not is told in docs/published-launches.md: they are no validation.

for (const { launch, session, measured, lies } of measuredLaunches) {
  test(`${launch}, ${session}: measured lies ${lies} the 90 % range (sources in docs/published-launches.md)`, () => {
    const { low, high } = publishedForecast(launch).output.fractionOfLaser;
    const found = measured < low ? 'below' : measured > high ? 'above' : 'inside';
    expect(found).toBe(lies);
  });
}

test('what is told of 98 % lies above the range by less than two percentage points, as the page says', () => {
  const { high } = publishedForecast('infrared-large-mode').output.fractionOfLaser;
  expect(0.98 - high).toBeLessThan(0.02);
});

test('the range of the green launch spans the three quarters of a decibel to either side that the page owns to', () => {
  const { value, low, high } = publishedForecast('green-through-objective').output.fractionOfLaser;
  // two digits, as the page rounds them
  expect(10 * Math.log10(value / low)).toBeCloseTo(0.75, 1);
  expect(10 * Math.log10(high / value)).toBeCloseTo(0.75, 1);
});

for (const { example, source, theirs, ours, bound, why } of workedExamples()) {
  test(`${example}: ${theirs.toPrecision(4)} (${source}; within ${bound}: ${why})`, () => {
    expect(Math.abs(ours - theirs)).toBeLessThan(bound);
  });
}

// the note says that "effective coupling will be accomplished" and gives no number; the page names one
test('a spot well inside core and aperture is guided as good as whole', () => {
  expect(publishedForecast('red-fifty-micrometre').coupling.guided).toBeGreaterThan(0.999);
});

test('every launch of examples/published is one that the page tells of', () => {
  const page = readFileSync(new URL('../docs/published-launches.md', import.meta.url), 'utf8');
  for (const file of readdirSync(new URL('../examples/published', import.meta.url))) {
    expect(page).toContain(file.replace('.launch.yaml', ''));
  }
});

// Against change: the numbers of the page are those of the forecast now. `npm run documents` brings it up to date.
test('the tables of docs/published-launches.md are unchanged since `npm run documents` wrote them', () => {
  const page = readFileSync(new URL('../docs/published-launches.md', import.meta.url), 'utf8');
  expect(withPublishedLaunches(page)).toBe(page);
});
