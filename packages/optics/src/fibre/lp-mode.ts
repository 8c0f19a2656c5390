/**
 * What every scalar mode LP_lm of a weakly guiding fibre has, whatever its profile. Normalised: ρ = r/a with a the core
 * RADIUS, V = 2πa·NA/λ. The field over the cross-section is R(ρ)·cos lφ or R(ρ)·sin lφ.
 */
export interface LpMode {
  /** Azimuthal order, from 0. */
  readonly l: number;
  /** Radial order, from 1; m − 1 is the number of dark rings. */
  readonly m: number;
  readonly vNumber: number;
  /** a·√(n_core² k² − β²), with n_core on the axis. */
  readonly u: number;
  /** a·√(β² − n_cladding² k²); u² + w² = V². The field falls about as e^(−wρ) in the cladding. */
  readonly w: number;
  /** The V above which this mode is guided; 0 for LP01. */
  readonly cutoffV: number;
  /** R(1), with R normalised by ∫R²ρ dρ = 1 over all ρ and positive near the axis. */
  readonly edgeAmplitude: number;
}

/** A mode nearer to its cut-off than this, relative to V, is left out: doubles cannot tell its field. */
export const nearestToCutoff = 1e-12;

/** How many modes one LP_lm stands for: cos and sin where l ≥ 1. Polarisation would double it once more. */
export function orientations({ l }: Pick<LpMode, 'l'>): 1 | 2 {
  return l === 0 ? 1 : 2;
}

/**
 * b = w²/V² = (n_eff² − n_cladding²)/(n_core² − n_cladding²): 0 at cut-off, towards 1 for a mode deep in the core.
 *
 * @source D. Gloge, Appl. Opt. 10, 2252 (1971) (from memory)
 */
export function normalisedPropagation({ w, vNumber }: Pick<LpMode, 'w' | 'vNumber'>): number {
  return (w / vNumber) ** 2;
}
