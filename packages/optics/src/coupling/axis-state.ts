import type { FacetBeam } from '../beam/facet-beam.ts';

/*
 * A Gaussian Schell-model beam is separable along its own axes, and on each of them it is a Gaussian state: a mean place
 * and slope, and their covariance. Written in Hermite-Gauss functions hₙ of one waist b it is a Hermitian matrix
 *   ρ(n, m) = ∫∫ hₙ(x) J(x, x') hₘ(x') dx dx',   J the mutual coherence,
 * whose generating function Σ ρ(n, m) sⁿtᵐ/√(n!m!) is the exponential of a quadratic form in s and t. Its coefficients T, S
 * and β give the three-term recurrence
 *   √(n+1) ρ(n+1, m) = T √n ρ(n−1, m) + S √m ρ(n, m−1) + β ρ(n, m)
 * So a beam of any M² costs as many steps as the matrix has entries. S = 0 is a coherent beam: there ρ(n, m) = cₙcₘ*.
 */

/** One axis of a beam as seen by Hermite-Gauss functions of one waist. */
export interface AxisState {
  readonly tRe: number;
  readonly tIm: number;
  /** 0 for a coherent beam, towards 1 for one that is everywhere alike. */
  readonly s: number;
  readonly betaRe: number;
  readonly betaIm: number;
  /** ρ(0, 0): the share of the power in the lowest function. */
  readonly ground: number;
}

/**
 * Both axes of a beam, along the beam's own x' and y'.
 *
 * Valid for paraxial light and the Gaussian Schell model.
 *
 * @param beam lengths in any one unit
 * @param waveNumber 2π/wavelength in the inverse of that unit
 * @param basisRadius waist b of the Hermite-Gauss functions, in that unit
 * @source A. Starikov and E. Wolf, J. Opt. Soc. Am. 72, 923 (1982) for the model (from memory); the matrix follows from
 *   Gaussian integrals and is checked against the crowd of tilts and against closed forms
 */
export function axisStates(
  beam: FacetBeam,
  waveNumber: number,
  basisRadius: number,
): { readonly x: AxisState; readonly y: AxisState } {
  const c = Math.cos(beam.azimuth);
  const s = Math.sin(beam.azimuth);
  const along = (waist: number, waistZ: number, m2: number, offset: number, tilt: number): AxisState => {
    // in units of the basis: ξ = √2·x/b, p = k·θ·b/√2, where a pure state has det = ¼
    const slopes = (m2 / (waveNumber * waist)) ** 2;
    const place = (waist * waist) / 4 + waistZ * waistZ * slopes;
    const xx = (2 * place) / basisRadius ** 2;
    const pp = (waveNumber * basisRadius) ** 2 * (slopes / 2);
    const xp = -waveNumber * waistZ * slopes;
    return stateOf(
      xx,
      xp,
      pp,
      m2,
      (Math.SQRT2 * offset) / basisRadius,
      waveNumber * tilt * basisRadius * Math.SQRT1_2,
    );
  };
  return {
    x: along(
      beam.waistRadiusX,
      beam.waistZX,
      beam.m2X,
      c * beam.offsetX + s * beam.offsetY,
      c * beam.tiltX + s * beam.tiltY,
    ),
    y: along(
      beam.waistRadiusY,
      beam.waistZY,
      beam.m2Y,
      c * beam.offsetY - s * beam.offsetX,
      c * beam.tiltY - s * beam.tiltX,
    ),
  };
}

function stateOf(xx: number, xp: number, pp: number, m2: number, meanX: number, meanP: number): AxisState {
  // J = J₀ exp(−½(Aξ² + A*ξ'²) + Cξξ' + Bξ + B*ξ'), from the conditional mean and spread of p at the place (ξ+ξ')/2
  const det = (m2 * m2) / 4;
  const aRe = (0.25 + det) / xx;
  const aIm = -xp / xx;
  const shared = (det - 0.25) / xx;
  const bRe = meanX / (2 * xx);
  const bIm = meanP - (xp * meanX) / xx;
  // |1+A|² − C², without the difference of large numbers
  const whole = (1 + 1 / (2 * xx)) * (1 + (2 * det) / xx) + aIm * aIm;
  const scale = Math.SQRT2 / whole;
  // the state seen through the lowest function: covariance + ½
  const seen = (xx + 0.5) * (pp + 0.5) - xp * xp;
  const far = (meanX * meanX * (pp + 0.5) - 2 * meanX * meanP * xp + meanP * meanP * (xx + 0.5)) / seen;
  return {
    tRe: (2 * (1 + aRe)) / whole - 1,
    tIm: (-2 * aIm) / whole,
    s: (2 * shared) / whole,
    betaRe: scale * ((1 + aRe) * bRe + aIm * bIm + shared * bRe),
    betaIm: scale * ((1 + aRe) * bIm - aIm * bRe - shared * bIm),
    ground: Math.exp(-far / 2) / Math.sqrt(seen),
  };
}

/** The matrix ρ, row by row, of a state: orders 0 … count − 1 on both sides. */
export interface AxisMatrix {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * ρ of a state, for the orders 0 … count − 1 on both sides: Hermitian, its trace at most 1 and nearer to 1 the higher `count`.
 *
 * @source the recurrence at the top of this file, climbed along one triangle; the other is its conjugate
 */
export function axisMatrix({ tRe, tIm, s, betaRe, betaIm, ground }: AxisState, count: number): AxisMatrix {
  const re = new Float64Array(count * count);
  const im = new Float64Array(count * count);
  re[0] = ground;
  for (let n = 0; n + 1 < count; n += 1) {
    const here = n * count;
    const before = here - count;
    const next = here + count;
    const fromBefore = Math.sqrt(n / (n + 1));
    const inverse = 1 / Math.sqrt(n + 1);
    for (let m = 0; m <= n + 1; m += 1) {
      const xRe = re[here + m]!;
      const xIm = im[here + m]!;
      let nextRe = inverse * (betaRe * xRe - betaIm * xIm);
      let nextIm = inverse * (betaRe * xIm + betaIm * xRe);
      if (n > 0) {
        const yRe = re[before + m]!;
        const yIm = im[before + m]!;
        nextRe += fromBefore * (tRe * yRe - tIm * yIm);
        nextIm += fromBefore * (tRe * yIm + tIm * yRe);
      }
      if (m > 0) {
        const shared = s * Math.sqrt(m) * inverse;
        nextRe += shared * re[here + m - 1]!;
        nextIm += shared * im[here + m - 1]!;
      }
      re[next + m] = nextRe;
      im[next + m] = m === n + 1 ? 0 : nextIm;
      // the other side of the diagonal, which the next rows ask for
      re[m * count + n + 1] = nextRe;
      im[m * count + n + 1] = m === n + 1 ? 0 : -nextIm;
    }
  }
  return { re, im };
}

/** Amplitudes cₙ of a coherent state, orders 0 … count − 1. */
export function axisAmplitudes({ tRe, tIm, betaRe, betaIm, ground }: AxisState, count: number): AxisMatrix {
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  re[0] = Math.sqrt(ground);
  for (let n = 0; n + 1 < count; n += 1) {
    const inverse = 1 / Math.sqrt(n + 1);
    const fromBefore = Math.sqrt(n / (n + 1));
    const yRe = n > 0 ? re[n - 1]! : 0;
    const yIm = n > 0 ? im[n - 1]! : 0;
    re[n + 1] = inverse * (betaRe * re[n]! - betaIm * im[n]!) + fromBefore * (tRe * yRe - tIm * yIm);
    im[n + 1] = inverse * (betaRe * im[n]! + betaIm * re[n]!) + fromBefore * (tRe * yIm + tIm * yRe);
  }
  return { re, im };
}
