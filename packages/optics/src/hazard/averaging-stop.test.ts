import { expect, test } from 'vitest';
import { departures, hazardCase, numberIn } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import { averagingStop, nearestEyeDistance, stopArea } from './averaging-stop.ts';
import { averageIrradianceFrom1e, fractionThroughStop, width1eFromWidth1e2 } from './beam-definition.ts';
import type { LimitSet, Tissue } from './limit-set.ts';
import { viewingConditions } from './viewing-condition.ts';

for (const id of ['SAF-AP-EYE-532', 'SAF-AP-EYE-1550-100MS', 'SAF-AP-SKIN-532', 'SAF-AP-EYE-1550-5S']) {
  const one = hazardCase(id);
  test(one.title, () => {
    const { diameter } = averagingStop(
      one.inputs.limits as LimitSet,
      one.inputs.organ as Tissue,
      numberIn(one, 'wavelength_m'),
      numberIn(one, 'time_s'),
    );
    expect(departures(one, { aperture_m: diameter })).toEqual([]);
  });
}

for (const id of ['SAF-AP-7MM-1W', 'SAF-AP-1MW-7MM']) {
  const one = hazardCase(id);
  test(one.title, () => {
    // a beam far narrower than the stop
    const irradiance = averageIrradianceFrom1e(numberIn(one, 'power_W'), 1e-4, numberIn(one, 'aperture_m'));
    expect(departures(one, { E_W_m2: irradiance })).toEqual([]);
  });
}

const area = hazardCase('SAF-AP-7MM-AREA');
test(area.title, () => {
  expect(departures(area, { A_m2: stopArea(numberIn(area, 'aperture_m')) })).toEqual([]);
});

const overfill = hazardCase('SAF-AP-GAUSS-OVERFILL');
test(overfill.title, () => {
  const fraction = fractionThroughStop(
    width1eFromWidth1e2(numberIn(overfill, 'beam_1e2_diameter_m')),
    numberIn(overfill, 'aperture_m'),
  );
  expect(departures(overfill, { fraction })).toEqual([]);
});

const telescope = hazardCase('SAF-AP-COND1');
test(telescope.title, () => {
  const [row] = viewingConditions.filter(({ name, band }) => name === 'telescope' && band[0] === 400);
  expect(departures(telescope, { aperture_m: row!.stopDiameter })).toEqual([]);
  expect(row!.distance).toBe(2);
});

const nakedEye = hazardCase('SAF-AP-COND3');
test(nakedEye.title, () => {
  const [row] = viewingConditions.filter(({ name, band }) => name === 'naked eye' && band[0] === 400);
  expect(departures(nakedEye, { distance_m: row!.distance })).toEqual([]);
  expect(departures(nakedEye, { distance_m: nearestEyeDistance })).toEqual([]);
  expect(row!.stopDiameter).toBe(7e-3);
});

const loupe = hazardCase('SAF-AP-COND2-2001');
test(loupe.title, () => {
  const [row] = viewingConditions.filter(({ edition }) => edition === '2001');
  expect(departures(loupe, { distance_m: row!.distance })).toEqual([]);
  // 70 mm in 2007: from memory
  expect(viewingConditions.find(({ edition }) => edition === '2007')!.basis.evidence).toBe('from memory');
});

test('beyond 1400 nm the stop grows from 1 to 3.5 mm, in the older set a little earlier', () => {
  // BGV B2, table 5: read; 0.3 s of the Directive: read
  const at = (set: LimitSet, time: number) => averagingStop(set, 'eye', 1550e-9, time).diameter;
  expect(at('icnirp2013', 0.34)).toBe(1e-3);
  expect(at('eu2006', 0.34)).toBeCloseTo(1.5e-3 * 0.34 ** 0.375, 12);
  expect(at('eu2006', 0.3)).toBeCloseTo(0.955e-3, 6);
  expect(at('icnirp2013', 0.35)).toBe(1e-3);
  for (const set of ['eu2006', 'icnirp2013'] as const) {
    expect(at(set, 10)).toBe(3.5e-3);
    expect(at(set, 3e4)).toBe(3.5e-3);
  }
});

test('at 400 and 1400 nm the smaller stop of both sides is taken', () => {
  expect(averagingStop('eu2006', 'eye', 400e-9, 10).diameter).toBe(1e-3);
  expect(averagingStop('eu2006', 'eye', 1400e-9, 10).diameter).toBe(3.5e-3);
  expect(averagingStop('eu2006', 'eye', 1399e-9, 10).diameter).toBe(7e-3);
});

test('what no table covers is a proposal, or refused', () => {
  expect(averagingStop('eu2006', 'eye', 0.5e-3, 10).basis.evidence).toBe('proposal');
  expect(averagingStop('eu2006', 'eye', 10e-6, 10).basis.evidence).toBe('read');
  expect(() => averagingStop('eu2006', 'eye', 300e-9, 10)).toThrow(OutOfRange);
});
