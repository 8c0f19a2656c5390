import { leastSquares, medianDeviation } from '@coreward/optics';
import { grainOf } from './grain.ts';
import type { Background } from './moments.ts';
import type { Plane } from './plane.ts';

/** What the rim of a picture says of its dark, before a spot is found. */
export interface Border {
  readonly background: Background;
  /** Scatter of one pixel about it, and at least what a dark of one code may hide. */
  readonly noise: number;
  readonly pixels: number;
  /** Share of the pixels without any light at all: a camera cuts off there what noise would take below. */
  readonly black: number;
  /** What rounding to codes leaves open of its level, in the unit of the light. */
  readonly grain: number;
}

/** Scatter of noise of which half is within half a code of its middle, in codes: 1/(2·0.6745). */
const noiseOfOneCode = 0.74;

/**
 * A plane through the pixels along the edge of the frame, about `most` of them, and again without those far off it.
 *
 * @param step between two codes, in the unit of the light
 */
export function borderOf(plane: Plane, most: number, step: number): Border {
  const all = sample(plane, most);
  const first = planeThrough(all);
  // where more than half of a dark has one code its median deviation is nought, and yet the other codes are noise
  const least = noiseOfOneCode * step;
  const kept = all.filter((_, i) => Math.abs(first.residuals[i]!) <= 4 * Math.max(first.noise, least));
  const { background, noise } = kept.length > 3 ? planeThrough(kept) : first;
  const black = all.filter(({ value }) => value === 0).length / all.length;
  const values = kept.map(({ value }) => value);
  return {
    background,
    noise: Math.max(noise, least),
    pixels: all.length,
    black,
    grain: grainOf(values, step),
  };
}

interface Pixel {
  readonly x: number;
  readonly y: number;
  readonly value: number;
}

function planeThrough(pixels: readonly Pixel[]): {
  readonly background: Background;
  readonly residuals: readonly number[];
  readonly noise: number;
} {
  const columns = [pixels.map(() => 1), pixels.map(({ x }) => x), pixels.map(({ y }) => y)];
  const fit = leastSquares(
    columns,
    pixels.map(({ value }) => value),
  );
  const [level, slopeX, slopeY] = (fit?.coefficients ?? [0, 0, 0]) as [number, number, number];
  const residuals = fit?.residuals ?? pixels.map(({ value }) => value);
  return { background: { level, slopeX, slopeY }, residuals, noise: medianDeviation(residuals) };
}

/** Pixels along the edge of the frame, on an even grid. */
function sample({ width, height, light }: Plane, most: number): readonly Pixel[] {
  const stride = Math.max(1, Math.floor(Math.sqrt((width * height) / (most * 6))));
  const rim = Math.max(2, Math.round(Math.min(width, height) / 20));
  const found: Pixel[] = [];
  for (let y = 0; y < height; y += stride)
    for (let x = 0; x < width; x += stride) {
      if (x >= rim && y >= rim && x < width - rim && y < height - rim) continue;
      found.push({ x, y, value: light[y * width + x]! });
    }
  return found;
}
