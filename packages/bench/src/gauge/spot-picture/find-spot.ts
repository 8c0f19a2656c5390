import { median, medianDeviation } from '@coreward/optics';
import { type Dark, darkAround } from './dark-around.ts';
import { type MainAxes, type Moments, mainAxes, momentsIn, type Window } from './moments.ts';
import { blocksOf, type Plane, removeHotPixels } from './plane.ts';

/** A spot as it was found in a picture. */
export interface Spot extends Dark {
  readonly moments: Moments;
  readonly axes: MainAxes;
  readonly window: Window;
  /** Half axes of the window in standard deviations of the spot. */
  readonly reach: number;
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
}

/** A spot's deviation is kept at so many blocks: more would cost time, and not tell more. */
const fewestPixels = 10;

/**
 * Half axis of the window in standard deviations. The first is three second-moment widths across, as ISO 11146-1 has it
 * (from memory). Where noise at its rim rules, a narrower one serves: of a Gaussian it leaves out 0.05 % of the moment.
 */
const windowReaches = [6, 4.5] as const;
const mostTurns = 60;
/** Noise may cost this share of the smaller squared deviation before the narrower window is taken. */
const mostNoise = 0.04;

/**
 * Finds the one spot: its window follows second moments that follow the window, until both stand still; the background
 * is a plane laid through what is outside. Null where nothing stands out of the noise.
 *
 * `plane` loses its hot pixels on the way.
 *
 * @source ISO 11146-1:2021, 7: iterated window of three second-moment widths (from memory); an ellipse instead of a
 *   rectangle, which takes in less noise from the corners
 */
export function findSpot(plane: Plane): Seen | null {
  const border = sample(plane, 4000);
  const level = median(border);
  const noise = medianDeviation(border);
  const hotPixels = removeHotPixels(plane, level, Math.max(noise, 1e-6));
  const first = firstWindow(plane, level, noise);
  if (first === null) return null;
  const block = Math.max(1, Math.floor(first.major / fewestPixels));
  const blocks = blocksOf(plane, block);
  const start = inBlocks(first, block);
  const dark: Dark = {
    background: { level, slopeX: 0, slopeY: 0 },
    noise,
    levelShare: 1 / Math.sqrt(border.length),
  };
  let found: Spot | null = null;
  for (const reach of windowReaches) {
    const spot = follow(blocks, scaled(start, reach), dark, reach);
    found = spot?.settled === true || found === null ? spot : found;
    if (spot?.settled === true && noiseShare(spot) < mostNoise) break;
  }
  return found === null ? null : { spot: found, blocks, block, hotPixels };
}

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
function noiseShare({ window, axes, noise, moments, reach }: Spot): number {
  const pixels = Math.PI * window.major * window.minor;
  return (noise * Math.sqrt(pixels / 8) * reach ** 2 * axes.minor ** 2) / (moments.total * axes.minor ** 2);
}

/** Window after window until they stand still. */
function follow(plane: Plane, start: Window, around: Dark, reach: number): Spot | null {
  let window = start;
  let dark = around;
  for (let turn = 1; turn <= mostTurns; turn++) {
    dark = darkAround(plane, window, around.background.level) ?? dark;
    const moments = momentsIn(plane, window, dark.background);
    const axes = mainAxes(moments);
    if (!(moments.total > 0 && axes.minor > 0.2)) return null;
    // pixels at the rim come and go with the noise: from the eighth turn on only part of the way is gone
    const share = turn < 8 ? 1 : turn < 20 ? 0.5 : 0.2;
    const toward = (from: number, to: number): number => from + share * (to - from);
    const next: Window = {
      x: moments.x,
      y: moments.y,
      major: toward(window.major, reach * axes.major),
      minor: toward(window.minor, reach * axes.minor),
      azimuth: axes.azimuth,
    };
    const settled =
      Math.abs(next.major / window.major - 1) < 1e-3 * share &&
      Math.abs(next.minor / window.minor - 1) < 1e-3 * share &&
      Math.hypot(next.x - window.x, next.y - window.y) < 1e-2 * axes.minor;
    // a window that grows past the picture sums nothing but background
    if (!(axes.major < Math.hypot(plane.width, plane.height))) return null;
    if (settled || turn === mostTurns) return { ...dark, moments, axes, window, reach, settled };
    window = next;
  }
  return null;
}

/** Pixels along the edge of the frame, about `most` of them, on an even grid. */
function sample({ width, height, light }: Plane, most: number): number[] {
  const stride = Math.max(1, Math.floor(Math.sqrt((width * height) / (most * 6))));
  const rim = Math.max(2, Math.round(Math.min(width, height) / 20));
  const found: number[] = [];
  for (let y = 0; y < height; y += stride)
    for (let x = 0; x < width; x += stride) {
      if (x >= rim && y >= rim && x < width - rim && y < height - rim) continue;
      found.push(light[y * width + x]!);
    }
  return found;
}

/** One deviation about what stands clearly out of the noise: the pixels above a quarter of the peak. */
function firstWindow(plane: Plane, dark: number, noise: number): Window | null {
  const { width, height, light } = plane;
  // of a large picture every second or third pixel of every such row does
  const stride = Math.max(1, Math.floor(Math.sqrt((width * height) / 1.2e6)));
  let peak = 0;
  for (let y = 0; y < height; y += stride)
    for (let x = 0; x < width; x += stride) peak = Math.max(peak, light[y * width + x]!);
  if (!(peak - dark > 6 * noise && peak > dark)) return null;
  const level = dark + Math.max((peak - dark) / 4, 4.5 * noise);
  let [n, sx, sy, sxx, syy] = [0, 0, 0, 0, 0];
  for (let y = 0; y < height; y += stride)
    for (let x = 0; x < width; x += stride) {
      if (!(light[y * width + x]! > level)) continue;
      n += 1;
      sx += x;
      sy += y;
      sxx += x * x;
      syy += y * y;
    }
  const [x, y] = [sx / n, sy / n];
  const spread = Math.sqrt(Math.max((sxx / n - x * x + syy / n - y * y) / 2, 0.5));
  // the disk on which a Gaussian is above a quarter of its peak has 0.83 of its deviation
  const deviation = 1.2 * spread;
  return { x, y, major: deviation, minor: deviation, azimuth: 0 };
}
