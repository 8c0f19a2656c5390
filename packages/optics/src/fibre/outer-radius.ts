import { brentRoot } from '../numerics/brent.ts';
import { mustBePositive } from '../out-of-range.ts';
import { claddingField } from './cladding-field.ts';
import type { GuidedMode } from './guided-mode.ts';

/**
 * The radius ρ ≥ 1, in core radii, from which on |R| stays below `amplitude` (with ∫R²ρ dρ = 1); 1 if it does so in the
 * whole cladding. Relative error below 1e-9.
 *
 * @throws {OutOfRange} if the amplitude is not positive
 */
export function outerRadius(mode: GuidedMode, amplitude: number): number {
  mustBePositive(amplitude, 'outerRadius amplitude', 'an amplitude');
  if (Math.abs(mode.edgeAmplitude) <= amplitude) return 1;
  const field = claddingField(mode);
  const excess = (logarithm: number) =>
    Math.log(Math.max(Math.abs(field(Math.exp(logarithm))), 1e-300) / amplitude);
  let beyond = 1;
  while (excess(beyond) > 0) beyond *= 2; // ends, for K_l(wρ) falls faster than any power
  return Math.exp(brentRoot(excess, 0, beyond, 1e-12));
}
