import { normalQuantile, sobolPoints } from '@coreward/optics';
import type { PeakShape } from '../practice/hidden-bench.ts';
import { lightAt } from '../practice/peak-shape.ts';

/** Variances and covariance of what is left of one axis after the spots lie over each other: m², rad², m·rad. */
export interface LeftOver {
  readonly offset: number;
  readonly angle: number;
  readonly both: number;
}

/** How much of it costs light: the offset at the focal plane (m) and the angle (rad) at which ln P has fallen by 1. */
export interface Tolerated {
  readonly offset: number;
  readonly angle: number;
}

/** What a walk will begin with. Shares of the achievable peak. */
export interface StartForecast {
  readonly median: number;
  /** Of the worst tenth of benches, the best one. */
  readonly worstTenth: number;
  /** Share of benches that begin with more than `seen`. */
  readonly shareSeen: number;
}

/** Benches that are drawn; the share that is seen is off by about 1/count, a median by some parts in a thousand. */
const drawn = 4096;

/**
 * What is left when an offset is read with an error on two cards: the angle is their difference over their distance.
 *
 * @param wander rms of the centroid (m, at the focal plane) and of the direction (rad) of reverse light in a few modes
 * @param finger rms of what the finest turn of a hand leaves, rad, at a mirror this far upstream
 */
export function leftOver(
  cards: { readonly near: number; readonly far: number; readonly readingError: number },
  wander: { readonly offset: number; readonly angle: number },
  finger: readonly { readonly angle: number; readonly distance: number }[],
): LeftOver {
  const { near, far, readingError } = cards;
  const apart = far - near;
  // offset = εn(1 + n/S) − εf·n/S, angle = (εn − εf)/S
  const [onNear, onFar] = [1 + near / apart, near / apart];
  const variance = readingError ** 2;
  let offset = variance * (onNear ** 2 + onFar ** 2) + wander.offset ** 2;
  let angle = (2 * variance) / apart ** 2 + wander.angle ** 2;
  let both = (variance * (onNear + onFar)) / apart;
  for (const hand of finger) {
    offset += (hand.distance * hand.angle) ** 2;
    angle += hand.angle ** 2;
    both += hand.distance * hand.angle ** 2;
  }
  return { offset, angle, both };
}

/**
 * The light a walk begins with: ln P is minus a quadratic form of four normal errors, so it is a weighted sum of four
 * squared normals. They are drawn evenly (Sobol's points) and not by chance, so the same bench gives the same figures.
 *
 * @param seen the least share of the peak that a meter shows
 * @source ln η = −(θ/θc)² − (X/wc)² for Gaussian modes, derived in `practice/axis-coupling.ts`; of many modes, their plateau
 */
export function startForecast(
  axes: readonly [LeftOver, LeftOver],
  tolerated: Tolerated,
  shape: PeakShape,
  seen: number,
): StartForecast {
  const weights = axes.flatMap((axis) => spread(axis, tolerated));
  const points = sobolPoints(drawn, 4, 1);
  const lights = new Float64Array(drawn);
  for (let i = 0; i < drawn; i++) {
    let q = 0;
    for (let d = 0; d < 4; d++) q += weights[d]! * normalQuantile(points[4 * i + d]!) ** 2;
    lights[i] = lightAt(shape, q);
  }
  lights.sort();
  const at = (share: number) => lights[Math.round(share * (drawn - 1))]!;
  return {
    median: at(0.5),
    worstTenth: at(0.1),
    shareSeen: lights.reduce((count, light) => count + (light >= seen ? 1 : 0), 0) / drawn,
  };
}

/** Eigenvalues of the covariance of (offset, angle), each over what is tolerated. */
function spread(axis: LeftOver, tolerated: Tolerated): readonly [number, number] {
  const a = axis.offset / tolerated.offset ** 2;
  const b = axis.angle / tolerated.angle ** 2;
  const c = axis.both / (tolerated.offset * tolerated.angle);
  const middle = (a + b) / 2;
  const half = Math.hypot((a - b) / 2, c);
  return [middle + half, Math.max(0, middle - half)];
}
