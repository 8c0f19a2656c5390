import { borderOf } from './border.ts';
import { flattened } from './curved-dark.ts';
import { cutDarkOf, cutShare, gaussianLight } from './cut-dark.ts';
import { type Dark, darkAround } from './dark-around.ts';
import { firstWindow } from './first-window.ts';
import { type Background, type MainAxes, type Moments, mainAxes, momentsIn, type Window } from './moments.ts';
import { blocksOf, type Plane, removeHotPixels, removeSpecks } from './plane.ts';

/** A spot as it was found in a picture. */
export interface Spot extends Dark {
  readonly moments: Moments;
  readonly axes: MainAxes;
  readonly window: Window;
  /** Half axes of the window in standard deviations of the spot. */
  readonly reach: number;
  /** By how much a dark that was cut at black moved the squared deviations along the main axes; blocks². */
  readonly byCut: { readonly major: number; readonly minor: number };
  readonly settled: boolean;
}

/** A spot and the picture it was found in; a large one is looked at in blocks of pixels. */
export interface Seen {
  /** Lengths in blocks. */
  readonly spot: Spot;
  readonly blocks: Plane;
  /** Pixels along one side of a block. */
  readonly block: number;
  readonly hotPixels: number;
  /** What rounding to codes leaves open of the level of the dark, in the unit of the light. */
  readonly grain: number;
}

/** A spot's deviation is kept at so many blocks: more would cost time, and not tell more. */
const fewestPixels = 10;

/**
 * Half axis of the window in standard deviations. The first is three second-moment widths across, as ISO 11146-1 has it
 * (from memory). Where noise at its rim rules, or the level under it, a narrower one serves: of a Gaussian it leaves out 0.05 %
 * of the moment, or 1 %.
 */
export const windowReaches = [6, 4.5, 3.6] as const;
const mostTurns = 60;
/** A window that comes and goes by less than this share of what noise leaves of the squared deviation stands still. */
const stillShare = 0.1;
/** Noise, or a level that rounding leaves open, may cost this share of the smaller squared deviation before the narrower window is taken. */
const mostNoise = 0.04;

/**
 * Finds the one spot: its window follows second moments that follow the window, until both stand still; the background
 * is a plane laid through what is outside. Null where nothing stands out of the noise.
 *
 * `plane` loses its hot pixels and specks on the way.
 *
 * @param step between two codes, in the unit of the light
 * @source ISO 11146-1:2021, 7: iterated window of three second-moment widths (from memory); an ellipse instead of a
 *   rectangle, which takes in less noise from the corners
 */
export function findSpot(plane: Plane, step: number): Seen | null {
  const border = borderOf(plane, 4000, step);
  const { noise, background } = border;
  const hotPixels = removeHotPixels(plane, levelAtCentre(plane, background), noise);
  const first = firstWindow(plane, background, noise);
  if (first === null) return null;
  if (first.major > 3) removeSpecks(plane, levelAtCentre(plane, background), noise);
  const block = Math.max(1, Math.floor(first.major / fewestPixels));
  const blocks = blocksOf(plane, block);
  const start = inBlocks(first, block);
  const share = 1 / Math.sqrt(border.pixels);
  const dark: Dark = {
    background: {
      level: background.level + ((block - 1) / 2) * (background.slopeX + background.slopeY),
      slopeX: background.slopeX * block,
      slopeY: background.slopeY * block,
    },
    noise,
    levelShare: share,
    slopeShares: [share / start.major, share / start.major],
  };
  const cutting = { black: border.black, step, block };
  const found = search(blocks, start, dark, cutting, border.grain);
  if (found === null) return null;
  const seen = { block, hotPixels, grain: border.grain };
  const flat = flattened(blocks, wide(found, start));
  if (flat === null) return { ...seen, spot: found, blocks };
  const spot = search(flat.plane, start, dark, cutting, border.grain, flat.levelShare);
  return spot && { ...seen, spot, blocks: flat.plane };
}

/** A window without faint tails outside: about the first one where a bent dark made a spot far wider than its bright part. */
const wide = ({ window, reach, axes }: Spot, start: Window): Window =>
  axes.major > 2 * start.major ? scaled(start, windowReaches[0]) : scaled(window, Math.max(1, 5 / reach));

/** The spot in the widest window in which neither noise nor the level of the dark rules; null where there is none. */
function search(
  blocks: Plane,
  start: Window,
  dark: Dark,
  cutting: Cutting,
  grain: number,
  levelShare = 0,
): Spot | null {
  let found: Spot | null = null;
  for (const reach of windowReaches) {
    const plain = follow(blocks, scaled(start, reach), dark, reach, cutting);
    const spot = plain && { ...plain, levelShare: Math.max(plain.levelShare, levelShare) };
    found = spot?.settled === true || found === null ? spot : found;
    const doubt =
      spot && Math.hypot(noiseShare(spot), grainShare(spot, grain, cutting.step), levelDoubt(spot));
    if (spot?.settled === true && doubt! < mostNoise) break;
  }
  return found;
}

const levelAtCentre = ({ width, height }: Plane, { level, slopeX, slopeY }: Background): number =>
  level + (slopeX * width + slopeY * height) / 2;

/** A window in pixels as one in blocks; the first block's centre is (block − 1)/2 pixels in. */
const inBlocks = (window: Window, block: number): Window => ({
  x: (window.x - (block - 1) / 2) / block,
  y: (window.y - (block - 1) / 2) / block,
  major: window.major / block,
  minor: window.minor / block,
  azimuth: window.azimuth,
});

/** The way back from `inBlocks`. */
export const inPixels = (window: Window, block: number): Window => ({
  x: block * window.x + (block - 1) / 2,
  y: block * window.y + (block - 1) / 2,
  major: block * window.major,
  minor: block * window.minor,
  azimuth: window.azimuth,
});

const scaled = (window: Window, reach: number): Window => ({
  ...window,
  major: reach * window.major,
  minor: reach * window.minor,
});

/** Noise in the window, as a share of the squared deviation: pixels of the rim pull most. */
function noiseShare({
  window,
  noise,
  moments,
  reach,
}: Pick<Spot, 'window' | 'noise' | 'moments' | 'reach'>): number {
  const pixels = Math.PI * window.major * window.minor;
  return (noise * Math.sqrt(pixels / 8) * reach ** 2) / moments.total;
}

/** The same by the level of the dark, as far as its own noise leaves it open. */
const levelDoubt = ({ window, moments, reach, noise, levelShare }: Spot): number =>
  (levelShare * noise * Math.PI * window.major * window.minor * (reach ** 2 / 4 - 1)) / moments.total;

/** The same by a level of the dark that rounding to codes leaves open. */
function grainShare(spot: Spot, grain: number, step: number): number {
  const { axes, moments } = spot;
  const lit = litReach(spot, step);
  const pull = Math.PI * axes.major * axes.minor * lit ** 2 * (lit ** 2 / 4 - 1);
  return (grain * pull) / moments.total;
}

/**
 * How far out, in deviations, a spot is brighter than half a code, as a Gaussian. Farther out rounding errs as in the dark
 * around, and is taken off with it.
 */
export function litReach({ axes, moments, reach }: Omit<Spot, 'settled' | 'byCut'>, step: number): number {
  const peak = moments.total / (2 * Math.PI * axes.major * axes.minor);
  return Math.min(reach, Math.max(2, Math.sqrt(2 * Math.log(Math.max(1, (2 * peak) / step)))));
}

/** How a picture was cut at black. */
interface Cutting {
  /** Share of the dark pixels that are black. */
  readonly black: number;
  /** Between two codes. */
  readonly step: number;
  /** Pixels along one side of a block. */
  readonly block: number;
}

/** Window after window until they stand still. */
function follow(plane: Plane, start: Window, around: Dark, reach: number, cutting: Cutting): Spot | null {
  let window = start;
  let dark = around;
  let before: { readonly moments: Moments; readonly axes: MainAxes } | null = null;
  for (let turn = 1; turn <= mostTurns; turn++) {
    dark = darkAround(plane, window, around.background.level) ?? dark;
    const uncut = momentsIn(plane, window, dark.background);
    const cut = cutDarkOf(cutting.black, levelUnder(window, dark.background), cutting.step);
    let moments = uncut;
    if (cut !== null && before !== null) {
      const light = gaussianLight(before.moments, before.axes);
      moments = momentsIn(plane, window, dark.background, (dx, dy) => cutShare(cut, light(dx, dy)));
    }
    const axes = mainAxes(moments);
    if (!(moments.total > 0 && axes.minor > 0.2)) return null;
    // pixels at the rim come and go with the noise: from the eighth turn on only part of the way is gone
    const share = turn < 8 ? 1 : turn < 20 ? 0.5 : 0.2;
    const toward = (from: number, to: number): number => from + share * (to - from);
    const next: Window = {
      x: toward(window.x, moments.x),
      y: toward(window.y, moments.y),
      major: toward(window.major, reach * axes.major),
      minor: toward(window.minor, reach * axes.minor),
      azimuth: axes.azimuth,
    };
    // where it goes to and fro by far less than noise leaves open it stands still
    const still =
      turn < 20
        ? 1e-3
        : Math.max(1e-3, stillShare * noiseShare({ window, noise: dark.noise, moments, reach }));
    const settled =
      Math.abs(next.major / window.major - 1) < still * share &&
      Math.abs(next.minor / window.minor - 1) < still * share &&
      Math.hypot(next.x - window.x, next.y - window.y) < Math.max(1e-2, still) * share * axes.minor;
    // a window that grows past the picture sums nothing but background
    if (!(axes.major < Math.hypot(plane.width, plane.height))) return null;
    if (settled || turn === mostTurns) {
      const plain = mainAxes(uncut);
      const byCut = { major: axes.major ** 2 - plain.major ** 2, minor: axes.minor ** 2 - plain.minor ** 2 };
      const noise = Math.max(dark.noise, (cut?.noise ?? 0) / cutting.block);
      return { ...dark, noise, moments, axes, window, reach, byCut, settled };
    }
    window = next;
    before = { moments, axes };
  }
  return null;
}

const levelUnder = ({ x, y }: Window, { level, slopeX, slopeY }: Background): number =>
  level + slopeX * x + slopeY * y;
