import { writeValue } from '../units/write.ts';
import type { CardOffset } from './exact-turns.ts';
import { type Raster, rasterPath } from './raster.ts';

/** A card drawn in a square of 100 by 100, the reverse spot in its middle; y points down, as on a screen. */
export interface CardDrawing {
  readonly forward: { readonly x: number; readonly y: number };
  /** Where it lay before it was moved; null: it was not. */
  readonly before: { readonly x: number; readonly y: number } | null;
  /** Distance of two grid lines. */
  readonly grid: number;
  /** What that distance is on the card: `2 mm`. */
  readonly gridText: string;
}

/** Lengths between grid lines, m: round ones, so that people can read off the drawing. */
const grids = [0.1e-3, 0.2e-3, 0.5e-3, 1e-3, 2e-3, 5e-3, 10e-3, 20e-3, 50e-3];
/** Half of the square is so many grid lines. */
const linesOutward = 4;

/** The forward spot as it lies to the reverse one, and where it lay before, to a scale that holds them. */
export function cardDrawing(offset: CardOffset, before: CardOffset | null = null): CardDrawing {
  const all = before === null ? [offset] : [offset, before];
  const reach = Math.max(...all.flatMap(({ x, y }) => [Math.abs(x), Math.abs(y)])) * 1.2;
  const spacing = grids.find((one) => one * linesOutward >= reach) ?? grids.at(-1)!;
  const grid = 50 / linesOutward;
  const inside = (one: number) => Math.min(96, Math.max(4, 50 + (one / spacing) * grid));
  const drawn = ({ x, y }: CardOffset) => ({ x: inside(x), y: inside(-y) });
  return {
    forward: drawn(offset),
    before: before === null ? null : drawn(before),
    grid,
    gridText: writeValue(spacing, 'length'),
  };
}

/** The way of a raster in a square of 100 by 100, line by line. */
export interface RasterDrawing {
  /** One line each: from, to. */
  readonly lines: readonly { readonly x1: number; readonly x2: number; readonly y: number }[];
}

/** Lines lie as far apart as they are, the box filled out. */
export function rasterDrawing(raster: Raster): RasterDrawing {
  let y = 92;
  const apart = raster.lines > 1 ? 84 / (raster.lines - 1) : 0;
  const lines = rasterPath(raster).flatMap((move) => {
    if (move.do !== 'line') return [];
    if (move.line > 0) y -= apart;
    return [move.horizontal > 0 ? { x1: 8, x2: 92, y } : { x1: 92, x2: 8, y }];
  });
  return { lines };
}
