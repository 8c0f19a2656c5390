import { type AxisIndex, type Belief, lossAlong } from './belief.ts';
import type { WalkEstimate } from './procedure.ts';

/** Mean of something over all ways. */
export function meanOf({ weight }: Belief, of: (i: number) => number): number {
  let sum = 0;
  for (let i = 0; i < weight.length; i++) sum += weight[i]! * of(i);
  return sum;
}

/** Where the ridge of an axis is believed to be. */
export function ridgeOf(
  belief: Belief,
  axis: AxisIndex,
): { readonly value: number; readonly uncertainty: number } {
  const ridge = belief.ridge[axis];
  const value = meanOf(belief, (i) => ridge[i]!);
  return {
    value,
    uncertainty: Math.sqrt(
      Math.max(
        0,
        meanOf(belief, (i) => (ridge[i]! - value) ** 2),
      ),
    ),
  };
}

/** ln that is expected to be lost along one axis. */
export const expectedLoss = (belief: Belief, axis: AxisIndex): number =>
  meanOf(belief, (i) => belief.curvature[axis][i]! * belief.ridge[axis][i]! ** 2);

/** ln expected to be lost by where M2 was left. */
export const expectedLeft = (belief: Belief, axis: AxisIndex): number =>
  meanOf(belief, (i) => belief.left[axis][i]!);

/** Chance that no more than `ln` is lost along the ridge. */
export const chanceAlong = (belief: Belief, ln: number): number =>
  meanOf(belief, (i) => (lossAlong(belief, i) <= ln ? 1 : 0));

const wholeLoss = (belief: Belief, i: number): number =>
  lossAlong(belief, i) + belief.left[0][i]! + belief.left[1][i]!;

/** Chance that as the screws stand at least `share` of the achievable peak is in. */
export const chanceOf = (belief: Belief, share: number): number =>
  meanOf(belief, (i) => (Math.exp(-wholeLoss(belief, i)) >= share ? 1 : 0));

/** What is told of a belief. */
export function estimateOf(belief: Belief): WalkEstimate {
  const missing = Array.from(belief.weight, (weight, i) => ({
    weight,
    missing: -Math.expm1(-wholeLoss(belief, i)),
  })).sort((a, b) => a.missing - b.missing);
  const quantile = (share: number) => {
    let sum = 0;
    for (const way of missing) {
      sum += way.weight;
      if (sum >= share) return way.missing;
    }
    return missing.at(-1)!.missing;
  };
  const horizontal = expectedLoss(belief, 0) + expectedLeft(belief, 0);
  const vertical = expectedLoss(belief, 1) + expectedLeft(belief, 1);
  return {
    missing: quantile(0.5),
    missingLow: quantile(0.05),
    missingHigh: quantile(0.95),
    horizontalShare: horizontal + vertical > 0 ? horizontal / (horizontal + vertical) : null,
    ridge: { horizontal: ridgeOf(belief, 0), vertical: ridgeOf(belief, 1) },
  };
}
