import { normalQuantile } from '../numerics/normal.ts';
import { sobolPoints } from '../numerics/sobol.ts';
import type { BeamMoments } from './phase-space.ts';

/** Rays drawn evenly from a standard normal in (x, y, θx, θy), four numbers a ray. */
export type RaySample = Float64Array;

const made = new Map<string, RaySample>();

/**
 * Made when first asked for and kept: sixteen thousand rays take as long as a forecast. The array is shared, so never write
 * into it.
 *
 * @param count a power of two spreads them most evenly
 */
export function raySample(count: number, seed: number): RaySample {
  const key = `${count} ${seed}`;
  let rays = made.get(key);
  if (rays === undefined) {
    const points = sobolPoints(count, 4, seed);
    rays = Float64Array.from(points, (p) => normalQuantile(Math.min(Math.max(p, 1e-12), 1 - 1e-12)));
    made.set(key, rays);
  }
  return rays;
}

/** What of a beam a highly multimode fibre guides, by rays; the same model as {@link phaseSpaceFraction}. */
export interface GuidedRays {
  readonly fraction: number;
  /** Means over the guided rays: (r/a)² and (θ/NA)². 0 if there are none. */
  readonly meanRadiusSquared: number;
  readonly meanAngleSquared: number;
}

/**
 * The share of `rays` that is guided. Fast and rough: with 512 rays right to about half a per cent, and smooth enough
 * for the spread of a forecast; for one number use {@link phaseSpaceFraction}.
 *
 * @param coreRadius in the unit of the beam's lengths
 */
export function guidedRays(
  m: BeamMoments,
  coreRadius: number,
  numericalAperture: number,
  profile: 'step' | 'graded',
  rays: RaySample,
): GuidedRays {
  // Cholesky factor of the 4×4 covariance, row by row
  const a11 = Math.sqrt(m.xx);
  const a21 = m.xy / a11;
  const a31 = m.xTx / a11;
  const a41 = m.xTy / a11;
  const a22 = Math.sqrt(Math.max(m.yy - a21 * a21, 0));
  const over22 = a22 > 0 ? 1 / a22 : 0;
  const a32 = (m.yTx - a21 * a31) * over22;
  const a42 = (m.yTy - a21 * a41) * over22;
  const a33 = Math.sqrt(Math.max(m.txTx - a31 * a31 - a32 * a32, 0));
  const a43 = a33 > 0 ? (m.txTy - a31 * a41 - a32 * a42) / a33 : 0;
  const a44 = Math.sqrt(Math.max(m.tyTy - a41 * a41 - a42 * a42 - a43 * a43, 0));
  const coreSquared = coreRadius * coreRadius;
  const apertureSquared = numericalAperture * numericalAperture;
  const count = rays.length / 4;
  let guided = 0;
  let radii = 0;
  let angles = 0;
  for (let i = 0; i < rays.length; i += 4) {
    const g1 = rays[i]!;
    const g2 = rays[i + 1]!;
    const x = m.meanX + a11 * g1;
    const y = m.meanY + a21 * g1 + a22 * g2;
    const radius = (x * x + y * y) / coreSquared;
    if (radius >= 1) continue;
    const g3 = rays[i + 2]!;
    const g4 = rays[i + 3]!;
    const tx = m.meanTiltX + a31 * g1 + a32 * g2 + a33 * g3;
    const ty = m.meanTiltY + a41 * g1 + a42 * g2 + a43 * g3 + a44 * g4;
    const angle = (tx * tx + ty * ty) / apertureSquared;
    if (angle >= (profile === 'step' ? 1 : 1 - radius)) continue;
    guided += 1;
    radii += radius;
    angles += angle;
  }
  return {
    fraction: guided / count,
    meanRadiusSquared: guided === 0 ? 0 : radii / guided,
    meanAngleSquared: guided === 0 ? 0 : angles / guided,
  };
}
