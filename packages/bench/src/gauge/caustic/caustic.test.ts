import { normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { caustic } from './caustic.ts';

test('diameters read to a tenth of the waist leave that open, however often they came out alike', () => {
  const random = seededUniform(6);
  let held = 0;
  for (let k = 0; k < 100; k++) {
    // a waist of 0.9 to 1.1 mm, read to 0.1 mm: hyperbola of any beam, lengths in Rayleigh lengths of 0.1 m
    const waist = (0.9 + 0.2 * random()) * 1e-3;
    const places = [-3.4, -2.6, -0.9, -0.5, -0.2, 0.1, 0.5, 0.8, 2.2, 2.9, 3.6];
    const read = places.map((t) => waist * Math.hypot(1, t) * (1 + 2e-3 * normalFrom(random)));
    const { answers } = caustic.measure({
      columns: {
        position: places.map((t) => 0.1 * t),
        diameter: read.map((d) => Math.round(d / 1e-4) * 1e-4),
      },
      settings: {},
      words: {},
      picture: null,
    });
    const { low, high } = answers.find(({ quantity }) => quantity === 'waistDiameter_m')!;
    if (low! <= waist && waist <= high!) held += 1;
  }
  // of a hundred intervals that hold the truth with 90 %, fewer than 81 do once in three hundred draws (binomial)
  expect(held).toBeGreaterThan(80);
});

/** Of so many scans at these places (in Rayleigh lengths), whose scale drifts by 2 % up or down, how many hold the waist's position. */
function heldWhileDrifting(scans: number, places: readonly number[]): number {
  const random = seededUniform(7);
  let held = 0;
  for (let k = 0; k < scans; k++) {
    const drift = k % 2 === 0 ? 0.02 : -0.02;
    const last = places.length - 1;
    const { answers } = caustic.measure({
      columns: {
        position: places.map((t) => 0.1 * t),
        diameter: places.map(
          (t, i) =>
            1e-3 * Math.hypot(1, t) * (1 + drift * (i / last - 0.5)) * (1 + 4e-3 * normalFrom(random)),
        ),
      },
      settings: {},
      words: {},
      picture: null,
    });
    const { low, high } = answers.find(({ quantity }) => quantity === 'waistPosition_m')!;
    if (low! <= 0 && 0 <= high!) held += 1;
  }
  return held;
}

test('a scale that drifts by two per cent along the scan moves the waist, and the interval holds it', () => {
  const places = [-4, -3.1, -2.3, -0.9, -0.5, -0.2, 0.1, 0.5, 0.8, 2.4, 3.2, 3.8];
  expect(heldWhileDrifting(100, places)).toBeGreaterThan(80);
});

test('of thousands of diameters some tell the drift as well as all', () => {
  const places = Array.from({ length: 3003 }, (_, i) => (8 * i) / 3002 - 4);
  // of twenty intervals that hold the truth with 90 %, fewer than 14 do once in four hundred draws (binomial)
  expect(heldWhileDrifting(20, places)).toBeGreaterThan(13);
});

test('a waist that no reading came within a Rayleigh length of is seldom told, however lucky the readings', () => {
  const random = seededUniform(8);
  const places = Array.from({ length: 12 }, (_, i) => 1.2 + (3.8 * i) / 11);
  let told = 0;
  for (let k = 0; k < 200; k++) {
    const { answers } = caustic.measure({
      columns: {
        position: places.map((t) => 0.1 * t),
        diameter: places.map((t) => 1e-3 * Math.hypot(1, t) * (1 + 1e-2 * normalFrom(random))),
      },
      settings: {},
      words: {},
      picture: null,
    });
    if (answers.find(({ quantity }) => quantity === 'waistDiameter_m')!.value !== null) told += 1;
  }
  // a Rayleigh length that is surely long enough with nineteen of twenty is so by chance at most once in twenty: of 200
  // sets more than 16 are with less than two in a hundred (binomial)
  expect(told).toBeLessThan(17);
});
