/**
 * What is believed about the ridge of one axis: a weight for every ridge coordinate and every curvature. Lengths are in
 * 1/e half-widths as typed: if the layout is right, the curvature is 1 and ln P falls by the square of the coordinate.
 */
import type { RidgeLayout } from './ridge-layout.ts';

const step = 0.02;
const half = 175;
/** Ridge coordinates that are told apart, and ln of the curvatures. */
export const places: readonly number[] = Array.from({ length: 2 * half + 1 }, (_, i) => (i - half) * step);
const lnCurvatures = Array.from({ length: 15 }, (_, i) => (i - 7) * 0.3);
export const curvatures: readonly number[] = lnCurvatures.map(Math.exp);

/** Doubt of the typed layout, as ln of the curvature: usually this much; now and then a length is plainly wrong. */
const layoutDoubt = { usual: 0.4, wrong: 0.9, wrongShare: 0.2 } as const;

/** Hands and meters as they are taken to be (our own assumptions, no source). */
export const handLaw = {
  /** A turn stopped by the meter misses by this share of it, 1σ. */
  detune: 0.1,
  /** Where M2 was left before it, 1σ, half-widths. */
  beside: 0.11,
  /** Scatter of a highest reading (ln), and of one that began a new row of readings besides. */
  highest: 0.02,
  newRow: 0.015,
  /** Scatter near the floor, in floors. */
  nearFloor: 0.25,
  /** A share of readings lies below what it should be, for a peak was missed: how many, and how far (ln). */
  missed: { share: 0.03, depth: 0.25 },
} as const;

/** One axis. `weight`, `top` and `doubt` run over curvatures, and within each over places. */
export interface AxisBelief {
  readonly layout: RidgeLayout;
  weight: Float64Array;
  /** ln of what would be read at the ridge's peak with all else as it is, and its variance; meaningless before a reading. */
  top: Float64Array;
  doubt: Float64Array;
  /** A reading with all else as it is has been taken. */
  begun: boolean;
}

const width = places.length;
const cells = width * curvatures.length;

/**
 * Before anything was read along the axis.
 *
 * @param offsetErrors errors that the steer may have left, m, with their chances
 */
export function newAxisBelief(
  layout: RidgeLayout,
  offsetErrors: readonly { readonly error: number; readonly chance: number }[],
): AxisBelief {
  const weight = new Float64Array(cells);
  lnCurvatures.forEach((ln, k) => {
    const { usual, wrong, wrongShare } = layoutDoubt;
    const prior = (1 - wrongShare) * normal(ln, usual) + wrongShare * normal(ln, wrong);
    places.forEach((r, i) => {
      let density = 0;
      // the coordinate is in typed lengths: where the ridge is steeper, the same offset is fewer of them
      for (const { error, chance } of offsetErrors) {
        density += chance * normal(r, Math.hypot(error * layout.ridgePerOffset, 0.02));
      }
      weight[k * places.length + i] = prior * density;
    });
  });
  normalise(weight);
  return { layout, weight, top: new Float64Array(cells), doubt: new Float64Array(cells), begun: false };
}

const normal = (x: number, sd: number): number => Math.exp(-((x / sd) ** 2) / 2) / sd;

function normalise(weight: Float64Array): void {
  let sum = 0;
  for (const w of weight) sum += w;
  if (!(sum > 0)) {
    weight.fill(1 / weight.length);
    return;
  }
  for (let i = 0; i < weight.length; i++) weight[i]! /= sum;
}

/** Begins a row of readings along this axis: what was read last, with all else as it is now. */
export function beginRow(belief: AxisBelief, ln: number): void {
  forEachCell((cell, r, k) => {
    belief.top[cell] = ln + curvatures[k]! * r * r;
    belief.doubt[cell] = handLaw.highest ** 2 + handLaw.newRow ** 2;
  });
  belief.begun = true;
}

function forEachCell(act: (cell: number, r: number, k: number) => void): void {
  for (let k = 0; k < lnCurvatures.length; k++) {
    for (let i = 0; i < width; i++) act(k * width + i, (i - half) * step, k);
  }
}

/** Where a step of M1 leads to from `r`, before the errors of a hand: √(−ln) it is turned by, and the place. */
function stepFrom(r: number, curvature: number, sinRidge: number, sense: 1 | -1, fraction: number) {
  // away from M1's own peak the light falls sooner on one side and later on the other
  const slope = sense * curvature * r * sinRidge;
  const turned = -slope + Math.sqrt(slope * slope - Math.log(fraction));
  return { turned, at: r + sense * sinRidge * turned };
}

/** Where the light would have come back and did not, a wrong screw is as good an explanation as a wrong belief. */
const rathersWrong = 0.3;

/**
 * The light did not come back by M2 after such a step, and the step was undone.
 *
 * @param back the least share of the light before it that would have counted as back
 */
export function wasTooFar(belief: AxisBelief, sense: 1 | -1, fraction: number, back: number): void {
  forEachCell((cell, r, k) => {
    const { at } = stepFrom(r, curvatures[k]!, belief.layout.sinRidge, sense, fraction);
    if (curvatures[k]! * (at * at - r * r) < -Math.log(back)) belief.weight[cell]! *= rathersWrong;
  });
  normalise(belief.weight);
}

/** Everything may have moved along the ridge by this much, 1σ, half-widths; the next reading begins a row. */
export function broaden(belief: AxisBelief, sd: number): void {
  const reach = Math.ceil((3 * sd) / step);
  const spread = Array.from({ length: 2 * reach + 1 }, (_, j) => normal((j - reach) * step, sd));
  const weight = new Float64Array(cells);
  forEachCell((cell, _, k) => {
    const w = belief.weight[cell]!;
    if (w < 1e-9) return;
    const first = k * width;
    for (let j = 0; j < spread.length; j++) {
      const there = cell + j - reach;
      if (there >= first && there < first + width) weight[there]! += w * spread[j]!;
    }
  });
  belief.weight = weight;
  belief.begun = false;
  normalise(belief.weight);
}

/** M1 was turned in `sense` until `fraction` of the light was left, and M2 is about to follow. */
export function moveAlong(belief: AxisBelief, sense: 1 | -1, fraction: number): void {
  const { sinRidge } = belief.layout;
  const weight = new Float64Array(cells);
  const top = new Float64Array(cells);
  const square = new Float64Array(cells);
  const spread = new Float64Array(width);
  forEachCell((cell, r, k) => {
    const w = belief.weight[cell]!;
    // what is as good as excluded costs only time
    if (w < 1e-10) return;
    const { turned, at } = stepFrom(r, curvatures[k]!, sinRidge, sense, fraction);
    const sd = Math.hypot(sinRidge * Math.hypot(handLaw.detune * turned, handLaw.beside), step / 2);
    const reach = Math.ceil((3.5 * sd) / step);
    const middle = Math.round(at / step) + half;
    const [from, to] = [Math.max(0, middle - reach), Math.min(2 * half, middle + reach)];
    let sum = 0;
    for (let i = from; i <= to; i++) {
      const here = Math.exp(-((((i - half) * step - at) / sd) ** 2) / 2);
      spread[i - from] = here;
      sum += here;
    }
    if (!(sum > 0)) return;
    const t = belief.top[cell]!;
    const second = t * t + belief.doubt[cell]!;
    for (let i = from; i <= to; i++) {
      const part = (w * spread[i - from]!) / sum;
      const there = k * width + i;
      weight[there]! += part;
      top[there]! += part * t;
      square[there]! += part * second;
    }
  });
  for (let cell = 0; cell < cells; cell++) {
    const w = weight[cell]!;
    if (w === 0) continue;
    top[cell]! /= w;
    belief.doubt[cell] = Math.max(1e-6, square[cell]! / w - top[cell]! ** 2);
  }
  belief.weight = weight;
  belief.top = top;
  normalise(belief.weight);
}

/** How well the highest light of a sweep would fit, as a density of ln; nothing is learned. */
export function fitOf(belief: AxisBelief, ln: number, floorOverLight: number): number {
  let fits = 0;
  forEachCell((cell, r, k) => {
    const w = belief.weight[cell]!;
    if (w > 0) fits += w * likelihood(belief, cell, ln + curvatures[k]! * r * r, floorOverLight).likely;
  });
  return fits;
}

/** The highest light of a sweep as it is believed beforehand, ln: the mean over everything that is believed. */
export function expectedHighest(belief: AxisBelief): number {
  let mean = 0;
  forEachCell((cell, r, k) => {
    mean += belief.weight[cell]! * (belief.top[cell]! - curvatures[k]! * r * r);
  });
  return mean;
}

/** Weighs by the highest light seen while M2 of this axis was swept; how well it fitted, as a density of ln. */
export function weighHighest(belief: AxisBelief, ln: number, floorOverLight: number): number {
  let fits = 0;
  forEachCell((cell, r, k) => {
    const w = belief.weight[cell]!;
    if (w === 0) return;
    const { off, variance, good, likely } = likelihood(
      belief,
      cell,
      ln + curvatures[k]! * r * r,
      floorOverLight,
    );
    const taught = good / likely;
    belief.top[cell]! += ((taught * belief.doubt[cell]!) / variance) * off;
    belief.doubt[cell]! *= 1 - (taught * belief.doubt[cell]!) / variance;
    belief.weight[cell] = w * likely;
    fits += w * likely;
  });
  normalise(belief.weight);
  return fits;
}

/** How likely a peak (ln, carried to the top of the ridge) is in one cell: a good sweep, or one that missed its peak. */
function likelihood(belief: AxisBelief, cell: number, top: number, floorOverLight: number) {
  const own = handLaw.highest ** 2 + (handLaw.nearFloor * floorOverLight) ** 2;
  const { share, depth } = handLaw.missed;
  const off = top - belief.top[cell]!;
  const variance = belief.doubt[cell]! + own;
  const good = ((1 - share) * Math.exp(-(off * off) / (2 * variance))) / Math.sqrt(2 * Math.PI * variance);
  const missed = share * (off < 0 ? Math.exp(off / depth) / depth : 1e-3);
  return { off, variance, good, likely: good + missed };
}
