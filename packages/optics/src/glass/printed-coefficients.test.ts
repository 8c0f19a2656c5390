import { describe, expect, test } from 'vitest';
import { glassNamed, glassNames } from './glass-named.ts';
import { refractiveIndex } from './refractive-index.ts';
import { thermoOpticCoefficient } from './thermo-optic.ts';

/**
 * The lines of the source as they stand there, one glass a row, and its formulas worked from them without the tables of
 * this folder: a digit copied wrongly into either does not go unnoticed.
 */
const printed = {
  source: 'refractiveindex.info database (CC0), which names the papers and catalogues',
  obtained: 'read in the source, a stored copy',
  // form 1: n² = 1 + A + Σ B L²/(L² − C²); form 2: n² = 1 + A + Σ B L²/(L² − C); form 3: n² = A + Σ B L^C; L in µm
  rows: [
    ['fused silica', 1, '0.21 3.71', '0 0.6961663 0.0684043 0.4079426 0.1162414 0.8974794 9.896161', ''],
    ['GeO2 glass', 1, '0.36 4.3', '0 0.80686642 0.068972606 0.71815848 0.15396605 0.85416831 11.841931', ''],
    [
      'N-BK7',
      2,
      '0.3 2.5',
      '0 1.03961212 0.00600069867 0.231792344 0.0200179144 1.01046945 103.560653',
      '1.86e-06 1.31e-08 -1.37e-11 4.34e-07 6.27e-10 0.17',
    ],
    [
      'N-BAK4',
      2,
      '0.334 2.5',
      '0 1.28834642 0.00779980626 0.132817724 0.0315631177 0.945395373 105.965875',
      '3.06e-06 1.44e-08 -2.23e-11 5.46e-07 6.05e-10 0.189',
    ],
    [
      'F2',
      2,
      '0.32 2.5',
      '0 1.34533359 0.00997743871 0.209073176 0.0470450767 0.937357162 111.886764',
      '1.51e-06 1.56e-08 -2.78e-11 9.34e-07 1.04e-09 0.25',
    ],
    [
      'N-SF11',
      2,
      '0.37 2.5',
      '0 1.73759695 0.013188707 0.313747346 0.0623068142 1.89878101 155.23629',
      '-3.56e-06 9.2e-09 -2.1e-11 9.65e-07 1.44e-09 0.294',
    ],
    [
      'N-SF6',
      2,
      '0.37 2.5',
      '0 1.77931763 0.0133714182 0.338149866 0.0617533621 2.08734474 174.01759',
      '-4.93e-06 7.02e-09 -2.4e-11 9.84e-07 1.54e-09 0.29',
    ],
    [
      'P-SK57Q1',
      2,
      '0.31 2.5',
      '0 1.30536483 0.00736408831 0.171434328 0.0255786047 1.10117219 106.72606',
      '',
    ],
    [
      'D-ZK3',
      2,
      '0.302 2.325',
      '0 1.33936811 0.00760612309 0.148690268 0.0238444644 1.00954033 89.0419787',
      '1.68e-06 9.68e-09 -2e-11 5.34e-07 1.41e-09 0.172',
    ],
    ['CaF2', 1, '0.23 9.7', '0 0.5675888 0.050263605 0.4710914 0.1003909 3.8484723 34.649040', ''],
    ['sapphire o', 1, '0.20 5.0', '0 1.4313493 0.0726631 0.65054713 0.1193242 5.3414021 18.028251', ''],
    ['sapphire e', 1, '0.20 5.0', '0 1.5039759 0.0740288 0.55069141 0.1216529 6.5927379 20.072248', ''],
    ['LiNbO3 o', 2, '0.4 5.0', '0 2.6734 0.01764 1.2290 0.05914 12.614 474.60', ''],
    ['LiNbO3 e', 2, '0.4 5.0', '0 2.9804 0.02047 0.5981 0.0666 8.9543 416.08', ''],
    ['Bi4Ge3O12', 1, '0.305 1.00', '0 3.1218393 0.1807', ''],
    ['Bi12SiO20', 1, '0.48 0.7', '1.72777 3.01705 0.2661', ''],
    [
      'PMMA',
      3,
      '0.42 1.62',
      '2.1778 6.1209e-3 2 -1.5004e-3 4 2.3678e-2 -2 -4.2137e-3 -4 7.3417e-4 -6 -4.5042e-5 -8',
      '',
    ],
    ['polycarbonate', 2, '0.4368 1.052', '0 1.4182 0.021304', ''],
    ['polystyrene', 2, '0.4368 1.052', '0 1.4435 0.020216', ''],
  ],
} as const;

const numbers = (line: string) => line.split(' ').map(Number);

function indexFrom(form: 1 | 2 | 3, line: string, micrometres: number): number {
  const [constant, ...rest] = numbers(line);
  let squared = form === 3 ? constant! : 1 + constant!;
  for (let i = 0; i + 1 < rest.length; i += 2) {
    const b = rest[i]!;
    const c = rest[i + 1]!;
    if (form === 3) squared += b * micrometres ** c;
    else squared += b / (1 - (form === 1 ? c ** 2 : c) / micrometres ** 2);
  }
  return Math.sqrt(squared);
}

describe(`coefficients as printed: ${printed.source}`, () => {
  test('every glass has its row', () => {
    expect(printed.rows.map(([name]) => name).sort()).toEqual([...glassNames].sort());
  });

  test.each(printed.rows)('%s', (name, form, range, coefficients, thermal) => {
    const glass = glassNamed(name);
    const [shortest, longest] = numbers(range) as [number, number];
    // 1e-12: the range is printed in µm and kept in m
    expect(glass.range[0] / (shortest * 1e-6)).toBeCloseTo(1, 12);
    expect(glass.range[1] / (longest * 1e-6)).toBeCloseTo(1, 12);
    for (const share of [0, 0.2, 0.4, 0.6, 0.8, 1]) {
      const micrometres = shortest + share * (longest - shortest);
      const index = indexFrom(form, coefficients, micrometres);
      // the wavelength rounds once more on its way through metres, and near a resonance the index notices
      expect(Math.abs(refractiveIndex(glass, micrometres * 1e-6) - index)).toBeLessThan(1e-14);
      if (thermal === '') continue;
      const [d0, , , e0, , resonance] = numbers(thermal) as [number, number, number, number, number, number];
      const perKelvin = ((index ** 2 - 1) / (2 * index)) * (d0 + e0 / (micrometres ** 2 - resonance ** 2));
      // where the two terms nearly cancel the sum keeps fewer digits: 1e-17 is a trillionth of either
      expect(Math.abs(thermoOpticCoefficient(glass, micrometres * 1e-6) - perKelvin)).toBeLessThan(1e-17);
    }
    if (thermal !== '') {
      expect(glass.thermal).toMatchObject({
        d1: numbers(thermal)[1],
        d2: numbers(thermal)[2],
        e1: numbers(thermal)[4],
      });
    }
  });
});
