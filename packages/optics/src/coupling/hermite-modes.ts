import { fillRadialTables, fillSpectrumTables, type GuidedMode } from '../fibre/guided-mode.ts';
import { laguerreGauss } from './laguerre-gauss.ts';
import { aberrationPhase, aberrationRate, type Pupil } from './pupil.ts';
import { radialGrid } from './radial-grid.ts';

/*
 * Modes as sums of products of Hermite-Gauss functions hₙ(x)hₘ(y), n + m below a highest order. A mode of azimuthal order l
 * is first expanded in Laguerre-Gauss functions of that order, and each of those is a known sum of products of one total
 * order 2p + l. Because a set of modes looks the same from every side, x and y may be any pair of axes, a beam's own.
 */

/** A matrix, and the same with rows and columns changed over. */
export interface Turnable {
  readonly values: Float64Array;
  readonly turned: Float64Array;
}

/** One orientation of a mode as a matrix over (nx, ny); only every other nx and ny occur. */
export interface HermiteTable extends Turnable {
  readonly mode: number;
  readonly oddX: 0 | 1;
  readonly oddY: 0 | 1;
  /** Rows nx = 2i + oddX, columns ny = 2k + oddY, each of i and k below `half`; zero where nx + ny is too high. */
  readonly half: number;
  /** Null for a mode itself, which is real; what a lens's aberration makes of it is not. */
  readonly imaginary: Turnable | null;
}

/** Modes expanded in functions of one waist. */
export interface HermiteGroup {
  /** Waist of the functions, in core radii. */
  readonly basisRadius: number;
  readonly tables: readonly HermiteTable[];
}

/** A set of modes in Hermite-Gauss products. */
export interface HermiteModes {
  /** Total orders nx + ny held: 0 … orders − 1. */
  readonly orders: number;
  readonly groups: readonly HermiteGroup[];
  /** The most that a mode has beyond these orders, as a share of its power. */
  readonly leftOut: number;
}

/** Waists tried for each mode, in units of the one that suits a mode well inside the core. */
const widths = [1, 2, 4] as const;

/** How modes are expanded: amplitudes a_p, 2p + l < orders, of each mode on functions of a waist in core radii. */
type Expansion = (modes: readonly GuidedMode[], basisRadius: number, orders: number) => readonly Amplitudes[];

interface Amplitudes {
  readonly re: Float64Array;
  /** Null where all are real. */
  readonly im: Float64Array | null;
  /** Power of what is expanded. */
  readonly whole: number;
}

/** @param orders even */
export function hermiteModes(vNumber: number, modes: readonly GuidedMode[], orders: number): HermiteModes {
  return hermiteTables(vNumber, modes, orders, expand);
}

/**
 * The modes as a beam meets them before it passes a stopped or aberrated lens: what the lens would make of them backwards.
 * So the power that a mode takes of the beam behind the lens is what this takes of the beam before it.
 *
 * @param pupil with its axis along the fibre's
 * @param waveNumber k·a
 */
export function hermiteModesThroughPupil(
  vNumber: number,
  modes: readonly GuidedMode[],
  orders: number,
  pupil: Pupil,
  waveNumber: number,
): HermiteModes {
  return hermiteTables(vNumber, modes, orders, (some, basisRadius, count) =>
    expandThroughPupil(some, basisRadius, count, pupil, waveNumber),
  );
}

function hermiteTables(
  vNumber: number,
  modes: readonly GuidedMode[],
  orders: number,
  expansion: Expansion,
): HermiteModes {
  // the waist at which core radius and aperture, r = 1 and q = V, ask for equally many functions
  const suited = Math.sqrt(2 / vNumber);
  interface Found {
    readonly left: number;
    readonly width: number;
    readonly amplitudes: Amplitudes | null;
  }
  const best = modes.map((): Found => ({ left: Number.POSITIVE_INFINITY, width: 0, amplitudes: null }));
  widths.forEach((width, which) => {
    // a mode that is nearly all there need not be tried with wider functions
    const open = modes.flatMap((_, i) => (which === 0 || best[i]!.left > 1e-5 ? [i] : []));
    const found = expansion(
      open.map((i) => modes[i]!),
      width * suited,
      orders,
    );
    open.forEach((i, at) => {
      const amplitudes = found[at]!;
      const held = (of: Float64Array | null) => of?.reduce((sum, a) => sum + a * a, 0) ?? 0;
      const left = amplitudes.whole - held(amplitudes.re) - held(amplitudes.im);
      if (left < best[i]!.left) best[i] = { left, width, amplitudes };
    });
  });
  const products = laguerreAsHermite();
  return {
    orders,
    leftOut: Math.max(0, ...best.map(({ left }) => left)),
    groups: widths.flatMap((width) => {
      const tables = modes.flatMap((mode, i) =>
        best[i]!.width === width ? tablesOf(i, mode.l, best[i]!.amplitudes!, orders, products) : [],
      );
      return tables.length === 0 ? [] : [{ basisRadius: width * suited, tables }];
    }),
  };
}

function expand(modes: readonly GuidedMode[], basisRadius: number, orders: number): Amplitudes[] {
  // the functions reach out to about b·√(2p + l + 1)
  const reach = Math.max(1.5, basisRadius * (Math.sqrt(orders + 2) + 3));
  const second = 1 + (reach - 1) / 4;
  const counts = orders > 48 ? [96, 64, 96] : [44, 32, 36];
  const grid = radialGrid([0, 1, second, reach], counts); // split where the second derivative of a mode jumps
  const count = grid.nodes.length;
  const fields = new Float64Array(modes.length * count);
  fillRadialTables(modes, grid.nodes, fields);
  const basisOf = basesOn(basisRadius, orders, grid.nodes);
  return modes.map(({ l }, which) => {
    const { rungs, basis } = basisOf(l);
    const re = new Float64Array(rungs);
    for (let p = 0; p < rungs; p += 1) {
      let sum = 0;
      for (let i = 0; i < count; i += 1)
        sum += grid.weights[i]! * fields[which * count + i]! * basis[p * count + i]!;
      re[p] = sum;
    }
    return { re, im: null, whole: 1 };
  });
}

/** The same from spectra: a Laguerre-Gauss function of waist b has one of waist 2/b as its spectrum, with the sign (−1)^p. */
function expandThroughPupil(
  modes: readonly GuidedMode[],
  basisRadius: number,
  orders: number,
  pupil: Pupil,
  waveNumber: number,
): Amplitudes[] {
  const basisReach = (2 / basisRadius) * (Math.sqrt(orders + 2) + 3);
  const outer = Math.min(pupil.stop * waveNumber, basisReach);
  const basisRate = basisRadius * Math.sqrt(2 * orders);
  const slowestDecay = modes.reduce((least, { w }) => Math.min(least, w), Number.POSITIVE_INFINITY);
  const edges = [0];
  // spectra have poles at Q = ±iw: panels must not be much longer than their distance from them
  for (let step = 6 * slowestDecay; edges.at(-1)! < outer - 1e-12; step *= 3) {
    edges.push(Math.min(edges.at(-1)! + step, outer));
  }
  const counts = edges.slice(1).map((to, i) => {
    const rate = 1 + basisRate + aberrationRate(pupil, to / waveNumber) / waveNumber;
    return Math.min(600, Math.ceil(16 + 0.56 * (to - edges[i]!) * rate));
  });
  const grid = radialGrid(edges, counts);
  const count = grid.nodes.length;
  const spectra = new Float64Array(modes.length * count);
  fillSpectrumTables(modes, grid.nodes, spectra);
  const basisOf = basesOn(2 / basisRadius, orders, grid.nodes);
  // backwards through the lens: the phase with its sign changed
  const phases = grid.nodes.map((q) => -aberrationPhase(pupil, q / waveNumber));
  const along = phases.map((phase, i) => Math.cos(phase) * grid.weights[i]!);
  const across = phases.map((phase, i) => Math.sin(phase) * grid.weights[i]!);
  return modes.map(({ l }, which) => {
    const { rungs, basis } = basisOf(l);
    const re = new Float64Array(rungs);
    const im = new Float64Array(rungs);
    for (let p = 0; p < rungs; p += 1) {
      let sumRe = 0;
      let sumIm = 0;
      for (let i = 0; i < count; i += 1) {
        const product = spectra[which * count + i]! * basis[p * count + i]!;
        sumRe += product * along[i]!;
        sumIm += product * across[i]!;
      }
      const sign = p % 2 === 0 ? 1 : -1;
      re[p] = sign * sumRe;
      im[p] = sign * sumIm;
    }
    let whole = 0;
    for (let i = 0; i < count; i += 1) whole += grid.weights[i]! * spectra[which * count + i]! ** 2;
    return { re, im: pupil.sphericalAberration === 0 ? null : im, whole };
  });
}

/** Radial functions by azimuthal order, each made when first asked for. */
function basesOn(waist: number, orders: number, nodes: Float64Array) {
  const bases = new Map<number, Float64Array>();
  return (l: number) => {
    const rungs = Math.max(0, Math.ceil((orders - l) / 2));
    let basis = bases.get(l);
    if (basis === undefined) {
      basis = laguerreGauss(waist, l, rungs, nodes);
      bases.set(l, basis);
    }
    return { rungs, basis };
  };
}

function tablesOf(
  mode: number,
  l: number,
  amplitudes: Amplitudes,
  orders: number,
  products: (p: number, l: number) => Float64Array,
): HermiteTable[] {
  const half = orders / 2;
  const turnable = (of: Float64Array, oddX: 0 | 1, oddY: 0 | 1): Turnable => {
    const values = new Float64Array(half * half);
    const turned = new Float64Array(half * half);
    for (let p = 0; p < of.length; p += 1) {
      const total = 2 * p + l;
      const share = products(p, l);
      for (let ny = oddY; ny <= total; ny += 2) {
        const nx = total - ny;
        // cos lφ and sin lφ are the real and the imaginary part of i^ny
        const sign = ((ny - oddY) / 2) % 2 === 0 ? 1 : -1;
        const value = sign * (l === 0 ? 1 : Math.SQRT2) * of[p]! * share[nx]!;
        const i = (nx - oddX) / 2;
        const k = (ny - oddY) / 2;
        values[i * half + k] = value;
        turned[k * half + i] = value;
      }
    }
    return { values, turned };
  };
  const table = (oddX: 0 | 1, oddY: 0 | 1): HermiteTable => ({
    mode,
    oddX,
    oddY,
    half,
    ...turnable(amplitudes.re, oddX, oddY),
    imaginary: amplitudes.im === null ? null : turnable(amplitudes.im, oddX, oddY),
  });
  const parity = (l % 2) as 0 | 1;
  return l === 0 ? [table(0, 0)] : [table(parity, 0), table(parity === 0 ? 1 : 0, 1)];
}

/**
 * The Laguerre-Gauss function (p, l) exp(ilφ), positive in its innermost lobe, as Σ i^ny·r(nx)·h_nx(x)·h_ny(y) with
 * nx + ny = 2p + l: r by nx.
 *
 * r is an eigenvector of the angular momentum, l·r(nx) = √((nx+1)ny)·r(nx+1) + √(nx(ny+1))·r(nx−1), climbed from the edge,
 * where it is smallest, to the middle, beyond which it repeats with the sign (−1)^p.
 */
function laguerreAsHermite(): (p: number, l: number) => Float64Array {
  const known = new Map<number, Float64Array>();
  return (p, l) => {
    const key = p * 1024 + l;
    let r = known.get(key);
    if (r === undefined) {
      const total = 2 * p + l;
      r = new Float64Array(total + 1);
      let logEdge = (-total * Math.LN2) / 2;
      for (let i = 1; i <= p; i += 1) logEdge += Math.log((total - p + i) / i) / 2;
      r[0] = Math.exp(logEdge);
      for (let nx = 0; 2 * (nx + 1) <= total; nx += 1) {
        const ny = total - nx;
        const below = nx === 0 ? 0 : Math.sqrt(nx * (ny + 1)) * r[nx - 1]!;
        r[nx + 1] = (l * r[nx]! - below) / Math.sqrt((nx + 1) * ny);
      }
      const sign = p % 2 === 0 ? 1 : -1;
      for (let nx = Math.floor(total / 2) + 1; nx <= total; nx += 1) r[nx] = sign * r[total - nx]!;
      known.set(key, r);
    }
    return r;
  };
}
