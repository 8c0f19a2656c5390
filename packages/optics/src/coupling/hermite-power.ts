import type { AxisMatrix } from './axis-state.ts';
import type { HermiteTable } from './hermite-modes.ts';
import { type LowRank, lowRank } from './low-rank.ts';

/** Every other row and column of ρ, and its few columns where few are enough. */
export interface Block extends AxisMatrix {
  readonly few: LowRank | null;
}

/** More columns than this share of the block's size would take longer than the block itself. */
const fewEnough = 0.6;

/**
 * ρ of one axis, parted into its even and its odd rows and columns.
 *
 * @param tolerance what of the beam may be left out of the few columns, as a share
 */
export function blocksOf({ re, im }: AxisMatrix, orders: number, tolerance: number): readonly [Block, Block] {
  const half = orders / 2;
  const block = (odd: 0 | 1): Block => {
    const out = { re: new Float64Array(half * half), im: new Float64Array(half * half) };
    for (let i = 0; i < half; i += 1) {
      for (let k = 0; k < half; k += 1) {
        out.re[i * half + k] = re[(2 * i + odd) * orders + 2 * k + odd]!;
        out.im[i * half + k] = im[(2 * i + odd) * orders + 2 * k + odd]!;
      }
    }
    return { ...out, few: lowRank(out.re, out.im, half, 0.3 * tolerance, Math.floor(fewEnough * half)) };
  };
  return [block(0), block(1)];
}

/**
 * What one orientation of a mode takes of a partly coherent beam, as a share.
 *
 * @param half orders of each parity
 * @param x the block of the mode's parity along x; y likewise
 */
export function powerOf(table: HermiteTable, half: number, x: Block, y: Block, tolerance: number): number {
  return x.few === null || y.few === null
    ? mixedPower(table, half, x, y)
    : fewPower(table, half, x.few, y.few, 1e-2 * tolerance);
}

/** How many of the columns k of row i have 2i + oddX + 2k + oddY below the total order. */
const columnsOf = (i: number, half: number, { oddX, oddY }: HermiteTable): number =>
  Math.max(0, half - i - ((oddX + oddY + 1) >> 1));

let alongRe = new Float64Array(0);
let alongIm = new Float64Array(0);

/** The same from few columns of either axis: each pair of them is a coherent member. */
function fewPower(table: HermiteTable, half: number, x: LowRank, y: LowRank, least: number): number {
  const { values, imaginary, half: width } = table;
  const { re: xRe, im: xIm, rank: rankX } = x;
  const { re: yRe, im: yIm, rank: rankY } = y;
  const rows = Math.max(0, half - ((table.oddX + table.oddY + 1) >> 1));
  if (alongRe.length < half) {
    alongRe = new Float64Array(half);
    alongIm = new Float64Array(half);
  }
  const middleRe = alongRe;
  const middleIm = alongIm;
  let power = 0;
  for (let b = 0; b < rankY; b += 1) {
    const column = b * half;
    for (let i = 0; i < rows; i += 1) {
      const count = rows - i;
      const row = i * width;
      let re = 0;
      let im = 0;
      for (let k = 0; k < count; k += 1) {
        const f = values[row + k]!;
        re += f * yRe[column + k]!;
        im += f * yIm[column + k]!;
      }
      if (imaginary !== null) {
        for (let k = 0; k < count; k += 1) {
          const f = imaginary.values[row + k]!;
          re += f * yIm[column + k]!;
          im -= f * yRe[column + k]!;
        }
      }
      middleRe[i] = re;
      middleIm[i] = im;
    }
    for (let a = 0; a < rankX; a += 1) {
      if (x.weights[a]! * y.weights[b]! < least) continue;
      const at = a * half;
      let re = 0;
      let im = 0;
      for (let i = 0; i < rows; i += 1) {
        const lRe = xRe[at + i]!;
        const lIm = xIm[at + i]!;
        const mRe = middleRe[i]!;
        const mIm = middleIm[i]!;
        re += lRe * mRe - lIm * mIm;
        im += lRe * mIm + lIm * mRe;
      }
      power += re * re + im * im;
    }
  }
  return power;
}

/** ρx F of one column, scratch. */
let leftRe = new Float64Array(0);
let leftIm = new Float64Array(0);

function mixedPower(table: HermiteTable, half: number, x: AxisMatrix, y: AxisMatrix): number {
  const { values, turned, imaginary, half: width } = table;
  const { re: xRe, im: xIm } = x;
  const { re: yRe, im: yIm } = y;
  if (leftRe.length < half * half) {
    leftRe = new Float64Array(half * half);
    leftIm = new Float64Array(half * half);
  }
  const partRe = leftRe;
  const partIm = leftIm;
  // left = ρx F, column by column; F is as high in column k as it is wide in row k
  const rows = Math.max(0, half - ((table.oddX + table.oddY + 1) >> 1));
  for (let k = 0; k < half; k += 1) {
    const count = rows - k;
    const column = k * width;
    for (let row = 0; row < rows; row += 1) {
      const at = row * half;
      let re = 0;
      let im = 0;
      for (let i = 0; i < count; i += 1) {
        const f = turned[column + i]!;
        re += f * xRe[at + i]!;
        im += f * xIm[at + i]!;
      }
      if (imaginary !== null) {
        for (let i = 0; i < count; i += 1) {
          const f = imaginary.turned[column + i]!;
          re -= f * xIm[at + i]!;
          im += f * xRe[at + i]!;
        }
      }
      partRe[at + k] = re;
      partIm[at + k] = im;
    }
  }
  // power = Σ over i, k of left(i, k)·right(i, k)*, right(i, k) = Σ ρy(k, m) F(i, m); ρy is Hermitian
  let power = 0;
  for (let i = 0; i < rows; i += 1) {
    const count = rows - i;
    const row = i * width;
    for (let k = 0; k < rows; k += 1) {
      const at = k * half;
      let re = 0;
      let im = 0;
      for (let m = 0; m < count; m += 1) {
        const f = values[row + m]!;
        re += f * yRe[at + m]!;
        im += f * yIm[at + m]!;
      }
      if (imaginary !== null) {
        for (let m = 0; m < count; m += 1) {
          const f = imaginary.values[row + m]!;
          re -= f * yIm[at + m]!;
          im += f * yRe[at + m]!;
        }
      }
      power += partRe[i * half + k]! * re + partIm[i * half + k]! * im;
    }
  }
  return power;
}

/**
 * The same of a coherent beam, from its amplitudes along either axis.
 *
 * @param half orders of each parity
 */
export function coherentPower(table: HermiteTable, half: number, x: AxisMatrix, y: AxisMatrix): number {
  const { values, imaginary, half: width, oddX, oddY } = table;
  let re = 0;
  let im = 0;
  for (let i = 0; i < half; i += 1) {
    const columns = columnsOf(i, half, table);
    if (columns === 0) break;
    let alongRe = 0;
    let alongIm = 0;
    for (let k = 0; k < columns; k += 1) {
      const f = values[i * width + k]!;
      alongRe += f * y.re[2 * k + oddY]!;
      alongIm += f * y.im[2 * k + oddY]!;
    }
    if (imaginary !== null) {
      for (let k = 0; k < columns; k += 1) {
        const f = imaginary.values[i * width + k]!;
        alongRe += f * y.im[2 * k + oddY]!;
        alongIm -= f * y.re[2 * k + oddY]!;
      }
    }
    const ofX = 2 * i + oddX;
    re += x.re[ofX]! * alongRe - x.im[ofX]! * alongIm;
    im += x.re[ofX]! * alongIm + x.im[ofX]! * alongRe;
  }
  return re * re + im * im;
}
