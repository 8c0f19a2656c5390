import { OutOfRange } from '../out-of-range.ts';
import { fillGradedField, fillGradedSpectrum, type GradedMode } from './graded-field.ts';
import { fillStepField, type StepMode } from './step-field.ts';
import { fillStepSpectrum } from './step-spectrum.ts';

/** A guided mode of any profile, as plain data; the functions of this file know what to do with it. */
export type GuidedMode = StepMode | GradedMode;

/**
 * R at each of `rhoNodes` (ρ = r/a ≥ 0, in core radii) into `out`, normalised by ∫R²ρ dρ = 1 over all ρ; positive near
 * the axis. The radii are not checked. Error below 1e-12 of the largest R.
 */
export function fillRadialTable(mode: GuidedMode, rhoNodes: Float64Array, out: Float64Array): void {
  switch (mode.profile) {
    case 'step':
      fillStepField(mode, rhoNodes, out);
      break;
    case 'graded':
      fillGradedField(mode, rhoNodes, out);
      break;
  }
}

/**
 * R(ρ) at one radius; for many, `fillRadialTable` is faster.
 *
 * @throws {OutOfRange} if the radius is negative or not finite
 */
export function radialField(mode: GuidedMode, rho: number): number {
  mustNotBeNegative(rho, 'radialField ρ');
  const out = new Float64Array(1);
  fillRadialTable(mode, Float64Array.of(rho), out);
  return out[0]!;
}

/** S(Q) at each of `qNodes` (Q = q·a ≥ 0) into `out`; see `spectrum`. Much faster than one by one for graded modes. */
export function fillSpectrumTable(mode: GuidedMode, qNodes: Float64Array, out: Float64Array): void {
  switch (mode.profile) {
    case 'step':
      fillStepSpectrum(mode, qNodes, out);
      break;
    case 'graded':
      fillGradedSpectrum(mode, qNodes, out);
      break;
  }
}

/**
 * S(Q) = ∫R J_l(Qρ)ρ dρ, the radial factor of the far field, Q = q·a with q the transverse wave number (k·sin θ).
 * ∫S²Q dQ = 1. The full transform of R cos lφ is 2π(−i)^l S(Q) cos lφ. Error below 1e-12 of the largest S.
 *
 * @throws {OutOfRange} if Q is negative or not finite
 */
export function spectrum(mode: GuidedMode, q: number): number {
  mustNotBeNegative(q, 'spectrum Q');
  const out = new Float64Array(1);
  fillSpectrumTable(mode, Float64Array.of(q), out);
  return out[0]!;
}

function mustNotBeNegative(value: number, where: string): void {
  if (!(value >= 0 && Number.isFinite(value))) {
    throw new OutOfRange({
      where,
      what: `${value} is below 0 or not finite`,
      mend: 'Give a finite value from 0 on.',
    });
  }
}
