import { fillRadialTables, type GuidedMode } from '../fibre/guided-mode.ts';
import { laguerreGauss } from './laguerre-gauss.ts';
import { radialGrid } from './radial-grid.ts';

/*
 * Modes as sums of products of Hermite-Gauss functions hₙ(x)hₘ(y), n + m below a highest order. A mode of azimuthal order l
 * is first expanded in Laguerre-Gauss functions of that order, and each of those is a known sum of products of one total
 * order 2p + l. Because a set of modes looks the same from every side, x and y may be any pair of axes, a beam's own.
 */

/** One orientation of a mode as a matrix over (nx, ny); only every other nx and ny occur. */
export interface HermiteTable {
  readonly mode: number;
  readonly oddX: 0 | 1;
  readonly oddY: 0 | 1;
  /** Rows nx = 2i + oddX, columns ny = 2k + oddY, each of i and k below `half`; zero where nx + ny is too high. */
  readonly half: number;
  readonly values: Float64Array;
  /** The same with rows and columns changed over. */
  readonly turned: Float64Array;
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

/** @param orders even */
export function hermiteModes(vNumber: number, modes: readonly GuidedMode[], orders: number): HermiteModes {
  // the waist at which core radius and aperture, r = 1 and q = V, ask for equally many functions
  const suited = Math.sqrt(2 / vNumber);
  interface Found {
    readonly left: number;
    readonly width: number;
    readonly amplitudes: Float64Array;
  }
  const best = modes.map(
    (): Found => ({ left: Number.POSITIVE_INFINITY, width: 0, amplitudes: new Float64Array(0) }),
  );
  widths.forEach((width, which) => {
    // a mode that is nearly all there need not be tried with wider functions
    const open = modes.flatMap((_, i) => (which === 0 || best[i]!.left > 1e-5 ? [i] : []));
    const found = expand(
      open.map((i) => modes[i]!),
      width * suited,
      orders,
    );
    open.forEach((i, at) => {
      const amplitudes = found[at]!;
      const left = 1 - amplitudes.reduce((sum, a) => sum + a * a, 0);
      if (left < best[i]!.left) best[i] = { left, width, amplitudes };
    });
  });
  const products = laguerreAsHermite();
  return {
    orders,
    leftOut: Math.max(0, ...best.map(({ left }) => left)),
    groups: widths.flatMap((width) => {
      const tables = modes.flatMap((mode, i) =>
        best[i]!.width === width ? tablesOf(i, mode.l, best[i]!.amplitudes, orders, products) : [],
      );
      return tables.length === 0 ? [] : [{ basisRadius: width * suited, tables }];
    }),
  };
}

/** Laguerre-Gauss amplitudes a_p, 2p + l < orders, of each mode. */
function expand(modes: readonly GuidedMode[], basisRadius: number, orders: number): Float64Array[] {
  // the functions reach out to about b·√(2p + l + 1)
  const reach = Math.max(1.5, basisRadius * (Math.sqrt(orders + 2) + 3));
  const second = 1 + (reach - 1) / 4;
  const counts = orders > 48 ? [96, 64, 96] : [44, 32, 36];
  const grid = radialGrid([0, 1, second, reach], counts); // split where the second derivative of a mode jumps
  const count = grid.nodes.length;
  const fields = new Float64Array(modes.length * count);
  fillRadialTables(modes, grid.nodes, fields);
  const bases = new Map<number, Float64Array>();
  return modes.map(({ l }, which) => {
    const rungs = Math.max(0, Math.ceil((orders - l) / 2));
    let basis = bases.get(l);
    if (basis === undefined) {
      basis = laguerreGauss(basisRadius, l, rungs, grid.nodes);
      bases.set(l, basis);
    }
    const amplitudes = new Float64Array(rungs);
    for (let p = 0; p < rungs; p += 1) {
      let sum = 0;
      for (let i = 0; i < count; i += 1)
        sum += grid.weights[i]! * fields[which * count + i]! * basis[p * count + i]!;
      amplitudes[p] = sum;
    }
    return amplitudes;
  });
}

function tablesOf(
  mode: number,
  l: number,
  amplitudes: Float64Array,
  orders: number,
  products: (p: number, l: number) => Float64Array,
): HermiteTable[] {
  const half = orders / 2;
  const table = (oddX: 0 | 1, oddY: 0 | 1): HermiteTable => {
    const values = new Float64Array(half * half);
    const turned = new Float64Array(half * half);
    for (let p = 0; p < amplitudes.length; p += 1) {
      const total = 2 * p + l;
      const share = products(p, l);
      for (let ny = oddY; ny <= total; ny += 2) {
        const nx = total - ny;
        // cos lφ and sin lφ are the real and the imaginary part of i^ny
        const sign = ((ny - oddY) / 2) % 2 === 0 ? 1 : -1;
        const value = sign * (l === 0 ? 1 : Math.SQRT2) * amplitudes[p]! * share[nx]!;
        const i = (nx - oddX) / 2;
        const k = (ny - oddY) / 2;
        values[i * half + k] = value;
        turned[k * half + i] = value;
      }
    }
    return { mode, oddX, oddY, half, values, turned };
  };
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
