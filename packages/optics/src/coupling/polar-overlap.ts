import { fourierTransform } from '../numerics/fft.ts';
import { type GaussianField, logNormalisation } from './gaussian-field.ts';
import type { RadialGrid } from './radial-grid.ts';

/**
 * The road for any field: sample it on rings, split every ring into its azimuthal orders, and weigh each order with the
 * radial functions of the modes. The trapezoid on a ring and Gauss-Legendre along the radius both converge
 * exponentially as long as the grid splits where the modes have a kink.
 */
export interface PolarProjection {
  readonly field: GaussianField;
  readonly grid: RadialGrid;
  /** Radial functions at the grid's nodes, mode by mode. */
  readonly table: Float64Array;
  readonly modes: readonly { readonly l: number }[];
  /** As for the grid. */
  readonly fineness: number;
  /** Phase the field picks up as a function of the radius alone, rad: a lens's aberration. */
  readonly radialPhase?: (rho: number) => number;
  /** The beam as a Hermite-Gauss member instead of the plain Gaussian: multiplies the field, real. */
  readonly polynomial?: (x: number, y: number) => number;
}

/** How many azimuthal orders the field has on the ring of radius rho; at fineness 1 to about 1e−12 of its largest value. */
function azimuthalOrders(field: GaussianField, rho: number, fineness: number): number {
  const skewRe = length((field.mxxRe - field.myyRe) / 2, field.mxyRe) * rho * rho;
  const skewIm = length((field.mxxIm - field.myyIm) / 2, field.mxyIm) * rho * rho;
  const pushRe = length(field.bxRe, field.byRe) * rho;
  const pushIm = length(field.bxIm, field.byIm) * rho;
  const phase = pushIm + 2 * skewIm;
  const hump = pushRe + 2 * skewRe;
  // a phase excursion of z has orders up to z + O(z^⅓); a hump exp(z cos φ) is a bell of 1/√z and has orders to 7√z
  const fromHump = Math.min(hump + 7 * fineness * Math.cbrt(hump), 7.5 * Math.sqrt(fineness * hump));
  return phase + 7 * fineness * Math.cbrt(phase) + fromHump + 18 * fineness;
}

/** Math.hypot takes ten times as long, and every ring asks four times. */
const length = (x: number, y: number): number => Math.sqrt(x * x + y * y);

function samplesFor(field: GaussianField, rho: number, fineness: number, highest: number): number {
  const wanted = azimuthalOrders(field, rho, fineness) + highest + 1;
  let samples = 8;
  while (samples < wanted) samples *= 2;
  return samples;
}

/** How many samples {@link projectPolar} takes for all of `fields`: what it costs. */
export function samplesOn(
  { nodes }: RadialGrid,
  fields: readonly GaussianField[],
  highestOrder: number,
  fineness: number,
): number {
  let samples = 0;
  for (const field of fields) {
    for (const rho of nodes) samples += samplesFor(field, rho, fineness, highestOrder);
  }
  return samples;
}

/** Amplitudes, four numbers a mode as in {@link climbLadder}, added to `amplitudes`. */
export function projectPolar(projection: PolarProjection, amplitudes: Float64Array): void {
  const { field, grid, table, modes, fineness, radialPhase, polynomial } = projection;
  const rings = grid.nodes.length;
  const highest = modes.reduce((most, { l }) => Math.max(most, l), 0);
  const lnN = logNormalisation(field);
  const { mxxRe, mxxIm, mxyRe, mxyIm, myyRe, myyIm, bxRe, bxIm, byRe, byIm } = field;
  const orders = new Float64Array(2 * (2 * highest + 1)); // l = −highest … highest
  let re = new Float64Array(0);
  let im = new Float64Array(0);
  for (let ring = 0; ring < rings; ring += 1) {
    const rho = grid.nodes[ring]!;
    const samples = samplesFor(field, rho, fineness, highest);
    if (re.length !== samples) {
      re = new Float64Array(samples);
      im = new Float64Array(samples);
    }
    const extra = radialPhase === undefined ? 0 : radialPhase(rho);
    let strongest = Number.NEGATIVE_INFINITY;
    for (let j = 0; j < samples; j += 1) {
      const angle = (2 * Math.PI * j) / samples;
      const x = rho * Math.cos(angle);
      const y = rho * Math.sin(angle);
      const logSize = lnN - (mxxRe * x * x + 2 * mxyRe * x * y + myyRe * y * y) + bxRe * x + byRe * y;
      if (logSize > strongest) strongest = logSize;
      const phase = bxIm * x + byIm * y - (mxxIm * x * x + 2 * mxyIm * x * y + myyIm * y * y) + extra;
      const size =
        (logSize < -80 ? 0 : Math.exp(logSize)) * (polynomial === undefined ? 1 : polynomial(x, y));
      re[j] = size * Math.cos(phase);
      im[j] = size * Math.sin(phase);
    }
    if (strongest < -40) continue; // nothing of the beam comes this way
    fourierTransform(re, im);
    const scale = (Math.sqrt(2 * Math.PI) / samples) * grid.weights[ring]!;
    for (let l = -highest; l <= highest; l += 1) {
      const bin = (l + samples) % samples;
      orders[2 * (l + highest)] = scale * re[bin]!;
      orders[2 * (l + highest) + 1] = scale * im[bin]!;
    }
    for (let mode = 0; mode < modes.length; mode += 1) {
      const l = modes[mode]!.l;
      const radial = table[mode * rings + ring]!;
      const up = 2 * (highest + l);
      const down = 2 * (highest - l);
      const s = 4 * mode;
      amplitudes[s] = amplitudes[s]! + radial * orders[up]!;
      amplitudes[s + 1] = amplitudes[s + 1]! + radial * orders[up + 1]!;
      amplitudes[s + 2] = amplitudes[s + 2]! + radial * orders[down]!;
      amplitudes[s + 3] = amplitudes[s + 3]! + radial * orders[down + 1]!;
    }
  }
}

/** Power in both orientations of a mode together, from its four amplitudes. */
export function modePower(amplitudes: Float64Array, mode: number, l: number): number {
  const s = 4 * mode;
  const up = amplitudes[s]! ** 2 + amplitudes[s + 1]! ** 2;
  return l === 0 ? up : up + amplitudes[s + 2]! ** 2 + amplitudes[s + 3]! ** 2;
}

/** Power in the orientation cos lφ alone (φ from +x); the rest of {@link modePower} is in sin lφ. */
export function cosinePower(amplitudes: Float64Array, mode: number, l: number): number {
  const s = 4 * mode;
  if (l === 0) return amplitudes[s]! ** 2 + amplitudes[s + 1]! ** 2;
  return ((amplitudes[s]! + amplitudes[s + 2]!) ** 2 + (amplitudes[s + 1]! + amplitudes[s + 3]!) ** 2) / 2;
}
