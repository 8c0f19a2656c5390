/** A beam of quality M² through elements that a ray matrix describes. */
import { OutOfRange } from '../out-of-range.ts';
import { type GaussianBeam, mustBeBeam, rayleighRange } from './gaussian-beam.ts';
import {
  determinant,
  type OpticalElement,
  product,
  type RayMatrix,
  rayMatrix,
  straightThrough,
} from './ray-matrix.ts';

/**
 * The beam behind a ray matrix. Its waist position counts from the plane where the matrix ends, as that of `beam` counts
 * from the plane where it begins. M² stays as it is.
 *
 * Paraxial, and nothing clips or aberrates.
 *
 * @param indexBehind refractive index behind the matrix; left out: as before it
 * @throws {OutOfRange} if the matrix turns no area into area, or disagrees with the indices on its two sides
 * @source H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966): q' = (Aq + B)/(Cq + D), with λ → M²λ; from memory
 */
export function transformBeam(beam: GaussianBeam, matrix: RayMatrix, indexBehind?: number): GaussianBeam {
  mustBeBeam(beam, 'transformBeam');
  const indexBefore = beam.mediumIndex ?? 1;
  const behind = indexBehind ?? indexBefore;
  // rounding of long chains leaves about 1e-13 of the two products; a wrong index differs by far more than 1e-6 of them
  const slack = 1e-6 * (Math.abs(matrix.a * matrix.d) + Math.abs(matrix.b * matrix.c));
  if (!(Math.abs(determinant(matrix) - indexBefore / behind) <= slack)) {
    throw new OutOfRange({
      where: 'transformBeam matrix',
      what: `its determinant is ${determinant(matrix)}, but the indices ${indexBefore} before and ${behind} behind it ask for ${indexBefore / behind}`,
      mend: 'Give the matrix in real slopes, and the index of the medium it ends in.',
    });
  }
  return throughMatrix(beam, matrix, behind);
}

/**
 * The beam behind the last of these elements, met one after another. Its waist position counts from the end of the last one.
 *
 * Paraxial, and nothing clips or aberrates.
 *
 * @throws {OutOfRange} if a surface says it is in another medium than the beam that meets it
 * @source as `transformBeam`
 */
export function carryBeam(beam: GaussianBeam, elements: readonly OpticalElement[]): GaussianBeam {
  mustBeBeam(beam, 'carryBeam');
  let index = beam.mediumIndex ?? 1;
  let matrix = straightThrough;
  for (const element of elements) {
    if (element.kind === 'surface') {
      if (Math.abs(element.indexBefore - index) > 1e-12 * index) {
        throw new OutOfRange({
          where: 'carryBeam surface',
          what: `the surface has index ${element.indexBefore} before it, but the beam comes in a medium of ${index}`,
          mend: `Write ${index} as its indexBefore.`,
        });
      }
      index = element.indexBehind;
    }
    matrix = product(rayMatrix(element), matrix);
  }
  return throughMatrix(beam, matrix, index);
}

function throughMatrix(beam: GaussianBeam, { a, b, c, d }: RayMatrix, indexBehind: number): GaussianBeam {
  const indexBefore = beam.mediumIndex ?? 1;
  const z = -beam.waistPosition;
  const range = rayleighRange(beam);
  const upper = a * z + b; // Aq + B = upper + i·a·range
  const lower = c * z + d; // Cq + D = lower + i·c·range
  const squareOfLower = lower ** 2 + (c * range) ** 2;
  // the determinant from the indices, not from a·d − b·c, which long chains round
  const det = indexBefore / indexBehind;
  const waistRadius = (beam.waistRadius * det) / Math.sqrt(squareOfLower);
  const waistPosition = -(upper * lower + a * c * range ** 2) / squareOfLower;
  const carried = { wavelength: beam.wavelength, waistRadius, waistPosition, quality: beam.quality };
  return indexBehind === 1 ? carried : { ...carried, mediumIndex: indexBehind };
}
