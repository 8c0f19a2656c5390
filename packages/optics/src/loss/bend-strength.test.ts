import { expect, test } from 'vitest';
import { lossRow, misses } from '../../reference/loss-rows.ts';
import { OutOfRange } from '../out-of-range.ts';
import {
  handlingRadii,
  longLifeShare,
  proofStrain,
  proofStress,
  radiusAtProofShare,
  stressOfStrain,
  surfaceStrain,
  youngsModulus,
} from './bend-strength.ts';

for (const id of ['bend-strain-30mm', 'bend-strain-15mm']) {
  const row = lossRow(id);
  test(row.title, () => {
    const strain = surfaceStrain(row.inputs.claddingDiameter_m!, row.inputs.bendRadius_m!);
    expect(
      misses(row, { surfaceStrain: strain, surfaceStress_Pa_at_E72GPa: stressOfStrain(strain) }),
    ).toEqual([]);
  });
}

const proof = lossRow('bend-strain-proof');
test(proof.title, () => {
  const { proofStress_Pa, youngModulus_Pa, claddingDiameter_m } = proof.inputs;
  expect([proofStress.value, youngsModulus.value]).toEqual([proofStress_Pa, youngModulus_Pa]);
  expect(
    misses(proof, {
      proofStrain: proofStrain(),
      radiusAtProofStress_m: radiusAtProofShare(claddingDiameter_m!, 1),
    }),
  ).toEqual([]);
});

const handling = lossRow('bend-radius-installation');
test(handling.title, () => {
  const { underTension, atRest } = handlingRadii(handling.inputs.outerDiameter_m!);
  expect(misses(handling, { minRadiusUnderTension_m: underTension, minRadiusInstalled_m: atRest })).toEqual(
    [],
  );
});

test('a fibre at the radius of its share bears that share, and the careful radius is the wider one', () => {
  const radius = radiusAtProofShare(125e-6, 0.2);
  expect(stressOfStrain(surfaceStrain(125e-6, radius)) / proofStress.value).toBeCloseTo(0.2, 14);
  expect(radiusAtProofShare(125e-6, longLifeShare.careful.value)).toBeGreaterThan(
    radiusAtProofShare(125e-6, longLifeShare.most.value),
  );
});

test('no diameter, no radius and no share are refused', () => {
  expect(() => surfaceStrain(0, 0.03)).toThrow(OutOfRange);
  expect(() => surfaceStrain(125e-6, 0)).toThrow(OutOfRange);
  expect(() => radiusAtProofShare(125e-6, 0)).toThrow(OutOfRange);
  expect(() => handlingRadii(0)).toThrow(OutOfRange);
});
