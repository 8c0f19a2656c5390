import { expect, test } from 'vitest';
import { lossRow, lossRows, misses } from '../../reference/loss-rows.ts';
import { OutOfRange } from '../out-of-range.ts';
import { angledFacet, backReflectionOverlap } from './angled-facet.ts';
import { decibelFromTransmission } from './decibel.ts';
import { normalReflectance } from './fresnel.ts';

for (const row of lossRows.filter(({ topic }) => topic === 'angled-facet')) {
  test(row.title, () => {
    const { polishAngle_rad, index, outsideIndex } = row.inputs;
    const facet = angledFacet(polishAngle_rad!, index!, outsideIndex);
    expect(
      misses(row, {
        index: index!,
        internalIncidence_rad: facet.internalIncidence,
        externalAngleFromFacetNormal_rad: facet.externalAngle,
        deviationFromFibreAxis_rad: facet.deviation,
        deviationFromFibreAxis_deg: (facet.deviation * 180) / Math.PI,
        paraxialDeviation_rad: facet.paraxialDeviation,
        reflectanceS: facet.reflectance.s,
        reflectanceP: facet.reflectance.p,
        anamorphicMagnification: facet.anamorphicFactor,
      }),
    ).toEqual([]);
  });
}

const deflection = lossRow('conn-apc-deflection');
test(deflection.title, () => {
  const { index, facetAngle_rad } = deflection.inputs;
  expect(misses(deflection, { beamDeflection_rad: angledFacet(facetAngle_rad!, index!).deviation })).toEqual(
    [],
  );
});

const backwards = lossRow('conn-apc-return');
test(backwards.title, () => {
  const { index, facetAngle_rad, modeFieldDiameter_m, wavelength_m } = backwards.inputs;
  const overlap = backReflectionOverlap({
    polishAngle: facetAngle_rad!,
    index: index!,
    modeFieldRadius: modeFieldDiameter_m! / 2,
    wavelength: wavelength_m!,
  });
  expect(misses(backwards, { tiltOverlapLoss_dB: decibelFromTransmission(overlap) })).toEqual([]);
});

test('light keeps its étendue: width times divergence is the same on both sides of the facet', () => {
  // A small change of the angle inside turns the light outside by more, as the beam gets narrower.
  const [polish, index, step] = [0.14, 1.457, 1e-6];
  const facet = angledFacet(polish, index);
  const turned =
    (Math.asin(index * Math.sin(polish + step)) - Math.asin(index * Math.sin(polish - step))) / (2 * step);
  expect(turned * facet.anamorphicFactor).toBeCloseTo(index, 8); // central difference of 1e-6: error about 1e-10
});

test('a flat end deviates nothing, reflects as at normal incidence and takes its reflection back whole', () => {
  const flat = angledFacet(0, 1.457);
  expect(flat.deviation).toBe(0);
  expect(flat.reflectance.p).toBeCloseTo(normalReflectance(1.457, 1), 15);
  const modeFieldRadius = 2e-6;
  expect(backReflectionOverlap({ polishAngle: 0, index: 1.457, modeFieldRadius, wavelength: 5e-7 })).toBe(1);
});

test('the paraxial deviation falls short by the third order of the angle', () => {
  const short = (angle: number) =>
    angledFacet(angle, 1.46).deviation - angledFacet(angle, 1.46).paraxialDeviation;
  expect(short(0.02) / short(0.01)).toBeCloseTo(8, 1); // eight times at twice the angle, to a fifth-order part of 1e-4
});

test('an end so steep that all light stays inside is refused, just below it is not', () => {
  const critical = Math.asin(1 / 1.457);
  expect(angledFacet(critical - 1e-6, 1.457).externalAngle).toBeGreaterThan(1.56);
  expect(() => angledFacet(critical + 1e-6, 1.457)).toThrow(OutOfRange);
  expect(() => angledFacet(-0.1, 1.457)).toThrow(OutOfRange);
  const steep = { polishAngle: Math.PI / 4, index: 1.457, modeFieldRadius: 2e-6, wavelength: 5e-7 };
  expect(() => backReflectionOverlap(steep)).toThrow(OutOfRange);
});
