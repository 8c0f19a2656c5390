import type { LpMode } from '../fibre/lp-mode.ts';
import { besselKScaled } from '../numerics/bessel-k.ts';
import { mustBePositive, OutOfRange } from '../out-of-range.ts';

/** The l, u and w of a mode of the straight step-index fibre; V is √(u² + w²). */
export type BentMode = Pick<LpMode, 'l' | 'u' | 'w'>;

/** What turns a normalised mode into lengths. */
export interface BentFibre {
  /** m. */
  readonly coreRadius: number;
  readonly claddingIndex: number;
  /** Vacuum wavelength, m. */
  readonly wavelength: number;
}

/**
 * R_eff/R at the lenient end of `bendAttenuationInterval`, with the elasto-optic coefficients of bulk silica. Those
 * measured in fibre make it 1.25; measurements with the coating modelled needed none (J. Wang, G. Farrell and
 * T. Freir, Opt. Express 13, 4476 (2005), abstract read).
 *
 * @source R. T. Schermer and J. H. Cole, IEEE J. Quantum Electron. 43, 899 (2007), abstract read; `effectiveRadiusFactor`
 */
export const bulkSilicaRadiusFactor = 1.28;

/** A bend must be this many critical radii wide. At 1.5 the exponent changes sign: nothing holds the light any more. */
const leastCriticalRadii = 2;

/**
 * Power one LP mode radiates in a bend, Np/m:
 * √π·κ²·exp(−2γ³R/(3β²)) / (e·γ^1.5·V²·√R·K_{l−1}(w)·K_{l+1}(w)), κ = u/a, γ = w/a, e = 2 for l = 0, else 1.
 *
 * The cladding is taken as endless: light that a coating throws back makes real losses oscillate with radius and
 * wavelength, and differ by factors of 2 to 10. No loss at the ends of the bend. Ask `bendFormulaHolds` first.
 *
 * @param effectiveRadius m: the radius of the bend times a factor from 1 to `bulkSilicaRadiusFactor`
 * @throws {OutOfRange} if the mode is not guided or a length is not above zero
 * @source D. Marcuse, J. Opt. Soc. Am. 66, 216 (1976), exact form from memory; its asymptotic form, e included, read
 */
export function bendAttenuation(mode: BentMode, fibre: BentFibre, effectiveRadius: number): number {
  mustBeGuided(mode, fibre);
  mustBePositive(effectiveRadius, 'effectiveRadius', 'a bend radius');
  const { l, u, w } = mode;
  const { coreRadius } = fibre;
  const kappa = u / coreRadius;
  const gamma = w / coreRadius;
  const beta = wavenumber(fibre) * bentModeIndex(mode, fibre);
  const e = l === 0 ? 2 : 1;
  const k = besselKScaled(Math.abs(l - 1), w) * besselKScaled(l + 1, w); // K_{−1} = K₁; e^2w times too large
  const tail = Math.exp(2 * w - (2 * gamma ** 3 * effectiveRadius) / (3 * beta ** 2)) / k;
  return (
    ((Math.sqrt(Math.PI) * kappa ** 2) / (e * gamma ** 1.5 * (u * u + w * w) * Math.sqrt(effectiveRadius))) *
    tail
  );
}

/**
 * What a bend of this radius takes from the mode, Np/m: `high` as the ruler measures it, `low` with the full
 * elasto-optic correction. The two published views; at 10 mm and 1550 nm they are a factor 7 apart.
 *
 * @param radius of the bend to the fibre's axis, m
 * @throws {OutOfRange} as `bendAttenuation`
 * @source as `bendAttenuation` and `bulkSilicaRadiusFactor`
 */
export function bendAttenuationInterval(
  mode: BentMode,
  fibre: BentFibre,
  radius: number,
): { readonly low: number; readonly high: number } {
  return {
    low: bendAttenuation(mode, fibre, radius * bulkSilicaRadiusFactor),
    high: bendAttenuation(mode, fibre, radius),
  };
}

/**
 * Whether the formula may be asked: the bend is at least twice the critical radius. If not, the mode leaves within
 * a fraction of a turn, and no number of ours says how much of it stays.
 *
 * @param radius of the bend to the fibre's axis, m
 * @throws {OutOfRange} as `bendAttenuation`
 * @source R ≫ a·n_cladding/(n_eff − n_cladding) after D. Marcuse 1976 (from memory); the factor 2 is our own
 */
export function bendFormulaHolds(mode: BentMode, fibre: BentFibre, radius: number): boolean {
  mustBePositive(radius, 'radius', 'a bend radius');
  return radius >= leastCriticalRadii * criticalBendRadius(mode, fibre);
}

/**
 * Radius of bend, m, at which the outer cladding would have to outrun light already at the core's edge:
 * a·n_cladding/(n_eff − n_cladding). Endless at cut-off.
 *
 * @throws {OutOfRange} as `bendAttenuation`
 * @source D. Marcuse, J. Opt. Soc. Am. 66, 216 (1976), from memory
 */
export function criticalBendRadius(mode: BentMode, fibre: BentFibre): number {
  mustBeGuided(mode, fibre);
  const { coreRadius, claddingIndex } = fibre;
  const square = (mode.w / (coreRadius * wavenumber(fibre))) ** 2; // n_eff² − n_cladding², without their cancellation
  return (coreRadius * claddingIndex * (bentModeIndex(mode, fibre) + claddingIndex)) / square;
}

/**
 * Effective index of the mode in the straight fibre, √(n_cladding² + (w/(k·a))²).
 *
 * @throws {OutOfRange} as `bendAttenuation`
 * @source the definition of w: D. Gloge, Appl. Opt. 10, 2252 (1971), from memory
 */
export function bentModeIndex(mode: BentMode, fibre: BentFibre): number {
  mustBeGuided(mode, fibre);
  return Math.hypot(fibre.claddingIndex, mode.w / (fibre.coreRadius * wavenumber(fibre)));
}

function wavenumber({ wavelength }: BentFibre): number {
  return (2 * Math.PI) / wavelength;
}

function mustBeGuided({ l, u, w }: BentMode, { coreRadius, claddingIndex, wavelength }: BentFibre): void {
  mustBePositive(coreRadius, 'coreRadius', 'a core radius');
  mustBePositive(claddingIndex, 'claddingIndex', 'a refractive index');
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  if (!(Number.isInteger(l) && l >= 0 && u > 0 && w > 0 && Number.isFinite(u + w))) {
    throw new OutOfRange({
      where: 'mode',
      what: `l = ${l}, u = ${u}, w = ${w} is no guided mode`,
      mend: 'Give a mode that the straight fibre guides: l = 0, 1, 2, …, u and w above zero.',
    });
  }
}
