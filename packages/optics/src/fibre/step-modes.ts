import { besselJ } from '../numerics/bessel-j.ts';
import { besselKRatio } from '../numerics/bessel-k.ts';
import { besselZerosBelow } from '../numerics/bessel-zero.ts';
import { OutOfRange } from '../out-of-range.ts';
import { neighbourRatio } from './cladding-field.ts';
import { solveDispersion } from './dispersion.ts';
import { nearestToCutoff } from './lp-mode.ts';
import type { StepMode } from './step-field.ts';

/** The V for which `stepModes` answers. */
export const stepVRange = { least: 0.2, most: 400 } as const;

/**
 * All guided modes LP_lm of a step-index fibre, deepest in the core (least u) first.
 *
 * Exactly one root of u·J_{l+1}(u)/J_l(u) = w·K_{l+1}(w)/K_l(w) lies between the cut-off (j_{l−1,m}; for l = 0
 * j_{1,m−1}, or 0) and the smaller of j_{l,m} and V. u and w have relative errors near 1e-15 as far as V itself, being
 * a double, determines them. Modes within 1e-12 of their cut-off are left out, and those of l = 0 with w below 1e-30.
 *
 * Valid for weak guidance: relative errors of the order NA²/2n² in b.
 *
 * @param vNumber 0.2 to 400
 * @throws {OutOfRange} outside: the field of a lower V spreads over 1e22 core radii and more, a higher one has 20 000 modes
 * @source D. Gloge, Appl. Opt. 10, 2252 (1971) (from memory)
 */
export function stepModes(vNumber: number): StepMode[] {
  if (!(vNumber >= stepVRange.least && vNumber <= stepVRange.most)) {
    throw new OutOfRange({
      where: 'stepModes V',
      what: `${vNumber} is outside ${stepVRange.least} … ${stepVRange.most}`,
      mend: `Give a V from ${stepVRange.least} to ${stepVRange.most}.`,
    });
  }
  const guidedBelow = vNumber * (1 - nearestToCutoff);
  const modes: StepMode[] = [];
  let cutoffs = [0, ...besselZerosBelow(1, guidedBelow)];
  let zeros = besselZerosBelow(0, vNumber);
  for (let l = 0; cutoffs.length > 0; l++) {
    for (const [i, cutoffV] of cutoffs.entries()) {
      const mode = stepMode(l, i + 1, vNumber, cutoffV, zeros[i] ?? vNumber);
      if (mode !== null) modes.push(mode);
    }
    cutoffs = zeros.filter((zero) => zero < guidedBelow); // j_{l,m} is the cut-off of LP_{l+1,m}
    zeros = cutoffs.length > 0 ? besselZerosBelow(l + 1, vNumber) : [];
  }
  return modes.sort((a, b) => a.u - b.u);
}

function stepMode(l: number, m: number, vNumber: number, cutoffV: number, uHigh: number): StepMode | null {
  const solved = solveDispersion({
    vNumber,
    // multiplied out, so that it has no poles
    mismatch: (u, w) => u * besselJ(l + 1, u) - besselJ(l, u) * w * besselKRatio(l, w),
    uLow: cutoffV,
    uHigh,
  });
  if (solved === null) return null;
  const { u, w } = solved;
  // ∫R²ρ dρ = R(1)² (V²/2u²) K_{l−1}K_{l+1}/K_l² = 1
  const edge = Math.sqrt((2 * neighbourRatio(l, w)) / besselKRatio(l, w)) * (u / vNumber);
  const inside = besselJ(l, u);
  return {
    profile: 'step',
    l,
    m,
    vNumber,
    u,
    w,
    cutoffV,
    edgeAmplitude: edge * Math.sign(inside),
    coreAmplitude: edge / Math.abs(inside),
  };
}
