import type { Tristimulus } from './colour-matching.ts';

/** Red, green and blue of sRGB before its curve: shares of light, 0 to 1. */
export type LinearColour = readonly [red: number, green: number, blue: number];

/**
 * The nearest pure colour that a screen can show, as bright as it can. A spectral colour lies outside what any screen
 * shows: what would be negative is left out.
 *
 * @source IEC 61966-2-1 (sRGB), matrix from XYZ under D65; from memory
 */
export function shownHue({ x, y, z }: Tristimulus): LinearColour {
  const linear = [
    3.2406 * x - 1.5372 * y - 0.4986 * z,
    -0.9689 * x + 1.8758 * y + 0.0415 * z,
    0.0557 * x - 0.204 * y + 1.057 * z,
  ] as const;
  const most = Math.max(...linear, 1e-9);
  const part = (i: 0 | 1 | 2) => Math.max(0, linear[i] / most);
  return [part(0), part(1), part(2)];
}

/** `#7fce9a`. @source IEC 61966-2-1, the curve of sRGB; from memory */
export function hexOf(colour: LinearColour): string {
  const coded = colour.map((part) => {
    const curved = part <= 0.0031308 ? 12.92 * part : 1.055 * part ** (1 / 2.4) - 0.055;
    return Math.round(255 * Math.max(0, Math.min(1, curved)))
      .toString(16)
      .padStart(2, '0');
  });
  return `#${coded.join('')}`;
}

/** The colour behind `#7fce9a`, as shares of light. */
export function linearOf(hex: string): LinearColour {
  const part = (from: number) => {
    const coded = Number.parseInt(hex.slice(from, from + 2), 16) / 255;
    return coded <= 0.04045 ? coded / 12.92 : ((coded + 0.055) / 1.055) ** 2.4;
  };
  return [part(1), part(3), part(5)];
}

/**
 * How far two colours stand apart, 1 to 21; text asks for 4.5.
 *
 * @source WCAG 2.2, relative luminance and contrast ratio; from memory
 */
export function contrast(a: LinearColour, b: LinearColour): number {
  const luminance = ([red, green, blue]: LinearColour) => 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  const [high, low] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/** A colour on the way to another: 0 the first, 1 the second. */
export function mixed(from: LinearColour, to: LinearColour, share: number): LinearColour {
  const part = (i: 0 | 1 | 2) => from[i] + (to[i] - from[i]) * share;
  return [part(0), part(1), part(2)];
}
