import { type AxisBelief, curvatures, newAxisBelief, places } from './axis-belief.ts';
import { type LeftBehind, leftBefore } from './left-behind.ts';
import type { WalkEstimate } from './procedure.ts';
import type { RidgeLayout } from './ridge-layout.ts';

/** Places of the two axes in what follows: horizontal, vertical. */
export type AxisIndex = 0 | 1;

/** What is believed about a walk: the ridges of both axes, and how M2 was left. */
export interface Belief {
  readonly axes: readonly [AxisBelief, AxisBelief];
  readonly left: [LeftBehind, LeftBehind];
}

/** Offset errors of a steer, from a camera's best to an eye's worst, m; each as likely as the next before light was seen. */
const offsetErrors = [0.02e-3, 0.035e-3, 0.06e-3, 0.1e-3, 0.17e-3, 0.3e-3, 0.5e-3] as const;

/** Silicon sees no light beyond this, m. @source its band gap, 1.12 eV at room temperature, from memory: λ = hc/E is 1.11 µm */
const seenByCameras = 1.1e-6;
/**
 * What then remains at least, m: spots are laid by eye on a card that glows, or by visible light, of which such a fibre guides
 * several modes.
 * @source those wander by 0.12 mm rms at a lens of 8 mm, four modes at 650 nm: our own sum over their random mixtures
 */
const leastUnseen = 0.1e-3;

/** Offset errors that a steer may have left in light of this wavelength, m. */
export const offsetErrorsIn = (wavelength: number): readonly number[] =>
  wavelength <= seenByCameras ? offsetErrors : offsetErrors.filter((error) => error >= leastUnseen);

/** Least that a first sweep could have gained for all one knows (ln). */
const leastGain = 0.02;

/**
 * What is believed once M2 of both axes was swept for the first time.
 *
 * @param gains what the light gained (ln) by each of the two sweeps, which tells how well the spots lay over each other;
 *   null: not known
 * @param possible offset errors of the steer that are thought possible, m
 */
export function newBelief(
  layout: readonly [RidgeLayout, RidgeLayout],
  gains: readonly (number | null)[],
  possible: readonly number[],
): Belief {
  const chances = possible.map((error) =>
    gains.reduce((chance: number, gain, axis) => {
      if (gain === null) return chance;
      const sd = Math.hypot(error * layout[axis as AxisIndex].alongNearPerOffset, leastGain);
      return (chance * Math.exp(-Math.max(0, gain) / (2 * sd * sd))) / sd;
    }, 1),
  );
  const sum = chances.reduce((a, b) => a + b, 0);
  const errors = possible.map((error, i) => ({ error, chance: sum > 0 ? chances[i]! / sum : 1 }));
  return {
    axes: [newAxisBelief(layout[0], errors), newAxisBelief(layout[1], errors)],
    left: [leftBefore(layout[0]), leftBefore(layout[1])],
  };
}

/** An axis of which nothing is believed any longer but what the layout and a careful eye say. */
export const forgotten = ({ layout }: AxisBelief): AxisBelief =>
  newAxisBelief(layout, [{ error: offsetErrors.at(-2)!, chance: 1 }]);

/** How far the curvature of one axis may differ from the other's (ln, 1σ): the typed lengths are wrong for both alike. */
const axesDiffer = 0.28;

/** Chance of each curvature of an axis, what the other axis says of it included. */
function curvatureChances(belief: Belief, axis: AxisIndex): readonly number[] {
  const told = marginal(belief.axes[axis === 0 ? 1 : 0]);
  const prior = marginalPrior;
  const weights = marginal(belief.axes[axis]).map((own, k) => {
    let other = 0;
    let norm = 0;
    for (let j = 0; j < curvatures.length; j++) {
      const near = Math.exp(-((Math.log(curvatures[k]! / curvatures[j]!) / axesDiffer) ** 2) / 2);
      other += near * told[j]!;
      norm += near * prior[j]!;
    }
    return own * (other / norm);
  });
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((weight) => weight / sum);
}

/** The same, beside the curvatures in rising order. */
export const curvatureChancesOf = (
  belief: Belief,
  axis: AxisIndex,
): readonly { readonly curvature: number; readonly chance: number }[] =>
  curvatureChances(belief, axis).map((chance, k) => ({ curvature: curvatures[k]!, chance }));

function marginal({ weight }: AxisBelief): number[] {
  const width = places.length;
  return curvatures.map((_, k) => {
    let sum = 0;
    for (let cell = k * width; cell < (k + 1) * width; cell++) sum += weight[cell]!;
    return sum;
  });
}

const marginalPrior = marginal(
  newAxisBelief({ sinRidge: 0.1, nearPerTurn: 50, ridgePerOffset: 1000, alongNearPerOffset: 1 }, [
    { error: 0.3e-3, chance: 1 },
  ]),
);

/** One axis in a few figures. */
export interface RidgeFigures {
  readonly value: number;
  readonly uncertainty: number;
  /** ln that is expected to be lost along it. */
  readonly loss: number;
  /** Chance of each loss, in bins of {@link lossBin}. */
  readonly losses: Float64Array;
  /** Typical curvature, 1 where the typed layout is right. */
  readonly curvature: number;
}

/** Losses (ln) are told apart in bins this wide; the last holds all that is more. */
export const lossBin = 0.0025;
const lossBins = 160;
/** Wider bins for the beginning of a walk: they reach to where all but a thousandth of the light is missing. */
const wideBin = 16 * lossBin;

/** @param bin width of the bins of losses (ln) */
export function ridgeFigures(belief: Belief, axis: AxisIndex, bin = lossBin): RidgeFigures {
  const { weight } = belief.axes[axis];
  const own = marginal(belief.axes[axis]);
  const chances = curvatureChances(belief, axis);
  const width = places.length;
  const losses = new Float64Array(lossBins);
  let [mean, square, loss, lnCurvature] = [0, 0, 0, 0];
  for (let k = 0; k < curvatures.length; k++) {
    const curvature = curvatures[k]!;
    // both axes heard: what this one says of the places, and both say of the curvature
    const scale = own[k]! > 0 ? chances[k]! / own[k]! : 0;
    lnCurvature += scale * own[k]! * Math.log(curvature);
    for (let i = 0; i < width; i++) {
      const chance = scale * weight[k * width + i]!;
      if (chance < 1e-14) continue;
      const r = places[i]!;
      const lost = curvature * r * r;
      mean += chance * r;
      square += chance * r * r;
      loss += chance * lost;
      losses[Math.min(lossBins - 1, Math.floor(lost / bin))]! += chance;
    }
  }
  return {
    value: mean,
    uncertainty: Math.sqrt(Math.max(0, square - mean * mean)),
    loss,
    losses,
    curvature: Math.exp(lnCurvature),
  };
}

/** Chances of the sum of two losses. */
function added(a: Float64Array, b: Float64Array): Float64Array {
  const sum = new Float64Array(lossBins);
  const last = lossBins - 1;
  for (let i = 0; i < lossBins; i++) {
    const chance = a[i]!;
    if (chance < 1e-9) continue;
    for (let j = 0; j < lossBins; j++) sum[Math.min(i + j, last)]! += chance * b[j]!;
  }
  return sum;
}

/**
 * Chances of all losses as the screws stand.
 *
 * @param bin width of the bins of losses (ln)
 */
export function lossChances(belief: Belief, bin = lossBin): Float64Array {
  const along = alongChances(belief, bin);
  const left = belief.left.map(({ losses, chances }) => {
    const bins = new Float64Array(lossBins);
    losses.forEach((loss, i) => {
      bins[Math.min(lossBins - 1, Math.floor(loss / bin))]! += chances[i]!;
    });
    return bins;
  });
  return added(along, added(left[0]!, left[1]!));
}

/** Chances of losses along both ridges. */
export const alongChances = (belief: Belief, bin = lossBin): Float64Array =>
  added(ridgeFigures(belief, 0, bin).losses, ridgeFigures(belief, 1, bin).losses);

/** Chance that no more than `ln` is lost. */
export function chanceBelow(chances: Float64Array, ln: number): number {
  let sum = 0;
  for (let i = 0; (i + 0.5) * lossBin <= ln && i < chances.length; i++) sum += chances[i]!;
  return sum;
}

/** What is told of a belief. */
export function estimateOf(belief: Belief): WalkEstimate {
  const fine = lossChances(belief);
  // where the last bin holds one of the three figures, it would be told for what is only its least
  const width = fine.at(-1)! > 0.05 ? wideBin : lossBin;
  const whole = width === lossBin ? fine : lossChances(belief, width);
  const quantile = (share: number) => {
    let sum = 0;
    const bin = whole.findIndex((chance) => {
      sum += chance;
      return sum >= share;
    });
    // what is beyond every bin may be all of the light
    return bin < 0 || bin === lossBins - 1 ? 1 : -Math.expm1(-(bin + 0.5) * width);
  };
  const [h, v] = [ridgeFigures(belief, 0), ridgeFigures(belief, 1)];
  const horizontal = h.loss + belief.left[0].expected;
  const vertical = v.loss + belief.left[1].expected;
  return {
    missing: quantile(0.5),
    missingLow: quantile(0.05),
    missingHigh: quantile(0.95),
    horizontalShare: horizontal + vertical > 0 ? horizontal / (horizontal + vertical) : null,
    ridge: {
      horizontal: { value: h.value, uncertainty: h.uncertainty },
      vertical: { value: v.value, uncertainty: v.uncertainty },
    },
  };
}
