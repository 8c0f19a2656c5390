import { median, normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { farFieldProfile } from './far-field-profile.ts';
import { layTerms } from './terms.ts';

const places = Array.from({ length: 61 }, (_, i) => -1.2 + 0.04 * i);

/** Terms that are laid through this light with noise of 1 % of its peak, the middle number of 41 scans. */
function termsThrough(light: (u: number) => number): number {
  const random = seededUniform(10);
  return median(
    Array.from({ length: 41 }, () => {
      const y = places.map((u) => light(u) + 0.01 * normalFrom(random));
      return layTerms({ x: places, y, unit: 1, peak: 1, centre: 0 })!.fit.parameters.length - 2;
    }),
  );
}

// u in full widths at half maximum: a Gaussian is exp(−4 ln 2·u²)
test('of a Gaussian, which one term tells, two more are laid, so that what they would tell stays below the noise', () => {
  expect(termsThrough((u) => Math.exp(-4 * Math.LN2 * u * u))).toBe(3);
});

test('a steep flat top of three terms has two more as well', () => {
  expect(termsThrough((u) => Math.exp(-0.5 * u ** 2 - 0.5 * u ** 4 - 4 * u ** 6))).toBe(5);
});

test.each([
  ['sin1e2', Math.exp(-2)],
  ['sinHalf', 0.5],
] as const)(
  'of a filled graded fibre, whose light goes as 1 − (sin θ/NA)² and ends sharply, %s is held',
  (quantity, share) => {
    // the law of a parabolic index: A. W. Snyder and J. D. Love, Optical Waveguide Theory (from memory)
    const random = seededUniform(11);
    const truth = 0.2 * Math.sqrt(1 - share);
    let held = 0;
    for (let k = 0; k < 40; k++) {
      const sines = Array.from({ length: 81 }, (_, i) => -0.36 + 0.009 * i);
      const { answers } = farFieldProfile.measure({
        columns: {
          'sin theta': sines,
          intensity: sines.map((s) => Math.max(0, 1 - (s / 0.2) ** 2) + 0.01 * normalFrom(random)),
        },
        settings: {},
        words: {},
        picture: null,
      });
      const { low, high } = answers.find((one) => one.quantity === quantity)!;
      if (low! <= truth && truth <= high!) held += 1;
    }
    // of forty intervals that hold the truth with 90 %, fewer than 31 do once in two hundred draws (binomial)
    expect(held).toBeGreaterThan(30);
  },
);
