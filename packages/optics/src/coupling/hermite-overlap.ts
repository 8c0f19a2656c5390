import type { FacetBeam } from '../beam/facet-beam.ts';
import { type AxisMatrix, type AxisState, axisAmplitudes, axisMatrix, axisStates } from './axis-state.ts';
import type { HermiteModes, HermiteTable } from './hermite-modes.ts';
import { type LowRank, lowRank } from './low-rank.ts';
import type { ModeSet } from './mode-set.ts';
import type { Pupil } from './pupil.ts';

/*
 * The road for partly coherent beams: modes and beam in Hermite-Gauss products along the beam's own axes. A mode's power is
 *   Σ F(nx, ny) ρx(nx, mx) ρy(ny, my) F(mx, my),
 * two products of small matrices and a trace, whatever the M², offset, tilt, defocus and azimuth. What limits it is only
 * how much of a mode lies beyond the orders held; no beam can make it take longer.
 */

/** Total orders tried in turn. */
const series = [16, 24, 32, 48, 64, 96, 128, 192] as const;

/**
 * The same with as many orders as it takes until the last step of the series has changed no power by more than three times
 * `tolerance`, less where little is guided; or until the series ends: then what is left is of the size of the last step.
 */
export function convergedHermitePowers(
  set: ModeSet,
  beam: FacetBeam,
  waveNumber: number,
  tolerance: number,
  pupil: Pupil | null = null,
): HermitePowers {
  const fastest = set.modes.reduce((most, { u }) => Math.max(most, u), 0);
  const enough = 12 + fastest;
  let step = Math.max(
    0,
    Math.min(
      series.length - 2,
      series.findIndex((orders) => orders >= enough),
    ),
  );
  const modesWith = (orders: number) =>
    pupil === null ? set.hermite(orders) : set.hermiteThroughPupil(orders, pupil, waveNumber);
  const powersOf = (orders: number): HermitePowers =>
    hermitePowers(modesWith(orders), beam, waveNumber, orders, set.modes.length, tolerance);
  let before = powersOf(series[step]!);
  for (;;) {
    step += 1;
    const now = powersOf(series[step]!);
    const guided = now.powers.reduce((sum, power) => sum + power, 0);
    const change = now.powers.reduce(
      (most, power, i) => Math.max(most, Math.abs(power - before.powers[i]!)),
      0,
    );
    // every step leaves a tenth or less of what the one before left
    if (change <= 3 * tolerance * Math.sqrt(guided) || step === series.length - 1) return now;
    before = now;
  }
}

/** What hermitePowers finds. */
export interface HermitePowers {
  /** Both orientations together, mode by mode. */
  readonly powers: Float64Array;
  /** Of these, what lies in cos lφ, with φ from the beam's own x'. */
  readonly cosinePowers: Float64Array;
}

/**
 * Power in each mode.
 *
 * @param beam lengths in core radii
 * @param waveNumber k·a
 * @param orders total orders to use, even, no more than `modes` hold
 * @param tolerance what of the beam may be left out, as a share of what these orders see of it
 */
export function hermitePowers(
  modes: HermiteModes,
  beam: FacetBeam,
  waveNumber: number,
  orders: number,
  modeCount: number,
  tolerance = 1e-12,
): HermitePowers {
  const powers = new Float64Array(modeCount);
  const cosinePowers = new Float64Array(modeCount);
  const add = ({ mode, oddY }: HermiteTable, power: number): void => {
    powers[mode] = powers[mode]! + power;
    if (oddY === 0) cosinePowers[mode] = power;
  };
  const coherent = beam.m2X === 1 && beam.m2Y === 1;
  const half = orders / 2;
  for (const { basisRadius, tables } of modes.groups) {
    const states = axisStates(beam, waveNumber, basisRadius);
    if (coherent) {
      const alongX = axisAmplitudes(states.x, orders);
      const alongY = axisAmplitudes(states.y, orders);
      for (const table of tables) add(table, coherentPower(table, half, alongX, alongY));
      continue;
    }
    // of a round, centred beam cos lφ and sin lφ take alike
    const round = alike(states.x, states.y);
    const alongX = axisMatrix(states.x, orders);
    const alongY = round ? alongX : axisMatrix(states.y, orders);
    const blocksX = blocksOf(alongX, orders, tolerance);
    const blocksY = round ? blocksX : blocksOf(alongY, orders, tolerance);
    let last = { mode: -1, power: 0 };
    for (const table of tables) {
      const power =
        round && table.mode === last.mode
          ? last.power
          : powerOf(table, half, blocksX[table.oddX], blocksY[table.oddY], tolerance);
      last = { mode: table.mode, power };
      add(table, power);
    }
  }
  return { powers, cosinePowers };
}

const alike = (x: AxisState, y: AxisState): boolean =>
  x.tRe === y.tRe &&
  x.tIm === y.tIm &&
  x.s === y.s &&
  x.betaRe === 0 &&
  x.betaIm === 0 &&
  y.betaRe === 0 &&
  y.betaIm === 0;

/** Every other row and column of ρ, and its few columns where few are enough. */
interface Block extends AxisMatrix {
  readonly few: LowRank | null;
}

/** More columns than this share of the block's size would take longer than the block itself. */
const fewEnough = 0.6;

function blocksOf({ re, im }: AxisMatrix, orders: number, tolerance: number): readonly [Block, Block] {
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

function powerOf(table: HermiteTable, half: number, x: Block, y: Block, tolerance: number): number {
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

function coherentPower(table: HermiteTable, half: number, x: AxisMatrix, y: AxisMatrix): number {
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
