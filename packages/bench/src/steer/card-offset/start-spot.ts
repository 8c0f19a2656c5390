import { leastSquares, median, medianDeviation } from '@coreward/optics';
import { type Background, forWindow, mainAxes, type Window } from '../../gauge/spot-picture/moments.ts';
import type { Plane } from '../../gauge/spot-picture/plane.ts';

/** A bell of light, A·exp(−q/2) with q = a·dx² + 2b·dx·dy + c·dy²; lengths in pixels of its plane. */
export interface Bell {
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** A bell of so many standard deviations as a window. */
export function windowOf({ x, y, a, b, c }: Bell, reach: number): Window {
  const det = a * c - b * b;
  const axes = mainAxes({ xx: c / det, yy: a / det, xy: -b / det });
  return { x, y, major: reach * axes.major, minor: reach * axes.minor, azimuth: axes.azimuth };
}

/** A round bell. */
export const roundBell = (x: number, y: number, deviation: number): Bell => ({
  x,
  y,
  height: 0,
  a: 1 / deviation ** 2,
  b: 0,
  c: 1 / deviation ** 2,
});

/** What is around a bell, and how much it scatters, pixel by pixel. */
export interface Surroundings {
  readonly background: Background;
  readonly noise: number;
}

/** Where the surroundings of a spot begin and end, in its standard deviations. */
const ring = { from: 3.7, to: 6.5 } as const;
const mostInRing = 900;

/** A plane through what lies around a bell, without strays; null where the picture leaves nothing there. */
export function surroundingsOf(plane: Plane, bell: Bell): Surroundings | null {
  const inside: [number, number, number][] = [];
  const outer = windowOf(bell, ring.to);
  const count = Math.PI * outer.major * outer.minor;
  const stride = Math.max(1, Math.floor(count / mostInRing)) | 1;
  let n = 0;
  forWindow(plane, outer, (at, dx, dy) => {
    const q = bell.a * dx * dx + 2 * bell.b * dx * dy + bell.c * dy * dy;
    if (q < ring.from ** 2 || n++ % stride !== 0) return;
    inside.push([dx, dy, plane.light[at]!]);
  });
  if (inside.length < 24) return null;
  const values = inside.map(([, , value]) => value);
  const middle = median(values);
  const scatter = medianDeviation(values);
  const kept = inside.filter(([, , value]) => Math.abs(value - middle) <= 3.5 * scatter + 1e-4);
  const column = (pick: (one: readonly [number, number, number]) => number): number[] => kept.map(pick);
  const fit = leastSquares(
    [column(() => 1), column(([dx]) => dx), column(([, dy]) => dy)],
    column(([, , value]) => value),
  );
  if (fit === null) return null;
  const [level, slopeX, slopeY] = fit.coefficients as [number, number, number];
  return {
    background: { level: level - slopeX * bell.x - slopeY * bell.y, slopeX, slopeY },
    noise: Math.sqrt(fit.squares / Math.max(1, kept.length - 3)),
  };
}

/** Turns of the search for a first bell: each brings a round, lone one half of the way. */
const mostTurns = 30;

/**
 * The bell whose own weights give it back: second moments under a bell of weights are half its squares where both are
 * alike. Far neighbours weigh nothing. Null where it runs away.
 *
 * @source adaptive moments, G. M. Bernstein and M. Jarvis, Astron. J. 123, 583 (2002), 3 (from memory)
 */
export function firstBell(plane: Plane, start: Bell, around: number): Bell | null {
  let bell = start;
  for (let turn = 0; turn < mostTurns; turn++) {
    const { light } = plane;
    let [total, sx, sy, sxx, syy, sxy, weights] = [0, 0, 0, 0, 0, 0, 0];
    const { a, b, c } = bell;
    forWindow(plane, windowOf(bell, 3), (at, dx, dy) => {
      const weight = Math.exp(-(a * dx * dx + 2 * b * dx * dy + c * dy * dy) / 2);
      const value = weight * (light[at]! - around);
      weights += weight * weight;
      total += value;
      sx += value * dx;
      sy += value * dy;
      sxx += value * dx * dx;
      syy += value * dy * dy;
      sxy += value * dx * dy;
    });
    if (!(total > 0)) return null;
    const [mx, my] = [sx / total, sy / total];
    const [xx, yy, xy] = [
      2 * Math.max(sxx / total - mx * mx, 0.1),
      2 * Math.max(syy / total - my * my, 0.1),
      2 * (sxy / total - mx * my),
    ];
    const det = xx * yy - xy * xy;
    const size = Math.sqrt(Math.sqrt(Math.max(det, 0)));
    if (!(det > 0.01 && size < Math.max(plane.width, plane.height))) return null;
    const before = bell;
    bell = {
      x: bell.x + 2 * mx,
      y: bell.y + 2 * my,
      height: total / weights,
      a: yy / det,
      b: -xy / det,
      c: xx / det,
    };
    const isInside = bell.x >= 0 && bell.y >= 0 && bell.x < plane.width && bell.y < plane.height;
    if (!isInside) return null;
    if (
      Math.hypot(bell.x - before.x, bell.y - before.y) < 0.02 * size &&
      Math.abs(bell.a / before.a - 1) < 0.02
    )
      break;
  }
  return bell;
}
