import { gaussLegendreOn } from '../numerics/gauss-legendre.ts';
import { claddingPower } from './cladding-field.ts';
import { coreNodes } from './graded-field.ts';
import { fillRadialTable, type GuidedMode } from './guided-mode.ts';

/** A stretch of radius with the mode's field on it: ∫f(ρ)R dρ ≈ Σ weights[i]·f(nodes[i])·field[i]. */
export interface RadialPanel {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
  readonly field: Float64Array;
}

/** Amplitude decays in the cladding after which the rest is below 1e-19. */
const decays = 45;

/** The field over the core alone, ρ from 0 to 1; fine enough for R² times a smooth function. */
export function corePanel(mode: GuidedMode): RadialPanel {
  return panelOn(mode, coreNodes(2 * mode.u));
}

/**
 * The field over all radii that matter. Split at the core's edge, where R'' jumps; the panels of the cladding grow with
 * the radius, for K_l(wρ) is smooth in ln ρ until it decays.
 */
export function radialPanels(mode: GuidedMode): RadialPanel[] {
  const panels = [corePanel(mode)];
  const end = 1 + decays / mode.w;
  for (let low = 1; low < end; ) {
    const high = Math.min(end, low + Math.min(0.7 * low, 8 / mode.w));
    panels.push(panelOn(mode, gaussLegendreOn(low, high, 24)));
    low = high;
  }
  return panels;
}

/** ∫R²ρ^power dρ over the panels. */
export function momentOver(panels: readonly RadialPanel[], power: number): number {
  let sum = 0;
  for (const { nodes, weights, field } of panels) {
    for (let i = 0; i < nodes.length; i++) sum += weights[i]! * nodes[i]! ** power * field[i]! ** 2;
  }
  return sum;
}

/**
 * Γ, the fraction of a mode's power that travels in the core, 0 to 1. For the step index this is Gloge's
 * 1 − (u²/V²)(1 − K_l²/(K_{l−1}K_{l+1})).
 *
 * @source D. Gloge, Appl. Opt. 10, 2252 (1971) (from memory)
 */
export function coreFraction(mode: GuidedMode): number {
  const outside = claddingPower(mode);
  // 1 − outside would be all rounding for a mode that lives in the cladding
  return outside < 0.9 ? 1 - outside : momentOver([corePanel(mode)], 1);
}

function panelOn(
  mode: GuidedMode,
  { nodes, weights }: { nodes: Float64Array; weights: Float64Array },
): RadialPanel {
  const field = new Float64Array(nodes.length);
  fillRadialTable(mode, nodes, field);
  return { nodes, weights, field };
}
