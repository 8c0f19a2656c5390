import type { GaussianField } from './gaussian-field.ts';

/*
 * The fast road from a coherent Gaussian to the modes of a fibre.
 *
 * Modes are expanded once in Laguerre-Gauss functions of one waist w (the basis). A Gaussian field obeys
 *   a ψ = (T a† + β) ψ,   T = (1 − w²M)(1 + w²M)⁻¹,   β = (T + 1) w b / 2
 * with the two-dimensional ladder operators a, a† of that basis, because both sides are linear in r. Read between two
 * basis functions in the circular basis (n₊, n₋), l = n₊ − n₋, this is a three-term recurrence
 *   √(n₊+1) c(n₊+1, n₋) = D₊ √n₊ c(n₊−1, n₋) + S √n₋ c(n₊, n₋−1) + β₊ c(n₊, n₋)
 * which never leaves the band |l| ≤ L once L ≥ 2. So every overlap with every mode of azimuthal order up to L costs a
 * few complex products for each radial order, whatever the offset, tilt, defocus, ellipticity or azimuth.
 */

/** The expansion of a set of modes in Laguerre-Gauss functions, ready for {@link climbLadder}. */
export interface ModeLadder {
  /** Waist of the basis, in the unit of length of the fields to come. */
  readonly basisRadius: number;
  /** Highest azimuthal order of the band, at least 2. */
  readonly band: number;
  /** Radial orders held: 0 … radialCount − 1. */
  readonly radialCount: number;
  readonly modes: readonly { readonly l: number; readonly m: number }[];
  /** For every mode, radialCount coefficients, each times √(n₊! n₋!) of its basis function. */
  readonly coefficients: Float64Array;
  /** By azimuthal order 0 … band: the modes that have it. */
  readonly modesByOrder: readonly (readonly number[])[];
}

/** One mode LP_lm as a sum of Laguerre-Gauss functions of the ladder's waist. */
export interface ModeExpansion {
  readonly l: number;
  readonly m: number;
  /** Amplitudes a_p on normalised Laguerre-Gauss functions whose innermost lobe is positive. */
  readonly amplitudes: ArrayLike<number>;
}

/** Highest radial order whose factorials stay inside double precision with room for the amplitudes. */
export const largestRadialCount = 120;

/** @param basisRadius waist of the Laguerre-Gauss functions behind `expansions` */
export function modeLadder(basisRadius: number, expansions: readonly ModeExpansion[]): ModeLadder {
  const band = Math.max(2, ...expansions.map(({ l }) => l));
  const radialCount = Math.min(
    largestRadialCount,
    Math.max(...expansions.map(({ amplitudes }) => amplitudes.length)),
  );
  const coefficients = new Float64Array(expansions.length * radialCount);
  expansions.forEach(({ l, amplitudes }, mode) => {
    let logFactorials = 0; // ln √((p+l)! p!)
    for (let n = 2; n <= l; n += 1) logFactorials += Math.log(n) / 2;
    for (let p = 0; p < radialCount; p += 1) {
      if (p > 0) logFactorials += (Math.log(p) + Math.log(p + l)) / 2;
      // raising p times from the ground state gives the sign (−1)^p to the innermost lobe
      coefficients[mode * radialCount + p] =
        (p % 2 === 0 ? 1 : -1) * (amplitudes[p] ?? 0) * Math.exp(logFactorials);
    }
  });
  const modesByOrder = Array.from({ length: band + 1 }, (_, order) =>
    expansions.flatMap(({ l }, mode) => (l === order ? [mode] : [])),
  );
  return {
    basisRadius,
    band,
    radialCount,
    modes: expansions.map(({ l, m }) => ({ l, m })),
    coefficients,
    modesByOrder,
  };
}

/** Scratch memory of {@link climbLadder}; one a caller, grown when needed. */
export interface LadderScratch {
  rungs: Float64Array;
}

/** Scratch memory with nothing in it yet. */
export const ladderScratch = (): LadderScratch => ({ rungs: new Float64Array(0) });

/**
 * Amplitudes of `field` (power 1) in every mode, four numbers a mode: re, im for exp(+ilφ), then for exp(−ilφ).
 *
 * Climbs until no rung adds more than `tolerance` to any amplitude; returns false if the ladder ends before that (the
 * field is too unlike the basis: take the polar road). The error of a power is then about 2·√power·tolerance.
 */
export function climbLadder(
  ladder: ModeLadder,
  field: GaussianField,
  amplitudes: Float64Array,
  scratch: LadderScratch,
  tolerance = 2e-8,
): boolean {
  const { basisRadius: w, band, radialCount, coefficients, modesByOrder } = ladder;
  const modeCount = ladder.modes.length;
  const lines = 2 * band + 1;
  if (scratch.rungs.length < 2 * lines * 3) scratch.rungs = new Float64Array(2 * lines * 3);
  const { rungs } = scratch;
  rungs.fill(0, 0, 2 * lines * 3);
  amplitudes.fill(0, 0, 4 * modeCount);

  const area = w * w;
  // G = 1 + w²M and its inverse
  const gxxRe = 1 + area * field.mxxRe;
  const gxxIm = area * field.mxxIm;
  const gxyRe = area * field.mxyRe;
  const gxyIm = area * field.mxyIm;
  const gyyRe = 1 + area * field.myyRe;
  const gyyIm = area * field.myyIm;
  const detRe = gxxRe * gyyRe - gxxIm * gyyIm - (gxyRe * gxyRe - gxyIm * gxyIm);
  const detIm = gxxRe * gyyIm + gxxIm * gyyRe - 2 * gxyRe * gxyIm;
  const detSquared = detRe * detRe + detIm * detIm;
  const iRe = detRe / detSquared;
  const iIm = -detIm / detSquared;
  const hxxRe = gyyRe * iRe - gyyIm * iIm;
  const hxxIm = gyyRe * iIm + gyyIm * iRe;
  const hxyRe = -(gxyRe * iRe - gxyIm * iIm);
  const hxyIm = -(gxyRe * iIm + gxyIm * iRe);
  const hyyRe = gxxRe * iRe - gxxIm * iIm;
  const hyyIm = gxxRe * iIm + gxxIm * iRe;
  // T = 2G⁻¹ − 1, so S = (Txx+Tyy)/2, D± = (Txx−Tyy)/2 ∓ i Txy, β = G⁻¹ w b
  const sRe = hxxRe + hyyRe - 1;
  const sIm = hxxIm + hyyIm;
  const dRe = hxxRe - hyyRe;
  const dIm = hxxIm - hyyIm;
  const dPlusRe = dRe + 2 * hxyIm;
  const dPlusIm = dIm - 2 * hxyRe;
  const dMinusRe = dRe - 2 * hxyIm;
  const dMinusIm = dIm + 2 * hxyRe;
  const { bxRe, bxIm, byRe, byIm } = field;
  const cxRe = hxxRe * bxRe - hxxIm * bxIm + hxyRe * byRe - hxyIm * byIm;
  const cxIm = hxxRe * bxIm + hxxIm * bxRe + hxyRe * byIm + hxyIm * byRe;
  const cyRe = hxyRe * bxRe - hxyIm * bxIm + hyyRe * byRe - hyyIm * byIm;
  const cyIm = hxyRe * bxIm + hxyIm * bxRe + hyyRe * byIm + hyyIm * byRe;
  const scale = w * Math.SQRT1_2;
  const bPlusRe = scale * (cxRe + cyIm);
  const bPlusIm = scale * (cxIm - cyRe);
  const bMinusRe = scale * (cxRe - cyIm);
  const bMinusIm = scale * (cxIm + cyRe);

  // |c(0,0)|²: the Gaussian integral of the field with the ground state of the basis; its phase concerns nobody
  const { mxxRe, mxyRe, myyRe } = field;
  const detM = mxxRe * myyRe - mxyRe * mxyRe;
  const spread = (bxRe * bxRe * myyRe - 2 * bxRe * byRe * mxyRe + byRe * byRe * mxxRe) / detM;
  const met = area * (bxRe * cxRe - bxIm * cxIm + byRe * cyRe - byIm * cyIm);
  const ground = 2 * w * Math.sqrt(Math.sqrt(detM) / Math.sqrt(detSquared)) * Math.exp((met - spread) / 4);
  if (!(ground > 1e-200)) return false; // underflow: the rungs would be noise

  // A displaced field has its weight about rung |β|²; before that a small term proves nothing.
  const displaced = Math.max(
    bPlusRe * bPlusRe + bPlusIm * bPlusIm,
    bMinusRe * bMinusRe + bMinusIm * bMinusIm,
  );
  const leastRungs = 4 + displaced;
  if (leastRungs > radialCount) return false;

  // a round beam has neither of both
  const skew = dPlusRe !== 0 || dPlusIm !== 0 || dMinusRe !== 0 || dMinusIm !== 0;

  // Three generations of rungs: [generation][line l = −band…band][re, im]
  const generation = 2 * lines;
  const centre = 2 * band;
  let now = 0;
  let before = generation;
  let beforeThat = 2 * generation;
  let quiet = 0;
  for (let p = 0; p < radialCount; p += 1) {
    // l = 0
    let re: number;
    let im: number;
    const at = now + centre;
    if (p === 0) {
      re = ground;
      im = 0;
    } else {
      const q = before + centre; // l = 0, p − 1
      const q1 = q - 2; // l = −1, p − 1
      const q2 = beforeThat + centre - 4; // l = −2, p − 2
      const xRe = rungs[q]!;
      const xIm = rungs[q + 1]!;
      const yRe = rungs[q1]!;
      const yIm = rungs[q1 + 1]!;
      const zRe = rungs[q2]!;
      const zIm = rungs[q2 + 1]!;
      const inverse = 1 / p;
      re = inverse * (sRe * xRe - sIm * xIm + bPlusRe * yRe - bPlusIm * yIm + dPlusRe * zRe - dPlusIm * zIm);
      im = inverse * (sRe * xIm + sIm * xRe + bPlusRe * yIm + bPlusIm * yRe + dPlusRe * zIm + dPlusIm * zRe);
    }
    rungs[at] = re;
    rungs[at + 1] = im;
    let largest = 0;
    // Lines l − 1 and l − 2 of this rung stay in variables instead of being read back from the rungs, which makes a climb a
    // fifth shorter. Beyond the line 0 stands the other side's line 1, of the rung before.
    const row = before + centre;
    let upRe = re;
    let upIm = im;
    let downRe = re;
    let downIm = im;
    let upBelowRe = rungs[row - 2]!;
    let upBelowIm = rungs[row - 1]!;
    let downBelowRe = rungs[row + 2]!;
    let downBelowIm = rungs[row + 3]!;
    for (let l = 0; ; l += 1) {
      const here = modesByOrder[l]!;
      if (here.length > 0) {
        const reach = Math.abs(upRe) + Math.abs(upIm) + Math.abs(downRe) + Math.abs(downIm);
        for (let i = 0; i < here.length; i += 1) {
          const mode = here[i]!;
          const a = coefficients[mode * radialCount + p]!;
          const s = 4 * mode;
          amplitudes[s] = amplitudes[s]! + a * upRe;
          amplitudes[s + 1] = amplitudes[s + 1]! + a * upIm;
          amplitudes[s + 2] = amplitudes[s + 2]! + a * downRe;
          amplitudes[s + 3] = amplitudes[s + 3]! + a * downIm;
          const term = Math.abs(a) * reach;
          if (term > largest) largest = term;
        }
      }
      if (l === band) break;
      const inverse = 1 / (p + l + 1);
      // line +(l + 1): from its own line (p − 1), and from l and l − 1 (p)
      const up = 2 * (l + 1);
      let xRe = rungs[row + up]!;
      let xIm = rungs[row + up + 1]!;
      let nextRe = sRe * xRe - sIm * xIm + bPlusRe * upRe - bPlusIm * upIm;
      let nextIm = sRe * xIm + sIm * xRe + bPlusRe * upIm + bPlusIm * upRe;
      if (skew) {
        nextRe = nextRe + dPlusRe * upBelowRe - dPlusIm * upBelowIm;
        nextIm = nextIm + dPlusRe * upBelowIm + dPlusIm * upBelowRe;
      }
      upBelowRe = upRe;
      upBelowIm = upIm;
      upRe = inverse * nextRe;
      upIm = inverse * nextIm;
      rungs[at + up] = upRe;
      rungs[at + up + 1] = upIm;
      // line −(l + 1), the mirror image
      xRe = rungs[row - up]!;
      xIm = rungs[row - up + 1]!;
      nextRe = sRe * xRe - sIm * xIm + bMinusRe * downRe - bMinusIm * downIm;
      nextIm = sRe * xIm + sIm * xRe + bMinusRe * downIm + bMinusIm * downRe;
      if (skew) {
        nextRe = nextRe + dMinusRe * downBelowRe - dMinusIm * downBelowIm;
        nextIm = nextIm + dMinusRe * downBelowIm + dMinusIm * downBelowRe;
      }
      downBelowRe = downRe;
      downBelowIm = downIm;
      downRe = inverse * nextRe;
      downIm = inverse * nextIm;
      rungs[at - up] = downRe;
      rungs[at - up + 1] = downIm;
    }
    // one small term may be a zero crossing; four in a row are the end
    quiet = largest < tolerance && p >= leastRungs ? quiet + 1 : 0;
    if (quiet === 4) break;
    const oldest = beforeThat;
    beforeThat = before;
    before = now;
    now = oldest;
  }
  return quiet === 4;
}
