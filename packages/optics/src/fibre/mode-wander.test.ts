import { expect, test } from 'vitest';
import drawn from '../../reference/mode-wander.json' with { type: 'json' };
import { gradedModes } from './graded-modes.ts';
import { modeWander } from './mode-wander.ts';
import { stepModes } from './step-modes.ts';

// Source: reference/mode-wander.json, computed with NumPy and SciPy on a grid, mixes drawn one by one.
for (const { coreRadius_um, numericalAperture, wavelength_nm, V, lpModes, onePolarization } of drawn.cases) {
  test(`light of ${wavelength_nm} nm in a few modes wanders as mixes drawn on a grid do`, () => {
    const modes = stepModes(V);
    expect(modes).toHaveLength(lpModes);
    const { centroid, transverse } = modeWander(modes);
    const k = (2 * Math.PI) / (wavelength_nm * 1e-3);
    // 400 000 mixes: 0.2 % of an rms; the grid's edge of the core and its finite differences, 0.5 %
    expect(Math.abs((centroid * coreRadius_um) / onePolarization.centroid_um - 1)).toBeLessThan(0.007);
    expect(
      Math.abs(((transverse / (k * coreRadius_um)) * 1e3) / onePolarization.angle_mrad - 1),
    ).toBeLessThan(0.007);
    expect(numericalAperture).toBe(0.12);
  });
}

test('LP01 alone stays on the axis', () => {
  expect(modeWander(stepModes(2.2))).toEqual({ centroid: 0, transverse: 0 });
});

test('of a parabola, u² of neighbours and their place go together as in the harmonic oscillator', () => {
  // LP01 and LP11 of the endless parabola: ⟨x⟩ between them √(1/2V), u² = 2V and 4V, so ⟨q⟩ = √(V/2): from memory
  const vNumber = 30;
  const two = gradedModes(vNumber).slice(0, 2);
  const { centroid, transverse } = modeWander(two);
  // 2 · 2 matrix elements over 3 · 4 mixes: |x|² · 2 / 12; the truncation at the core's edge is e^−30
  expect(centroid).toBeCloseTo(Math.sqrt(2 / (2 * vNumber) / 12), 6);
  expect(transverse / centroid / vNumber).toBeCloseTo(1, 5);
});

test('more than sixty modes are speckle, and refused', () => {
  expect(() => modeWander(stepModes(40))).toThrow('speckle');
});
