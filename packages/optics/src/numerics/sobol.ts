import { OutOfRange } from '../out-of-range.ts';
import { mersenneTwister } from './random.ts';
import { sobolDirections } from './sobol-directions.ts';

/** How many dimensions `sobolPoints` has. */
export const sobolDimensions = sobolDirections.length + 1;

const bits = 32;
const wholeRange = 2 ** bits;

/**
 * The first `count` points of Sobol's sequence in the unit cube, row by row (point i, dimension d at i·dimensions + d),
 * digitally shifted by numbers drawn from `seed`. They fill the cube more evenly than chance: the mean of a smooth
 * function over them errs about as 1/count.
 *
 * Best with a power of two as count. Every number is above 0 and below 1. `seed` `null`: unshifted, the first point
 * at 2⁻³³ in every dimension.
 *
 * @throws {OutOfRange} if dimensions are outside 1 … 64 or count outside 1 … 2³⁰
 * @source I. M. Sobol', 1967; Gray-code order: I. A. Antonov and V. M. Saleev, 1979; directions: Joe and Kuo 2008 (all
 *   from memory)
 */
export function sobolPoints(count: number, dimensions: number, seed: number | null): Float64Array {
  mustBeWhole(dimensions, sobolDimensions, 'sobolPoints dimensions');
  mustBeWhole(count, 2 ** 30, 'sobolPoints count');
  const shift = seed === null ? () => 0 : mersenneTwister(seed);
  const points = new Float64Array(count * dimensions);
  for (let dimension = 0; dimension < dimensions; dimension++) {
    const directions = directionNumbers(dimension);
    let value = shift();
    for (let i = 0; i < count; i++) {
      points[i * dimensions + dimension] = ((value >>> 0) + 0.5) / wholeRange;
      value ^= directions[trailingOnes(i)]!;
    }
  }
  return points;
}

/** v_1 … v_32 of one dimension, each shifted up to 32 bits. */
function directionNumbers(dimension: number): Uint32Array {
  const v = new Uint32Array(bits);
  if (dimension === 0) {
    for (let k = 0; k < bits; k++) v[k] = 1 << (bits - 1 - k);
    return v;
  }
  const [polynomial, ...first] = sobolDirections[dimension - 1]!;
  const degree = first.length;
  for (let k = 0; k < bits; k++) {
    if (k < degree) {
      v[k] = first[k]! << (bits - 1 - k);
      continue;
    }
    let next = v[k - degree]! ^ (v[k - degree]! >>> degree);
    for (let i = 1; i < degree; i++) if ((polynomial! >> (degree - i)) & 1) next ^= v[k - i]!;
    v[k] = next;
  }
  return v;
}

/** How many of the lowest bits of i are set: the bit that changes from Gray code i to i + 1. */
function trailingOnes(i: number): number {
  return 31 - Math.clz32(~i & (i + 1));
}

function mustBeWhole(value: number, most: number, where: string): void {
  if (!Number.isInteger(value) || value < 1 || value > most) {
    throw new OutOfRange({
      where,
      what: `${value} is not a whole number from 1 to ${most}`,
      mend: `Give 1 to ${most}.`,
    });
  }
}
