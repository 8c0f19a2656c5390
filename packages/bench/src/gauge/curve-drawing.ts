import { toNumber } from '../units/decimal.ts';
import { unitFor } from '../units/writing-units.ts';
import type { GaugeCurve } from './gauge.ts';
import { drawnUnits } from './heading.ts';

/** The paper a curve is drawn on, any unit: the readings above, what the fit leaves over below. */
export interface CurvePaper {
  readonly width: number;
  readonly height: number;
  /** Room for the residuals within the height. */
  readonly below: number;
  /** Room for the figures at the left, the right edge, the top, and below each picture. */
  readonly margin: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly foot: number;
  };
}

export interface DrawnMark {
  readonly x: number;
  readonly y: number;
}

export interface Tick {
  readonly at: number;
  readonly text: string;
}

/** A curve on paper; y runs downwards. */
export interface CurveDrawing {
  readonly title: string;
  /** What runs across and up, each with the unit of its figures. */
  readonly across: string;
  readonly up: string;
  readonly acrossTicks: readonly Tick[];
  readonly upTicks: readonly Tick[];
  readonly readings: readonly DrawnMark[];
  /** The fit from left to right. */
  readonly fit: readonly DrawnMark[];
  /** Reading minus fit, on a scale of its own. */
  readonly residuals: readonly DrawnMark[];
  /** Where a residual is zero, and the largest one that fits, in writing. */
  readonly zero: number;
  readonly residualReach: string;
  /** Left, right, top and bottom of the upper picture. */
  readonly frame: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
}

/** Columns of paper in which crowded readings are looked at. */
const thinColumns = 250;

/**
 * A curve with so few readings that it is drawn at once and looks the same: of each column of paper the lowest, the
 * highest, and those that are farthest from the fit to either side.
 */
export function thinned(curve: GaugeCurve): GaugeCurve {
  const { x, readings, fit } = curve;
  if (x.length <= 4 * thinColumns) return curve;
  const [low, high] = rangeOf(x);
  const kept = new Map<number, { lowest: number; highest: number; below: number; above: number }>();
  for (let i = 0; i < x.length; i++) {
    const column =
      high === low ? 0 : Math.min(thinColumns - 1, Math.floor(((x[i]! - low) / (high - low)) * thinColumns));
    const here = kept.get(column);
    if (here === undefined) {
      kept.set(column, { lowest: i, highest: i, below: i, above: i });
      continue;
    }
    if (readings[i]! < readings[here.lowest]!) here.lowest = i;
    if (readings[i]! > readings[here.highest]!) here.highest = i;
    const residual = readings[i]! - fit[i]!;
    if (residual < readings[here.below]! - fit[here.below]!) here.below = i;
    if (residual > readings[here.above]! - fit[here.above]!) here.above = i;
  }
  const chosen = [
    ...new Set(
      [...kept.values()].flatMap(({ lowest, highest, below, above }) => [lowest, highest, below, above]),
    ),
  ].sort((a, b) => a - b);
  const only = (values: readonly number[]): readonly number[] => chosen.map((i) => values[i]!);
  return { ...curve, x: only(x), readings: only(readings), fit: only(fit) };
}

/** A formula drawn between the outermost of these places. */
export function between(
  x: readonly number[],
  formula: (x: number) => number,
): NonNullable<GaugeCurve['between']> {
  const [low, high] = rangeOf(x);
  const places = Array.from({ length: drawnPlaces }, (_, i) => low + ((high - low) * i) / (drawnPlaces - 1));
  return { x: places, fit: places.map(formula) };
}

/** Straight pieces between so many places look like a curve on any screen. */
const drawnPlaces = 161;

/** Where everything of a curve is on this paper. */
export function drawCurve(curve: GaugeCurve, paper: CurvePaper): CurveDrawing {
  const { width, height, below, margin } = paper;
  const across = axisOf(curve.across, curve.x);
  const up = axisOf(
    curve.up,
    [...curve.readings, ...curve.fit, ...(curve.between?.fit ?? [])].filter(Number.isFinite),
  );
  const frame = {
    left: margin.left,
    right: width - margin.right,
    top: margin.top,
    bottom: height - below - margin.foot,
  };
  const atX = (x: number): number => frame.left + across.share(x) * (frame.right - frame.left);
  const atY = (y: number): number => frame.bottom - up.share(y) * (frame.bottom - frame.top);
  const left = curve.readings.map((reading, i) => reading - curve.fit[i]!);
  const largest = left.reduce(
    (most, one) => (Number.isFinite(one) ? Math.max(most, Math.abs(one)) : most),
    0,
  );
  // a fit through every reading leaves only what the arithmetic rounds
  const reach = largest < 1e-12 * up.size ? 0 : largest;
  const zero = height - below / 2;
  const half = reach === 0 ? 0 : (0.72 * below) / 2 / reach;
  const inOrder = curve.x.map((_, i) => i).sort((a, b) => curve.x[a]! - curve.x[b]!);
  return {
    title: curve.title,
    across: across.label,
    up: up.label,
    acrossTicks: across.ticks(width < 420 ? 4 : 7).map(({ value, text }) => ({ at: atX(value), text })),
    upTicks: up.ticks(5).map(({ value, text }) => ({ at: atY(value), text })),
    readings: curve.x.map((x, i) => ({ x: atX(x), y: atY(curve.readings[i]!) })),
    fit:
      curve.between === undefined
        ? inOrder.map((i) => ({ x: atX(curve.x[i]!), y: atY(curve.fit[i]!) })).filter(isDrawn)
        : curve.between.x.map((x, i) => ({ x: atX(x), y: atY(curve.between!.fit[i]!) })),
    // where the fit has no value nothing is drawn
    residuals: curve.x.map((x, i) => ({ x: atX(x), y: zero - half * left[i]! })).filter(isDrawn),
    zero,
    residualReach: up.difference(reach),
    frame,
  };
}

const isDrawn = ({ y }: DrawnMark): boolean => Number.isFinite(y);

interface Axis {
  readonly label: string;
  /** Of the value farthest from zero. */
  readonly size: number;
  /** 0 at the low end of the paper, 1 at the high one. */
  readonly share: (value: number) => number;
  readonly ticks: (most: number) => readonly { readonly value: number; readonly text: string }[];
  readonly difference: (value: number) => string;
}

/** An axis over these SI values, in the unit people use at that size. */
function axisOf(label: string, values: readonly number[]): Axis {
  const [low, high] = rangeOf(values);
  const room = high > low ? 0.04 * (high - low) : Math.abs(high) || 1;
  const [from, to] = [low - room, high + room];
  const [, name = label, unit = ''] = /^(.*) \((\w+)\)$/u.exec(label) ?? [];
  const dimension = drawnUnits[unit];
  const writing =
    dimension === undefined ? null : unitFor(Math.max(Math.abs(low), Math.abs(high)), dimension);
  const factor = writing === null ? 1 : toNumber(writing.factor);
  const zero = writing?.zero ?? 0;
  return {
    label: writing === null ? label : `${name} (${writing.text})`,
    size: Math.max(Math.abs(low), Math.abs(high)),
    share: (value) => (value - from) / (to - from),
    ticks: (most) =>
      roundNumbers((from - zero) / factor, (to - zero) / factor, most).map(({ number, text }) => ({
        value: number * factor + zero,
        text,
      })),
    // kelvins and degrees are as wide
    difference: (value) =>
      `${typographic(Number((value / factor).toPrecision(2)).toString())}${writing === null ? '' : writing.gap + writing.text}`,
  };
}

/** Numbers of one, two or five times a power of ten apart, no more of them than `most`. */
function roundNumbers(
  from: number,
  to: number,
  most: number,
): readonly { readonly number: number; readonly text: string }[] {
  const rough = (to - from) / most;
  const decade = Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].find((one) => one * 10 ** decade >= rough)! * 10 ** decade;
  const places = Math.min(20, Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const number = (first + i) * step;
    const text = Math.abs(number) >= 1e6 ? number.toPrecision(3) : (number + 0).toFixed(places);
    return { number, text: typographic(text.replace(/^-(0(?:\.0*)?)$/u, '$1')) };
  });
}

const typographic = (text: string): string => text.replaceAll('-', '−');

function rangeOf(values: readonly number[]): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}
