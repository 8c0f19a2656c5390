import { expect, test } from 'vitest';
import { departures, hazardCase, hazardCases, numberIn } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import {
  breakpointT1,
  breakpointT2,
  correctionA,
  correctionB,
  correctionC,
  correctionE,
  largestCountedAngle,
  photochemicalFieldOfView,
} from './correction-factors.ts';
import type { LimitSet } from './limit-set.ts';

for (const one of hazardCases.filter(({ topic }) => topic === 'factors')) {
  test(one.title, () => {
    const [name = ''] = Object.keys(one.expected);
    expect(departures(one, { [name]: factorOf(name) })).toEqual([]);

    function factorOf(symbol: string): number {
      const set = (one.inputs.limits ?? 'eu2006') as LimitSet;
      switch (symbol) {
        case 'C_A':
          return correctionA(numberIn(one, 'wavelength_m')).value;
        case 'C_B':
          return correctionB(numberIn(one, 'wavelength_m')).value;
        case 'C_C':
          return correctionC(set, numberIn(one, 'wavelength_m')).value;
        case 'C_E':
          return correctionE(set, numberIn(one, 'alpha_rad'), numberIn(one, 'time_s')).value;
        case 'T_2':
          return breakpointT2(numberIn(one, 'alpha_rad')).value;
        default:
          throw new Error(symbol);
      }
    }
  });
}

// [what, just below the boundary, on it, just above]: Directive 2006/25/EC, table 2.5 (read), worked by hand.
// C_C beyond 1200 nm in icnirp2013: from memory. On the boundary the smaller value is the stricter.
const boundaries: readonly (readonly [string, (nm: number) => number, number, number, number, number])[] = [
  ['C_A at 700 nm', (nm) => correctionA(nm * 1e-9).value, 700, 1, 1, 1],
  ['C_A at 1050 nm', (nm) => correctionA(nm * 1e-9).value, 1050, 5.0119, 5, 5],
  ['C_B at 450 nm', (nm) => correctionB(nm * 1e-9).value, 450, 1, 1, 1],
  ['C_C at 1150 nm', (nm) => correctionC('eu2006', nm * 1e-9).value, 1150, 1, 1, 1],
  ['C_C of eu2006 at 1200 nm', (nm) => correctionC('eu2006', nm * 1e-9).value, 1200, 7.9433, 7.9433, 8],
  [
    'C_C of icnirp2013 at 1200 nm',
    (nm) => correctionC('icnirp2013', nm * 1e-9).value,
    1200,
    7.9433,
    7.9433,
    8.01,
  ],
];

for (const [what, factor, at, below, on, above] of boundaries) {
  test(`${what} takes the smaller of its neighbours`, () => {
    // 1e-5 nm beside the boundary changes a factor by less than 1e-6; the numbers are printed to five digits
    expect(factor(at - 1e-5)).toBeCloseTo(below, 3);
    expect(factor(at)).toBeCloseTo(on, 3);
    expect(factor(at + 1e-5)).toBeCloseTo(above, 3);
  });
}

test('factors stop where their tables stop', () => {
  for (const outside of [() => correctionA(399e-9), () => correctionA(1401e-9), () => correctionB(701e-9)]) {
    expect(outside).toThrow(OutOfRange);
  }
  expect(correctionA(400e-9).value).toBe(1);
  expect(correctionC('eu2006', 1400e-9).value).toBe(8);
});

test('T1 goes from 10 s at 450 nm to 100 s at 500 nm and no further', () => {
  // Directive 2006/25/EC, table 2.5: read
  expect([440, 450, 475, 500, 520].map((nm) => breakpointT1(nm * 1e-9).value)).toEqual([
    10,
    10,
    expect.closeTo(31.6228, 4),
    expect.closeTo(100, 9),
    expect.closeTo(100, 9),
  ]);
});

test('T2 goes from 10 s for a point to 100 s for 100 mrad and no further', () => {
  // Directive 2006/25/EC, table 2.5: read
  expect([null, 0, 1.5e-3].map((angle) => breakpointT2(angle).value)).toEqual([10, 10, 10]);
  expect(breakpointT2(0.1).value).toBeCloseTo(100, 9);
  expect(breakpointT2(0.3).value).toBeCloseTo(100, 9);
});

test('the largest counted angle of 2013 meets itself at 625 µs and 0.25 s', () => {
  // ICNIRP 2013, from memory: 5 mrad, 200·√t mrad, 100 mrad
  expect([1e-6, 625e-6, 0.01, 0.25, 10].map((t) => largestCountedAngle('icnirp2013', t).value)).toEqual([
    5e-3,
    expect.closeTo(5e-3, 12),
    expect.closeTo(20e-3, 12),
    expect.closeTo(100e-3, 12),
    100e-3,
  ]);
  expect(largestCountedAngle('eu2006', 1e-6).value).toBe(100e-3);
});

test('the photochemical field of view grows from 11 to 110 mrad', () => {
  // Directive 2006/25/EC, table 2.5: read
  expect([10, 100, 2500, 1e4, 3e4].map((t) => photochemicalFieldOfView(t).value)).toEqual([
    11e-3,
    expect.closeTo(11e-3, 12),
    expect.closeTo(55e-3, 12),
    expect.closeTo(110e-3, 12),
    110e-3,
  ]);
});

test('a source of unknown size, or smaller than 1.5 mrad, raises no limit', () => {
  for (const angle of [null, 0, 1e-3, 1.5e-3]) {
    expect(correctionE('eu2006', angle, 10).value).toBe(1);
  }
  expect(() => correctionE('eu2006', -1e-3, 10)).toThrow(OutOfRange);
  expect(() => correctionE('eu2006', Number.NaN, 10)).toThrow(OutOfRange);
});

test('every factor says what it rests on', () => {
  expect(correctionC('icnirp2013', 1310e-9).basis.evidence).toBe('from memory');
  expect(correctionC('eu2006', 1310e-9).basis.evidence).toBe('read');
  expect(correctionC('icnirp2013', 1100e-9).basis.evidence).toBe('read');
  expect(hazardCase('SAF-CC-1310-2013').mark).toBe('M');
  expect(hazardCase('SAF-CC-1310-EU').mark).toBe('R');
});
