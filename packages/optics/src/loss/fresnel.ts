import { mustBePositive, OutOfRange } from '../out-of-range.ts';

/*
 * What one surface between two materials reflects, as a fraction of power. s: field across the plane of incidence;
 * p: field in it. Angles of incidence count from the surface's normal, in the medium the light comes from.
 */

/** n + i·k with time factor exp(−iωt): k > 0 absorbs. */
export interface ComplexIndex {
  readonly n: number;
  readonly k: number;
}

/** Reflected fractions of power of the two linear polarisations. */
export interface Reflectance {
  readonly s: number;
  readonly p: number;
}

/**
 * Reflectance at normal incidence between two transparent materials, ((n₁−n₂)/(n₁+n₂))². Air and glass: a few per
 * cent; glass and index-matching gel: 10⁻⁵. Both directions reflect the same.
 *
 * @throws {OutOfRange} if an index is not above zero
 * @source M. Born and E. Wolf, Principles of Optics, ch. 1 (from memory)
 */
export function normalReflectance(fromIndex: number, toIndex: number): number {
  mustBePositive(fromIndex, 'fromIndex', 'a refractive index');
  mustBePositive(toIndex, 'toIndex', 'a refractive index');
  return ((fromIndex - toIndex) / (fromIndex + toIndex)) ** 2;
}

/**
 * Reflectances of light that meets a smooth, plane surface at an angle, from a transparent material into another or
 * into a metal. Beyond the critical angle both are 1.
 *
 * @param incidence rad, from 0 to π/2
 * @param toIndex a number if transparent
 * @throws {OutOfRange} if the incidence leaves that range, an index is not above zero or k is negative
 * @source M. Born and E. Wolf, Principles of Optics, ch. 1 (dielectrics) and the chapter on metals (from memory)
 */
export function obliqueReflectance(
  incidence: number,
  fromIndex: number,
  toIndex: number | ComplexIndex,
): Reflectance {
  mustBePositive(fromIndex, 'fromIndex', 'a refractive index');
  if (!(incidence >= 0 && incidence <= Math.PI / 2)) {
    throw new OutOfRange({
      where: 'incidence',
      what: `${incidence} rad is no angle of incidence`,
      mend: 'Give 0 (along the normal) to π/2 (grazing).',
    });
  }
  const { n, k } = typeof toIndex === 'number' ? { n: toIndex, k: 0 } : toIndex;
  mustBePositive(n, 'toIndex', 'a refractive index');
  if (!(k >= 0 && k < Infinity)) {
    throw new OutOfRange({
      where: 'toIndex.k',
      what: `${k} is no extinction coefficient`,
      mend: 'Give 0 for a transparent material, more for a metal.',
    });
  }
  const along = fromIndex * Math.cos(incidence);
  const across = fromIndex * Math.sin(incidence);
  const { re, im } = complexRoot((n - across) * (n + across) - k * k, 2 * n * k); // (n+ik)·cos of refraction
  // p is s with each term divided by its own index squared; both sides are multiplied out, so nothing can vanish below
  const square = { re: n * n - k * k, im: 2 * n * k };
  const perIndex = fromIndex * fromIndex;
  return {
    s: ((along - re) ** 2 + im ** 2) / ((along + re) ** 2 + im ** 2),
    p:
      ((square.re * along - perIndex * re) ** 2 + (square.im * along - perIndex * im) ** 2) /
      ((square.re * along + perIndex * re) ** 2 + (square.im * along + perIndex * im) ** 2),
  };
}

/** Reflectance of light whose polarisation is random or not known: the mean of s and p. @source as the reflectances: A. Fresnel */
export function unpolarizedReflectance({ s, p }: Reflectance): number {
  return (s + p) / 2;
}

/** The root with both parts ≥ 0 of a number with im ≥ 0. The larger part comes first, so that nothing cancels. */
function complexRoot(re: number, im: number): { readonly re: number; readonly im: number } {
  const size = Math.sqrt((Math.hypot(re, im) + Math.abs(re)) / 2);
  if (size === 0) return { re: 0, im: 0 };
  return re >= 0 ? { re: size, im: im / (2 * size) } : { re: im / (2 * size), im: size };
}
