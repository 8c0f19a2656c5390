/**
 * What is believed about a walk: some thousand ways the bench could be, each with a weight. A turn moves every one of
 * them by what a hand makes of it, a reading weighs them. All chance comes from one seeded stream, so that the same
 * answers always lead to the same belief.
 *
 * Lengths are in 1/e half-widths along the ridge as typed: if the layout is right, ln P falls by the square of them.
 */
import { normalFrom, seededUniform } from '@coreward/optics';
import type { RidgeLayout } from './ridge-layout.ts';

/** Places of the two axes in everything below. */
export type AxisIndex = 0 | 1;

const count = 1500;
/** Any number will do. */
const seed = 1;

/** Hands and meters as they are taken to be (our own assumptions, no source). */
const hand = {
  /** Relative noise of one reading, from the quietest meter to the noisiest. */
  noise: [0.01, 0.03],
  /** The highest of some readings lies this many deviations above the truth, and scatters by that many. */
  highestAbove: 0.8,
  highestScatter: 0.7,
  /** A turn stopped by the meter misses by this share of it. */
  detune: 0.1,
  /** Finest motion of a finger, turns. */
  finger: [0.001, 0.0025],
  /** Change of the source between two readings. */
  drift: 0.0025,
  /** A share of readings that lie far below what they should be, and how far (ln): a peak that was missed. */
  missed: { share: 0.02, depth: 0.3 },
  /** Scatter of a reading near the floor, in floors. */
  nearFloor: 0.25,
} as const;

/** How far the typed layout may be wrong: deviation of ln of the ridge's curvature, common to both axes and of each. */
const layoutDoubt = { usual: 0.45, wrong: 1, wrongShare: 0.2, ofAxis: 0.2 } as const;

/** Offset error of the steer, from a camera's best to an eye's worst, m. */
const offsetErrors = [0.02e-3, 0.5e-3] as const;

/** The belief. Arrays have one entry a way. */
export interface Belief {
  readonly layout: readonly [RidgeLayout, RidgeLayout];
  readonly random: () => number;
  /** Ridge coordinate of each axis. */
  readonly ridge: readonly [Float64Array, Float64Array];
  /** Curvature of ln P along it; 1 where the typed layout is right. */
  readonly curvature: readonly [Float64Array, Float64Array];
  /** Loss (ln) by where M2 was left. */
  readonly left: readonly [Float64Array, Float64Array];
  /** ln of the achievable peak, and whether it is known at all. */
  readonly peak: Float64Array;
  peakKnown: boolean;
  /** Offset error of the steer. */
  readonly offsetError: Float64Array;
  readonly noise: Float64Array;
  readonly finger: Float64Array;
  readonly weight: Float64Array;
  /** Readings that hardly fit any way. */
  surprises: number;
}

/** What is believed before anything was read. */
export function newBelief(layout: readonly [RidgeLayout, RidgeLayout]): Belief {
  const random = seededUniform(seed);
  const normal = () => normalFrom(random);
  const each = (make: (i: number) => number) => Float64Array.from({ length: count }, (_, i) => make(i));
  const between = ([low, high]: readonly [number, number]) => low + (high - low) * random();
  const offsetError = each(() => offsetErrors[0] * (offsetErrors[1] / offsetErrors[0]) ** random());
  const common = each(() => {
    const doubt = random() < layoutDoubt.wrongShare ? layoutDoubt.wrong : layoutDoubt.usual;
    return doubt * normal();
  });
  const curvature = () => each((i) => Math.exp(common[i]! + layoutDoubt.ofAxis * normal()));
  const ridge = (axis: AxisIndex) => each((i) => offsetError[i]! * layout[axis].ridgePerOffset * normal());
  return {
    layout,
    random,
    ridge: [ridge(0), ridge(1)],
    curvature: [curvature(), curvature()],
    left: [each(() => 0), each(() => 0)],
    peak: each(() => 0),
    peakKnown: false,
    offsetError,
    noise: each(() => between(hand.noise)),
    finger: each(() => between(hand.finger)),
    weight: each(() => 1 / count),
    surprises: 0,
  };
}

/** A sweep of M2 that gained this much (ln) at the start tells how well the spots lay over each other. */
export function weighFirstGain(belief: Belief, axis: AxisIndex, gain: number): void {
  const perOffset = belief.layout[axis].alongNearPerOffset;
  const { weight, offsetError, noise } = belief;
  for (let i = 0; i < count; i++) {
    const spread = Math.hypot(offsetError[i]! * perOffset, noise[i]!);
    weight[i]! *= Math.exp(-Math.max(0, gain) / (2 * spread * spread)) / spread;
  }
  settle(belief);
}

/** M1 of an axis was turned until `fraction` of the light was left; M2 is about to follow. */
export function moveBelief(belief: Belief, axis: AxisIndex, sense: 1 | -1, fraction: number): void {
  const { sinRidge } = belief.layout[axis];
  const ridge = belief.ridge[axis];
  const curvature = belief.curvature[axis];
  const left = belief.left[axis];
  const fall = -Math.log(fraction);
  for (let i = 0; i < count; i++) {
    // away from the peak of M1 the light falls sooner on one side and later on the other
    const slope = sense * curvature[i]! * ridge[i]! * sinRidge;
    // where M2 was left beside its peak, M1 is turned by that much less or more
    const beside = Math.sqrt(left[i]!) * (belief.random() < 0.5 ? -1 : 1);
    const turned = -slope + Math.sqrt(slope * slope + fall) + beside;
    ridge[i]! += sense * sinRidge * turned * (1 + hand.detune * normalFrom(belief.random));
  }
}

/** M2 of an axis was swept, and left where the meter could not tell the place from the peak. */
export function leaveNear(belief: Belief, axis: AxisIndex, floorOverLight: number): void {
  const { nearPerTurn } = belief.layout[axis];
  const left = belief.left[axis];
  for (let i = 0; i < count; i++) {
    const unseen = Math.min(
      0.6,
      Math.max(0.01, Math.hypot(belief.noise[i]!, hand.nearFloor * floorOverLight)),
    );
    const half = Math.sqrt(-Math.log(1 - unseen));
    const finger = nearPerTurn * belief.finger[i]! * normalFrom(belief.random);
    left[i] = ((2 * belief.random() - 1) * half + finger) ** 2;
  }
}

/**
 * Weighs by a reading.
 *
 * @param ln of the light
 * @param highest axis whose M2 was swept while the highest was noted; null: a reading as it stands
 */
export function weighReading(
  belief: Belief,
  ln: number,
  highest: AxisIndex | null,
  floorOverLight: number,
): void {
  const { peak, weight, noise, left, random } = belief;
  const predicted = (i: number) => {
    const own = highest === null ? 0 : hand.highestAbove * noise[i]!;
    let loss = lossAlong(belief, i);
    if (highest !== 0) loss += left[0][i]!;
    if (highest !== 1) loss += left[1][i]!;
    return own - loss;
  };
  const scatter = (i: number) => {
    // a reading that is compared is the mean of some
    const own = noise[i]! * (highest === null ? Math.SQRT1_2 : hand.highestScatter);
    return Math.hypot(own, hand.nearFloor * floorOverLight, 0.004);
  };
  if (!belief.peakKnown) {
    for (let i = 0; i < count; i++) peak[i] = ln - predicted(i) + scatter(i) * normalFrom(random);
    belief.peakKnown = true;
    return;
  }
  let fits = 0;
  for (let i = 0; i < count; i++) {
    peak[i]! += hand.drift * normalFrom(random);
    const sd = scatter(i);
    const off = ln - peak[i]! - predicted(i);
    const z = off / sd;
    const good = Math.exp(-(z * z) / 2) / (sd * Math.sqrt(2 * Math.PI));
    const missed = off < 0 ? Math.exp(off / hand.missed.depth) / hand.missed.depth : 1e-4;
    const likely = (1 - hand.missed.share) * good + hand.missed.share * missed;
    weight[i]! *= likely;
    fits += weight[i]!;
  }
  if (fits < 0.02) belief.surprises += 1;
  settle(belief);
}

/** ln lost along the ridge in way i. */
export function lossAlong({ curvature, ridge }: Belief, i: number): number {
  return curvature[0][i]! * ridge[0][i]! ** 2 + curvature[1][i]! * ridge[1][i]! ** 2;
}

/** Weights made to sum to one; where few ways carry them, those are taken several times. */
function settle(belief: Belief): void {
  const { weight } = belief;
  let sum = 0;
  for (const w of weight) sum += w;
  if (!(sum > 0)) {
    weight.fill(1 / count);
    return;
  }
  let squares = 0;
  for (let i = 0; i < count; i++) {
    weight[i]! /= sum;
    squares += weight[i]! ** 2;
  }
  if (1 / squares < count / 2) resample(belief);
}

/** Ways taken in proportion to their weights, each a little apart from its twins. */
function resample(belief: Belief): void {
  const { weight, random } = belief;
  const taken = new Int32Array(count);
  let at = 0;
  let passed = weight[0]!;
  const start = random() / count;
  for (let i = 0; i < count; i++) {
    const goal = start + i / count;
    while (passed < goal && at < count - 1) {
      at += 1;
      passed += weight[at]!;
    }
    taken[i] = at;
  }
  const again = (values: Float64Array, spread: (value: number) => number) => {
    const old = Float64Array.from(values);
    for (let i = 0; i < count; i++) values[i] = spread(old[taken[i]!]!);
  };
  const same = (value: number) => value;
  const beside = (by: number) => (value: number) => value + by * normalFrom(random);
  const about = (by: number) => (value: number) => value * Math.exp(by * normalFrom(random));
  for (const axis of [0, 1] as const) {
    again(belief.ridge[axis], beside(0.006));
    again(belief.curvature[axis], about(0.04));
    again(belief.left[axis], same);
  }
  again(belief.peak, beside(0.003));
  again(belief.offsetError, same);
  again(belief.noise, same);
  again(belief.finger, same);
  weight.fill(1 / count);
}
