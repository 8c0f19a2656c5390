import { leastSquares } from '@coreward/optics';
import { forWindow } from '../../gauge/spot-picture/moments.ts';
import type { Plane } from '../../gauge/spot-picture/plane.ts';
import { type Bell, type Surroundings, surroundingsOf, windowOf } from './start-spot.ts';

/** A bell laid through a spot, and how well its centre is known. */
export interface FittedBell extends Surroundings {
  readonly bell: Bell;
  /** Standard uncertainty of the centre in standard deviations of the spot, the same along both main axes. */
  readonly centre: {
    /** By speckle, grain of the card and all else that goes with the light. */
    readonly speckle: number;
    /** By the noise that is there without light, too. */
    readonly noise: number;
    /** How many readings the first is worth, less one. */
    readonly freedom: number;
  };
  /** Rms of what the bell does not tell, over patches of a deviation, as a share of its height. */
  readonly misfit: number;
}

/** Pixels count out to so many standard deviations. */
const reach = 3.4;
/** Light below this share of the peak has no more weight than there: faint tails are not a bell's (our choice). */
const leastShare = 0.02;
const mostTurns = 14;

type Six = readonly [number, number, number, number, number, number];
const six = [0, 1, 2, 3, 4, 5] as const;

/**
 * A bell through a spot, each pixel weighed by what it scatters: speckle scatters in proportion to the light, noise does
 * not. So the flanks tell where the spot is, and a bright grain does not.
 *
 * @source quasi-likelihood with a variance function: R. W. M. Wedderburn, Biometrika 61, 439 (1974) (from memory)
 * @returns null where the search runs away
 */
export function fitBell(plane: Plane, start: Bell): FittedBell | null {
  let bell = start;
  let around = surroundingsOf(plane, bell);
  if (around === null) return null;
  let contrast = 0.4;
  for (let turn = 0; turn < mostTurns; turn++) {
    const sums = scoresOf(plane, bell, around, contrast);
    const change = leastSquares(sums.matrix, sums.scores)?.coefficients as Six | undefined;
    if (change === undefined) return null;
    const next = moved(bell, change);
    if (next === null || !isWithin(next, plane)) return null;
    const step =
      Math.sqrt(next.a) * Math.abs(next.x - bell.x) + Math.sqrt(next.c) * Math.abs(next.y - bell.y);
    const isStill = step < 2e-4 && Math.abs(next.a / bell.a - 1) + Math.abs(next.c / bell.c - 1) < 2e-3;
    bell = next;
    contrast = Math.max(0.03, sums.contrast);
    if (isStill && turn > 2) break;
    if (turn < 4) {
      around = surroundingsOf(plane, bell);
      if (around === null) return null;
    }
  }
  return judged(plane, bell, around, contrast);
}

const isWithin = ({ x, y }: Bell, { width, height }: Plane): boolean =>
  x > -0.5 && y > -0.5 && x < width - 0.5 && y < height - 0.5;

/** One step of the search, cut short where it would turn the bell inside out. */
function moved(bell: Bell, [height, x, y, a, b, c]: Six): Bell | null {
  for (let share = 1; share > 0.01; share /= 2) {
    const next = {
      height: bell.height + share * height,
      x: bell.x + share * x,
      y: bell.y + share * y,
      a: bell.a + share * a,
      b: bell.b + share * b,
      c: bell.c + share * c,
    };
    const isBell = next.a * next.c - next.b ** 2 > 0.15 * (bell.a * bell.c - bell.b ** 2) && next.a > 0;
    const far = Math.max(
      Math.abs(next.x - bell.x) * Math.sqrt(bell.a),
      Math.abs(next.y - bell.y) * Math.sqrt(bell.c),
    );
    if (isBell && far < 1 && next.height > 0.2 * bell.height) return next;
  }
  return null;
}

/** Slopes of the bell by its height, place and shape at one pixel, its light there, and the weight of that pixel. */
function slopesAt(bell: Bell, kappa: number, dx: number, dy: number, into: Float64Array): number {
  const e = Math.exp(-(bell.a * dx * dx + 2 * bell.b * dx * dy + bell.c * dy * dy) / 2);
  const m = bell.height * e;
  into[0] = e;
  into[1] = m * (bell.a * dx + bell.b * dy);
  into[2] = m * (bell.b * dx + bell.c * dy);
  into[3] = (-m * dx * dx) / 2;
  into[4] = -m * dx * dy;
  into[5] = (-m * dy * dy) / 2;
  into[6] = m;
  return 1 / (m * m + kappa * kappa);
}

const floorOf = (bell: Bell, { noise }: Surroundings, contrast: number): number =>
  Math.hypot(noise / contrast, leastShare * bell.height);

function scoresOf(plane: Plane, bell: Bell, around: Surroundings, contrast: number) {
  const { background, noise } = around;
  const kappa = floorOf(bell, around, contrast);
  const slopes = new Float64Array(7);
  const matrix = six.map(() => new Array<number>(6).fill(0));
  const scores = new Array<number>(6).fill(0);
  let [squares, core] = [0, 0];
  forWindow(plane, windowOf(bell, reach), (at, dx, dy) => {
    const weight = slopesAt(bell, kappa, dx, dy, slopes);
    const dark = background.level + background.slopeX * (bell.x + dx) + background.slopeY * (bell.y + dy);
    const rest = plane.light[at]! - dark - slopes[6]!;
    for (let i = 0; i < 6; i++) {
      const pull = weight * slopes[i]!;
      scores[i]! += pull * rest;
      for (let j = 0; j <= i; j++) matrix[i]![j]! += pull * slopes[j]!;
    }
    if (slopes[0]! > 0.3) {
      core += 1;
      squares += (rest * rest - noise * noise) / slopes[6]! ** 2;
    }
  });
  for (let i = 0; i < 6; i++) for (let j = i + 1; j < 6; j++) matrix[i]![j] = matrix[j]![i]!;
  return { matrix, scores, contrast: Math.sqrt(Math.max(0, squares / Math.max(1, core))) };
}

/** Side of the patches in which what is left over is summed, in standard deviations: no grain should reach across one. */
const patch = 1.3;
/** What the fit's own freedom takes out of the patches' scatter, counted on drawn cards. */
const swallowed = 5;

/**
 * How well the centre is known: what is left over is summed patch by patch, and the patches' scatter carried to the
 * centre. That counts speckle of any grain smaller than a patch, the card's own, and what a JPEG rounds away.
 *
 * @source sandwich of summed scores: H. White, Econometrica 50, 1 (1982) (from memory)
 */
function judged(plane: Plane, bell: Bell, around: Surroundings, contrast: number): FittedBell | null {
  const { background, noise } = around;
  const kappa = floorOf(bell, around, contrast);
  const { matrix } = scoresOf(plane, bell, around, contrast);
  const slopes = new Float64Array(7);
  const rows = [1, 2].map(
    (k) =>
      leastSquares(
        matrix,
        six.map((i) => (i === k ? 1 : 0)),
      )?.coefficients as Six | undefined,
  );
  if (rows[0] === undefined || rows[1] === undefined) return null;
  const window = windowOf(bell, reach);
  const [c, s] = [Math.cos(window.azimuth), Math.sin(window.azimuth)];
  const [major, minor] = [window.major / reach, window.minor / reach];
  const across = Math.ceil(reach / patch) * 2 + 1;
  const pulls = new Float64Array(2 * across * across);
  const lumps = new Float64Array(2 * across * across);
  let ofNoise = 0;
  forWindow(plane, window, (at, dx, dy) => {
    const weight = slopesAt(bell, kappa, dx, dy, slopes);
    const dark = background.level + background.slopeX * (bell.x + dx) + background.slopeY * (bell.y + dy);
    const rest = plane.light[at]! - dark - slopes[6]!;
    let [px, py] = [0, 0];
    for (let i = 0; i < 6; i++) {
      px += rows[0]![i]! * slopes[i]!;
      py += rows[1]![i]! * slopes[i]!;
    }
    // along and across the main axes, each in its own deviations
    const [u, v] = [(px * c + py * s) * (weight / major), (py * c - px * s) * (weight / minor)];
    const column = Math.round((dx * c + dy * s) / (patch * major)) + (across >> 1);
    const row = Math.round((dy * c - dx * s) / (patch * minor)) + (across >> 1);
    const k = 2 * (row * across + column);
    pulls[k]! += u * rest;
    pulls[k + 1]! += v * rest;
    ofNoise += (u * u + v * v) / 2;
    if (slopes[0]! > 0.08) {
      lumps[k]! += rest;
      lumps[k + 1]! += 1;
    }
  });
  let [squares, fourths] = [0, 0];
  for (const pull of pulls) {
    squares += pull ** 2;
    fourths += pull ** 4;
  }
  const count = squares ** 2 / fourths;
  const variance = (squares / 2) * (count / Math.max(1, count - swallowed));
  const dark = noise * Math.sqrt(ofNoise);
  let [misfits, patches] = [0, 0];
  for (let k = 0; k < lumps.length; k += 2) {
    if (lumps[k + 1]! < 1) continue;
    misfits += (lumps[k]! / lumps[k + 1]!) ** 2 * lumps[k + 1]!;
    patches += lumps[k + 1]!;
  }
  return {
    ...around,
    bell,
    centre: {
      speckle: Math.sqrt(Math.max(0, variance - dark ** 2)),
      noise: dark,
      freedom: Math.max(3, count - swallowed),
    },
    misfit: Math.sqrt(misfits / Math.max(1, patches)) / bell.height,
  };
}
