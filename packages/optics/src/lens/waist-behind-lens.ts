/** One ideal thin lens in air. Positions count from the lens, positive downstream. */
import { type GaussianBeam, mustBeBeam, rayleighRange } from '../beam/gaussian-beam.ts';
import { OutOfRange } from '../out-of-range.ts';

/**
 * The beam behind an ideal thin lens in air; M² stays as it is.
 *
 * Paraxial, and the lens neither clips nor aberrates.
 *
 * @param beam as it would go on without the lens; its waist position counts from the lens: negative if it lies before it
 * @param focalLength m, at this wavelength; negative if the lens diverges
 * @throws {OutOfRange} if the focal length is zero or not finite, or the beam is not in air
 * @source S. A. Self, Appl. Opt. 22, 658 (1983), from memory: Newton's equation with the Rayleigh range in it
 */
export function waistBehindLens(beam: GaussianBeam, focalLength: number): GaussianBeam {
  mustBeBeam(beam, 'waistBehindLens');
  mustBeFocalLength(focalLength, 'waistBehindLens');
  if ((beam.mediumIndex ?? 1) !== 1) {
    throw new OutOfRange({
      where: 'waistBehindLens mediumIndex',
      what: `the beam is in a medium of index ${beam.mediumIndex}, and a focal length is one in air`,
      mend: 'Carry the beam through its surfaces instead.',
    });
  }
  const beforeFocus = -beam.waistPosition - focalLength; // from the waist to the front focus, as in Newton's equation
  const areaRatio = focalLength ** 2 / (beforeFocus ** 2 + rayleighRange(beam) ** 2);
  return {
    wavelength: beam.wavelength,
    waistRadius: beam.waistRadius * Math.sqrt(areaRatio),
    waistPosition: focalLength + areaRatio * beforeFocus,
    quality: beam.quality,
  };
}

/** @throws {OutOfRange} if the focal length is zero or not finite. */
export function mustBeFocalLength(focalLength: number, where: string): void {
  if (!Number.isFinite(focalLength) || focalLength === 0) {
    throw new OutOfRange({
      where: `${where} focalLength`,
      what: `${focalLength} m is no focal length`,
      mend: 'Leave the lens out.',
    });
  }
}
