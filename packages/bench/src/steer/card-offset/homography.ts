import { leastSquares } from '@coreward/optics';

/** A point of a picture (pixels, y down) or of a card (m, y up). */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Nine numbers, row by row, that carry points of one plane to another, the last one 1. */
export type Homography = readonly number[];

/**
 * The map of one plane to another that a picture from aslant is, from four points and where they go; null where three of
 * the points lie on a line.
 *
 * @source R. Hartley and A. Zisserman, Multiple View Geometry in Computer Vision, 4.1: eight linear equations from four
 *   points (from memory); points are first shifted and scaled, 4.4.4
 */
export function homographyOf(from: readonly Point[], to: readonly Point[]): Homography | null {
  const [a, b] = [normalised(from), normalised(to)];
  if (a === null || b === null) return null;
  const rows = a.points.flatMap(({ x, y }, i) => {
    const { x: u, y: v } = b.points[i]!;
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y],
      [0, 0, 0, x, y, 1, -v * x, -v * y],
    ];
  });
  const columns = rows[0]!.map((_, j) => rows.map((row) => row[j]!));
  const h = leastSquares(
    columns,
    b.points.flatMap(({ x, y }) => [x, y]),
  )?.coefficients;
  if (h === undefined) return null;
  // back from shifted and scaled points: T⁻¹ H S
  const scaled = times([...h, 1], a.matrix);
  const full = times([1 / b.scale, 0, b.middle.x, 0, 1 / b.scale, b.middle.y, 0, 0, 1], scaled);
  return full.map((one) => one / full[8]!);
}

/** Where a point goes. */
export function carried(h: Homography, { x, y }: Point): Point {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return { x: (h[0]! * x + h[1]! * y + h[2]!) / w, y: (h[3]! * x + h[4]! * y + h[5]!) / w };
}

function normalised(points: readonly Point[]) {
  const mean = (pick: (point: Point) => number): number =>
    points.reduce((sum, point) => sum + pick(point), 0) / points.length;
  const middle = { x: mean(({ x }) => x), y: mean(({ y }) => y) };
  const spread = mean(({ x, y }) => Math.hypot(x - middle.x, y - middle.y));
  if (!(spread > 0 && Number.isFinite(spread))) return null;
  const scale = Math.SQRT2 / spread;
  const matrix = [scale, 0, -scale * middle.x, 0, scale, -scale * middle.y, 0, 0, 1];
  const moved = points.map(({ x, y }) => ({ x: scale * (x - middle.x), y: scale * (y - middle.y) }));
  return { points: moved, middle, scale, matrix };
}

const times = (a: readonly number[], b: readonly number[]): number[] =>
  Array.from({ length: 9 }, (_, i) => {
    const [row, column] = [3 * Math.floor(i / 3), i % 3];
    return a[row]! * b[column]! + a[row + 1]! * b[column + 3]! + a[row + 2]! * b[column + 6]!;
  });
