import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { accentFor } from './accent.ts';
import { colourMatching } from './colour-matching.ts';
import { grounds } from './grounds.ts';
import { contrast, linearOf } from './srgb.ts';

/** Colour-matching functions of the 2° observer. */
const table = {
  source: 'CIE 015, the CIE 1931 standard colorimetric observer, table in steps of 5 nm',
  obtained: 'from memory',
  rows: [
    { nanometres: 450, x: 0.3362, y: 0.038, z: 1.7721 },
    { nanometres: 520, x: 0.0633, y: 0.71, z: 0.0782 },
    { nanometres: 555, x: 0.5121, y: 1.0, z: 0.0057 },
    { nanometres: 600, x: 1.0622, y: 0.631, z: 0.0008 },
    { nanometres: 650, x: 0.2835, y: 0.107, z: 0.0 },
  ],
} as const;

for (const { nanometres, x, y, z } of table.rows) {
  test(`an eye matches ${nanometres} nm as the standard observer does`, () => {
    const matched = colourMatching(nanometres * 1e-9);
    // the fit is within 2 % of the peaks, 1.06, 1.00 and 1.78
    expect(Math.abs(matched.x - x)).toBeLessThan(0.022);
    expect(Math.abs(matched.y - y)).toBeLessThan(0.02);
    expect(Math.abs(matched.z - z)).toBeLessThan(0.036);
  });
}

describe('the accent of some light', () => {
  const wavelengths = [355, 405, 450, 488, 520, 532, 561, 589, 635, 660, 690, 785, 1064, 1550];
  test('can be read on every ground of both themes (WCAG 2.2, 1.4.3: 4.5; from memory)', () => {
    for (const nanometres of wavelengths) {
      const { onDark, onLight } = accentFor(nanometres * 1e-9);
      for (const ground of Object.values(grounds.dark)) {
        expect(contrast(linearOf(onDark), linearOf(ground))).toBeGreaterThanOrEqual(4.5);
      }
      for (const ground of Object.values(grounds.light)) {
        expect(contrast(linearOf(onLight), linearOf(ground))).toBeGreaterThanOrEqual(4.5);
      }
    }
  });
  test('is the hue one expects: blue, green, red', () => {
    const strongest = (nanometres: number) => {
      const parts = linearOf(accentFor(nanometres * 1e-9).onDark);
      return parts.indexOf(Math.max(...parts));
    };
    expect([635, 532, 450].map(strongest)).toEqual([0, 1, 2]);
  });
  test('says what cannot be seen at its strength, from 400 to 700 nm it can', () => {
    expect(wavelengths.filter((nanometres) => !accentFor(nanometres * 1e-9).visible)).toEqual([
      355, 785, 1064, 1550,
    ]);
  });
  test('the grounds it is held against are those of the style sheet', () => {
    const css = readFileSync(new URL('./tokens.css', import.meta.url), 'utf8');
    for (const { ground, raised } of Object.values(grounds)) {
      expect(css).toContain(`--ground: ${ground};`);
      expect(css).toContain(`--raised: ${raised};`);
    }
  });
});
