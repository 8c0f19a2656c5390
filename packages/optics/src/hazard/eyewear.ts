/** How dark eyewear must be, for one wavelength. It is the last measure, and none is made for staring into a beam. */
import { OutOfRange } from '../out-of-range.ts';
import { isVisible } from './assumed-time.ts';
import { stopArea } from './averaging-stop.ts';
import { mustBePower } from './beam-definition.ts';
import { nanometres } from './closed-range.ts';
import { type Basis, gaussianMathematics, joinBases } from './evidence.ts';
import type { ExposureLimit, IrradianceLimit } from './exposure-limit.ts';
import type { TrainLimit } from './pulse-train.ts';

/** What eyewear has to take away, to the limit it was computed for. An estimate. */
export interface OpticalDensity {
  /** log₁₀ of exposure over limit; 0 if the exposure is under it. */
  readonly opticalDensity: number;
  /** Rounded up to a whole number. */
  readonly atLeast: number;
  /** With its set, exposure time and wavelength. */
  readonly limit: IrradianceLimit;
  readonly basis: readonly Basis[];
}

/**
 * For continuous light, all of whose power may enter the eye: log₁₀(P/(area of the stop · limit)).
 *
 * @param power W
 * @throws {OutOfRange} if the power is negative
 * @source mathematics; reproduces the OSHA Technical Manual's table as remembered
 */
export function opticalDensityForPower(power: number, limit: IrradianceLimit): OpticalDensity {
  mustBePower(power);
  return densityOf(power / stopArea(limit.averagingDiameter) / limit.irradiance, limit);
}

/**
 * For a pulse: log₁₀(H/limit).
 *
 * @param radiantExposure of one pulse, averaged over the stop, J/m²
 * @throws {OutOfRange} if it is negative
 * @source a textbook's eyewear example (Fundamentals of Medical/Aesthetic Lasers and IPLs v1.2, p. 111): read
 */
export function opticalDensityForPulse(
  radiantExposure: number,
  limit: ExposureLimit | TrainLimit,
): OpticalDensity {
  if (!(radiantExposure >= 0 && Number.isFinite(radiantExposure))) {
    throw new OutOfRange({
      where: 'radiantExposure',
      what: `${radiantExposure} J/m² is no radiant exposure`,
      mend: 'Give 0 or more, in J/m²: 1 J/cm² is 10 000 J/m².',
    });
  }
  const allowed = 'radiantExposurePerPulse' in limit ? limit.radiantExposurePerPulse : limit.radiantExposure;
  return densityOf(radiantExposure / allowed, limit);
}

function densityOf(timesLimit: number, limit: IrradianceLimit): OpticalDensity {
  const opticalDensity = Math.max(0, Math.log10(timesLimit));
  return {
    opticalDensity,
    atLeast: Math.max(0, Math.ceil(opticalDensity - rounding)),
    limit,
    basis: joinBases([gaussianMathematics], limit.basis),
  };
}

/** log₁₀ of a hundred must not come out as a little over 2. */
const rounding = 1e-9;

/** The largest over sets, times and modes of one line. A source of several lines needs one density for each. */
export function largestDensity(first: OpticalDensity, ...others: readonly OpticalDensity[]): OpticalDensity {
  return others.reduce(
    (largest, one) => (one.opticalDensity > largest.opticalDensity ? one : largest),
    first,
  );
}

/**
 * Scale number of EN 207 that a transmission allows at most: the integer part of −log₁₀ τ. It also takes a test of damage
 * in the irradiance of the real spot, which is not the average over 7 mm.
 *
 * @param transmission 0 to 1, not 0
 * @throws {OutOfRange} if it is no transmission
 * @source DGUV Information 203-042, 5.1.3: read
 */
export function largestScaleNumber(transmission: number): number {
  if (!(transmission > 0 && transmission <= 1)) {
    throw new OutOfRange({
      where: 'transmission',
      what: `${transmission} is no transmission of eyewear`,
      mend: 'Give a fraction of power above 0, up to 1.',
    });
  }
  return Math.floor(-Math.log10(transmission) + rounding);
}

/** Kinds of emission that EN 207 tells apart: D continuous, I and R pulsed, M mode-locked. */
export type EyewearMode = 'D' | 'I' | 'R' | 'M';

/**
 * Modes of EN 207 that a pulse of this length (s) belongs to: D above 0.25 s, I to 1 µs, R to 1 ns, M below; two on a
 * shared boundary.
 *
 * @source DGUV Information 203-042: read
 */
export function eyewearModes(pulseDuration: number): readonly EyewearMode[] {
  return [
    ...(pulseDuration > 0.25 ? ['D' as const] : []),
    ...(pulseDuration >= 1e-6 && pulseDuration <= 0.25 ? ['I' as const] : []),
    ...(pulseDuration >= 1e-9 && pulseDuration <= 1e-6 ? ['R' as const] : []),
    ...(pulseDuration < 1e-9 ? ['M' as const] : []),
  ];
}

/** What alignment eyewear (EN 208) lets through, W. It is for seeing diffuse spots, not for looking into beams. */
export interface AlignmentEyewear {
  readonly passes: number;
  /** s, the reaction it relies on. */
  readonly exposureTime: number;
  readonly basis: Basis;
}

/**
 * What alignment eyewear lets through at most: 0.6 mW for a deliberate reaction of 2 s, which is recommended, and 1 mW
 * for an immediate one.
 *
 * @throws {OutOfRange} outside 400 to 700 nm: there is none for light that is not seen
 * @source DGUV Information 203-042, 2.2 and 6.1: read
 */
export function alignmentEyewear(wavelength: number): readonly AlignmentEyewear[] {
  if (!isVisible(wavelength)) {
    throw new OutOfRange({
      where: 'wavelength',
      what: `there is no alignment eyewear for ${nanometres(wavelength)} nm, only for 400 to 700 nm`,
      mend: 'Use a card, a camera or a detector, or a visible pilot over the same path.',
    });
  }
  const basis: Basis = { evidence: 'read', source: 'DGUV Information 203-042, 2.2 and 6.1 (EN 208)' };
  return [
    { passes: 0.6e-3, exposureTime: 2, basis },
    { passes: 1e-3, exposureTime: 0.25, basis },
  ];
}
