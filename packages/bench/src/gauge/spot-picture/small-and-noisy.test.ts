import { normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import type { Picture } from '../picture.ts';
import { brightNoise } from './bright-noise.ts';
import { findSpot } from './find-spot.ts';
import { planeOf } from './plane.ts';
import { spotPicture } from './spot-picture.ts';

interface Drawn {
  readonly bits: 8 | 16;
  readonly side: number;
  /** Deviations, px. */
  readonly major: number;
  readonly minor: number;
  readonly azimuth: number;
  /** Places within a pixel that are averaged, along one side of it. */
  readonly points: number;
  /** In codes, by the light of a pixel in codes above its dark. */
  readonly noise: (light: number) => number;
}

/** A Gaussian whose peak is three fifths of full scale, on a dark of a twentieth. */
function drawn({ bits, side, major, minor, azimuth, points, noise }: Drawn): Picture {
  const fullScale = bits === 16 ? 65535 : 255;
  const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
  const within = Array.from({ length: points }, (_, i) => (i + 0.5) / points - 0.5);
  const at = (dx: number, dy: number): number =>
    Math.exp((((dx * c + dy * s) / major) ** 2 + ((dy * c - dx * s) / minor) ** 2) / -2);
  const codes = Array.from({ length: side ** 2 }, (_, i) => {
    const [x, y] = [(i % side) - side / 2 + 0.3, Math.floor(i / side) - side / 2 - 0.2];
    let light = 0;
    for (const u of within) for (const v of within) light += at(x + u, y + v) / points ** 2;
    const code = 0.6 * fullScale * light + 0.05 * fullScale;
    return Math.max(0, Math.min(fullScale, Math.round(code + noise(0.6 * fullScale * light))));
  });
  const samples = bits === 16 ? Uint16Array.from(codes) : Uint8Array.from(codes);
  return { width: side, height: side, channels: 1, samples, fullScale, format: 'png' };
}

const answer = (picture: Picture, quantity: string) =>
  spotPicture
    .measure({ columns: {}, settings: {}, words: {}, picture })
    .answers.find((one) => one.quantity === quantity)!;

const quiet: Drawn = { bits: 16, side: 48, major: 5, minor: 4, azimuth: 0.4, points: 1, noise: () => 0 };

test.each([
  ['dots', 1],
  ['squares that touch', 7],
])('a spot of 1.2 pixels’ deviation is held by pixels that are %s', (_, points) => {
  const { low, high } = answer(drawn({ ...quiet, major: 1.6, minor: 1.2, points }), 'd4sigmaMinor_px');
  expect(low!).toBeLessThan(4 * 1.2);
  expect(high!).toBeGreaterThan(4 * 1.2);
});

test.each([0, 4])(
  'light that scatters by its root is told from a dark that scatters by itself (%d)',
  (share) => {
    const random = seededUniform(15);
    // 40 codes in the dark; their square and `share` times as much again for each tenth of full scale
    const noise = (light: number): number =>
      40 * Math.sqrt(1 + (share * light) / 6553.5) * normalFrom(random);
    const read = planeOf(drawn({ ...quiet, side: 90, major: 11, minor: 9, noise }), 'linear', (code) => code);
    const { spot, blocks } = findSpot(read.plane, read.step)!;
    // some 270 bright pixels: their scatter is known to a twentieth, its square to a tenth; in shares of full scale
    expect(Math.abs(brightNoise(blocks, spot, spot.noise) - 10 * share)).toBeLessThan(share === 0 ? 0.5 : 8);
  },
);

test('the azimuth of a slim spot is as sure as its pictures show', () => {
  const random = seededUniform(16);
  const found = Array.from({ length: 60 }, () => {
    const noise = (): number => 400 * normalFrom(random);
    return answer(drawn({ ...quiet, side: 84, major: 7, minor: 2.6, noise }), 'azimuthMajor_imageDown_rad');
  });
  const scatter = Math.sqrt(found.reduce((sum, { value }) => sum + (value! - 0.4) ** 2, 0) / 60);
  const told = found.reduce((sum, { uncertainty }) => sum + uncertainty!, 0) / 60;
  // scatter of sixty is known to an eleventh: three of those, and a tenth for what the window that follows adds
  expect(told / scatter).toBeGreaterThan(0.7);
  expect(told / scatter).toBeLessThan(1.35);
});

test('a small spot in noise is found, though pixels at the rim of its window come and go', () => {
  const random = seededUniform(17);
  for (let k = 0; k < 40; k++) {
    const noise = (light: number): number => Math.sqrt((12.75 + light) * 0.85) * normalFrom(random);
    const picture = drawn({ ...quiet, bits: 8, major: 2.6, minor: 2.1, noise });
    expect(answer(picture, 'd4sigmaMinor_px').value, `picture ${k}`).not.toBeNull();
  }
});
