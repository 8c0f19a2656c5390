import { fillBesselJ } from '../numerics/bessel-j.ts';
import { gaussLegendreOn } from '../numerics/gauss-legendre.ts';
import { claddingField, claddingSpectrum, edgeLogSlope } from './cladding-field.ts';
import { chainValue, type GradedChain, roomForChain, runChain } from './graded-chain.ts';
import type { LpMode } from './lp-mode.ts';

/**
 * A mode of the truncated parabola, n² = n_core² − NA²ρ² in the core. Plain numbers: its field is recomputed from u and
 * w when asked for, which takes some ten microseconds before the first radius.
 */
export interface GradedMode extends LpMode {
  readonly profile: 'graded';
  /** Scale of the outward run of `GradedChain`; that of the inward run is `edgeAmplitude`. */
  readonly coreAmplitude: number;
}

/** R at s = ρ² ≤ 1. */
export function gradedCore(
  mode: GradedMode,
  chain: GradedChain = roomForChain(mode.vNumber),
): (s: number) => number {
  const { l, vNumber, u, w, coreAmplitude, edgeAmplitude } = mode;
  runChain(chain, l, vNumber, u, edgeLogSlope(l, w));
  return (s) => (s <= chain.joint ? coreAmplitude : edgeAmplitude) * chainValue(chain, l, s);
}

/** R at each of `rhoNodes` (in core radii) into `out`. */
export function fillGradedField(mode: GradedMode, rhoNodes: Float64Array, out: Float64Array): void {
  const inside = gradedCore(mode);
  const outside = claddingField(mode);
  for (let i = 0; i < rhoNodes.length; i++) {
    const rho = rhoNodes[i]!;
    out[i] = rho <= 1 ? inside(rho * rho) : outside(rho);
  }
}

/**
 * S(Q) = ∫R J_l(Qρ)ρ dρ at each of `qNodes` into `out`, mode by mode: Gauss-Legendre over the core, closed form over the
 * cladding. Error below 1e-12 of the largest S. Many modes share the Bessel functions of each Q, so ask for all at once.
 */
export function fillGradedSpectra(
  modes: readonly GradedMode[],
  qNodes: Float64Array,
  out: Float64Array,
): void {
  const highestOrder = modes.reduce((most, { l }) => Math.max(most, l), 0);
  const largestU = modes.reduce((most, { u }) => Math.max(most, u), 0);
  const largestQ = qNodes.reduce((most, q) => Math.max(most, q), 0);
  const { nodes, weights } = coreNodes(largestU + largestQ);
  const weighted = modes.map((mode) => {
    const inside = gradedCore(mode);
    return nodes.map((rho, j) => inside(rho * rho) * rho * weights[j]!);
  });
  const outside = modes.map(claddingSpectrum);
  const orders = highestOrder + 2;
  const atQ = new Float64Array(orders);
  const bessel = new Float64Array(nodes.length * orders);
  for (let i = 0; i < qNodes.length; i++) {
    const q = qNodes[i]!;
    fillBesselJ(q, atQ);
    for (let j = 0; j < nodes.length; j++) {
      fillBesselJ(q * nodes[j]!, bessel.subarray(j * orders, (j + 1) * orders));
    }
    for (const [k, mode] of modes.entries()) {
      const core = weighted[k]!;
      let sum = 0;
      for (let j = 0; j < core.length; j++) sum += core[j]! * bessel[j * orders + mode.l]!;
      out[k * qNodes.length + i] = sum + outside[k]!(q, atQ[mode.l]!, atQ[mode.l + 1]!);
    }
  }
}

/** Enough points over 0 … 1 for a product that oscillates with wave number `bandwidth`; rounded up so that few sizes occur. */
export function coreNodes(bandwidth: number): ReturnType<typeof gaussLegendreOn> {
  return gaussLegendreOn(0, 1, 16 * Math.ceil((bandwidth * 0.4 + 32) / 16));
}
