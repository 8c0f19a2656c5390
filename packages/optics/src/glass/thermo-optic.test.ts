import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { glassNamed, glassNames } from './glass-named.ts';
import { thermoOpticCoefficient } from './thermo-optic.ts';

interface ThermalCase {
  readonly id: string;
  readonly topic: string;
  readonly inputs: {
    readonly material: string;
    readonly wavelength_m?: number;
    readonly wavelengths_m?: readonly number[];
  };
  readonly expected: { readonly dndTabsolute_per_K?: number; readonly dndT_per_K?: readonly number[] };
  readonly tolerance: { readonly rel: number };
}

const file = new URL('../../reference/loss-and-glass.json', import.meta.url);
const cases = (JSON.parse(readFileSync(file, 'utf8')) as { cases: ThermalCase[] }).cases.filter(
  ({ topic, expected }) =>
    topic === 'glass/dispersion' && ('dndTabsolute_per_K' in expected || 'dndT_per_K' in expected),
);

describe('dn/dT of reference/loss-and-glass.json', () => {
  test('the file has such cases', () => expect(cases.length).toBe(3));
  test.each(cases)('$id', ({ inputs, expected, tolerance }) => {
    const wavelengths = inputs.wavelengths_m ?? [inputs.wavelength_m!];
    const wanted = expected.dndT_per_K ?? [expected.dndTabsolute_per_K!];
    wavelengths.forEach((wavelength, i) => {
      const perKelvin = thermoOpticCoefficient(glassNamed(inputs.material), wavelength);
      expect(Math.abs(perKelvin / wanted[i]! - 1)).toBeLessThanOrEqual(tolerance.rel);
    });
  });
});

describe('fused silica (G. M. Rego, Sensors 23, 6023 (2023), abstract, read there)', () => {
  const silica = glassNamed('fused silica');
  test('8.74e-6 in the visible', () =>
    expect(thermoOpticCoefficient(silica, 632.8e-9)).toBeCloseTo(8.74e-6, 8));
  test('between 8.16e-6 and 8.53e-6 at 1550 nm, and between the two values in between', () => {
    const telecom = thermoOpticCoefficient(silica, 1550e-9);
    expect(telecom).toBeGreaterThan(8.16e-6);
    expect(telecom).toBeLessThan(8.53e-6);
    const between = thermoOpticCoefficient(silica, (632.8e-9 + 1550e-9) / 2);
    expect(between).toBeCloseTo((8.74e-6 + telecom) / 2, 12);
  });
  test('nothing outside the two', () => {
    expect(() => thermoOpticCoefficient(silica, 632.8e-9 * (1 - 1e-9))).toThrow(OutOfRange);
    expect(() => thermoOpticCoefficient(silica, 1550e-9 * (1 + 1e-9))).toThrow(OutOfRange);
  });
});

describe('temperatures', () => {
  const crown = glassNamed('N-BK7');
  test('the catalogue holds from −100 °C to 140 °C and not a hair further', () => {
    expect(() => thermoOpticCoefficient(crown, 633e-9, 173.15)).not.toThrow();
    expect(() => thermoOpticCoefficient(crown, 633e-9, 413.15)).not.toThrow();
    expect(() => thermoOpticCoefficient(crown, 633e-9, 173.14)).toThrow(OutOfRange);
    expect(() => thermoOpticCoefficient(crown, 633e-9, 413.16)).toThrow(OutOfRange);
  });
  test('room values hold in rooms', () => {
    const acrylic = glassNamed('acrylic');
    expect(thermoOpticCoefficient(acrylic, 650e-9, 298)).toBe(thermoOpticCoefficient(acrylic, 650e-9));
    expect(() => thermoOpticCoefficient(acrylic, 650e-9, 320)).toThrow(OutOfRange);
    expect(() => thermoOpticCoefficient(acrylic, 2e-6)).toThrow(OutOfRange);
  });
  test('dn/dT grows with temperature and towards the blue, as crown glass does (catalogue sheets, from memory)', () => {
    expect(thermoOpticCoefficient(crown, 633e-9, 373)).toBeGreaterThan(
      thermoOpticCoefficient(crown, 633e-9, 293),
    );
    expect(thermoOpticCoefficient(crown, 405e-9)).toBeGreaterThan(thermoOpticCoefficient(crown, 1064e-9));
  });
  test('it is the slope of Δn = (n²−1)/(2n)·[D₀ΔT + D₁ΔT² + D₂ΔT³ + (E₀ΔT + E₁ΔT²)/(λ²−λ_TK²)] (from memory)', () => {
    // N-BK7's constants as the sheet prints them, worked the long way: difference of Δn at 60 °C ± 0.01 K
    const n = 1.5150892; // at 632.8 nm, reference/loss-and-glass.json
    const rise = (warmer: number) =>
      ((n ** 2 - 1) / (2 * n)) *
      (1.86e-6 * warmer +
        1.31e-8 * warmer ** 2 -
        1.37e-11 * warmer ** 3 +
        (4.34e-7 * warmer + 6.27e-10 * warmer ** 2) / (0.6328 ** 2 - 0.17 ** 2));
    const slope = (rise(40.01) - rise(39.99)) / 0.02;
    // the index is printed to eight digits, the difference of Δn good to seven
    expect(thermoOpticCoefficient(crown, 632.8e-9, 333.15) / slope).toBeCloseTo(1, 6);
  });
});

test('plastics lose 1.0e-4 to 1.4e-4 a kelvin (from memory)', () => {
  for (const name of ['PMMA', 'polycarbonate', 'polystyrene']) {
    const perKelvin = thermoOpticCoefficient(glassNamed(name), 650e-9);
    expect(perKelvin).toBeLessThanOrEqual(-1.0e-4);
    expect(perKelvin).toBeGreaterThanOrEqual(-1.4e-4);
  }
});

test('a glass without a known coefficient is refused; the mend names one that has it', () => {
  const without = glassNames.filter((name) => glassNamed(name).thermal === null);
  expect(without).toContain('CaF2');
  for (const name of without) {
    expect(() => thermoOpticCoefficient(glassNamed(name), 600e-9)).toThrow(/N-BK7/);
  }
});
