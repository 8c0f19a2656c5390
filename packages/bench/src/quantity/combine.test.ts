import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Refusal } from '../refusal.ts';
import { combine, exact } from './combine.ts';
import { quantileOf } from './distribution.ts';
import { compareOrigins, weakestOrigin } from './origin.ts';
import { type Origin, origins, type Quantity, type Shape } from './quantity.ts';

function quantity(
  value: number,
  uncertainty: number,
  shape: Shape = 'normal',
  origin: Origin = 'measured',
): Quantity {
  return { value, uncertainty, shape, origin };
}

const inputs = fc.array(
  fc.record({
    value: fc.double({ min: 0.1, max: 10, noNaN: true }),
    uncertainty: fc.double({ min: 1e-3, max: 0.02, noNaN: true }),
    shape: fc.constantFrom<Shape>('normal', 'rectangular', 'positive'),
    origin: fc.constantFrom(...origins),
  }),
  { minLength: 1, maxLength: 5 },
);

describe('uncertainties combine to first order', () => {
  test('of a sum they add in quadrature, whatever the shapes (JCGM 100:2008, 5.1.2, from memory)', () => {
    fc.assert(
      fc.property(inputs, (terms) => {
        const sum = combine(terms, (...values) => values.reduce((a, b) => a + b, 0));
        const expected = Math.hypot(...terms.map(({ uncertainty }) => uncertainty));
        // The rise of up to 50 is a difference of doubles: 50 · 2e-16 over 1e-3.
        expect(Math.abs(sum.uncertainty / expected - 1)).toBeLessThan(1e-10);
      }),
    );
  });
  test('of a product the shares add in quadrature (JCGM 100:2008, 5.1.6, equation (12), from memory)', () => {
    const [wavelength, focalLength, radius] = [
      quantity(635e-9, 1e-9),
      quantity(6.2e-3, 62e-6),
      quantity(4e-4, 1.2e-5),
    ];
    const spot = combine([wavelength, focalLength, radius], (l, f, w) => (l! * f!) / (Math.PI * w!));
    const shares = [1e-9 / 635e-9, 0.01, 0.03];
    // 1/w is bent: its slope one uncertainty wide is off by the square of its share, 9e-4.
    expect(Math.abs(spot.uncertainty / spot.value / Math.hypot(...shares) - 1)).toBeLessThan(1e-3);
    expect(spot.value).toBeCloseTo((635e-9 * 6.2e-3) / (Math.PI * 4e-4), 15);
  });
  test('a hundred thousand samples agree', () => {
    const [a, b] = [quantity(3, 0.1, 'rectangular'), quantity(2, 0.1, 'positive')];
    const runs = 400;
    const results: number[] = [];
    // A grid of midpoints in both probabilities instead of chance: 160 000 equally likely samples.
    for (let i = 0; i < runs; i++) {
      for (let j = 0; j < runs; j++)
        results.push(quantileOf(a, (i + 0.5) / runs) * quantileOf(b, (j + 0.5) / runs));
    }
    const mean = results.reduce((sum, x) => sum + x, 0) / results.length;
    const spread = Math.sqrt(results.reduce((sum, x) => sum + (x - mean) ** 2, 0) / results.length);
    // Second order: the logarithm of b is 5 % wide, which widens it by a share of (3/4)·0.05² ≈ 0.2 %, and the
    // product term adds (0.1·0.1)²/2 to 0.13; the grid misses the outermost 1/800 of the bell.
    expect(Math.abs(combine([a, b], (x, y) => x! * y!).uncertainty / spread - 1)).toBeLessThan(5e-3);
  });
  test('a quantity combined alone is itself, however wide a positive one is', () => {
    for (const share of [1e-17, 1e-6, 0.1, 1, 8]) {
      const alone = combine([quantity(2, 2 * share, 'positive')], (x) => x!);
      // A share near the rounding of 2 cannot be told from none; above, the rise loses digits as 1e-16/share.
      expect(Math.abs(alone.uncertainty - 2 * share)).toBeLessThan(1e-15 + 1e-14 * share);
    }
  });
  test('no formula is asked about a negative loss', () => {
    const root = combine([quantity(0.04, 0.08, 'positive')], (loss) => Math.sqrt(loss!));
    expect(root.value).toBe(0.2);
    expect(root.uncertainty).toBeGreaterThan(0);
  });
  test('what is exact adds nothing', () => {
    const total = combine([exact(80), quantity(0.3175e-3, 1e-6)], (turns, pitch) => turns! * pitch!);
    expect(total.uncertainty).toBeCloseTo(80e-6, 12);
    expect(total.origin).toBe('measured');
    expect(combine([], () => 7)).toEqual(exact(7));
  });
  test('a formula without a value is refused', () => {
    expect(() => combine([quantity(0, 1)], (x) => 1 / x!)).toThrow(Refusal);
    expect(() => combine([quantity(1, 2)], (x) => Math.sqrt(x!))).toThrow(Refusal);
  });
});

describe('no result is trusted more than its weakest input', () => {
  test('measured before datasheet before assumed', () => {
    expect(
      ['assumed', 'measured', 'datasheet'].sort((a, b) => compareOrigins(a as Origin, b as Origin)),
    ).toEqual(['measured', 'datasheet', 'assumed']);
    expect(weakestOrigin(['measured', 'assumed', 'datasheet'])).toBe('assumed');
    expect(weakestOrigin(['measured', 'datasheet'])).toBe('datasheet');
    expect(weakestOrigin([])).toBe('measured');
  });
  test('combining keeps to it', () => {
    fc.assert(
      fc.property(inputs, (terms) => {
        const { origin } = combine(terms, (...values) => Math.max(...values));
        for (const term of terms) expect(compareOrigins(origin, term.origin)).toBeGreaterThanOrEqual(0);
        expect(terms.some((term) => term.origin === origin)).toBe(true);
      }),
    );
  });
});
