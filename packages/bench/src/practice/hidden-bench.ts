import type { Screw } from '../walk/step.ts';
import type { AxisCoupling } from './axis-coupling.ts';

/** Four numbers, one a screw: M1 horizontal, M2 horizontal, M1 vertical, M2 vertical. */
export type OfScrews = readonly [number, number, number, number];

/** Place of a screw in {@link OfScrews}. */
export const screwIndex = ({ mirror, axis }: Screw): 0 | 1 | 2 | 3 =>
  mirror === 'M1' ? (axis === 'horizontal' ? 0 : 2) : axis === 'horizontal' ? 1 : 3;

/** How the light falls with q = uᵀHu, u the screws from their best places. Every shape is 1 at q = 0 and only falls. */
export type PeakShape =
  /** One mode and a Gaussian beam: e^−q. */
  | { readonly kind: 'peak' }
  /** A weak wide foot under the peak: `share` of it, `times` wider. */
  | { readonly kind: 'peak-on-foot'; readonly share: number; readonly times: number }
  /** Many modes: flat up to q = 1, then a flank of relative width `softness`. */
  | { readonly kind: 'plateau'; readonly softness: number };

/** Hands as they are taken to be (our own assumptions, no source). Angles in turns. */
export interface Hands {
  /** A counted turn misses by this share of it, 1σ, */
  readonly countFactor: number;
  /** and by this much besides, 1σ, less for the smallest turns. */
  readonly countAdds: number;
  /** Finest motion of a finger on a screw, 1σ. */
  readonly finger: number;
  /** A turn that is stopped by the meter misses by this share of it, 1σ. */
  readonly detuneFactor: number;
}

/** How screws move the beam at the front focal plane of the collimator, one axis. A turn of M1 and one of M2. */
export interface AxisScrews {
  /** rad a turn. */
  readonly angle: readonly [number, number];
  /** Distance upstream from the focal plane to M1 and M2, m. */
  readonly distance: readonly [number, number];
}

/** The thread that carries the lens along the light. */
export interface FocusThread {
  /** Advance a turn, m. */
  readonly advance: number;
  /** Rayleigh range of the mode, m. */
  readonly rayleighRange: number;
  /** How far the facet stands from its best place at first, m. */
  readonly defocus: number;
  /** How far it shifts the lens sideways, an axis, 1σ for a whole turn, m; less by the root for less (our own assumption, no source). */
  readonly runOut: number;
  /** Turns of the screws that would move the aim as a metre of that does. */
  readonly aim: OfScrews;
}

/** Everything about a simulated bench, what nobody can see included. Screws count from their best places, in turns. */
export interface HiddenBench {
  /** H, turns^−2: row by row in the order of {@link OfScrews}. */
  readonly curvature: readonly [OfScrews, OfScrews, OfScrews, OfScrews];
  readonly shape: PeakShape;
  readonly start: OfScrews;
  /** Relative noise of one reading, 1σ. */
  readonly noise: number;
  /** What the meter shows with the beam blocked, as a share of the achievable peak. */
  readonly floor: number;
  /** Relative change of the source from one action to the next, 1σ. */
  readonly drift: number;
  /** Width of the slack of each screw. */
  readonly lash: OfScrews;
  readonly hands: Hands;
  /** The meter's reading at the achievable peak, floor left out, in its own unit. */
  readonly peakReading: number;
  /** Null: the focus is glued, and at its best for this bench. */
  readonly focus: FocusThread | null;
  /** Null where only H is known: then there are no spots on cards. */
  readonly screws: { readonly horizontal: AxisScrews; readonly vertical: AxisScrews } | null;
}

/** H of one axis from its coupling and its screws: [M1 M1, M1 M2, M2 M2], turns^−2. */
export function axisCurvature(
  coupling: AxisCoupling,
  screws: AxisScrews,
  { focalLength, defocus }: { readonly focalLength: number; readonly defocus: number },
): readonly [number, number, number] {
  // a turn moves the spot by f·angle and tilts it by −(distance·angle)/f; away from the focus the tilt carries it on
  const moved = ([0, 1] as const).map((j) => {
    const t = -(screws.distance[j] * screws.angle[j]) / focalLength;
    return { x: focalLength * screws.angle[j] + defocus * t, t };
  });
  const product = (i: number, j: number) => {
    const [a, b] = [moved[i]!, moved[j]!];
    return coupling.xx * a.x * b.x + coupling.xt * (a.x * b.t + a.t * b.x) + coupling.tt * a.t * b.t;
  };
  return [product(0, 0), product(0, 1), product(1, 1)];
}

/** The two axes side by side. */
export function curvatureOf(
  [h11, h12, h22]: readonly [number, number, number],
  [v11, v12, v22]: readonly [number, number, number],
): HiddenBench['curvature'] {
  return [
    [h11, h12, 0, 0],
    [h12, h22, 0, 0],
    [0, 0, v11, v12],
    [0, 0, v12, v22],
  ];
}
