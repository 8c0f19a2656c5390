/** How far a lens at the far end of a fibre carries the light: decimetres become tens or hundreds of metres. */
import { mustBePositive } from '../out-of-range.ts';
import { printedFivePercentTo1e, width1eFromWidth1e2 } from './beam-definition.ts';
import { collimatedDistanceFrom1e } from './beam-distance.ts';
import { gaussianMathematics, joinBases } from './evidence.ts';
import { fullDivergence1eOfMode, mustBeAperture, slopeOf } from './fibre-end-distance.ts';
import type { Geometry, HazardDistance, Judged } from './hazard-distance.ts';

/**
 * A single-mode end in the focus of a lens: a = 4λf/(π·MFD)/√2, φ = (MFD/f)/√2, then the quadratic form.
 *
 * @throws {OutOfRange} if the power is negative or a length not above zero
 * @source identity of Gaussian beams
 */
export function collimatedSingleModeDistanceFrom1e2({
  power,
  limit,
  wavelength,
  modeFieldDiameter1e2,
  focalLength,
  form = 'peak irradiance',
}: Judged & {
  /** Vacuum wavelength, m. */
  readonly wavelength: number;
  /** Mode-field diameter at 1/e² of intensity, m. */
  readonly modeFieldDiameter1e2: number;
  /** m. */
  readonly focalLength: number;
  readonly form?: Geometry['form'];
}): HazardDistance {
  mustBePositive(focalLength, 'focalLength', 'a focal length');
  const result = collimatedDistanceFrom1e({
    power,
    limit,
    exitDiameter1e: fullDivergence1eOfMode(wavelength, modeFieldDiameter1e2) * focalLength,
    fullDivergence1e: width1eFromWidth1e2(modeFieldDiameter1e2 / focalLength),
    form,
  });
  return fromLens(result, '1/e²');
}

/**
 * A multimode end in the focus of a lens: a = 2f·tan(asin NA)/1.7, φ = core diameter/f, then the quadratic form. Not
 * limited by diffraction: the picture of the core spreads.
 *
 * @throws {OutOfRange} if the power is negative, a length not above zero, or the aperture not between 0 and 1
 * @source identity of Gaussian beams
 */
export function collimatedMultimodeDistanceFrom5Percent({
  power,
  limit,
  coreDiameter,
  numericalAperture5Percent,
  focalLength,
  form = 'peak irradiance',
}: Judged & {
  /** m. */
  readonly coreDiameter: number;
  /** The smaller of the fibre's and the launch's, at 5 % of the peak. */
  readonly numericalAperture5Percent: number;
  /** m. */
  readonly focalLength: number;
  readonly form?: Geometry['form'];
}): HazardDistance {
  mustBePositive(focalLength, 'focalLength', 'a focal length');
  mustBePositive(coreDiameter, 'coreDiameter', 'a core diameter');
  mustBeAperture(numericalAperture5Percent, 'numericalAperture5Percent');
  const result = collimatedDistanceFrom1e({
    power,
    limit,
    exitDiameter1e: (2 * focalLength * slopeOf(numericalAperture5Percent)) / printedFivePercentTo1e,
    fullDivergence1e: coreDiameter / focalLength,
    form,
  });
  return fromLens(result, '5 % of the peak');
}

/** The same distance, said of a lens, and resting on mathematics alone. */
function fromLens(result: HazardDistance, beamDefinition: HazardDistance['beamDefinition']): HazardDistance {
  return {
    ...result,
    from: 'the lens',
    beamDefinition,
    basis: joinBases([gaussianMathematics], result.limit.basis),
  };
}
