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

const cells = places.length * curvatures.length;

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
  for (let k = 0; k < curvatures.length; k++) {
    for (let i = 0; i < places.length; i++) act(k * places.length + i, places[i]!, k);
  }
}

/** M1 was turned in `sense` until `fraction` of the light was left, and M2 is about to follow. */
export function moveAlong(belief: AxisBelief, sense: 1 | -1, fraction: number): void {
  const { sinRidge } = belief.layout;
  const fall = -Math.log(fraction);
  const weight = new Float64Array(cells);
  const top = new Float64Array(cells);
  const square = new Float64Array(cells);
  forEachCell((cell, r, k) => {
    const w = belief.weight[cell]!;
    if (w < 1e-12) return;
    // away from M1's own peak the light falls sooner on one side and later on the other
    const slope = sense * curvatures[k]! * r * sinRidge;
    const turned = -slope + Math.sqrt(slope * slope + fall);
    const at = r + sense * sinRidge * turned;
    const sd = Math.hypot(sinRidge * Math.hypot(handLaw.detune * turned, handLaw.beside), step / 2);
    const reach = Math.ceil((3.5 * sd) / step);
    const middle = Math.round(at / step) + half;
    const [from, to] = [Math.max(0, middle - reach), Math.min(2 * half, middle + reach)];
    let sum = 0;
    for (let i = from; i <= to; i++) sum += Math.exp(-(((places[i]! - at) / sd) ** 2) / 2);
    if (!(sum > 0)) return;
    const t = belief.top[cell]!;
    const second = t * t + belief.doubt[cell]!;
    for (let i = from; i <= to; i++) {
      const part = (w * Math.exp(-(((places[i]! - at) / sd) ** 2) / 2)) / sum;
      const there = k * places.length + i;
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

/** Weighs by the highest light seen while M2 of this axis was swept; how well it fitted, as a density of ln. */
export function weighHighest(belief: AxisBelief, ln: number, floorOverLight: number): number {
  const own = handLaw.highest ** 2 + (handLaw.nearFloor * floorOverLight) ** 2;
  const { share, depth } = handLaw.missed;
  let fits = 0;
  forEachCell((cell, r, k) => {
    const w = belief.weight[cell]!;
    if (w === 0) return;
    const off = ln + curvatures[k]! * r * r - belief.top[cell]!;
    const variance = belief.doubt[cell]! + own;
    const good = ((1 - share) * Math.exp(-(off * off) / (2 * variance))) / Math.sqrt(2 * Math.PI * variance);
    const missed = share * (off < 0 ? Math.exp(off / depth) / depth : 1e-3);
    const likely = good + missed;
    const taught = good / likely;
    belief.top[cell]! += ((taught * belief.doubt[cell]!) / variance) * off;
    belief.doubt[cell]! *= 1 - (taught * belief.doubt[cell]!) / variance;
    belief.weight[cell] = w * likely;
    fits += w * likely;
  });
  normalise(belief.weight);
  return fits;
}
