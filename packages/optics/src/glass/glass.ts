/** What is known of one transparent material, and by whom. */
import type { Dispersion } from './dispersion.ts';

/** A transparent material and its refractive index against vacuum wavelength. */
export interface Glass {
  /** The type designation or the trade's word, as this program spells it. */
  readonly name: string;
  /** Other spellings that mean exactly this material. */
  readonly alsoCalled: readonly string[];
  readonly dispersion: Dispersion;
  /** Vacuum wavelengths (m) for which the source gives its formula; both ends belong to it. */
  readonly range: readonly [number, number];
  /** By how much a real piece may differ from the formula, where the source or the trade says so; `null`: not stated. */
  readonly indexSpread: number | null;
  /** `null`: not known here. */
  readonly thermal: ThermoOptic | null;
  readonly source: string;
  /** How the numbers came here: `read in …`, `computed with …` or `from memory`. */
  readonly obtained: string;
}

/** How the index against vacuum follows the temperature. */
export type ThermoOptic =
  /** The catalogue's six constants, as printed: D₀ 1/K, D₁ 1/K², D₂ 1/K³, E₀ µm²/K, E₁ µm²/K², λ_TK µm; from 20 °C. */
  | {
      readonly kind: 'catalogue';
      readonly d0: number;
      readonly d1: number;
      readonly d2: number;
      readonly e0: number;
      readonly e1: number;
      readonly resonance: number;
    }
  /** Values (1/K) at wavelengths (m, ascending); straight lines between them, nothing outside. Near room temperature. */
  | {
      readonly kind: 'points';
      readonly points: readonly { readonly wavelength: number; readonly perKelvin: number }[];
      readonly source: string;
    }
  /** One value (1/K) for the whole range of the glass, and how far it may be off. Near room temperature. */
  | {
      readonly kind: 'constant';
      readonly perKelvin: number;
      readonly halfWidth: number;
      readonly source: string;
    };
