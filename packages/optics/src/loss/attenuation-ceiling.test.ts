import { expect, test } from 'vitest';
import { lossRow, misses } from '../../reference/loss-rows.ts';
import { attenuationCeiling, attenuationCeilings, type CableDesignation } from './attenuation-ceiling.ts';
import { connectorPairCeiling } from './connector-loss.ts';
import {
  decibelFromNepers,
  decibelPerKilometreFromNepersPerMetre as inDecibelPerKilometre,
} from './decibel.ts';

const ceilingAt = (designation: CableDesignation, wavelength: number) =>
  inDecibelPerKilometre(attenuationCeiling(designation, wavelength)!.attenuation);

const g657 = lossRow('att-itu-g657a-limits');
test(g657.title, () => {
  for (const designation of ['G.657.A', 'G.652.D'] as const) {
    for (const wavelength of [1310e-9, 1500e-9, 1600e-9, 1625e-9]) {
      expect(
        misses(g657, {
          max_dB_per_km_1310_1625nm: ceilingAt(designation, wavelength),
          max_dB_per_km_1383nm_after_hydrogen: ceilingAt(designation, 1383e-9),
          max_dB_per_km_1530_1565nm: ceilingAt(designation, 1550e-9),
        }),
      ).toEqual([]);
    }
  }
});

const g651 = lossRow('att-g6511');
test(g651.title, () => {
  expect(
    misses(g651, {
      max_dB_per_km_850nm: ceilingAt('G.651.1', 850e-9),
      max_dB_per_km_1300nm: ceilingAt('G.651.1', 1300e-9),
    }),
  ).toEqual([]);
  expect(attenuationCeiling('G.651.1', 850e-9)!.evidence).toBe('from memory');
});

const tia = lossRow('att-tia568-planning');
test(tia.title, () => {
  const typical = (wavelength: number) =>
    attenuationCeilings.find(
      ({ designation, kind, band }) =>
        designation === 'TIA-568 multimode' && kind === 'typical' && band?.from === wavelength,
    )!;
  const outside = attenuationCeilings.find(({ designation }) => designation === 'TIA-568 outside plant')!;
  expect(
    misses(tia, {
      mm850Typical_dB_per_km: inDecibelPerKilometre(typical(850e-9).attenuation),
      mm1300Typical_dB_per_km: inDecibelPerKilometre(typical(1300e-9).attenuation),
      smOutsidePlantMax_dB_per_km: inDecibelPerKilometre(outside.attenuation),
      connectorPairMax_dB: decibelFromNepers(connectorPairCeiling.loss),
    }),
  ).toEqual([]);
});

test('a telecom designation says nothing in the visible, and its edges belong to it', () => {
  for (const designation of ['G.652.D', 'G.657.A', 'G.651.1', 'TIA-568 multimode'] as const) {
    expect(attenuationCeiling(designation, 520e-9)).toBeNull();
  }
  expect(ceilingAt('G.652.D', 1565 * 1e-9)).toBeCloseTo(0.3, 12);
  expect(ceilingAt('G.652.D', 1566e-9)).toBeCloseTo(0.4, 12);
  expect(attenuationCeiling('G.652.D', 1626e-9)).toBeNull();
});
