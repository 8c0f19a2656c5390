import fc from 'fast-check';
import { expect, test } from 'vitest';
import { departures, hazardCase, numberIn, statedLimit } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import {
  diffuseDistance,
  diffuseIrradiance,
  diffuseViewingDistances,
  glassReflection,
  leastMirrorPart,
} from './diffuse-viewing.ts';
import { governingLimit } from './governing-limit.ts';

for (const id of ['SAF-DIF-445-1W', 'SAF-DIF-445-10W-10S', 'SAF-DIF-3B-13CM', 'SAF-DIF-OSHA-YAG']) {
  const one = hazardCase(id);
  test(one.title, () => {
    const limit =
      'mpe_W_m2' in one.inputs
        ? statedLimit(numberIn(one, 'mpe_W_m2'))
        : governingLimit({
            tissue: 'eye',
            wavelength: numberIn(one, 'wavelength_m'),
            exposureTime: numberIn(one, 'time_s'),
            sourceAngle: null,
          }).governing;
    const spot = {
      power: numberIn(one, 'power_W'),
      reflectance: numberIn(one, 'reflectance'),
      viewingAngle: numberIn(one, 'theta_rad'),
    };
    expect(departures(one, { distance_m: diffuseDistance(spot, limit).distance })).toEqual([]);
  });
}

const irradiance = hazardCase('SAF-DIF-IRRADIANCE');
test(irradiance.title, () => {
  const spot = {
    power: numberIn(irradiance, 'power_W'),
    reflectance: numberIn(irradiance, 'reflectance'),
    viewingAngle: numberIn(irradiance, 'theta_rad'),
  };
  const atEye = diffuseIrradiance(spot, numberIn(irradiance, 'distance_m'));
  expect(departures(irradiance, { E_W_m2: atEye })).toEqual([]);
});

const fraction = fc.double({ min: 0, max: 1, noNaN: true });
const angle = fc.double({ min: 0, max: Math.PI / 2, noNaN: true });

test('a surface or a direction nobody knows counts as the worst', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-6, max: 100, noNaN: true }),
      fraction,
      angle,
      (power, reflectance, viewingAngle) => {
        const limit = statedLimit(10);
        const worst = diffuseDistance({ power, reflectance: null, viewingAngle: null }, limit).distance;
        expect(worst).toBeGreaterThanOrEqual(
          diffuseDistance({ power, reflectance, viewingAngle }, limit).distance,
        );
        expect(diffuseDistance({ power, reflectance: 1, viewingAngle: 0 }, limit).distance).toBe(worst);
      },
    ),
  );
});

test('all the light of a Lambert surface goes into its half space', () => {
  // integral of E over the hemisphere of radius r: 2π r² ∫ E(θ) sin θ dθ = ρP, by the midpoint rule
  const steps = 20_000;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const theta = ((i + 0.5) * (Math.PI / 2)) / steps;
    const spot = { power: 1, reflectance: 0.8, viewingAngle: theta };
    sum += 2 * Math.PI * 0.3 ** 2 * diffuseIrradiance(spot, 0.3) * Math.sin(theta) * (Math.PI / 2 / steps);
  }
  expect(sum).toBeCloseTo(0.8, 6);
});

test('up to the limit over 7 mm a spot has no distance', () => {
  expect(diffuseDistance({ power: 3.8e-4, reflectance: 1, viewingAngle: 0 }, statedLimit(10)).distance).toBe(
    0,
  );
});

test('glass returns 4 % a face and 8 % a plate, and a glossy surface is taken as glass', () => {
  // AUVA teaching page: read; the least mirror part is a proposal
  expect([glassReflection.face, glassReflection.plate]).toEqual([0.04, 0.08]);
  expect(leastMirrorPart.value).toBe(glassReflection.face);
  expect(leastMirrorPart.basis.evidence).toBe('proposal');
  expect(diffuseViewingDistances).toEqual([0.1, 0.3]);
});

test('what is no surface and no direction is refused', () => {
  const spot = { power: 1, reflectance: 1, viewingAngle: 0 };
  const limit = statedLimit(10);
  for (const bad of [
    { ...spot, reflectance: 1.01 },
    { ...spot, reflectance: -0.01 },
    { ...spot, viewingAngle: 1.6 },
    { ...spot, viewingAngle: -0.1 },
    { ...spot, power: -1 },
  ]) {
    expect(() => diffuseDistance(bad, limit)).toThrow(OutOfRange);
  }
  expect(() => diffuseIrradiance(spot, 0)).toThrow(OutOfRange);
});
