import { expect, test } from 'vitest';
import { lossRow, misses } from '../../reference/loss-rows.ts';
import { OutOfRange } from '../out-of-range.ts';
import { fibreTransmission } from './attenuation.ts';
import {
  decibelFromNepers,
  decibelFromTransmission,
  decibelPerKilometreFromNepersPerMetre,
  nepersFromDecibel,
  nepersFromTransmission,
  nepersPerMetreFromDecibelPerKilometre,
  transmissionFromDecibel,
  transmissionFromNepers,
} from './decibel.ts';

const budget = lossRow('att-budget-length');
test(budget.title, () => {
  const { attenuation_dB_per_km, length_m } = budget.inputs;
  const transmission = fibreTransmission(
    nepersPerMetreFromDecibelPerKilometre(attenuation_dB_per_km!),
    length_m!,
  );
  expect(misses(budget, { loss_dB: decibelFromTransmission(transmission), transmission })).toEqual([]);
});

// The decibel's definition: whole powers of ten, exact up to the rounding of ln and exp.
const definition = [
  { loss: 0, transmission: 1 },
  { loss: 10, transmission: 0.1 },
  { loss: 30, transmission: 1e-3 },
  { loss: -20, transmission: 100 },
];
for (const { loss, transmission } of definition) {
  test(`${loss} dB is a transmission of ${transmission}`, () => {
    expect(transmissionFromDecibel(loss)).toBeCloseTo(transmission, 12);
    expect(decibelFromTransmission(transmission)).toBeCloseTo(loss, 12);
  });
}

test('a neper of power is 4.343 dB, not the 8.686 dB of a neper of amplitude', () => {
  expect(decibelFromNepers(1)).toBeCloseTo(4.342944819, 9); // 10/ln 10, printed in many tables
});

test('there and back restores every figure', () => {
  for (const x of [1e-6, 0.27, 3, 15, 200]) {
    expect(decibelFromNepers(nepersFromDecibel(x)) / x).toBeCloseTo(1, 14);
    expect(nepersFromTransmission(transmissionFromNepers(x)) / x).toBeCloseTo(1, 9); // 1e-6 keeps ten digits in a 1 − 1e-6
    expect(decibelPerKilometreFromNepersPerMetre(nepersPerMetreFromDecibelPerKilometre(x)) / x).toBeCloseTo(
      1,
      14,
    );
  }
});

test('full transmission is no loss, none is an infinite one, and a negative one is refused', () => {
  expect(Object.is(decibelFromTransmission(1), 0)).toBe(true);
  expect(decibelFromTransmission(0)).toBe(Infinity);
  expect(transmissionFromDecibel(Infinity)).toBe(0);
  expect(() => decibelFromTransmission(-1e-300)).toThrow(OutOfRange);
  expect(() => decibelFromTransmission(Number.NaN)).toThrow(OutOfRange);
  expect(() => transmissionFromDecibel(Number.NaN)).toThrow(OutOfRange);
});
