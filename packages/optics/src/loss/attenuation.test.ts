import { expect, test } from 'vitest';
import { lossRow, misses } from '../../reference/loss-rows.ts';
import { OutOfRange } from '../out-of-range.ts';
import {
  fibreTransmission,
  infraredAttenuation,
  rayleighAttenuation,
  rayleighCoefficientBound,
  rayleighCoefficients,
  ultravioletTailMatters,
  waterPeaks,
} from './attenuation.ts';
import {
  decibelPerKilometreFromNepersPerMetre as inDecibelPerKilometre,
  nepersPerMetreFromDecibelPerKilometre as inNepersPerMetre,
} from './decibel.ts';

const perMicrometre4 = (coefficient: number) => inDecibelPerKilometre(coefficient) * 1e24; // Np·m³ as dB·µm⁴/km

for (const id of [
  'att-rayleigh-ge-488',
  'att-rayleigh-ge-633',
  'att-rayleigh-ge-850',
  'att-rayleigh-ge-1550',
]) {
  const row = lossRow(id);
  test(row.title, () => {
    const { wavelength_m, rayleighCoefficient_dB_um4_per_km } = row.inputs;
    const coefficient = inNepersPerMetre(rayleighCoefficient_dB_um4_per_km!) * 1e-24;
    for (const attenuation of [
      rayleighAttenuation(wavelength_m!),
      rayleighAttenuation(wavelength_m!, coefficient),
    ]) {
      expect(misses(row, { rayleighLoss_dB_per_km: inDecibelPerKilometre(attenuation) })).toEqual([]);
    }
  });
}

const published = lossRow('att-rayleigh-coefficient');
test(published.title, () => {
  const { wavelength_m, rayleighLoss_dB_per_km } = published.inputs;
  const bound = rayleighCoefficientBound(wavelength_m!, inNepersPerMetre(rayleighLoss_dB_per_km!));
  for (const coefficient of [bound, rayleighCoefficients[0]!.coefficient]) {
    expect(misses(published, { rayleighCoefficient_dB_um4_per_km: perMicrometre4(coefficient) })).toEqual([]);
  }
});

const record = lossRow('att-silica-record-bound');
test(record.title, () => {
  const { wavelength_m, totalLoss_dB_per_km } = record.inputs;
  const bound = rayleighCoefficientBound(wavelength_m!, inNepersPerMetre(totalLoss_dB_per_km!));
  expect(misses(record, { rayleighCoefficientUpperBound_dB_um4_per_km: perMicrometre4(bound) })).toEqual([]);
  // The table rounds it to 0.84.
  expect(rayleighCoefficients[2]!.coefficient / bound).toBeCloseTo(1, 3);
  // No pure silica fibre, lowest scattering and infrared tail, may beat the record by more than its scatter (5 %).
  const lowest = rayleighAttenuation(wavelength_m!, rayleighCoefficients[1]!.coefficient);
  expect(inDecibelPerKilometre(lowest + infraredAttenuation(wavelength_m!))).toBeGreaterThan(
    0.95 * totalLoss_dB_per_km!,
  );
});

for (const id of ['att-ir-tail-1550', 'att-ir-tail-1700']) {
  const row = lossRow(id);
  test(row.title, () => {
    const attenuation = infraredAttenuation(row.inputs.wavelength_m!);
    expect(misses(row, { infraredLoss_dB_per_km: inDecibelPerKilometre(attenuation) })).toEqual([]);
  });
}

const water = lossRow('att-oh-peaks');
test(water.title, () => {
  const read = waterPeaks.filter(({ evidence }) => evidence === 'read');
  expect(misses(water, { peaks_m: read.map(({ wavelength }) => wavelength) })).toEqual([]);
  // Harmonics of the fundamental, which the glass shifts by a few per cent.
  for (const [i, { wavelength }] of read.entries()) {
    expect((wavelength * (i + 2)) / water.inputs.fundamental_m!).toBeCloseTo(1, 1);
  }
});

const keck = lossRow('att-keck-window');
test(keck.title, () => {
  const { wavelengthFrom_m, wavelengthTo_m } = keck.inputs;
  for (const wavelength of [wavelengthFrom_m!, 0.9e-6, wavelengthTo_m!]) {
    expect(misses(keck, { intrinsicUvAbsorptionMatters: ultravioletTailMatters(wavelength) })).toEqual([]);
  }
  expect(ultravioletTailMatters(0.69e-6)).toBe(true);
});

test('the infrared tail is nothing below 1.4 µm', () => {
  // Keiser, ch. 3 (from memory): the tail counts beyond 1.4 µm; one part in a hundred of the floor there.
  expect(infraredAttenuation(1.4e-6) / rayleighAttenuation(1.4e-6)).toBeLessThan(0.01);
  expect(infraredAttenuation(0.633e-6)).toBeLessThan(1e-20);
});

test('half the wavelength scatters sixteen times as much', () => {
  expect(rayleighAttenuation(0.4e-6) / rayleighAttenuation(0.8e-6)).toBeCloseTo(16, 12);
});

test('two lengths after each other pass the product; nothing is lost in none', () => {
  expect(fibreTransmission(0.01, 30)).toBeCloseTo(
    fibreTransmission(0.01, 10) * fibreTransmission(0.01, 20),
    15,
  );
  expect(fibreTransmission(0.01, 0)).toBe(1);
  expect(() => fibreTransmission(-1e-9, 1)).toThrow(OutOfRange);
  expect(() => fibreTransmission(1, -1e-9)).toThrow(OutOfRange);
  expect(() => fibreTransmission(Infinity, 0)).toThrow(OutOfRange);
  expect(() => rayleighAttenuation(0)).toThrow(OutOfRange);
  expect(() => infraredAttenuation(Number.NaN)).toThrow(OutOfRange);
});
