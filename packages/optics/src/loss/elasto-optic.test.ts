import { expect, test } from 'vitest';
import { lossRow, misses } from '../../reference/loss-rows.ts';
import { OutOfRange } from '../out-of-range.ts';
import { bulkSilicaRadiusFactor } from './bend.ts';
import { effectiveRadiusFactor, elastoOpticCoefficients, strainOpticFactor } from './elasto-optic.ts';

const [bulk, inFibre] = elastoOpticCoefficients;

const factor = lossRow('bend-elasto-optic-factor-bulk');
test(factor.title, () => {
  const { index, p11, p12, poisson } = factor.inputs;
  expect([bulk.p11, bulk.p12, bulk.poissonRatio]).toEqual([p11, p12, poisson]);
  const radiusFactor = effectiveRadiusFactor(index!, bulk);
  expect(misses(factor, { radiusFactor })).toEqual([]);
  expect(Math.abs(radiusFactor - bulkSilicaRadiusFactor)).toBeLessThan(0.005); // quoted with two decimals
});

test('coefficients measured in fibre make the factor 1.25', () => {
  // R. T. Schermer and J. H. Cole, IEEE J. Quantum Electron. 43, 899 (2007), with A. Bertholds and R. Dändliker's
  // coefficients; two decimals, computed elsewhere
  expect(Math.abs(effectiveRadiusFactor(1.457, inFibre) - 1.25)).toBeLessThan(0.006);
});

test('stretched fibre is 1.150·10⁷ rad/m longer for light of 633 nm, as measured', () => {
  // A. Bertholds and R. Dändliker, J. Lightwave Technol. 6, 17 (1988) (read); their index and wavelength to three digits
  const phase = ((2 * Math.PI * 1.457) / 632.8e-9) * strainOpticFactor(1.457, inFibre);
  expect(Math.abs(phase / 1.15e7 - 1)).toBeLessThan(0.01);
});

test('glass that strain does not change feels the bend as it is', () => {
  expect(effectiveRadiusFactor(1.457, { ...bulk, p11: 0, p12: 0 })).toBe(1);
  expect(() => effectiveRadiusFactor(4, bulk)).toThrow(OutOfRange);
  expect(() => effectiveRadiusFactor(0, bulk)).toThrow(OutOfRange);
});
