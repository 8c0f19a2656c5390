import { OutOfRange } from '../out-of-range.ts';
import { unitCladdingPower } from './cladding-field.ts';
import { type GradedChain, roomForChain } from './graded-chain.ts';
import { solveGraded, solveGradedCutoff } from './graded-dispersion.ts';
import { coreNodes, type GradedMode, gradedCore } from './graded-field.ts';
import { nearestToCutoff } from './lp-mode.ts';

/** The V for which `gradedModes` answers. */
export const gradedVRange = { least: 0.3, most: 200 } as const;

/**
 * All guided modes LP_lm of the truncated parabola (α = 2, cladding from ρ = 1 on), deepest in the core (least u) first.
 *
 * Solved by two-sided shooting, which counts zeros, so that no mode is missed or found twice. u has a relative error
 * near 1e-14. Modes within 1e-12 of their cut-off are left out, and those of l = 0 with w below 1e-30.
 *
 * Valid for weak guidance: relative errors of the order NA²/2n² in b.
 *
 * @param vNumber 0.3 to 200
 * @throws {OutOfRange} outside
 * @source equation: D. Gloge and E. A. J. Marcatili, Bell Syst. Tech. J. 52, 1563 (1973) (from memory); the method is
 *   the usual one for eigenvalues of Sturm and Liouville
 */
export function gradedModes(vNumber: number): GradedMode[] {
  if (!(vNumber >= gradedVRange.least && vNumber <= gradedVRange.most)) {
    throw new OutOfRange({
      where: 'gradedModes V',
      what: `${vNumber} is outside ${gradedVRange.least} … ${gradedVRange.most}`,
      mend: `Give a V from ${gradedVRange.least} to ${gradedVRange.most}.`,
    });
  }
  const chain = roomForChain(vNumber);
  const modes: GradedMode[] = [];
  for (let l = 0; ; l++) {
    let m = 1;
    for (; ; m++) {
      const cutoffV = gradedCutoff(l, m);
      if (!(cutoffV < vNumber * (1 - nearestToCutoff))) break;
      const mode = gradedMode(chain, l, m, vNumber, cutoffV);
      if (mode !== null) modes.push(mode);
    }
    if (m === 1) return modes.sort((a, b) => a.u - b.u); // no mode of this l, so none of the next
  }
}

const knownCutoffs = new Map<string, number>();

/**
 * The V at which LP_lm of the truncated parabola appears, to about 1e-13; 3.518… for LP11. Computed once and kept.
 *
 * @source W. A. Gambling, D. N. Payne and H. Matsumura, Electron. Lett. 13, 139 (1977), for LP11 (from memory)
 */
export function gradedCutoff(l: number, m: number): number {
  const key = `${l},${m}`;
  const kept = knownCutoffs.get(key);
  if (kept !== undefined) return kept;
  const cutoff = solveGradedCutoff(roomForChain(4 * m + 2 * l), l, m);
  knownCutoffs.set(key, cutoff);
  return cutoff;
}

function gradedMode(
  chain: GradedChain,
  l: number,
  m: number,
  vNumber: number,
  cutoffV: number,
): GradedMode | null {
  const solved = solveGraded(chain, l, m, vNumber);
  if (solved === null) return null;
  const { u, w } = solved;
  const unscaled: GradedMode = {
    profile: 'graded',
    l,
    m,
    vNumber,
    u,
    w,
    cutoffV,
    coreAmplitude: 1,
    edgeAmplitude: 1,
  };
  // The first run leaves both values at the joint in `chain`; they must meet there.
  gradedCore(unscaled, chain);
  const joined: GradedMode = { ...unscaled, edgeAmplitude: chain.outwardValue / chain.inwardValue };
  const inside = gradedCore(joined, chain);
  const { nodes, weights } = coreNodes(2 * u);
  let power = joined.edgeAmplitude ** 2 * unitCladdingPower(l, w);
  for (let i = 0; i < nodes.length; i++) power += weights[i]! * nodes[i]! * inside(nodes[i]! ** 2) ** 2;
  const scale = 1 / Math.sqrt(power);
  return { ...joined, coreAmplitude: scale, edgeAmplitude: joined.edgeAmplitude * scale };
}
