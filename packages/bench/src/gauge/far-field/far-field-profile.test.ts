import { brentRoot, median, normalFrom, seededUniform, spectrum, stepModes } from '@coreward/optics';
import { expect, test } from 'vitest';
import { farFieldProfile } from './far-field-profile.ts';
import { tailShare } from './tail-share.ts';

/** Far field of LP01 by its closed form, of a fibre whose numerical aperture is 0.125, with its peak at 1. */
function lp01(v: number): (sine: number) => number {
  const mode = stepModes(v)[0]!;
  const peak = spectrum(mode, 0) ** 2;
  return (sine) => spectrum(mode, (v * Math.abs(sine)) / 0.125) ** 2 / peak;
}

/** What is told of so many readings as far as `reach` (sin θ) on either side. */
function told(reach: number, intensityAt: (sine: number) => number, quantity: string, count = 81) {
  const half = (count - 1) / 2;
  const sines = Array.from({ length: count }, (_, i) => (reach * (i - half)) / half);
  const { answers } = farFieldProfile.measure({
    columns: { 'sin theta': sines, intensity: sines.map(intensityAt) },
    settings: {},
    words: {},
    picture: null,
  });
  return answers.find((one) => one.quantity === quantity)!;
}

/** Of forty scans as far as `reach` (sin θ), on a dark of 0.03, how many intervals hold sin θ at this share of the peak. */
function heldOf(
  v: number,
  reach: number,
  noise: number,
  quantity: string,
  share: number,
  count?: number,
): number {
  const random = seededUniform(8);
  const light = lp01(v);
  const truth = brentRoot((sine) => light(sine) - share, 1e-4, 0.17);
  let held = 0;
  for (let k = 0; k < 40; k++) {
    const answer = told(reach, (sine) => light(sine) + 0.03 + noise * normalFrom(random), quantity, count);
    if (answer.low! <= truth && truth <= answer.high!) held += 1;
  }
  return held;
}

// of forty intervals that hold the truth with 90 %, fewer than 31 do once in two hundred draws (binomial)

test.each([
  [2.2, 0.15, 0.02, 'sin1e2', Math.exp(-2)],
  [2.2, 0.15, 0.02, 'sin5percent', 0.05],
  [3, 0.15, 0.03, 'sin1e2', Math.exp(-2)],
  [1.6, 0.25, 0.005, 'sin5percent', 0.05],
  [1.6, 0.15, 0.005, 'sin5percent', 0.05],
  [1.8, 0.15, 0.005, 'sin1e2', Math.exp(-2)],
] as const)(
  'LP01 at V = %d, read out to sin θ = %d with noise of %d, holds %s',
  (v, reach, noise, quantity, share) => {
    expect(heldOf(v, reach, noise, quantity, share)).toBeGreaterThan(30);
  },
);

test('of more than a thousand readings neighbours are laid together, which neither narrows nor widens what is told', () => {
  expect(heldOf(2.2, 0.2, 0.02, 'sin1e2', Math.exp(-2), 4001)).toBeGreaterThan(30);
  const random = seededUniform(9);
  const light = lp01(2.2);
  const [apart, together] = [999, 1001].map((count) => {
    const widths = Array.from({ length: 12 }, () => {
      const { low, high } = told(0.2, (sine) => light(sine) + 0.02 * normalFrom(random), 'sin1e2', count);
      return high! - low!;
    });
    return median(widths);
  });
  // one width scatters by a tenth or so from scan to scan, the middle one of twelve by a third of that
  expect(Math.abs(together! / apart! - 1)).toBeLessThan(0.15);
});

test.each([1.5, 1.8, 2.4, 4])(
  'the tail of LP01 at V = %d is told from its middle to two thirds of it',
  (v) => {
    const light = lp01(v);
    const wings = [0.15, 0.155, 0.16, 0.165];
    const inWings = wings.reduce((sum, sine) => sum + light(sine), 0) / wings.length;
    // all that is in the wings was taken for dark
    const seen = (share: number): number =>
      brentRoot((sine) => (light(sine) - inWings) / (1 - inWings) - share, 1e-4, 0.15);
    // share of the peak that was left
    expect(Math.abs(tailShare(seen, wings) * (1 - inWings) - inWings)).toBeLessThan(0.65 * inWings + 1e-3);
  },
);

test.each([
  [2.2, 0],
  [2.2, 0.03],
  [3, 0],
  [3, 0.03],
])(
  'of LP01 at V = %d, whose dark of %d was not reached, both nought and the last readings may be dark',
  (v, dark) => {
    const light = lp01(v);
    const truth = brentRoot((sine) => light(sine) - 0.05, 1e-4, 0.15);
    const { low, high } = told(0.15, (sine) => light(sine) + dark, 'sin5percent');
    expect(low!).toBeLessThan(truth);
    expect(high!).toBeGreaterThan(truth);
  },
);

test.each([0.17, 0.2])('light in the wings of a scan to sin θ = %d is not taken for dark', (reach) => {
  const light = lp01(2.4);
  const width = (dark: number) => brentRoot((sine) => (light(sine) - dark) / (1 - dark) - 0.05, 1e-4, 0.15);
  // the outer seventh of 81 readings are the five or six outermost of either side
  const wings = [35, 36, 37, 38, 39, 40].map((i) => light((reach * i) / 40));
  const asDark = width(wings.reduce((sum, one) => sum + one, 0) / wings.length);
  const { value } = told(reach, (sine) => light(sine) + 0.03, 'sin5percent');
  // the tail is known to half of it, as the gauge counts
  expect(Math.abs(value! - width(0))).toBeLessThan(0.5 * Math.abs(asDark - width(0)));
});
