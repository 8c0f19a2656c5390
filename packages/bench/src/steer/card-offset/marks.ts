/** Marks on a picture of a card, and the spot in it, as they are drawn and moved on a screen. */
import type { CardSpot } from './card-spot.ts';
import type { Point } from './homography.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The pixel at a place that is told as shares of the picture's width and height. */
export const markAt = (place: Point, size: Size): Point =>
  inside(place.x * size.width, place.y * size.height, size);

/** How far a key moves a mark, px: to the pixel, or in strides. */
const steps = { fine: 1, coarse: 20 } as const;

/** A mark after an arrow key. */
export function markAfterKey(
  { x, y }: Point,
  way: 'left' | 'right' | 'up' | 'down',
  stride: 'fine' | 'coarse',
  size: Size,
): Point {
  const step = steps[stride];
  const across = way === 'left' ? -step : way === 'right' ? step : 0;
  const down = way === 'up' ? -step : way === 'down' ? step : 0;
  return inside(x + across, y + down, size);
}

const inside = (x: number, y: number, { width, height }: Size): Point => ({
  x: Math.min(width - 1, Math.max(0, Math.round(x))),
  y: Math.min(height - 1, Math.max(0, Math.round(y))),
});

/** A spot as an ellipse at 1/e² of its peak; pixel centres lie half a pixel in, and the turn is clockwise, degrees. */
export const spotEllipse = ({ x, y, ellipse }: CardSpot) => ({
  x: x + 0.5,
  y: y + 0.5,
  major: ellipse.major,
  minor: ellipse.minor,
  degrees: (ellipse.azimuth * 180) / Math.PI,
});
