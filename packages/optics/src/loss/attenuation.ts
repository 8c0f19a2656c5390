import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { nepersPerMetreFromDecibelPerKilometre, transmissionFromNepers } from './decibel.ts';
import type { Provenance } from './evidence.ts';

/*
 * What the glass itself takes from the light on its way. Attenuation is of power, in nepers a metre: P = P₀·exp(−αz).
 */

/** The constant A of Rayleigh scattering, α = A/λ⁴, in nepers of power times m³. */
export interface RayleighCoefficient extends Provenance {
  readonly glass: 'germanium-doped silica' | 'pure silica, lowest' | 'pure silica, highest';
  readonly coefficient: number;
}

/** Printed as dB·µm⁴/km; a µm⁴ is 10⁻²⁴ m⁴. */
const perMicrometre4 = (printed: number): number => nepersPerMetreFromDecibelPerKilometre(printed) * 1e-24;

/** Strength of Rayleigh scattering in glasses for fibres, Np·m³: attenuation is this over λ⁴. */
export const rayleighCoefficients: readonly RayleighCoefficient[] = [
  {
    glass: 'germanium-doped silica',
    coefficient: perMicrometre4(0.9),
    source:
      'S. Kumar and M. J. Deen, Fiber Optic Communications, Wiley 2014, p. 71: Rayleigh part 0.1559 dB/km at 1.55 µm',
    evidence: 'read',
  },
  {
    glass: 'pure silica, lowest',
    coefficient: perMicrometre4(0.67),
    source: 'arXiv:1909.10087',
    evidence: 'read',
  },
  {
    glass: 'pure silica, highest',
    coefficient: perMicrometre4(0.84),
    source:
      'post-deadline paper at OFC 2017 (Tamura et al.): total loss 0.1419 dB/km at 1560 nm, all of it Rayleigh',
    evidence: 'secondary',
  },
];

/**
 * Rayleigh scattering, A/λ⁴: the floor under every attenuation, in Np/m.
 *
 * @param coefficient Np·m³; left out: germanium-doped silica, the usual core
 * @throws {OutOfRange} if an argument is not above zero
 * @source J. W. Strutt's λ⁻⁴ law; the coefficient's own source
 */
export function rayleighAttenuation(
  wavelength: number,
  coefficient: number = rayleighCoefficients[0]!.coefficient,
): number {
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  mustBePositive(coefficient, 'coefficient', 'a Rayleigh coefficient');
  return coefficient / wavelength ** 4;
}

/** The A (Np·m³) that would explain a whole attenuation (Np/m): an upper bound for the glass it was measured in. */
export function rayleighCoefficientBound(wavelength: number, attenuation: number): number {
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  mustBePositive(attenuation, 'attenuation', 'an attenuation');
  return attenuation * wavelength ** 4;
}

/**
 * Infrared tail of silica's own vibrations, 7.81·10¹¹·exp(−48.48 µm/λ) dB/km, here in Np/m. Above 1.4 µm it counts;
 * below it is nothing.
 *
 * @throws {OutOfRange} if the wavelength is not above zero
 * @source G. Keiser, Optical Fiber Communications, ch. 3 (from memory)
 */
export function infraredAttenuation(wavelength: number): number {
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  return nepersPerMetreFromDecibelPerKilometre(7.81e11) * Math.exp(-48.48e-6 / wavelength);
}

/**
 * Whether the ultraviolet edge of the glass may add to the floor. In the blue and green of germanium-doped cores it
 * does, by an amount nobody can tell from outside; hence the width of `attenuationEstimate` there.
 *
 * @param wavelength m
 * @source D. B. Keck, R. D. Maurer and P. C. Schultz, Appl. Phys. Lett. 22, 307 (1973), abstract: none beyond 0.7 µm (read)
 */
export function ultravioletTailMatters(wavelength: number): boolean {
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  return wavelength < 0.7e-6;
}

/** Where water in the glass absorbs (m). How much differs by orders of magnitude between fibres: never added without evidence. */
export interface WaterPeak extends Provenance {
  readonly wavelength: number;
}

const waterRead = {
  source: 'tutorial page on loss mechanisms: harmonics of the OH vibration at 2.73 µm',
  evidence: 'read',
} as const;
const waterRemembered = {
  source: 'D. B. Keck, R. D. Maurer and P. C. Schultz, Appl. Phys. Lett. 22, 307 (1973), combination peaks',
  evidence: 'from memory',
} as const;

/** Wavelengths at which OH in the glass absorbs, m, with what is known of each. */
export const waterPeaks: readonly WaterPeak[] = [
  { wavelength: 1.38e-6, ...waterRead },
  { wavelength: 1.24e-6, ...waterRemembered },
  { wavelength: 0.95e-6, ...waterRead },
  { wavelength: 0.88e-6, ...waterRemembered },
];

/**
 * Fraction of guided power left after a length of fibre, exp(−α·length).
 *
 * @param attenuation Np/m, at least 0
 * @param length m, at least 0
 * @throws {OutOfRange} if one of them is negative or not finite
 * @source definition of the attenuation coefficient
 */
export function fibreTransmission(attenuation: number, length: number): number {
  if (!(attenuation >= 0 && length >= 0 && Number.isFinite(attenuation * length))) {
    throw new OutOfRange({
      where: 'fibreTransmission',
      what: `${length} m at ${attenuation} Np/m is no piece of fibre`,
      mend: 'Give a length and an attenuation of at least 0.',
    });
  }
  return transmissionFromNepers(attenuation * length);
}
