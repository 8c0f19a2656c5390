import fc from 'fast-check';
import { expect, test } from 'vitest';
import { departures, hazardCase } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import { exposureLimit } from './exposure-limit.ts';
import { limitSets } from './limit-set.ts';
import { combinedExposure, type Line, worseCombinedExposure } from './several-wavelengths.ts';

const line = (nm: number, irradiance: number, exposureTime = 10): Line => ({
  tissue: 'eye',
  wavelength: nm * 1e-9,
  exposureTime,
  sourceAngle: null,
  irradiance,
});

const mixed = hazardCase('SAF-MIX-633-1550');
test(mixed.title, () => {
  const components = mixed.inputs.components as readonly Readonly<
    Record<'wavelength_m' | 'E_W_m2' | 'mpe_W_m2', number>
  >[];
  for (const set of limitSets) {
    const lines = components.map(({ wavelength_m, E_W_m2, mpe_W_m2 }) => {
      const one = { ...line(1, E_W_m2), wavelength: wavelength_m };
      expect(exposureLimit(set, one).irradiance).toBeCloseTo(mpe_W_m2, 9); // the case's own limits are ours
      return one;
    });
    const { sums, largest } = combinedExposure(set, lines);
    expect(departures(mixed, { largest_ratio: largest.timesLimit })).toEqual([]);
    expect(sums).toHaveLength(2); // retina and cornea apart
  }
});

test('on the retina everything from 400 to 1400 nm adds, photochemistry for itself', () => {
  // BGI 832, table 1: read. 100 s: 10 W/m² of heat for both; 1 W/m² of photochemistry for 445 nm
  const { sums } = combinedExposure('eu2006', [line(445, 0.5, 100), line(650, 5, 100)]);
  expect(Object.fromEntries(sums.map(({ harm, timesLimit }) => [harm, timesLimit]))).toEqual({
    'photochemistry on the retina': expect.closeTo(0.5, 12),
    'heat on the retina': expect.closeTo(0.55, 12),
  });
});

test('on the skin everything from 315 nm up adds', () => {
  const onSkin = [line(375, 100), line(532, 200), line(1550, 100)].map(
    (one): Line => ({ ...one, tissue: 'skin' }),
  );
  const { sums } = combinedExposure('eu2006', onSkin);
  expect(sums).toHaveLength(1);
  // 5600·10^0.25/10, 2000 and 1000 W/m², by hand
  expect(sums[0]!.timesLimit).toBeCloseTo(100 / 995.83 + 200 / 2000 + 100 / 1000, 5);
});

test('below 400 nm and beyond 1400 nm each add for themselves', () => {
  const { sums } = combinedExposure('eu2006', [line(375, 100), line(1450, 200), line(2000, 300)]);
  expect(sums.map(({ harm, timesLimit }) => [harm, timesLimit.toFixed(3)])).toEqual([
    ['front of the eye, infrared', '0.502'],
    ['front of the eye, ultraviolet', '0.100'],
  ]);
});

const anyLine = fc
  .tuple(fc.double({ min: 315, max: 3000, noNaN: true }), fc.double({ min: 0, max: 1000, noNaN: true }))
  .map(([nm, irradiance]) => line(nm, irradiance));

test('another line never lowers a sum, and both sets are asked', () => {
  fc.assert(
    fc.property(fc.array(anyLine, { minLength: 1, maxLength: 5 }), anyLine, (lines, more) => {
      for (const set of limitSets) {
        const before = combinedExposure(set, lines);
        const after = combinedExposure(set, [...lines, more]);
        expect(after.largest.timesLimit).toBeGreaterThanOrEqual(before.largest.timesLimit);
        expect(worseCombinedExposure(lines).largest.timesLimit).toBeGreaterThanOrEqual(
          before.largest.timesLimit,
        );
      }
    }),
  );
});

test('exposures of different length are added, and this is told', () => {
  expect(combinedExposure('eu2006', [line(532, 1), line(1064, 1)]).mixesDurations).toBe(false);
  expect(combinedExposure('eu2006', [line(532, 1), line(1064, 1, 1e-8)]).mixesDurations).toBe(true);
});

test('no light, and what is no irradiance, is refused', () => {
  expect(() => combinedExposure('eu2006', [])).toThrow(OutOfRange);
  for (const bad of [-1, Number.NaN, Infinity]) {
    expect(() => combinedExposure('eu2006', [line(532, bad)])).toThrow(OutOfRange);
  }
  expect(() => combinedExposure('eu2006', [line(300, 1)])).toThrow(OutOfRange);
});
