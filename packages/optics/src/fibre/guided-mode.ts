import { fillStepField, type StepMode } from './step-field.ts';
import { fillStepSpectrum } from './step-spectrum.ts';

/** A guided mode of any profile, as plain data; the functions of this file know what to do with it. */
export type GuidedMode = StepMode;

/**
 * R at each of `rhoNodes` (ρ = r/a ≥ 0, in core radii) into `out`, normalised by ∫R²ρ dρ = 1 over all ρ; positive near
 * the axis.
 */
export function fillRadialTable(mode: GuidedMode, rhoNodes: Float64Array, out: Float64Array): void {
  fillStepField(mode, rhoNodes, out);
}

/** R(ρ) at one radius; for many, `fillRadialTable` is faster. */
export function radialField(mode: GuidedMode, rho: number): number {
  const out = new Float64Array(1);
  fillRadialTable(mode, Float64Array.of(rho), out);
  return out[0]!;
}

/** S(Q) at each of `qNodes` (Q = q·a ≥ 0) into `out`; see `spectrum`. */
export function fillSpectrumTable(mode: GuidedMode, qNodes: Float64Array, out: Float64Array): void {
  fillStepSpectrum(mode, qNodes, out);
}

/**
 * S(Q) = ∫R J_l(Qρ)ρ dρ, the radial factor of the far field, Q = q·a with q the transverse wave number (k·sin θ).
 * ∫S²Q dQ = 1. The full transform of R cos lφ is 2π(−i)^l S(Q) cos lφ.
 */
export function spectrum(mode: GuidedMode, q: number): number {
  const out = new Float64Array(1);
  fillSpectrumTable(mode, Float64Array.of(q), out);
  return out[0]!;
}
