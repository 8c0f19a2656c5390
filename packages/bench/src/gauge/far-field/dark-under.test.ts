import { normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { darkUnder } from './dark-under.ts';
import { farFieldProfile } from './far-field-profile.ts';

// a Gaussian far field that falls to 1/e² at 0.1, on a pedestal: what is asked is known (elementary)
const gaussian = (sine: number): number => Math.exp(-2 * (sine / 0.1) ** 2);
const rough = { centre: 0, halfWidth: 0.059, peak: 1 };
const across = (half: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => -half + (2 * half * i) / (count - 1));

const answersOf = (sines: readonly number[], intensity: readonly number[]) =>
  farFieldProfile.measure({
    columns: { 'sin theta': sines, intensity },
    settings: {},
    words: {},
    picture: null,
  }).answers;

test('a scan that ends on a fifth of its peak does not say how much of that is background', () => {
  const sines = across(0.13, 61);
  const found = answersOf(
    sines,
    sines.map((sine) => 0.2 + gaussian(sine)),
  );
  for (const { value, because } of found) {
    expect(value).toBeNull();
    expect(because).toMatch(/background/u);
  }
});

test('a dark that was cut at nought is not taken for one without noise', () => {
  const random = seededUniform(5);
  const sines = across(0.4, 121);
  const noise = 0.01;
  const cut = sines.map((sine) => Math.max(0, gaussian(sine) + noise * normalFrom(random)));
  const { dark, doubt } = darkUnder(sines, cut, null, rough);
  expect(dark).toBeLessThan(noise);
  // of 17 readings, each good to 0.01: 0.003 as a median, and a third of that where half of them are nought by chance
  expect(doubt).toBeGreaterThan(1e-3);
});

test('wings that still fall outwards are no dark', () => {
  const sines = across(0.25, 121);
  const tailed = sines.map((sine) => gaussian(sine) + 0.05 * Math.exp(-Math.abs(sine) / 0.1));
  const { dark, doubt } = darkUnder(sines, tailed, null, rough);
  // 0.005 are read for what is nought
  expect(doubt).toBeGreaterThan(dark / 3);
});
