import { normalFrom, seededUniform } from '@coreward/optics';
import { describe, expect, test } from 'vitest';
import type { Picture } from '../gauge/picture.ts';
import { aimAt, aimAtBrightest } from './camera-aim.ts';
import { type CameraDark, darkPictures, withDarkPicture } from './camera-dark.ts';
import { cameraReading, isHardlyDarker } from './camera-meter.ts';
import { type Region, wholePicture } from './camera-region.ts';

const [width, height] = [160, 120];
const size = { width, height };

/** IEC 61966-2-1:1999, the encoding; constants from memory, written out here anew. */
const codeOf = (light: number): number =>
  Math.round(255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055));

/** A green picture of light, in shares of full scale; red and blue see a tenth of it. */
function pictureOf(light: (x: number, y: number) => number): Picture {
  const samples = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++) {
    const here = Math.min(1, Math.max(0, light(i % width, Math.floor(i / width))));
    samples[3 * i] = codeOf(0.1 * here);
    samples[3 * i + 1] = codeOf(here);
    samples[3 * i + 2] = codeOf(0.1 * here);
  }
  return { width, height, channels: 3, samples, fullScale: 255, format: 'png' };
}

/** A round Gaussian whose sum over all pixels is 2π·deviation²·peak, for it is smooth over a pixel. */
const bell =
  (peak: number, deviation: number, x0 = 80.3, y0 = 58.6) =>
  (x: number, y: number): number =>
    peak * Math.exp(-((x - x0) ** 2 + (y - y0) ** 2) / (2 * deviation ** 2));
const powerOf = (peak: number, deviation: number): number => 2 * Math.PI * deviation ** 2 * peak;

const dark = (picture: () => Picture): CameraDark => {
  let held: CameraDark | null = null;
  for (let i = 0; i < darkPictures; i++) held = withDarkPicture(held, picture());
  return held!;
};
const square: Region = { x: 20, y: 10, width: 10, height: 10 };

describe('an even patch counts as much light as IEC 61966-2-1 says of its code', () => {
  /** Light of sRGB codes in shares of full scale: printed in tables of the encoding (from memory, four digits). */
  test.each([
    [64, 0.0513],
    [128, 0.2159],
    [188, 0.5029],
    [240, 0.8714],
  ])('code %i is %f', (code, light) => {
    const samples = new Uint8Array(width * height).fill(code);
    const picture: Picture = { width, height, channels: 1, samples, fullScale: 255, format: 'png' };
    const { value, kind } = cameraReading(picture, { region: square, channel: 0 }, null);
    expect(kind).toBe('light');
    // half a unit of the last printed place, a hundred pixels
    expect(Math.abs(value - 100 * light)).toBeLessThan(100 * 0.00005);
  });
});

describe('the sum follows the power of a Gaussian spot', () => {
  test.each([0.9, 0.45, 0.2, 0.09, 0.03, 0.01])('peak %f', (peak) => {
    const { value, rounding, lost, kind } = cameraReading(
      pictureOf(bell(peak, 9)),
      aimAtBrightest(pictureOf(bell(peak, 9))),
      null,
    );
    expect(kind).toBe('light');
    const error = value - powerOf(peak, 9);
    // rounded pixels scatter independently (Widrow and Kollár): three deviations, and what lies below the first code
    expect(Math.abs(error)).toBeLessThan(3 * rounding + lost * powerOf(peak, 9) + 5e-5 * powerOf(peak, 9));
  });

  test('a region chosen around the brightest spot holds all of it, wherever it is and whatever its size', () => {
    for (const deviation of [3, 6, 12])
      for (const [x, y] of [
        [80, 60],
        [62.5, 51.2],
        [99.1, 66],
      ] as const) {
        const picture = pictureOf(bell(0.8, deviation, x, y));
        const { region, channel } = aimAtBrightest(picture);
        expect(channel).toBe(1);
        // within three deviations of a Gaussian to each side lie 99.5 % of it (tables of the normal law, from memory)
        expect(Math.min(x - region.x, region.x + region.width - 1 - x)).toBeGreaterThan(3 * deviation);
        expect(Math.min(y - region.y, region.y + region.height - 1 - y)).toBeGreaterThan(3 * deviation);
      }
  });

  test('a room’s light and a hot pixel go with the dark frame', () => {
    const room = (x: number, y: number): number => (x === 85 && y === 60 ? 1 : 0.02 + 0.0001 * x);
    const own = dark(() => pictureOf(room));
    const lit = pictureOf((x, y) => room(x, y) + bell(0.5, 9)(x, y));
    const aim = aimAt(lit, { x: 40, y: 20, width: 80, height: 80 });
    const { value, kind, rounding } = cameraReading(lit, aim, own);
    expect(kind).toBe('light');
    // the hot pixel hides at most the bell's light there
    const hidden = bell(0.5, 9)(85, 60);
    expect(Math.abs(value - powerOf(0.5, 9))).toBeLessThan(hidden + 5 * rounding);
    expect(cameraReading(lit, aim, null).value).toBeGreaterThan(powerOf(0.5, 9) * 1.5);
  });
});

test('photons scatter a reading by one over the root of their number, no less and hardly more', () => {
  // Poisson's law, elementary; a full pixel is 4000 electrons, a phone's (common practice, no source)
  const fullWell = 4000;
  const random = seededUniform(4);
  const shot = (mean: number): number =>
    mean < 30 ? poisson(mean, random) : Math.max(0, mean + Math.sqrt(mean) * normalFrom(random));
  const spot = bell(0.6, 7);
  const aim = aimAtBrightest(pictureOf(spot));
  const frames = 150;
  const values = Array.from({ length: frames }, () =>
    cameraReading(
      pictureOf((x, y) => shot(fullWell * spot(x, y)) / fullWell),
      aim,
      null,
    ),
  );
  const mean = values.reduce((sum, { value }) => sum + value, 0) / frames;
  const scatter = Math.sqrt(values.reduce((sum, { value }) => sum + (value - mean) ** 2, 0) / (frames - 1));
  const electrons = fullWell * powerOf(0.6, 7);
  const expected = Math.hypot(1 / Math.sqrt(electrons), values[0]!.rounding / mean);
  // a standard deviation of 150 readings is known to 1/√300 (chi-squared): three of those
  expect(scatter / mean).toBeGreaterThan(expected * (1 - 3 / Math.sqrt(2 * frames)));
  expect(scatter / mean).toBeLessThan(expected * (1 + 3 / Math.sqrt(2 * frames)));
  expect(Math.abs(mean / powerOf(0.6, 7) - 1)).toBeLessThan(
    (4 * expected) / Math.sqrt(frames) + values[0]!.lost,
  );
});

describe('what is no reading', () => {
  test('one full pixel in any channel is refused, and a full one outside the region is not', () => {
    const aim = { region: { x: 40, y: 20, width: 80, height: 80 }, channel: 1 } as const;
    const read = (light: (x: number, y: number) => number) => cameraReading(pictureOf(light), aim, null);
    expect(read(bell(0.9, 9)).kind).toBe('light');
    expect(read(bell(1.4, 9))).toMatchObject({ kind: 'clipped' });
    expect(read((x, y) => (x === 5 ? 1 : bell(0.5, 9)(x, y))).kind).toBe('light');
    const blueFull = pictureOf(bell(0.5, 9));
    blueFull.samples[3 * (60 * width + 80) + 2] = 255;
    expect(cameraReading(blueFull, aim, null)).toMatchObject({ kind: 'clipped', full: 1 });
  });

  test('a covered camera is recognised, with a dark frame and without one', () => {
    const noise = seededUniform(9);
    const covered = () => pictureOf(() => 0.0006 * (1 + 0.8 * normalFrom(noise)));
    const aim = { region: wholePicture(size), channel: 1 } as const;
    expect(cameraReading(covered(), aim, null).kind).toBe('dark');
    const own = dark(covered);
    const values = Array.from({ length: 40 }, () => cameraReading(covered(), aim, own));
    expect(new Set(values.map(({ kind }) => kind))).toEqual(new Set(['dark']));
    // the floor is the scatter of these readings: of 40 it is known to 11 % (chi-squared), three of those and a margin
    const scatter = Math.sqrt(values.reduce((sum, { value }) => sum + value ** 2, 0) / 40);
    expect(scatter / values[0]!.floor!).toBeGreaterThan(0.6);
    expect(scatter / values[0]!.floor!).toBeLessThan(1.4);
    expect(
      cameraReading(
        pictureOf((x, y) => 0.0006 + bell(0.05, 6)(x, y)),
        aim,
        own,
      ).kind,
    ).toBe('light');
  });

  test('a dark frame taken with the beam on is noticed', () => {
    const aim = { region: wholePicture(size), channel: 1 } as const;
    const lit = cameraReading(pictureOf(bell(0.5, 9)), aim, null);
    expect(isHardlyDarker(lit, cameraReading(pictureOf(bell(0.48, 9)), aim, null))).toBe(true);
    expect(
      isHardlyDarker(
        lit,
        cameraReading(
          pictureOf(() => 0.001),
          aim,
          null,
        ),
      ),
    ).toBe(false);
  });
});

/** @source D. E. Knuth, The Art of Computer Programming 2, 3.4.1: Poisson deviates by products (from memory) */
function poisson(mean: number, random: () => number): number {
  const limit = Math.exp(-mean);
  let [count, product] = [0, random()];
  while (product > limit) {
    count += 1;
    product *= random();
  }
  return count;
}
