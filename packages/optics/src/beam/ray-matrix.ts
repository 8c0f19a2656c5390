/**
 * Paraxial ray matrices on one transverse axis.
 *
 * A ray is (offset from the axis, slope); the slope is the real one in the medium, not multiplied by its index, so the
 * determinant is (index before)/(index behind).
 */
import { OutOfRange } from '../out-of-range.ts';

/** (offset, slope) behind = [[a, b], [c, d]]·(offset, slope) before. `a` and `d` are plain numbers, `b` is in m, `c` in 1/m. */
export interface RayMatrix {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** What a paraxial ray meets on its way, one entry for each thing. */
export type OpticalElement =
  /** A stretch of one medium. m; negative propagates back. */
  | { readonly kind: 'space'; readonly length: number }
  /** m; negative diverges. */
  | { readonly kind: 'thin lens'; readonly focalLength: number }
  /** A refracting surface; its radius (m) is positive with the centre of curvature downstream, `null` if flat. */
  | {
      readonly kind: 'surface';
      readonly radius: number | null;
      readonly indexBefore: number;
      readonly indexBehind: number;
    };

/** A ray on one transverse axis, such as the chief ray of a beam. */
export interface Ray {
  /** From the axis, m. */
  readonly offset: number;
  /** rad, as a slope. */
  readonly slope: number;
}

/** The matrix of nothing at all. */
export const straightThrough: RayMatrix = { a: 1, b: 0, c: 0, d: 1 };

/**
 * The ray matrix of one element.
 *
 * @throws {OutOfRange} if a focal length or a surface radius is zero or not finite, or an index not positive
 * @source H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966), table of ray matrices; from memory
 */
export function rayMatrix(element: OpticalElement): RayMatrix {
  switch (element.kind) {
    case 'space':
      return { a: 1, b: mustBeLength(element.length), c: 0, d: 1 };
    case 'thin lens':
      return {
        a: 1,
        b: 0,
        c: -1 / mustBend(element.focalLength, 'focalLength', 'Leave the lens out.'),
        d: 1,
      };
    case 'surface': {
      const { radius, indexBefore, indexBehind } = element;
      for (const index of [indexBefore, indexBehind]) {
        if (!(index > 0 && Number.isFinite(index))) {
          throw new OutOfRange({
            where: 'rayMatrix surface',
            what: `${index} is no refractive index`,
            mend: 'Give an index above zero; air is 1.',
          });
        }
      }
      const c =
        radius === null
          ? 0
          : (indexBefore - indexBehind) /
            (indexBehind * mustBend(radius, 'radius', 'Write a flat surface as null.'));
      return { a: 1, b: 0, c, d: indexBefore / indexBehind };
    }
  }
}

/** The matrix of elements met one after another; the order is the light's. */
export function chainMatrix(elements: readonly OpticalElement[]): RayMatrix {
  return elements.reduce((before, element) => product(rayMatrix(element), before), straightThrough);
}

/** Matrix product later·earlier: what light does that meets `earlier` first. */
export function product(later: RayMatrix, earlier: RayMatrix): RayMatrix {
  return {
    a: later.a * earlier.a + later.b * earlier.c,
    b: later.a * earlier.b + later.b * earlier.d,
    c: later.c * earlier.a + later.d * earlier.c,
    d: later.c * earlier.b + later.d * earlier.d,
  };
}

/** a·d − b·c: the index before over the index behind. */
export function determinant({ a, b, c, d }: RayMatrix): number {
  return a * d - b * c;
}

/** The ray behind the matrix. */
export function carryRay(ray: Ray, matrix: RayMatrix): Ray {
  return {
    offset: matrix.a * ray.offset + matrix.b * ray.slope,
    slope: matrix.c * ray.offset + matrix.d * ray.slope,
  };
}

function mustBeLength(length: number): number {
  if (Number.isFinite(length)) return length;
  throw new OutOfRange({
    where: 'rayMatrix length',
    what: `${length} m is no length`,
    mend: 'Give a finite length.',
  });
}

function mustBend(value: number, name: string, mend: string): number {
  if (Number.isFinite(value) && value !== 0) return value;
  throw new OutOfRange({ where: `rayMatrix ${name}`, what: `${value} m bends no light or all of it`, mend });
}
