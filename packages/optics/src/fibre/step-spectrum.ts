import { besselJ } from '../numerics/bessel-j.ts';
import type { StepMode } from './step-field.ts';

/** Within this distance of Q = u the bracket is a difference of nearly equal numbers, and a Taylor series takes over. */
const nearU = 0.02;

/**
 * S(Q) = ∫R J_l(Qρ)ρ dρ in closed form at each of `qNodes` into `out`; Q = q·a ≥ 0, q the transverse wave number.
 *
 * S = coreAmplitude·V²·[u J_{l+1}(u) J_l(Q) − Q J_l(u) J_{l+1}(Q)] / ((u² − Q²)(w² + Q²)); the singularity at Q = u
 * is removable. Error below 1e-12 of the largest S.
 *
 * @source Lommel's integrals, Abramowitz & Stegun 11.3.29 (from memory), joined by the dispersion relation
 */
export function fillStepSpectrum(mode: StepMode, qNodes: Float64Array, out: Float64Array): void {
  const { l, u, w, vNumber, coreAmplitude } = mode;
  const f = besselJ(l, u);
  const g = u * besselJ(l + 1, u);
  for (let i = 0; i < qNodes.length; i++) {
    const q = qNodes[i]!;
    const h = q - u;
    const bracket =
      Math.abs(h) < nearU
        ? -bracketSlope(l, u, f, g, h)
        : (q * f * besselJ(l + 1, q) - g * besselJ(l, q)) / h;
    out[i] = (coreAmplitude * vNumber * vNumber * bracket) / ((u + q) * (w * w + q * q));
  }
}

/**
 * (g F(Q) − f G(Q))/(Q − u) with F = J_l, G = Q·J_{l+1}, f = F(u), g = G(u), from the Taylor coefficients of F and G
 * about u, which follow from Q F' = l F − G and Q G' = Q² F − l G.
 */
function bracketSlope(l: number, u: number, f: number, g: number, h: number): number {
  let f1 = 0; // the coefficients of F two, one and no step back
  let f2 = 0;
  let fn = f;
  let gn = g;
  let power = 1;
  let sum = 0;
  for (let n = 0; n < 9; n++) {
    const fNext = ((l - n) * fn - gn) / (u * (n + 1));
    const gNext = (u * u * fn + 2 * u * f1 + f2 - (l + n) * gn) / (u * (n + 1));
    f2 = f1;
    f1 = fn;
    fn = fNext;
    gn = gNext;
    sum += (g * fn - f * gn) * power;
    power *= h;
  }
  return sum;
}
