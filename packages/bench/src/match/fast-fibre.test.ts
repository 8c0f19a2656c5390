import { modeSet, momentsOf, overlapOf, phaseSpaceFraction } from '@coreward/optics';
import { describe, expect, test } from 'vitest';
import { roundBeam } from '../forecast/fibre-taker.ts';
import { fastFibre } from './fast-fibre.ts';

// Against the exact overlap with the modes, which is held to outside references where it lives, and the exact share of
// rays: the tables may differ from them by what `round` and `roughly` promise.

const sizes = [0.03, 0.11, 0.31, 0.52, 0.83, 1.07, 1.4, 2.2, 4.9, 13];

describe('tables of round beams', () => {
  test.each([
    ['step', 1.4, 1],
    ['step', 2.3, 1.25],
    ['step', 5.6, 1],
    ['step', 5.6, 1.8],
    ['step', 14, 1],
    ['graded', 9, 1.1],
  ] as const)('%s, V = %f, M² = %f: as the modes say', (profile, vNumber, m2) => {
    const fibre = fastFibre(profile, vNumber);
    const set = modeSet(profile, vNumber);
    for (const size of sizes) {
      const exact = overlapOf(set, 1, 0.01, roundBeam(size, m2));
      for (const [table, bound] of [
        [fibre.round(m2), 0.005],
        [fibre.roughly(m2), 0.02],
      ] as const) {
        const { guided, fundamental } = table(Math.log(size));
        expect(Math.abs(guided - exact.guided), `guided, size ${size}`).toBeLessThan(bound);
        expect(Math.abs(fundamental! - exact.fundamental), `LP01, size ${size}`).toBeLessThan(bound);
      }
    }
  });

  test.each([
    ['step', 40, 1],
    ['graded', 60, 1.3],
  ] as const)('%s, V = %f, M² = %f: as the rays say', (profile, vNumber, m2) => {
    const table = fastFibre(profile, vNumber).round(m2);
    for (const size of sizes) {
      const moments = momentsOf(roundBeam(size, m2), (2 * Math.PI) / 0.01);
      const exact = phaseSpaceFraction(moments, 1, (vNumber * 0.01) / (2 * Math.PI), profile);
      // 4096 rays: a hundredth at worst, where half of them are cut
      expect(Math.abs(table(Math.log(size)).guided - exact), `size ${size}`).toBeLessThan(0.01);
    }
  });

  test('LP01 of very many modes is right to 0.015', () => {
    for (const [profile, vNumber] of [
      ['step', 22],
      ['step', 90],
      ['graded', 40],
    ] as const) {
      const table = fastFibre(profile, vNumber).round(1);
      const set = modeSet(profile, vNumber);
      for (const size of sizes) {
        const exact = overlapOf(set, 1, 0.01, roundBeam(size, 1)).fundamental;
        expect(Math.abs(table(Math.log(size)).fundamental! - exact)).toBeLessThan(0.015);
      }
    }
  });

  test('no share is above 1', () => {
    for (const vNumber of [2.2, 8, 60]) {
      const table = fastFibre('step', vNumber).round(1);
      for (let logSize = -6; logSize < 4; logSize += 0.07)
        expect(table(logSize).guided).toBeLessThanOrEqual(1);
    }
  });
});
