import { expect, test } from 'vitest';
import { lossRow, lossRows, misses } from '../../reference/loss-rows.ts';
import { OutOfRange } from '../out-of-range.ts';
import { airGapExtremes, airGapMeanTransmission, airGapTransmission } from './air-gap.ts';
import { decibelFromTransmission } from './decibel.ts';
import { normalReflectance } from './fresnel.ts';
import { straightTransmission } from './plain-element.ts';

for (const row of lossRows.filter(({ topic }) => topic === 'air-gap')) {
  test(row.title, () => {
    const { index, wavelength_m, gap_m } = row.inputs;
    const reflectance = normalReflectance(index!, 1);
    expect(
      misses(row, {
        reflectance,
        transmittance: 1 - reflectance,
        returnLoss_dB: decibelFromTransmission(reflectance),
        insertionLoss_dB: decibelFromTransmission(1 - reflectance),
        gapTransmittanceCoherent: airGapTransmission(index!, gap_m!, wavelength_m!),
        gapTransmittanceIncoherent: airGapMeanTransmission(index!),
        gapTransmittanceTwoSinglePasses: straightTransmission(reflectance, 2),
        gapTransmittanceMin: airGapExtremes(index!).minimum,
      }),
    ).toEqual([]);
  });
}

const incoherent = lossRow('conn-air-gap-incoherent');
test(incoherent.title, () => {
  const transmission = airGapMeanTransmission(incoherent.inputs.index!);
  expect(
    misses(incoherent, {
      transmission,
      loss_dB: decibelFromTransmission(transmission),
      returnLossOneFacet_dB: decibelFromTransmission(normalReflectance(incoherent.inputs.index!, 1)),
    }),
  ).toEqual([]);
});

const quarter = lossRow('conn-air-gap-158.2nm');
test(quarter.title, () => {
  const { index, gap_m, wavelength_m } = quarter.inputs;
  const transmission = airGapTransmission(index!, gap_m!, wavelength_m!);
  expect(
    misses(quarter, {
      transmission,
      loss_dB: decibelFromTransmission(transmission),
      reflectance: 1 - transmission,
    }),
  ).toEqual([]);
});

test('the fringes average to the mean and run between the extremes', () => {
  const phases = 64; // an even trapezoid over a whole fringe converges like R^64
  let sum = 0;
  for (let i = 0; i < phases; i++) {
    const transmission = airGapTransmission(1.5, (i / phases) * 0.3e-6, 0.6e-6);
    expect(transmission).toBeGreaterThanOrEqual(airGapExtremes(1.5).minimum - 1e-15);
    expect(transmission).toBeLessThanOrEqual(airGapExtremes(1.5).maximum);
    sum += transmission;
  }
  expect(sum / phases).toBeCloseTo(airGapMeanTransmission(1.5), 13);
});

test('contact loses nothing; a gap of nothing is contact, whichever the wavelength', () => {
  expect(airGapTransmission(1.457, 0, 633e-9)).toBe(1);
  expect(airGapTransmission(1.457, 1e-12, 633e-9)).toBeCloseTo(1, 9);
  expect(() => airGapTransmission(1.457, -1e-9, 633e-9)).toThrow(OutOfRange);
  expect(() => airGapTransmission(1.457, 1e-9, 0)).toThrow(OutOfRange);
});
