import type { Background, Window } from './moments.ts';
import type { Plane } from './plane.ts';

/** One deviation about what stands clearly out of the noise: the pixels above a quarter of the peak. */
export function firstWindow(plane: Plane, dark: Background, noise: number): Window | null {
  const { width, height, light } = plane;
  // of a large picture every second or third pixel of every such row does
  const stride = Math.max(1, Math.floor(Math.sqrt((width * height) / 1.2e6)));
  const above = (x: number, y: number): number =>
    light[y * width + x]! - dark.level - dark.slopeX * x - dark.slopeY * y;
  let peak = 0;
  for (let y = 0; y < height; y += stride)
    for (let x = 0; x < width; x += stride) peak = Math.max(peak, above(x, y));
  if (!(peak > 6 * noise && peak > 0)) return null;
  const level = Math.max(peak / 4, 4.5 * noise);
  let [n, sx, sy, sxx, syy] = [0, 0, 0, 0, 0];
  for (let y = 0; y < height; y += stride)
    for (let x = 0; x < width; x += stride) {
      if (!(above(x, y) > level)) continue;
      n += 1;
      sx += x;
      sy += y;
      sxx += x * x;
      syy += y * y;
    }
  const [x, y] = [sx / n, sy / n];
  const spread = Math.sqrt(Math.max((sxx / n - x * x + syy / n - y * y) / 2, 0.5));
  // the disk on which a Gaussian is above a quarter of its peak has 0.83 of its deviation
  const deviation = 1.2 * spread;
  return { x, y, major: deviation, minor: deviation, azimuth: 0 };
}
