import { besselJ, fillBesselJ } from '../numerics/bessel-j.ts';
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
  const { l } = mode;
  const { f, g } = atU(mode);
  for (let i = 0; i < qNodes.length; i++) {
    const q = qNodes[i]!;
    out[i] = closedForm(mode, f, g, q, besselJ(l, q), besselJ(l + 1, q));
  }
}

/** The same for many modes, mode by mode: all of them share the Bessel functions of each Q. */
export function fillStepSpectra(modes: readonly StepMode[], qNodes: Float64Array, out: Float64Array): void {
  const bessel = new Float64Array(modes.reduce((most, { l }) => Math.max(most, l), 0) + 2);
  const constants = modes.map(atU);
  for (let i = 0; i < qNodes.length; i++) {
    const q = qNodes[i]!;
    fillBesselJ(q, bessel);
    for (const [k, mode] of modes.entries()) {
      const { f, g } = constants[k]!;
      out[k * qNodes.length + i] = closedForm(mode, f, g, q, bessel[mode.l]!, bessel[mode.l + 1]!);
    }
  }
}

/** f = J_l(u) and g = u·J_{l+1}(u). */
function atU({ l, u }: StepMode): { readonly f: number; readonly g: number } {
  return { f: besselJ(l, u), g: u * besselJ(l + 1, u) };
}

function closedForm(mode: StepMode, f: number, g: number, q: number, jOfQ: number, nextOfQ: number): number {
  const { l, u, w, vNumber, coreAmplitude } = mode;
  const h = q - u;
  const bracket = Math.abs(h) < nearU ? -bracketSlope(l, u, f, g, h) : (q * f * nextOfQ - g * jOfQ) / h;
  return (coreAmplitude * vNumber * vNumber * bracket) / ((u + q) * (w * w + q * q));
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
