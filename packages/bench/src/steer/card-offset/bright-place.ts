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

/**
 * The place that stands out most, over all sizes: contrast times side, which is how far it stands out of noise that is
 * the same everywhere. The contrast is the mean of a square less the mean of the frame around it, twice as wide; both end
 * where the picture does. `isLeftOut` hides what was found before.
 */
export function brightestPlace(
  { width, height, table }: BoxSums,
  isLeftOut: (x: number, y: number, half: number) => boolean = () => false,
  least = 1,
): BrightPlace {
  let best: BrightPlace = { x: 0, y: 0, half: 1, contrast: 0 };
  let most = 0;
  const stride = width + 1;
  for (const half of halves) {
    if (half < least && half < halves.at(-1)!) continue;
    if (3 * half > Math.min(width, height)) break;
    const step = half === 1 ? 1 : Math.max(2, half >> 1);
    const reach = 2 * half + 1;
    for (let y = 0; y < height; y += step) {
      // rows of both squares, once for all places of a line: a picture is asked some hundred thousand times
      const [top, bottom] = [y > half ? y - half : 0, y + half < height ? y + half + 1 : height];
      const [outTop, outBottom] = [y > reach ? y - reach : 0, y + reach < height ? y + reach + 1 : height];
      const [t, b, u, c] = [top * stride, bottom * stride, outTop * stride, outBottom * stride];
      for (let x = 0; x < width; x += step) {
        const left = x > half ? x - half : 0;
        const right = x + half < width ? x + half + 1 : width;
        const outLeft = x > reach ? x - reach : 0;
        const outRight = x + reach < width ? x + reach + 1 : width;
        const within = table[b + right]! - table[t + right]! - table[b + left]! + table[t + left]!;
        const all = table[c + outRight]! - table[u + outRight]! - table[c + outLeft]! + table[u + outLeft]!;
        const few = (right - left) * (bottom - top);
        const many = (outRight - outLeft) * (outBottom - outTop);
        const contrast = many > few ? within / few - (all - within) / (many - few) : 0;
        // few places stand out at all: whether one is hidden is asked of those alone
        if (contrast * reach > most && !isLeftOut(x, y, half)) {
          most = contrast * reach;
          best = { x, y, half, contrast };
        }
      }
    }
  }
  return best;
}
