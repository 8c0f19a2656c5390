import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Quantity } from '../quantity/quantity.ts';
import { type Dimension, dimensionFacts, dimensions } from './dimension.ts';
import { exactText } from './exact-text.ts';
import type { QuantityOptions } from './mend.ts';
import { readQuantity } from './read-quantity.ts';
import { units } from './unit-table.ts';
import { writeQuantity, writeValue } from './write.ts';

const dimension = fc.constantFrom(...dimensions);

/** Limits a key may set: never ones between which there is nothing. */
const options: fc.Arbitrary<QuantityOptions> = fc.oneof(
  fc.constant({}),
  fc.constantFrom({ positive: true }, { positive: 'orZero' } as const, { min: 0 }),
  fc
    .tuple(fc.double({ min: 1e-9, max: 1e-3, noNaN: true }), fc.double({ min: 1.5, max: 1e4, noNaN: true }))
    .map(([min, factor]) => ({
      min,
      max: min * factor,
    })),
  fc.double({ min: 1e-9, max: 0.02, noNaN: true }).map((max) => ({ max })),
);

/** Pieces of quantities in an order that is often wrong. */
const pieces = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        '±',
        '+/-',
        '+-',
        'within',
        ' ',
        '  ',
        '-',
        '−',
        ',',
        '.',
        '/',
        '^',
        '·',
        '×10⁻³',
        'e-3',
        '%',
        '(',
        ')',
      ),
      fc.constantFrom(
        'dBm',
        'dB',
        'tpi',
        'M6x',
        '1/4-80',
        'MM',
        'micron',
        'inch',
        'NaN',
        '°C',
        '°',
        '"',
        'per',
        '⁻²',
        'to',
      ),
      fc.constantFrom(...units.keys()),
      fc.double({ noNaN: true }).map(String),
      fc.integer({ min: 0, max: 2000 }).map(String),
    ),
    { maxLength: 8 },
  )
  .map((parts) => parts.join(''));
const anyText = fc.oneof(pieces, fc.string({ unit: 'binary', maxLength: 220 }), fc.string({ maxLength: 30 }));

/** SI values that a bench could meet, of the sign and size the dimension allows. */
function valuesOf(of: Dimension): fc.Arbitrary<number> {
  const { floor, ceiling = 1e15 } = dimensionFacts[of];
  const size = fc.double({ min: -15, max: Math.log10(ceiling), noNaN: true }).map((power) => 10 ** power);
  const positive = size.map((value) => Math.min(value, ceiling));
  return floor === 'none'
    ? fc.oneof(
        positive,
        positive.map((value) => -value),
      )
    : positive;
}
const valued = dimension.chain((of) => fc.tuple(fc.constant(of), valuesOf(of)));

describe('the reader', () => {
  test('never throws, never lets anything impossible through, and its mend is read', () => {
    fc.assert(
      fc.property(anyText, dimension, options, (text, of, limits) => {
        const read = readQuantity(text, of, limits);
        if (!read.ok) {
          const offered = [...read.mend.matchAll(/`([^`]*)`/gu)].map(([, mend]) => mend ?? '');
          expect(offered.length).toBeGreaterThan(0);
          for (const mend of offered)
            expect(readQuantity(mend, of, limits), mend).toMatchObject({ ok: true });
          return;
        }
        const { value, uncertainty, shape } = read;
        expect(Number.isFinite(value)).toBe(true);
        expect(uncertainty ?? 0).toBeGreaterThanOrEqual(0);
        expect(Number.isFinite(uncertainty ?? 0)).toBe(true);
        expect(value).toBeGreaterThanOrEqual(limits.min ?? -Infinity);
        expect(value).toBeLessThanOrEqual(limits.max ?? Infinity);
        if (limits.positive === true || dimensionFacts[of].floor === 'positive')
          expect(value).toBeGreaterThan(0);
        if (shape === 'positive') expect(value).toBeGreaterThan(0);
      }),
      { numRuns: 5000 },
    );
  });
  test('reads a number as JavaScript does, whatever the digits', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-50, max: 1e50, noNaN: true }), (value) => {
        expect(readQuantity(String(value), 'number')).toMatchObject({ value });
        expect(readQuantity(`${-value} m`, 'length')).toMatchObject({ value: -value });
      }),
    );
  });
  test('a share and an amount of the same size are the same uncertainty', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), fc.integer({ min: 1, max: 24 }), (count, share) => {
        const one = readQuantity(`${count} µm ± ${share} %`, 'length');
        const other = readQuantity(`${count} µm ± ${count * share}e-2 µm`, 'length');
        if (!one.ok || !other.ok) throw new Error('refused');
        // Two roundings against one.
        expect(Math.abs((one.uncertainty ?? 0) / (other.uncertainty ?? 0) - 1)).toBeLessThan(5e-16);
      }),
    );
  });
});

describe('what is written is read back', () => {
  test('exact text to the bit', () => {
    fc.assert(
      fc.property(valued, ([of, value]) => {
        expect(readQuantity(exactText(value, of), of)).toEqual({
          ok: true,
          value,
          uncertainty: null,
          shape: 'normal',
        });
      }),
      { numRuns: 3000 },
    );
  });
  test('a value to its digits', () => {
    fc.assert(
      fc.property(valued, fc.integer({ min: 1, max: 12 }), ([of, value], digits) => {
        const read = readQuantity(writeValue(value, of, digits), of);
        if (!read.ok) throw new Error(`${writeValue(value, of, digits)}: ${read.what}`);
        // Half a unit of the last digit, of a number that may begin with a 1; a Celsius zero adds its own size.
        const zero = of === 'temperature' ? 273.15 : 0;
        const half = 0.5 * 10 ** (1 - digits) * Math.abs(value - zero);
        expect(Math.abs(read.value - value)).toBeLessThanOrEqual(half + 1e-15 * (Math.abs(value) + zero));
      }),
      { numRuns: 2000 },
    );
  });
  test('a quantity to its two digits of uncertainty', () => {
    const quantity = valued.chain(([of, value]) =>
      fc.record({
        of: fc.constant(of),
        value: fc.constant(value),
        share: fc.double({ min: 1e-6, max: 0.24, noNaN: true }),
        shape: fc.constantFrom('normal' as const, 'rectangular' as const),
      }),
    );
    fc.assert(
      fc.property(quantity, ({ of, value, share, shape }) => {
        const written: Quantity = { value, uncertainty: Math.abs(value) * share, shape, origin: 'measured' };
        const text = writeQuantity(written, of);
        const read = readQuantity(text, of);
        // Rounding may push hard limits past 100 %, or past a ceiling the value touches.
        if (!read.ok) {
          expect(dimensionFacts[of].ceiling, `${text}: ${read.what}`).toBeDefined();
          return;
        }
        expect(read.shape, text).toBe(shape);
        // Half of the second digit of the uncertainty, at most 5 % of it; and as much on the value.
        expect(Math.abs((read.uncertainty ?? 0) / written.uncertainty - 1), text).toBeLessThan(0.0501);
        expect(Math.abs(read.value - value), text).toBeLessThan(
          0.0501 * written.uncertainty * Math.sqrt(3) + 1e-15,
        );
      }),
      { numRuns: 2000 },
    );
  });
});
