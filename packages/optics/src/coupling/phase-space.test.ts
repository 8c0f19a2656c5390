import { expect, test } from 'vitest';
import { momentsOf, phaseSpaceFraction } from './phase-space.ts';

/** A round beam so far behind its waist that each place of it has one angle. Lengths in micrometres, light of 520 nm. */
const waveNumber = (2 * Math.PI) / 0.52;
const farBeam = (waistZ: number) => ({
  waistRadiusX: 1,
  waistRadiusY: 1,
  waistZX: waistZ,
  waistZY: waistZ,
  azimuth: 0,
  m2X: 1,
  m2Y: 1,
  offsetX: 0,
  offsetY: 0,
  tiltX: 0,
  tiltY: 0,
});

for (const distance of [1e4, 1e7, 1e9, 1e11]) {
  test(`${distance} µm behind a waist of 1 µm, a wide cone takes what lands on the core`, () => {
    const radius = (distance * 0.52) / Math.PI; // λz/(πw₀), far from the waist
    const core = radius / 2;
    const share = phaseSpaceFraction(momentsOf(farBeam(-distance), waveNumber), core, 0.5, 'step');
    // encircled power of a Gaussian, 1 − exp(−2a²/w²) (textbook, from memory); the steepest of its rays has 0.083.
    // The waist's own size adds (πw₀²/λz)² = 4e−7 to w² at the nearest place; the quadrature is good to 1e−6
    expect(Math.abs(share - (1 - Math.exp(-0.5)))).toBeLessThan(2e-6);
  });
  test(`${distance} µm behind a waist of 1 µm, a narrow cone takes the middle of what lands on the core`, () => {
    const numericalAperture = 0.04;
    const core = distance; // wider than all the light that such a cone takes
    const share = phaseSpaceFraction(
      momentsOf(farBeam(-distance), waveNumber),
      core,
      numericalAperture,
      'step',
    );
    // the far field of a Gaussian, 1/e² half angle λ/(πw₀) (textbook, from memory)
    const cone = 0.52 / Math.PI;
    // a step in the integrand, where its quadrature over the core is good to a per cent
    expect(Math.abs(share / (1 - Math.exp(-2 * (numericalAperture / cone) ** 2)) - 1)).toBeLessThan(0.02);
  });
}
