import type { Plane } from './plane.ts';

/** Centre and second moments of a spot, pixels; x right, y down, pixel centres at whole numbers. */
export interface Moments {
  readonly total: number;
  readonly x: number;
  readonly y: number;
  /** px². */
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

/** Background as a plane: level + slopeX·x + slopeY·y. */
export interface Background {
  readonly level: number;
  readonly slopeX: number;
  readonly slopeY: number;
}

/** An upright ellipse's worth of pixels about a spot, turned with it. */
export interface Window {
  readonly x: number;
  readonly y: number;
  /** Half axes, pixels. */
  readonly major: number;
  readonly minor: number;
  /** Of the major axis, from +x towards +y (down), rad. */
  readonly azimuth: number;
}

/** Calls `use` for each pixel inside the window, with its distance from the centre. */
export function forWindow(
  { width, height }: Plane,
  window: Window,
  use: (at: number, x: number, y: number) => void,
): void {
  const [c, s] = [Math.cos(window.azimuth), Math.sin(window.azimuth)];
  const reachX = Math.hypot(window.major * c, window.minor * s);
  const reachY = Math.hypot(window.major * s, window.minor * c);
  const fromY = Math.max(0, Math.ceil(window.y - reachY));
  const toY = Math.min(height - 1, Math.floor(window.y + reachY));
  const fromX = Math.max(0, Math.ceil(window.x - reachX));
  const toX = Math.min(width - 1, Math.floor(window.x + reachX));
  for (let y = fromY; y <= toY; y++) {
    for (let x = fromX; x <= toX; x++) {
      const [dx, dy] = [x - window.x, y - window.y];
      const along = (dx * c + dy * s) / window.major;
      const across = (dy * c - dx * s) / window.minor;
      if (along * along + across * across <= 1) use(y * width + x, dx, dy);
    }
  }
}

/** Whether a window holds the point at this distance from its centre. */
export function isInside({ x, y, major, minor, azimuth }: Window, atX: number, atY: number): boolean {
  const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
  const [dx, dy] = [atX - x, atY - y];
  return ((dx * c + dy * s) / major) ** 2 + ((dy * c - dx * s) / minor) ** 2 <= 1;
}

/**
 * First and second moments of what stands above the background inside the window; total 0 where there is nothing.
 *
 * @param more to be added to a pixel's light, by its distance from the window's centre
 */
export function momentsIn(
  plane: Plane,
  window: Window,
  background: Background,
  more: (dx: number, dy: number) => number = () => 0,
): Moments {
  let [total, x, y, xx, yy, xy] = [0, 0, 0, 0, 0, 0];
  forWindow(plane, window, (at, dx, dy) => {
    const light =
      plane.light[at]! -
      background.level -
      background.slopeX * (window.x + dx) -
      background.slopeY * (window.y + dy) +
      more(dx, dy);
    total += light;
    x += light * dx;
    y += light * dy;
    xx += light * dx * dx;
    yy += light * dy * dy;
    xy += light * dx * dy;
  });
  if (!(total > 0)) return { total: 0, x: window.x, y: window.y, xx: 0, yy: 0, xy: 0 };
  const [mx, my] = [x / total, y / total];
  return {
    total,
    x: window.x + mx,
    y: window.y + my,
    xx: xx / total - mx * mx,
    yy: yy / total - my * my,
    xy: xy / total - mx * my,
  };
}

/** Standard deviations along the main axes, and where the larger one points. */
export interface MainAxes {
  readonly major: number;
  readonly minor: number;
  /** rad, from +x towards +y (down), −π/2 to π/2. */
  readonly azimuth: number;
}

/** @source ISO 11146-1:2021, clause 7: principal axes of the matrix of second moments (from memory) */
export function mainAxes({ xx, yy, xy }: Pick<Moments, 'xx' | 'yy' | 'xy'>): MainAxes {
  const mean = (xx + yy) / 2;
  const half = Math.hypot((xx - yy) / 2, xy);
  return {
    major: Math.sqrt(Math.max(0, mean + half)),
    minor: Math.sqrt(Math.max(0, mean - half)),
    azimuth: Math.atan2(2 * xy, xx - yy) / 2,
  };
}
