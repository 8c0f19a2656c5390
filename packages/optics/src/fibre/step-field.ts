import { besselJ } from '../numerics/bessel-j.ts';
import { claddingField } from './cladding-field.ts';
import type { LpMode } from './lp-mode.ts';

/** A mode of the step-index profile: R = coreAmplitude·J_l(uρ) in the core, continued by K_l(wρ) in the cladding. */
export interface StepMode extends LpMode {
  readonly profile: 'step';
  readonly coreAmplitude: number;
}

/** R at each of `rhoNodes` (in core radii) into `out`. */
export function fillStepField(mode: StepMode, rhoNodes: Float64Array, out: Float64Array): void {
  const { l, u, coreAmplitude } = mode;
  const outside = claddingField(mode);
  for (let i = 0; i < rhoNodes.length; i++) {
    const rho = rhoNodes[i]!;
    out[i] = rho <= 1 ? coreAmplitude * besselJ(l, u * rho) : outside(rho);
  }
}

/**
 * dR/dρ, from J_l' = (l/x) J_l − J_{l+1}; the core side at ρ = 1 (both sides agree).
 *
 * @source Abramowitz & Stegun 9.1.27 (from memory)
 */
export function stepCoreSlope({ l, u, coreAmplitude }: StepMode, rho: number): number {
  if (rho === 0) return l === 1 ? (coreAmplitude * u) / 2 : 0;
  return coreAmplitude * ((l / rho) * besselJ(l, u * rho) - u * besselJ(l + 1, u * rho));
}
