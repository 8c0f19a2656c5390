import { normalCdf } from '@coreward/optics';
import type { PeakShape } from './hidden-bench.ts';

/** Share of the achievable peak at q. */
export function lightAt(shape: PeakShape, q: number): number {
  switch (shape.kind) {
    case 'peak':
      return Math.exp(-q);
    case 'peak-on-foot':
      return (Math.exp(-q) + shape.share * Math.exp(-q / shape.times ** 2)) / (1 + shape.share);
    case 'plateau': {
      const flank = (x: number) => normalCdf((1 - x) / shape.softness);
      return flank(Math.sqrt(q)) / flank(0);
    }
  }
}

/** Where the light has fallen to `light` of the peak: the q of it; 0 for all that is above. */
export function whereLightIs(shape: PeakShape, light: number): number {
  if (light >= 1) return 0;
  if (shape.kind === 'peak') return -Math.log(Math.max(light, 1e-300));
  let [from, to] = [0, 1];
  while (lightAt(shape, to) > light && to < 1e6) to *= 2;
  for (let i = 0; i < 60; i++) {
    const middle = (from + to) / 2;
    if (lightAt(shape, middle) > light) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
