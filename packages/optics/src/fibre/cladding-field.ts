import { besselKRatio, besselKRescaling, fillBesselKRescaled } from '../numerics/bessel-k.ts';
import type { LpMode } from './lp-mode.ts';

/** Decays beyond the core's edge after which R is called 0: K_l(wρ)/K_l(w) is below e^(−w(ρ − 1)), here 1e-35. */
const nothingLeft = 80;

/**
 * R in the cladding, ρ ≥ 1, where every profile has R(1)·K_l(wρ)/K_l(w). The returned function is good for many radii.
 *
 * @source D. Gloge, Appl. Opt. 10, 2252 (1971) (from memory)
 */
export function claddingField({ l, w, edgeAmplitude }: LpMode): (rho: number) => number {
  const k = new Float64Array(2);
  fillBesselKRescaled(l, w, k);
  const atEdge = edgeAmplitude / k[0]!;
  const rescalings = k[1]!;
  return (rho) => {
    if (w * (rho - 1) > nothingLeft) return 0;
    fillBesselKRescaled(l, w * rho, k);
    const value = atEdge * k[0]! * Math.exp(-w * (rho - 1));
    const missing = rescalings - k[1]!;
    return missing === 0 ? value : value * besselKRescaling ** -missing;
  };
}

/**
 * ∫R²ρ dρ over the cladding: R(1)²·(K_{l−1}K_{l+1}/K_l² − 1)/2.
 *
 * @source D. Gloge, Appl. Opt. 10, 2252 (1971) (from memory)
 */
export function claddingPower({ l, w, edgeAmplitude }: LpMode): number {
  return edgeAmplitude ** 2 * unitCladdingPower(l, w);
}

/** The same for R(1) = 1. */
export function unitCladdingPower(l: number, w: number): number {
  return (besselKRatio(l, w) / neighbourRatio(l, w) - 1) / 2;
}

/** K_l/K_{l−1}; K_{−1} is K_1. */
export function neighbourRatio(l: number, w: number): number {
  return l === 0 ? 1 / besselKRatio(0, w) : besselKRatio(l - 1, w);
}

/**
 * ∫R J_l(Qρ)ρ dρ over the cladding as a function of Q = q·a ≥ 0, J_l(Q) and J_{l+1}(Q).
 *
 * @source Lommel's integral, Abramowitz & Stegun 11.3.29 for complex argument (from memory)
 */
export function claddingSpectrum(mode: LpMode): (q: number, jOfQ: number, nextOfQ: number) => number {
  const { l, w, edgeAmplitude } = mode;
  const wRatio = w * besselKRatio(l, w);
  return (q, jOfQ, nextOfQ) => (edgeAmplitude * (wRatio * jOfQ - q * nextOfQ)) / (w * w + q * q);
}

/** dR/dρ over R at the core's edge: l − w K_{l+1}(w)/K_l(w). w = 0 is the limit at cut-off, −l. */
export function edgeLogSlope(l: number, w: number): number {
  return w === 0 ? -l : l - w * besselKRatio(l, w);
}
