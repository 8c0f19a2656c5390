import { besselJ } from '../numerics/bessel-j.ts';
import { besselJTable } from '../numerics/bessel-j-table.ts';
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

/** The same for many modes, mode by mode, from one table of Bessel functions. */
export function fillStepFields(modes: readonly StepMode[], rhoNodes: Float64Array, out: Float64Array): void {
  const highestOrder = modes.reduce((most, { l }) => Math.max(most, l), 0);
  const largestU = modes.reduce((most, { u }) => Math.max(most, u), 0);
  const bessel = besselJTable(highestOrder, largestU);
  for (const [k, mode] of modes.entries()) {
    const { l, u, coreAmplitude } = mode;
    const outside = claddingField(mode);
    for (let i = 0; i < rhoNodes.length; i++) {
      const rho = rhoNodes[i]!;
      out[k * rhoNodes.length + i] = rho <= 1 ? coreAmplitude * bessel(l, u * rho) : outside(rho);
    }
  }
}
