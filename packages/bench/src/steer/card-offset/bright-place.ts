import type { Plane } from '../../gauge/spot-picture/plane.ts';

/** Where something stands out of its surroundings, in blocks of a map. */
export interface BrightPlace {
  readonly x: number;
  readonly y: number;
  /** Half side of the square that shows it best. */
  readonly half: number;
  /** How far the mean of that square stands above the frame around it. */
  readonly contrast: number;
}

/** A rectangle of blocks, ends included. */
type Box = readonly [left: number, top: number, right: number, bottom: number];

/** Sums of a map over rectangles, in four look-ups each. */
export interface BoxSums {
  readonly width: number;
  readonly height: number;
  readonly sum: (box: Box) => number;
}

/** @source F. C. Crow, SIGGRAPH 84, 207 (1984): summed-area tables (from memory) */
export function boxSums({ width, height, light }: Plane): BoxSums {
  const stride = width + 1;
  const table = new Float64Array(stride * (height + 1));
  for (let y = 0; y < height; y++) {
    let row = 0;
    for (let x = 0; x < width; x++) {
      row += light[y * width + x]!;
      table[(y + 1) * stride + x + 1] = table[y * stride + x + 1]! + row;
    }
  }
  return {
    width,
    height,
    sum: ([left, top, right, bottom]) =>
      table[(bottom + 1) * stride + right + 1]! -
      table[top * stride + right + 1]! -
      table[(bottom + 1) * stride + left]! +
      table[top * stride + left]!,
  };
}

/** Half sides of the squares that are tried, blocks. */
const halves = [1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96];

/** Mean of a square less the mean of the frame around it, twice as wide; both end where the picture does. */
export function contrastAt(sums: BoxSums, x: number, y: number, half: number): number {
  const { width, height } = sums;
  const around = (reach: number): Box => [
    Math.max(0, x - reach),
    Math.max(0, y - reach),
    Math.min(width - 1, x + reach),
    Math.min(height - 1, y + reach),
  ];
  const [inner, outer] = [around(half), around(2 * half + 1)];
  const [within, all] = [sums.sum(inner), sums.sum(outer)];
  const [few, many] = [areaOf(inner), areaOf(outer)];
  return few === many ? 0 : within / few - (all - within) / (many - few);
}

const areaOf = ([left, top, right, bottom]: Box): number => (right - left + 1) * (bottom - top + 1);

/**
 * The place that stands out most, over all sizes: contrast times side, which is how far it stands out of noise that is
 * the same everywhere. `isLeftOut` hides what was found before.
 */
export function brightestPlace(
  sums: BoxSums,
  isLeftOut: (x: number, y: number, half: number) => boolean = () => false,
  least = 1,
): BrightPlace {
  let best: BrightPlace = { x: 0, y: 0, half: 1, contrast: 0 };
  let most = 0;
  const { width, height } = sums;
  for (const half of halves) {
    if (half < least && half < halves.at(-1)!) continue;
    if (3 * half > Math.min(width, height)) break;
    const step = Math.max(1, half >> 1);
    for (let y = 0; y < height; y += step)
      for (let x = 0; x < width; x += step) {
        if (isLeftOut(x, y, half)) continue;
        const contrast = contrastAt(sums, x, y, half);
        if (contrast * (2 * half + 1) > most) {
          most = contrast * (2 * half + 1);
          best = { x, y, half, contrast };
        }
      }
  }
  return best;
}
