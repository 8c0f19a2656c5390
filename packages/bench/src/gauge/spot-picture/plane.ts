import { median } from '@coreward/optics';
import type { Picture } from '../picture.ts';

/** Light, pixel by pixel, in shares of full scale; row by row from the top. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  readonly light: Float32Array;
}

/** How codes stand for light: in proportion, or as sRGB has it. */
export type Encoding = 'linear' | 'srgb';

/** Of a JPEG whose tables nobody looked at: a good, not the best quality (common practice, no source). */
const usualBlockStep = 6;

/** What was made of the picture's channels. */
export interface PlaneRead {
  readonly plane: Plane;
  readonly channel: 'grey' | 'red' | 'green' | 'blue';
  /** Step between two codes, in the unit of `light`; of sRGB the widest. */
  readonly step: number;
  /** Scatter that rounding to codes, and a JPEG's rounding of whole blocks, leave at the least; in the unit of `light`. */
  readonly leastNoise: number;
  /** Step to which a JPEG rounded the slow parts of its blocks, in the unit of `light`; 0 for a PNG. */
  readonly blockStep: number;
}

/**
 * The light of the one channel that sees most of it. Other channels would add their noise and, clipped, their plateau.
 *
 * @source IEC 61966-2-1:1999 for `srgb`
 */
export function planeOf(picture: Picture, encoding: Encoding, decode: (code: number) => number): PlaneRead {
  const { width, height, channels, samples, fullScale } = picture;
  const pixels = width * height;
  const channel = channels === 1 ? 0 : brightest(samples, pixels);
  const table = Float32Array.from({ length: fullScale + 1 }, (_, code) =>
    encoding === 'srgb' ? decode(code / fullScale) : code / fullScale,
  );
  const blockStep = picture.blockStep ?? (picture.format === 'jpeg' ? usualBlockStep : 0);
  const light = new Float32Array(pixels);
  for (let i = 0; i < pixels; i++) light[i] = table[samples[i * channels + channel]!]!;
  return {
    plane: { width, height, light },
    channel: channels === 1 ? 'grey' : (['red', 'green', 'blue'] as const)[channel]!,
    step: 1 / fullScale,
    leastNoise: Math.hypot(1, blockStep) / Math.sqrt(12) / fullScale,
    blockStep: blockStep / fullScale,
  };
}

function brightest(samples: Uint8Array | Uint16Array, pixels: number): 0 | 1 | 2 {
  const sums = [0, 0, 0];
  // squares: a spot counts for more than a bright room
  for (let i = 0; i < 3 * pixels; i += 3) for (let k = 0; k < 3; k++) sums[k]! += samples[i + k]! ** 2;
  return sums.indexOf(Math.max(...sums)) as 0 | 1 | 2;
}

/**
 * Takes out single pixels far brighter than all their neighbours but one: each gets the median of its neighbours. A spot
 * two pixels wide keeps its peak, for a lens does not light one pixel alone.
 *
 * @param noise scatter of a dark pixel, in the unit of `light`
 * @returns how many there were
 */
export function removeHotPixels({ width, height, light }: Plane, dark: number, noise: number): number {
  const hot: [number, number][] = [];
  const around = new Float32Array(8);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const here = light[y * width + x]! - dark;
      if (!(here > 8 * noise)) continue;
      // of a smooth spot both neighbours in the row are too bright already
      const limit = dark + (here - 8 * noise) / 2.2;
      const at = y * width + x;
      if (x > 0 && x < width - 1 && light[at - 1]! >= limit && light[at + 1]! >= limit) continue;
      const n = neighbours(light, width, height, x, y, around);
      const sorted = around.subarray(0, n).sort();
      const second = sorted[n - 2]! - dark;
      if (here > 2.2 * Math.max(second, 0) + 8 * noise) hot.push([y * width + x, sorted[n >> 1]!]);
    }
  }
  for (const [at, value] of hot) light[at] = value;
  return hot.length;
}

/** Half a side of the square about a speck, in pixels: a speck of three by three lies within. */
const speckReach = 3;
/** So many scatters above its ring a speck stands: of a million pixels of noise alone none does. */
const clearlyBright = 8;
/** And so many times above it: over the 3 pixels to its ring a Gaussian of more than 2.4 pixels' deviation falls by less, exp(9/2σ²). */
const clearlySteep = 2.2;

/**
 * Takes out specks, groups of up to three by three pixels far brighter than all pixels of the ring around them: each pixel
 * gets the median of that ring. Only where the spot itself is wider than such a ring.
 *
 * @param noise scatter of a dark pixel, in the unit of `light`
 */
export function removeSpecks({ width, height, light }: Plane, dark: number, noise: number): void {
  const specks: [number, number][] = [];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const here = light[y * width + x]! - dark;
      if (!(here > clearlyBright * noise)) continue;
      const limit = dark + (here - clearlyBright * noise) / clearlySteep;
      const ring: number[] = [];
      const isDarker = (u: number, v: number): boolean => {
        if (u < 0 || v < 0 || u >= width || v >= height) return true;
        const value = light[v * width + u]!;
        ring.push(value);
        return value < limit;
      };
      let isSpeck = true;
      for (let k = -speckReach; k <= speckReach && isSpeck; k++)
        isSpeck =
          isDarker(x + k, y - speckReach) &&
          isDarker(x + k, y + speckReach) &&
          isDarker(x - speckReach, y + k) &&
          isDarker(x + speckReach, y + k);
      if (isSpeck) specks.push([y * width + x, median(ring)]);
    }
  }
  for (const [at, value] of specks) light[at] = value;
}

function neighbours(
  light: Float32Array,
  width: number,
  height: number,
  x: number,
  y: number,
  into: Float32Array,
): number {
  let n = 0;
  for (let v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++)
    for (let u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++)
      if (u !== x || v !== y) into[n++] = light[v * width + u]!;
  return n;
}

/** Means of square blocks of pixels; what does not fill a block at the right and the bottom is left out. */
export function blocksOf(plane: Plane, block: number): Plane {
  if (block === 1) return plane;
  const width = Math.floor(plane.width / block);
  const height = Math.floor(plane.height / block);
  const light = new Float32Array(width * height);
  for (let y = 0; y < height * block; y++) {
    const row = Math.floor(y / block) * width;
    const from = y * plane.width;
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let k = 0; k < block; k++) sum += plane.light[from + x * block + k]!;
      light[row + x] = light[row + x]! + sum;
    }
  }
  const share = 1 / block ** 2;
  for (let i = 0; i < light.length; i++) light[i] = light[i]! * share;
  return { width, height, light };
}
