import { expect, test } from 'vitest';
import { lossRow, misses } from '../../reference/loss-rows.ts';
import { connectorPairCeiling, insertionLosses, returnLossClasses } from './connector-loss.ts';
import { decibelFromNepers, decibelFromTransmission } from './decibel.ts';

const returns = lossRow('conn-return-loss-classes');
test(returns.title, () => {
  const polishes = returns.inputs.polish as unknown as readonly string[];
  const rows = polishes.map((asked) => returnLossClasses.find(({ polish }) => polish === asked)!);
  expect(
    misses(returns, {
      minReturnLoss_dB: rows.map(({ highestReflectance }) => decibelFromTransmission(highestReflectance)),
    }),
  ).toEqual([]);
});

const insertion = lossRow('conn-insertion-loss-typical');
test(insertion.title, () => {
  const types = insertion.inputs.types as unknown as readonly string[];
  const rows = types.map((asked) => insertionLosses.find(({ pair }) => pair === asked)!);
  expect(
    misses(insertion, {
      typicalLow_dB: rows.map(({ low }) => decibelFromNepers(low)),
      typicalHigh_dB: rows.map(({ high }) => decibelFromNepers(high)),
    }),
  ).toEqual([]);
});

test('what is typical stays below what planners grant, and a better polish returns less', () => {
  for (const { low, high, evidence } of insertionLosses) {
    expect(low).toBeLessThan(high);
    if (evidence !== 'common practice') expect(high).toBeLessThan(connectorPairCeiling.loss);
  }
  const [pc, good, upc, apc] = returnLossClasses.map(({ highestReflectance }) => highestReflectance);
  expect([pc!, good!, upc!, apc!].toSorted((a, b) => b - a)).toEqual([pc, good, upc, apc]);
});

test('grades of IEC 61755-1 are 60, 45, 35 and 26 dB (from memory)', () => {
  const grades = returnLossClasses.filter(({ polish }) => polish.startsWith('grade'));
  expect(
    grades.map(({ highestReflectance }) => Math.round(decibelFromTransmission(highestReflectance))),
  ).toEqual([60, 45, 35, 26]);
  expect(grades.every(({ evidence }) => evidence === 'from memory')).toBe(true);
});
