import { normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import type { GaugeAnswer } from '../answer.ts';
import type { GaugeResult } from '../gauge.ts';
import { spotPicture } from './spot-picture.ts';

type Draw = (x: number, y: number) => number;

/** What the gauge says of a grey picture drawn by a formula, codes to 255. */
function told(width: number, height: number, draw: Draw): GaugeResult {
  const samples = Uint8Array.from({ length: width * height }, (_, i) =>
    Math.max(0, Math.min(255, Math.round(draw(i % width, Math.floor(i / width))))),
  );
  const picture = { width, height, channels: 1, samples, fullScale: 255, format: 'png' } as const;
  return spotPicture.measure({ columns: {}, settings: {}, words: {}, picture });
}

/** One of its answers. */
function seen(width: number, height: number, draw: Draw): (name: string) => GaugeAnswer {
  const { answers } = told(width, height, draw);
  return (name) => answers.find(({ quantity }) => quantity === name)!;
}

const random = seededUniform(3);
const noise = (size: number): number => size * normalFrom(random);
const bell = (x: number, y: number, at: number, sigma: number): number =>
  Math.exp(-((x - at) ** 2 + (y - 80) ** 2) / (2 * sigma ** 2));

const wrongThings: readonly (readonly [string, (x: number, y: number) => number])[] = [
  ['noise alone', () => 40 + noise(6)],
  ['a slope of light', (x, y) => x + 0.3 * y],
  ['a chequered cloth', (x, y) => (((x >> 4) + (y >> 4)) % 2) * 180 + 20],
  ['darkness', () => 0],
  ['a white wall', () => 255],
  ['a room', (x, y) => 60 + 40 * Math.sin(x / 17) + 30 * Math.cos(y / 11) + noise(6)],
  ['a bright stripe', (x) => (x > 90 && x < 110 ? 200 : 10)],
];

test.each(wrongThings)('%s is no spot, and gets no width', (_, draw) => {
  const width = seen(200, 160, draw)('d4sigma_px');
  expect(width.value).toBeNull();
  expect(width.add).not.toBeNull();
});

test('a tilted background does not widen a spot (second moments of a Gaussian: 4σ, elementary)', () => {
  const width = seen(
    200,
    160,
    (x, y) => 150 * bell(x, y, 95, 9) + 8 + 0.15 * x + 0.05 * y + noise(1.2),
  )('d4sigma_px');
  expect(width.low!).toBeLessThan(36);
  expect(width.high!).toBeGreaterThan(36);
  // noise of a hundredth of the peak leaves about a per cent
  expect(Math.abs(width.value! / 36 - 1)).toBeLessThan(0.03);
});

test('a large spot, looked at in blocks of pixels, has the same width and place', () => {
  const answer = seen(
    900,
    700,
    (x, y) => 180 * Math.exp(-(((x - 430.4) / 44) ** 2 + ((y - 350.7) / 31) ** 2) / 2) + 9 + noise(1.5),
  );
  // noise of a hundredth over some ten thousand pixels: a few thousandths
  expect(Math.abs(answer('d4sigmaMajor_px').value! / 176 - 1)).toBeLessThan(5e-3);
  expect(Math.abs(answer('d4sigmaMinor_px').value! / 124 - 1)).toBeLessThan(5e-3);
  // of both axes the root of the mean square: ISO 11146-1, the diameter of a beam that is not round (from memory)
  expect(Math.abs(answer('d4sigma_px').value! / Math.hypot(176, 124) / Math.SQRT1_2 - 1)).toBeLessThan(5e-3);
  // short over long
  expect(answer('ellipticity').value!).toBeCloseTo(124 / 176, 2);
  expect(Math.abs(answer('centroidX_px').value! - 430.4)).toBeLessThan(0.2);
  expect(Math.abs(answer('centroidY_px').value! - 350.7)).toBeLessThan(0.2);
});

test('a round spot has no long axis', () => {
  const azimuth = seen(
    200,
    160,
    (x, y) => 150 * bell(x, y, 95, 9) + 8 + noise(1.2),
  )('azimuthMajor_imageDown_rad');
  expect(azimuth.value).toBeNull();
  expect(azimuth.because).toMatch(/round/u);
});

/** How many 90 % intervals hold the width of 4σ, of so many spots a hidden number of pixels wide. */
function heldOf(draw: (at: number, sigma: number) => Draw, spots = 20): number {
  let held = 0;
  for (let i = 0; i < spots; i++) {
    const [at, sigma] = [70 + random() * 60, 6 + random() * 4];
    const width = seen(200, 160, draw(at, sigma))('d4sigma_px');
    if (width.low! <= 4 * sigma && 4 * sigma <= width.high!) held += 1;
  }
  return held;
}

// of twenty intervals that hold the truth with 90 %, fewer than 14 do once in four hundred draws (binomial)

test('a background that rises by twice its noise every ten pixels is taken off', () => {
  expect(
    heldOf((at, sigma) => (x, y) => 150 * bell(x, y, at, sigma) + 5 + 0.3 * x + noise(1.5)),
  ).toBeGreaterThan(13);
});

test('noise about nought, cut off at black, does not narrow a spot', () => {
  expect(heldOf((at, sigma) => (x, y) => 150 * bell(x, y, at, sigma) + noise(2))).toBeGreaterThan(13);
});

test('codes too coarse for the noise leave the level under a spot open', () => {
  expect(heldOf((at, sigma) => (x, y) => 150 * bell(x, y, at, sigma) + at / 8 + noise(0.15))).toBeGreaterThan(
    13,
  );
});

test('of a dark with one code for most pixels the other codes are noise, not hot pixels', () => {
  const { remarks } = told(200, 160, (x, y) => 150 * bell(x, y, 95, 14) + 9.1 + noise(0.5));
  expect(remarks.join(' ')).not.toMatch(/hot/u);
});

test.each([1, -1])('a dark that is bent by some codes (%d) is taken off', (sign) => {
  const bend = (x: number, y: number): number => 20 + sign * (((x - 100) / 30) ** 2 + ((y - 80) / 30) ** 2);
  const held = heldOf((at, sigma) => (x, y) => 150 * bell(x, y, at, sigma) + bend(x, y) + noise(1.5), 8);
  // of eight, fewer than five do once in two hundred draws (binomial)
  expect(held).toBeGreaterThan(4);
});

test('a speck of three by three pixels beside the spot changes nothing', () => {
  const [plain, specked] = [false, true].map((isThere) => {
    const isSpeck = (x: number, y: number): boolean => Math.abs(x - 130) < 2 && Math.abs(y - 60) < 2;
    const ripple = (x: number, y: number): number => 2 * Math.sin(x * x + 3 * y);
    return seen(200, 160, (x, y) =>
      isThere && isSpeck(x, y) ? 200 : 150 * bell(x, y, 100, 9) + 20 + ripple(x, y),
    );
  });
  // nine pixels of 180 codes, four deviations out, would widen it by a tenth
  expect(Math.abs(specked!('d4sigma_px').value! / plain!('d4sigma_px').value! - 1)).toBeLessThan(1e-3);
  expect(Math.abs(specked!('centroidX_px').value! - plain!('centroidX_px').value!)).toBeLessThan(0.02);
});

test('a reflection beside the spot is told, not measured', () => {
  const reflected = (x: number, y: number): number => 6 * bell(x - 70, y, 100, 9);
  const width = seen(
    240,
    160,
    (x, y) => 150 * bell(x, y, 100, 9) + reflected(x, y) + 20 + noise(1.5),
  )('d4sigma_px');
  expect(width.value).toBeNull();
  expect(width.because).toMatch(/reflection/u);
});

test('a dark with waves in it is no ground to measure on', () => {
  const waves = (x: number, y: number): number => 8 * Math.sin(x / 9) * Math.sin(y / 9);
  const width = seen(
    200,
    160,
    (x, y) => 150 * bell(x, y, 100, 9) + 20 + waves(x, y) + noise(1.5),
  )('d4sigma_px');
  expect(width.value).toBeNull();
  expect(width.because).toMatch(/not even/u);
});

test('a spot aside, in a picture a fifth darker in its corners, has its centre in the interval', () => {
  let held = 0;
  for (let k = 0; k < 40; k++) {
    const at = 60 + 2 * k;
    const centre = seen(200, 160, (x, y) => {
      const falloff = 0.2 * (((x - 99.5) ** 2 + (y - 79.5) ** 2) / (99.5 ** 2 + 79.5 ** 2));
      return 170 * (1 - falloff) * bell(x, y, at, 12) + 10 + noise(0.8);
    })('centroidX_px');
    if (centre.low! <= at && at <= centre.high!) held += 1;
  }
  // of forty intervals that hold the truth with 90 %, fewer than 31 do once in two hundred draws (binomial)
  expect(held).toBeGreaterThan(30);
});
