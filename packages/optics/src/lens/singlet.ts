/** A thick lens of one glass in air. Surface 1 is met first; a radius is positive with its centre downstream. */
import { chainMatrix } from '../beam/ray-matrix.ts';
import type { Glass } from '../glass/glass.ts';
import { refractiveIndex } from '../glass/refractive-index.ts';
import { OutOfRange } from '../out-of-range.ts';

/** A lens of one piece of glass, in air. */
export interface Singlet {
  readonly glass: Glass;
  /** Radius of curvature of the first and the second surface, m; `null` if flat. */
  readonly radius1: number | null;
  readonly radius2: number | null;
  /** On the axis, m. */
  readonly thickness: number;
}

/** Paraxial properties at one wavelength, m. */
export interface SingletFocus {
  /** From the second principal plane to the focus of collimated light that enters surface 1. */
  readonly focalLength: number;
  /** From the vertex of surface 2 to that focus; positive downstream. */
  readonly backFocalDistance: number;
  /** From the vertex of surface 1 to the focus on its own side; negative upstream, so of the usual lens. */
  readonly frontFocalDistance: number;
}

/**
 * Where a thick singlet focuses at a vacuum wavelength (m). Paraxial.
 *
 * @throws {OutOfRange} if the thickness is negative, the surfaces have no focus (a plate), or the wavelength is outside
 *   the range of the glass
 * @source ray matrices of H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966): f = −1/C, back focus −A/C, front focus
 *   D/C; from memory
 */
export function singletFocus(
  { glass, radius1, radius2, thickness }: Singlet,
  wavelength: number,
): SingletFocus {
  if (!(thickness >= 0 && Number.isFinite(thickness))) {
    throw new OutOfRange({
      where: 'singletFocus thickness',
      what: `${thickness} m is no thickness`,
      mend: 'Give the thickness on the axis, 0 or more.',
    });
  }
  const index = refractiveIndex(glass, wavelength);
  const { a, c, d } = chainMatrix([
    { kind: 'surface', radius: radius1, indexBefore: 1, indexBehind: index },
    { kind: 'space', length: thickness },
    { kind: 'surface', radius: radius2, indexBefore: index, indexBehind: 1 },
  ]);
  if (c === 0) {
    throw new OutOfRange({
      where: 'singletFocus radius1',
      what: 'surfaces that undo each other have no focus',
      mend: 'Give one surface a curvature, or carry the beam through a plate.',
    });
  }
  return { focalLength: -1 / c, backFocalDistance: -a / c, frontFocalDistance: d / c };
}

/**
 * How far a fibre tip behind surface 2 must move when the wavelength changes, m: negative is towards the lens. In a thick
 * lens it differs, by a fifth for some moulded lenses, from the change of focal length that a thin one would have.
 *
 * @throws {OutOfRange} as `singletFocus`
 * @source as `singletFocus`
 */
export function backFocalShift(singlet: Singlet, wavelengthBefore: number, wavelengthNow: number): number {
  return (
    singletFocus(singlet, wavelengthNow).backFocalDistance -
    singletFocus(singlet, wavelengthBefore).backFocalDistance
  );
}
