import { expect, test } from 'vitest';
import { lossRow, misses } from '../../reference/loss-rows.ts';
import { OutOfRange } from '../out-of-range.ts';
import {
  bentNumericalAperture,
  type MultimodeGuide,
  remainingModeFraction,
  smallestCountedRadius,
} from './bend-multimode.ts';
import { decibelFromTransmission } from './decibel.ts';

for (const id of ['bend-multimode-grin-50', 'bend-multimode-step-100']) {
  const row = lossRow(id);
  test(row.title, () => {
    const {
      profileExponent,
      coreRadius_m,
      relativeIndexDifference,
      claddingIndex,
      wavelength_m,
      bendRadius_m,
    } = row.inputs;
    const guide = {
      profileExponent: (profileExponent as unknown) === 'step' ? Infinity : profileExponent!,
      coreRadius: coreRadius_m!,
      relativeIndexDifference: relativeIndexDifference!,
      claddingIndex: claddingIndex!,
    };
    const remaining = remainingModeFraction(guide, bendRadius_m!, wavelength_m!);
    expect(
      misses(row, {
        remainingModeFraction: remaining,
        loss_dB_if_all_modes_filled: decibelFromTransmission(remaining),
      }),
    ).toEqual([]);
  });
}

const aperture = lossRow('bend-effective-na');
test(aperture.title, () => {
  const { coreRadius_m, numericalAperture, coreIndex, bendRadius_m } = aperture.inputs;
  const effectiveNumericalAperture = bentNumericalAperture(
    numericalAperture!,
    coreIndex!,
    coreRadius_m!,
    bendRadius_m!,
  );
  expect(misses(aperture, { effectiveNumericalAperture })).toEqual([]);
});

const step: MultimodeGuide = {
  profileExponent: Infinity,
  coreRadius: 100e-6,
  relativeIndexDifference: 0.0114,
  claddingIndex: 1.457,
};

test('a wider bend keeps more modes, and none is lost on a straight line', () => {
  for (const guide of [step, { ...step, profileExponent: 2, coreRadius: 25e-6 }]) {
    let before = 0;
    for (const radius of [0.02, 0.03, 0.05, 0.1, 1, 10]) {
      const fraction = remainingModeFraction(guide, radius, 633e-9);
      expect(fraction).toBeGreaterThan(before);
      before = fraction;
    }
    expect(remainingModeFraction(guide, 1e9, 633e-9)).toBeCloseTo(1, 5);
  }
});

test('in short waves the count follows the narrower aperture of rays: NA_eff²/NA²', () => {
  // Gloge's second term is of wave optics and dies as the wavelength does; Δ = NA²/(2n²) to first order in Δ.
  const numericalAperture = 1.457 * Math.sqrt(2 * step.relativeIndexDifference);
  const rays = bentNumericalAperture(numericalAperture, 1.457, step.coreRadius, 0.03);
  expect(remainingModeFraction(step, 0.03, 1e-15)).toBeCloseTo((rays / numericalAperture) ** 2, 5);
});

test('the smallest bend that can be counted is named, works, and just below it is refused', () => {
  for (const wavelength of [405e-9, 633e-9, 1550e-9]) {
    const radius = smallestCountedRadius(step, wavelength);
    expect(remainingModeFraction(step, radius, wavelength)).toBeGreaterThanOrEqual(0);
    expect(remainingModeFraction(step, radius, wavelength)).toBeLessThan(1e-8);
    expect(() => remainingModeFraction(step, radius * (1 - 1e-8), wavelength)).toThrow(OutOfRange);
  }
});

test('a bend that no ray survives is refused, and impossible guides are', () => {
  const edge = (2 * 1.4735 ** 2 * 1e-4) / 0.22 ** 2;
  expect(bentNumericalAperture(0.22, 1.4735, 1e-4, edge * 1.000001)).toBeGreaterThan(0);
  expect(() => bentNumericalAperture(0.22, 1.4735, 1e-4, edge * 0.999999)).toThrow(OutOfRange);
  expect(() => remainingModeFraction({ ...step, profileExponent: 0 }, 1, 633e-9)).toThrow(OutOfRange);
  expect(() => remainingModeFraction(step, 0, 633e-9)).toThrow(OutOfRange);
});
