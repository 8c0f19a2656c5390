/**
 * How far the light from a bare fibre end is above a limit. A glass core is a point to the eye: 50 µm at 100 mm are
 * 0.5 mrad. Compute its limits with the source angle `null`.
 */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { printedFivePercentTo1e, width1eFromWidth1e2 } from './beam-definition.ts';
import { type Basis, gaussianMathematics } from './evidence.ts';
import { powerAtLimit } from './exposure-limit.ts';
import {
  distanceIn,
  type Geometry,
  type HazardDistance,
  isUnderLimitEverywhere,
  type Judged,
} from './hazard-distance.ts';

const fibreForms: Basis = {
  evidence: 'from memory',
  source: 'ANSI Z136.1, appendix B, and Z136.2: hazard distances of fibre ends',
};
const fibreGuide: Basis = {
  evidence: 'read',
  source: 'DGUV Information 203-039, 5.2, table 1: beam diameters in front of fibre ends',
};

/** A bare single-mode end, described at 1/e² of intensity, and what it is judged by. */
export interface SingleModeEnd1e2 extends Judged {
  /** Vacuum wavelength, m. */
  readonly wavelength: number;
  /** Mode-field diameter at 1/e² of intensity, m; not the core's diameter. */
  readonly modeFieldDiameter1e2: number;
  /** Left out: `peak irradiance`, the longer one. */
  readonly form?: Geometry['form'];
}

/**
 * A single-mode end: r = (MFD/λ)·√(πP/(2·limit)). Paraxial.
 *
 * @throws {OutOfRange} if the power is negative or a length not above zero
 * @source ANSI Z136.1, appendix B: from memory; the same as a Gaussian's w = λr/(π w₀) with its peak irradiance
 */
export function singleModeEndDistanceFrom1e2({
  form = 'peak irradiance',
  ...end
}: SingleModeEnd1e2): HazardDistance {
  const spread = fullDivergence1eOfMode(end.wavelength, end.modeFieldDiameter1e2);
  return distanceIn(end, {
    from: 'the fibre end',
    beamDefinition: '1/e²',
    isPoint: true,
    form,
    basis: [fibreForms, gaussianMathematics],
    distanceAt: (diameter) => diameter / spread,
  });
}

/**
 * Full 1/e divergence, rad, of a mode with this 1/e² mode-field diameter, m: √2·λ/(π w₀). Paraxial.
 *
 * @throws {OutOfRange} if a length is not above zero
 * @source identity of Gaussian beams
 */
export function fullDivergence1eOfMode(wavelength: number, modeFieldDiameter1e2: number): number {
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  mustBePositive(modeFieldDiameter1e2, 'modeFieldDiameter1e2', 'a mode-field diameter');
  return width1eFromWidth1e2((4 * wavelength) / (Math.PI * modeFieldDiameter1e2));
}

/** 1/e diameter, m, of a mode's light at a distance (m) in the far field. @source as `fullDivergence1eOfMode` */
export function modeDiameter1eAt(wavelength: number, modeFieldDiameter1e2: number, distance: number): number {
  return fullDivergence1eOfMode(wavelength, modeFieldDiameter1e2) * distance;
}

/** A bare multimode end, described at 5 % of the peak, and what it is judged by. */
export interface MultimodeEnd5Percent extends Judged {
  /** The fibre's numerical aperture, at 5 % of the peak; the geometric √(n₁² − n₂²) counts as that. */
  readonly fibreNumericalAperture5Percent: number;
  /** Of the light that was launched: a short fibre keeps it. `null`: not known. */
  readonly launchNumericalAperture5Percent: number | null;
  readonly form?: Geometry['form'];
}

/**
 * A multimode end: r = (1.7/NA)·√(P/(π·limit)), NA the smaller of the fibre's and the launch's. With NA itself instead of
 * tan(asin NA) it is never the shorter.
 *
 * @throws {OutOfRange} if the launch's aperture is not known (any cone narrower than the fibre's would reach farther), an
 *   aperture is not between 0 and 1, or the power negative
 * @source ANSI Z136.1, appendix B: from memory; identity of Gaussian beams with √(ln 20) rounded to 1.7
 */
export function multimodeEndDistanceFrom5Percent(end: MultimodeEnd5Percent): HazardDistance {
  return multimodeDistance(end, coneAperture(end), [fibreForms, gaussianMathematics]);
}

/**
 * The same for large apertures: r = (1.7/tan(asin NA))·√(P/(π·limit)). Shorter by 2.5 % at NA 0.22, by 12 % at 0.47.
 *
 * @throws {OutOfRange} as `multimodeEndDistanceFrom5Percent`
 * @source the beam diameters of DGUV Information 203-039, table 1 (read), and the identity of Gaussian beams
 */
export function wideConeEndDistanceFrom5Percent(end: MultimodeEnd5Percent): HazardDistance {
  return multimodeDistance(end, slopeOf(coneAperture(end)), [fibreGuide, gaussianMathematics]);
}

function multimodeDistance(
  { form = 'peak irradiance', ...end }: MultimodeEnd5Percent,
  slope5Percent: number,
  basis: readonly Basis[],
): HazardDistance {
  return distanceIn(end, {
    from: 'the fibre end',
    beamDefinition: '5 % of the peak',
    isPoint: false, // a plastic core of 1 mm is seen under 10 mrad from 100 mm
    form,
    basis,
    distanceAt: (diameter) => (printedFivePercentTo1e * diameter) / (2 * slope5Percent),
  });
}

/** The sine that decides: the smaller of fibre and launch. */
function coneAperture({
  fibreNumericalAperture5Percent: fibre,
  launchNumericalAperture5Percent: launch,
}: MultimodeEnd5Percent): number {
  if (launch === null) {
    throw new OutOfRange({
      where: 'launchNumericalAperture5Percent',
      what: 'the numerical aperture of the launch is not known, and a short fibre keeps it however small',
      mend: 'Measure the cone that leaves the fibre, or give the launch’s numerical aperture.',
    });
  }
  mustBeAperture(fibre, 'fibreNumericalAperture5Percent');
  mustBeAperture(launch, 'launchNumericalAperture5Percent');
  return Math.min(fibre, launch);
}

/** @throws {OutOfRange} unless 0 < NA < 1 */
export function mustBeAperture(numericalAperture: number, where: string): void {
  if (numericalAperture > 0 && numericalAperture < 1) return;
  throw new OutOfRange({
    where,
    what: `${numericalAperture} is no numerical aperture in air`,
    mend: 'Give a number between 0 and 1.',
  });
}

/** tan(asin NA). */
export function slopeOf(numericalAperture: number): number {
  return numericalAperture / Math.sqrt(1 - numericalAperture ** 2);
}

/**
 * 1/e diameter, m, of a multimode end's light at a distance (m): 2r·tan(asin NA)/1.7.
 *
 * @throws {OutOfRange} if the aperture is not between 0 and 1
 * @source DGUV Information 203-039, 5.2, table 1: read
 */
export function multimodeDiameter1eFrom5Percent(numericalAperture5Percent: number, distance: number): number {
  mustBeAperture(numericalAperture5Percent, 'numericalAperture5Percent');
  return (2 * distance * slopeOf(numericalAperture5Percent)) / printedFivePercentTo1e;
}

/**
 * A fibre made for one mode and used below its cut-off carries several: the narrower of the two cones, so the longer of
 * the two distances.
 *
 * @throws {OutOfRange} as both
 * @source as both
 */
export function fewModeEndDistance(end: SingleModeEnd1e2 & MultimodeEnd5Percent): HazardDistance {
  const oneMode = singleModeEndDistanceFrom1e2(end);
  const manyModes = multimodeEndDistanceFrom5Percent(end);
  return manyModes.distance > oneMode.distance ? manyModes : oneMode;
}

/** What a magnifier, loupe, fibre microscope or collimator at the end can bring into the eye: all of it. */
export interface MagnifierLine extends Judged {
  /** Total power over the power at the limit; distance plays no part. */
  readonly timesLimit: number;
  readonly isAboveLimit: boolean;
  readonly basis: readonly Basis[];
}

/**
 * The whole power of a fibre end against the limit, for when something gathers it.
 *
 * @source mathematics: the limit times the area of its stop
 */
export function magnifierLine({ power, limit }: Judged): MagnifierLine {
  return {
    power,
    limit,
    timesLimit: power / powerAtLimit(limit),
    isAboveLimit: !isUnderLimitEverywhere({ power, limit }),
    basis: [gaussianMathematics, ...limit.basis],
  };
}
