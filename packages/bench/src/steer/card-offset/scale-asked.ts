import { Refusal } from '../../refusal.ts';
import { type CardScale, readPixel, readRectangle, readRuler, usualMostTilt } from './card-scale.ts';
import type { Point } from './homography.ts';

/** How the scale of a picture of a card is told on a page. */
export type ScaleAsked =
  | { readonly by: 'ruler'; readonly marks: readonly Point[]; readonly length: string }
  | { readonly by: 'rectangle'; readonly marks: readonly Point[]; readonly length: string }
  | { readonly by: 'typed'; readonly marks: readonly Point[]; readonly length: string };

/** A scale, or why what was typed is none. */
export type ScaleRead =
  | { readonly ok: true; readonly scale: CardScale }
  | { readonly ok: false; readonly why: string };

/** Marks as they are offered first: two along the picture's middle, or the corners of a rectangle in it. */
export function firstMarks(
  by: ScaleAsked['by'],
  { width, height }: { readonly width: number; readonly height: number },
): readonly Point[] {
  const at = (x: number, y: number): Point => ({ x: Math.round(x * width), y: Math.round(y * height) });
  switch (by) {
    case 'ruler':
      return [at(0.2, 0.85), at(0.8, 0.85)];
    case 'rectangle':
      return [at(0.2, 0.2), at(0.8, 0.2), at(0.8, 0.8), at(0.2, 0.8)];
    case 'typed':
      return [];
  }
}

/** The scale as it was told, or what is wrong with it. */
export function scaleAsked({ by, marks, length }: ScaleAsked): ScaleRead {
  const where = 'card';
  try {
    switch (by) {
      case 'typed':
        return { ok: true, scale: { kind: 'pixel', ...readPixel(length, where), mostTilt: usualMostTilt } };
      case 'rectangle':
        return {
          ok: true,
          scale: readRectangle(marks.map(({ x, y }) => `${x},${y}`).join(' '), length, where),
        };
      case 'ruler': {
        const [from = { x: 0, y: 0 }, to = from] = marks;
        return {
          ok: true,
          scale: { kind: 'pixel', ...readRuler([from, to], length, where), mostTilt: usualMostTilt },
        };
      }
    }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const [{ what, mend } = { what: '', mend: '' }] = error.parts;
    return { ok: false, why: `${what}. ${mend}` };
  }
}
