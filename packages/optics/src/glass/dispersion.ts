/**
 * The published forms of n²(λ).
 *
 * Coefficients stay as printed, in powers of micrometres, so that they can be compared with their source digit by digit;
 * the wavelength is converted once, here. Mind the two habits of printing a Sellmeier denominator, L² − C² and L² − C:
 * each is a form of its own.
 */
export type Dispersion =
  /** n² = 1 + offset + Σ strength·L²/(L² − resonance²); L and resonance in µm. */
  | {
      readonly form: 'sellmeier with resonances';
      readonly offset: number;
      readonly terms: readonly { readonly strength: number; readonly resonance: number }[];
    }
  /** n² = 1 + Σ strength·L²/(L² − resonanceSquared); L in µm, resonanceSquared in µm². */
  | {
      readonly form: 'sellmeier with squared resonances';
      readonly terms: readonly { readonly strength: number; readonly resonanceSquared: number }[];
    }
  /** n² = constant + Σ factor·L^power; L in µm. */
  | {
      readonly form: 'powers';
      readonly constant: number;
      readonly terms: readonly { readonly factor: number; readonly power: number }[];
    };

/**
 * n² at a vacuum wavelength (m), and its slope d(n²)/dλ in 1/m. No range check: that is the glass's.
 *
 * @source W. Sellmeier's form as in the glass makers' catalogues; the slope is its derivative
 */
export function squaredIndex(
  dispersion: Dispersion,
  wavelength: number,
): { readonly value: number; readonly slope: number } {
  const micrometres = wavelength * 1e6;
  const squared = micrometres ** 2;
  let value: number;
  let slopePerMicrometre = 0;
  switch (dispersion.form) {
    case 'sellmeier with resonances':
    case 'sellmeier with squared resonances': {
      value = dispersion.form === 'sellmeier with resonances' ? 1 + dispersion.offset : 1;
      for (const term of dispersion.terms) {
        const resonanceSquared = 'resonance' in term ? term.resonance ** 2 : term.resonanceSquared;
        const distance = squared - resonanceSquared;
        value += (term.strength * squared) / distance;
        slopePerMicrometre -= (2 * term.strength * micrometres * resonanceSquared) / distance ** 2;
      }
      break;
    }
    case 'powers': {
      value = dispersion.constant;
      for (const { factor, power } of dispersion.terms) {
        value += factor * micrometres ** power;
        slopePerMicrometre += factor * power * micrometres ** (power - 1);
      }
      break;
    }
  }
  return { value, slope: slopePerMicrometre * 1e6 };
}
