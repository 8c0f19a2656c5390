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

/** Sums of a map over everything above and to the left of each corner of its blocks. */
export interface BoxSums {
  readonly width: number;
  readonly height: number;
  readonly table: Float64Array;
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
  return { width, height, table };
}

/** Half sides of the squares that are tried, blocks. */
const halves = [1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96];

/** Mean of a square less the mean of the frame around it, twice as wide; both end where the picture does. */
export function contrastAt({ width, height, table }: BoxSums, x: number, y: number, half: number): number {
  const stride = width + 1;
  // plain numbers, no lists: a picture is asked some hundred thousand times
  let [left, right] = [x > half ? x - half : 0, x + half < width ? x + half + 1 : width];
  let [top, bottom] = [
    y > half ? (y - half) * stride : 0,
    (y + half < height ? y + half + 1 : height) * stride,
  ];
  const within = table[bottom + right]! - table[top + right]! - table[bottom + left]! + table[top + left]!;
  const few = ((right - left) * (bottom - top)) / stride;
  const reach = 2 * half + 1;
  left = x > reach ? x - reach : 0;
  right = x + reach < width ? x + reach + 1 : width;
  top = y > reach ? (y - reach) * stride : 0;
  bottom = (y + reach < height ? y + reach + 1 : height) * stride;
  const all = table[bottom + right]! - table[top + right]! - table[bottom + left]! + table[top + left]!;
  const many = ((right - left) * (bottom - top)) / stride;
  return many > few ? within / few - (all - within) / (many - few) : 0;
}

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
    const step = half === 1 ? 1 : Math.max(2, half >> 1);
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
