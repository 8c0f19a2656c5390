import { expect, test } from 'vitest';
import { lossRow, misses } from '../../reference/loss-rows.ts';
import { type FacetBeam, facetBeam } from '../beam/facet-beam.ts';
import { gaussianOverlap } from '../beam/gaussian-overlap.ts';
import { OutOfRange } from '../out-of-range.ts';
import { decibelFromTransmission } from './decibel.ts';
import { gapTransmission, offsetTransmission, tiltTransmission } from './joint.ts';

for (const id of ['conn-lateral-1um-mfd10.4', 'conn-lateral-1um-mfd4.3', 'conn-lateral-trap']) {
  const row = lossRow(id);
  test(row.title, () => {
    const { lateralOffset_m, modeFieldDiameter_m } = row.inputs;
    const transmission = offsetTransmission(lateralOffset_m!, modeFieldDiameter_m! / 2);
    expect(misses(row, { loss_dB: decibelFromTransmission(transmission) })).toEqual([]);
  });
}

test('each fault alone agrees with the general overlap of two Gaussians', () => {
  const [waistRadius, wavelength] = [2.15e-6, 633e-9];
  const axis = { wavelength, waistRadius, waistPosition: 0, quality: 1 };
  const mode = facetBeam(axis, axis);
  const displaced = (change: Partial<FacetBeam>) => gaussianOverlap(wavelength, { ...mode, ...change }, mode);
  // Both are closed forms: 1e-12 is their rounding.
  for (const offset of [0, 0.3e-6, 1e-6, 4e-6]) {
    expect(offsetTransmission(offset, waistRadius)).toBeCloseTo(displaced({ offsetX: offset }), 12);
  }
  for (const tilt of [0, 0.01, -0.05, 0.1]) {
    expect(tiltTransmission(tilt, waistRadius, wavelength)).toBeCloseTo(displaced({ tiltY: tilt }), 12);
  }
  for (const gap of [0, 1e-6, 20e-6, 100e-6]) {
    expect(gapTransmission(gap, waistRadius, wavelength)).toBeCloseTo(
      displaced({ waistZX: -gap, waistZY: -gap }),
      12,
    );
  }
});

test('in glass the wavelength is shorter: a tilt costs as much as one n times as large in air, a gap as one n times narrower', () => {
  expect(tiltTransmission(0.03, 2e-6, 633e-9, 1.46)).toBeCloseTo(
    tiltTransmission(0.03 * 1.46, 2e-6, 633e-9),
    14,
  );
  expect(gapTransmission(50e-6, 2e-6, 633e-9, 1.46)).toBeCloseTo(
    gapTransmission(50e-6 / 1.46, 2e-6, 633e-9),
    14,
  );
});

test('what is no length or angle is refused', () => {
  expect(() => offsetTransmission(1e-6, 0)).toThrow(OutOfRange);
  expect(() => offsetTransmission(Infinity, 1e-6)).toThrow(OutOfRange);
  expect(() => tiltTransmission(Number.NaN, 1e-6, 5e-7)).toThrow(OutOfRange);
  expect(() => gapTransmission(1e-6, 1e-6, 5e-7, 0)).toThrow(OutOfRange);
});
