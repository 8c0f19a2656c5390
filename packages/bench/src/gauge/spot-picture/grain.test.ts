import { normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { grainOf } from './grain.ts';

const step = 1 / 255;

/** Codes of a dark at `level` with noise of `width`, both in steps. */
function rounded(level: number, width: number): readonly number[] {
  const random = seededUniform(4);
  return Array.from({ length: 4000 }, () => Math.round(level + width * normalFrom(random)) * step);
}

test('a dark of a single code is open by about half of it', () => {
  const open = grainOf(rounded(7.2, 0), step);
  // a level anywhere within half a step of its code scatters by 1/√12 of a step; light that begins to shine adds to it
  expect(open).toBeGreaterThan(step / Math.sqrt(12));
  expect(open).toBeLessThan(step);
});

test('codes that only flip between two neighbours may have no noise', () => {
  expect(grainOf(rounded(7.5, 0.01), step)).toBe(grainOf(rounded(7.2, 0), step));
});

test.each([0.35, 0.5, 0.8])('noise of %d steps blurs them as a normal law does', (width) => {
  for (const level of [7, 7.2, 7.4]) {
    // exp(−2π²σ²), B. Widrow 1956 (from memory); of 4000 pixels σ is known to some hundredths
    const blur = (off: number): number => Math.exp(-2 * Math.PI ** 2 * (width + off) ** 2);
    const share = grainOf(rounded(level, width), step) / grainOf(rounded(7.2, 0), step);
    expect(share).toBeGreaterThan(blur(0.05));
    expect(share).toBeLessThan(blur(-0.05));
  }
});

test('where codes lie closer, as in the dark of sRGB, less is open', () => {
  const coarse = grainOf(
    [4, 5, 5, 5, 6].map((code) => code * step),
    step,
  );
  const fine = grainOf(
    [4, 5, 5, 5, 6].map((code) => (code * step) / 12),
    step,
  );
  expect(coarse / fine).toBeCloseTo(12, 6);
});
