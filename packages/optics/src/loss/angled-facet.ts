import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { obliqueReflectance, type Reflectance } from './fresnel.ts';

/** Light leaving (or, backwards, entering) a fibre end polished at an angle. Angles in rad. */
export interface AngledFacet {
  /** Between the fibre's axis and the facet's normal, inside the glass: the polish angle. */
  readonly internalIncidence: number;
  /** Between the light outside and the facet's normal. */
  readonly externalAngle: number;
  /** Between the light outside and the fibre's axis; towards the long side of the wedge. A launch must aim along it. */
  readonly deviation: number;
  /** The same for small angles, (n/n_outside − 1)·polish. */
  readonly paraxialDeviation: number;
  readonly reflectance: Reflectance;
  /** Width of the beam outside over that of the mode, in the plane of the wedge: cos(out)/cos(in). */
  readonly anamorphicFactor: number;
}

/**
 * What an angled end does to the light of its fibre.
 *
 * The mode is taken as a plane wave in glass of index `index`: right while the spread of the mode (its NA) does not
 * come near the critical angle.
 *
 * @param polishAngle rad between the facet's normal and the fibre's axis; 0 is a flat end
 * @param index of the glass; the mode's effective index is between that of core and cladding
 * @param outsideIndex 1 for air
 * @throws {OutOfRange} if the light cannot leave (total reflection), or an argument is no angle or index
 * @source W. Snell's law and A. Fresnel's equations; M. Born and E. Wolf, Principles of Optics, ch. 1 (from memory)
 */
export function angledFacet(polishAngle: number, index: number, outsideIndex = 1): AngledFacet {
  mustBePositive(index, 'index', 'a refractive index');
  mustBePositive(outsideIndex, 'outsideIndex', 'a refractive index');
  const sine = (index / outsideIndex) * Math.sin(polishAngle);
  if (!(polishAngle >= 0 && polishAngle < Math.PI / 2 && sine < 1)) {
    throw new OutOfRange({
      where: 'polishAngle',
      what: `no light leaves an end of ${polishAngle} rad`,
      mend: `Give 0 rad up to, but not, ${Math.asin(Math.min(1, outsideIndex / index))} rad.`,
    });
  }
  const externalAngle = Math.asin(sine);
  return {
    internalIncidence: polishAngle,
    externalAngle,
    deviation: externalAngle - polishAngle,
    paraxialDeviation: ((index - outsideIndex) / outsideIndex) * polishAngle,
    reflectance: obliqueReflectance(polishAngle, index, outsideIndex),
    anamorphicFactor: Math.cos(externalAngle) / Math.cos(polishAngle),
  };
}

/** Light in a fibre that meets its own angled end from inside. */
export interface BackReflection {
  /** rad between the facet's normal and the fibre's axis. */
  readonly polishAngle: number;
  readonly index: number;
  /** 1/e² radius of intensity of the mode, m. */
  readonly modeFieldRadius: number;
  /** Vacuum wavelength, m. */
  readonly wavelength: number;
}

/**
 * Of the light an angled end reflects, the fraction that its fibre takes back: the reflected Gaussian mode is tilted
 * by twice the polish angle, exp(−(2π·n·w·θ/λ)²). Multiply by the facet's reflectance for the return.
 *
 * Scattering at the polish keeps real parts at 60 to 70 dB whatever this says (common practice, no source).
 *
 * @throws {OutOfRange} if an index, length or angle is not finite, or not above zero (the angle may be 0)
 * @source D. Marcuse, Bell Syst. Tech. J. 56, 703 (1977): tilt of equal Gaussian modes, in glass, by 2θ (from memory)
 */
export function backReflectionOverlap(reflection: BackReflection): number {
  const { polishAngle, index, modeFieldRadius, wavelength } = reflection;
  mustBePositive(index, 'index', 'a refractive index');
  mustBePositive(modeFieldRadius, 'modeFieldRadius', 'a mode field radius');
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  if (!(polishAngle >= 0 && polishAngle < Math.PI / 4)) {
    throw new OutOfRange({
      where: 'polishAngle',
      what: `an end of ${polishAngle} rad does not send light back along its fibre`,
      mend: 'Give 0 rad up to, but not, π/4.',
    });
  }
  return Math.exp(-(((2 * Math.PI * index * modeFieldRadius * polishAngle) / wavelength) ** 2));
}
