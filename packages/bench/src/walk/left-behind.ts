import { normalQuantile } from '@coreward/optics';
import { handLaw } from './axis-belief.ts';
import type { RidgeLayout } from './ridge-layout.ts';

/** What is believed of the light that is lost (ln) because a screw of M2 does not stand quite at its peak. */
export interface LeftBehind {
  readonly losses: readonly number[];
  readonly chances: readonly number[];
  readonly expected: number;
}

/** Hands and meters as they are taken to be (our own assumptions, no source): relative noise, and finest finger motion, turns. */
const typical = { noise: 0.02, finger: 0.0018 } as const;
/** The highest of some readings lies this many deviations above the truth. */
const highestAbove = 0.8;
/** Scatter of a highest reading less the mean of some that stand (ln). */
const comparison = 0.021;

const inUniform = Array.from({ length: 12 }, (_, i) => (i + 0.5) / 12);
const inNormal = Array.from({ length: 12 }, (_, i) => normalQuantile((i + 0.5) / 12));

/**
 * What a sweep leaves: the hand takes any place that the meter cannot tell from the peak, and a finger cannot do better
 * than it can.
 */
export function leftBySweep({ nearPerTurn }: RidgeLayout, floorOverLight: number): LeftBehind {
  const unseen = Math.min(0.6, Math.max(0.01, Math.hypot(typical.noise, handLaw.nearFloor * floorOverLight)));
  const half = Math.sqrt(-Math.log(1 - unseen));
  const finger = nearPerTurn * typical.finger;
  const losses = inUniform.flatMap((u) => inNormal.map((n) => (u * half + n * finger) ** 2));
  return weighed(
    losses,
    losses.map(() => 1),
  );
}

/** Before any sweep: as after one in good light. */
export const leftBefore = (layout: RidgeLayout): LeftBehind => leftBySweep(layout, 0);

/**
 * Weighs by the mean of some readings as they stand against the highest that was seen when this screw was swept last.
 *
 * @param below ln of the highest less ln of what stands
 */
export function compared(left: LeftBehind, below: number, floorOverLight: number): LeftBehind {
  const sd = Math.hypot(comparison, handLaw.nearFloor * floorOverLight);
  const lost = below - highestAbove * typical.noise;
  return weighed(
    left.losses,
    left.losses.map((loss, i) => left.chances[i]! * Math.exp(-(((loss - lost) / sd) ** 2) / 2)),
  );
}

/** The loss that this share of throws does not reach. */
export function quantileLeft({ losses, chances }: LeftBehind, share: number): number {
  const order = losses.map((loss, i) => ({ loss, chance: chances[i]! })).sort((a, b) => a.loss - b.loss);
  let sum = 0;
  for (const { loss, chance } of order) {
    sum += chance;
    if (sum >= share) return loss;
  }
  return order.at(-1)?.loss ?? 0;
}

function weighed(losses: readonly number[], weights: readonly number[]): LeftBehind {
  const sum = weights.reduce((a, b) => a + b, 0);
  const chances = weights.map((weight) => (sum > 0 ? weight / sum : 1 / weights.length));
  return { losses, chances, expected: losses.reduce((total, loss, i) => total + loss * chances[i]!, 0) };
}
