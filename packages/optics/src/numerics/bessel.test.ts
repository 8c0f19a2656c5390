import { expect, test } from 'vitest';
import reference from '../../reference/bessel.json' with { type: 'json' };
import { OutOfRange } from '../out-of-range.ts';
import { besselI0Scaled, besselIScaled } from './bessel-i.ts';
import { besselJ, besselJ0, besselJ1, fillBesselJ } from './bessel-j.ts';
import { besselJTable } from './bessel-j-table.ts';
import { besselKRatio, besselKScaled } from './bessel-k.ts';
import { besselZero, besselZerosBelow } from './bessel-zero.ts';

type Row = readonly [order: number, argument: number, value: number];

/**
 * The largest error of `computed` over the rows and where it stands.
 * Past the turning point J oscillates, so there an error is weighed by the envelope √(2/πx), not by a value near zero.
 */
function worst(rows: readonly Row[], computed: (order: number, x: number) => number, oscillates: boolean) {
  let worstError = 0;
  let where = '';
  for (const [order, x, value] of rows) {
    const envelope = oscillates && x > order + 1 ? Math.sqrt(2 / (Math.PI * x)) : 0;
    const error = Math.abs(computed(order, x) - value) / Math.max(Math.abs(value), envelope);
    if (!(error <= worstError)) {
      worstError = error;
      where = `order ${order}, x = ${x}`;
    }
  }
  return { worstError, where };
}

// Tolerance 2e-14: a recurrence over up to 400 orders gathers some tens of roundings of 2.2e-16.
const tolerance = 2e-14;
const rows = (list: readonly number[][]) => list as unknown as readonly Row[];

// Source: mpmath at 40 digits, packages/optics/reference/bessel.json.
test('J, K and I agree with mpmath from tiny to large arguments and orders', () => {
  expect(worst(rows(reference.j), besselJ, true).worstError).toBeLessThan(tolerance);
  expect(worst(rows(reference.kScaled), besselKScaled, false).worstError).toBeLessThan(tolerance);
  expect(worst(rows(reference.iScaled), besselIScaled, false).worstError).toBeLessThan(tolerance);
});

test('a whole row of J filled at once agrees with mpmath, too', () => {
  const filled = (order: number, x: number) => {
    const row = new Float64Array(order + 3);
    fillBesselJ(x, row);
    return row[order]!;
  };
  expect(worst(rows(reference.j), filled, true).worstError).toBeLessThan(tolerance);
});

// Absolute tolerance 2e-15: thirteen products of numbers below 1, and J_7(1/32) ≈ 1e-16 left out.
test('J from a table agrees with mpmath', () => {
  const short = rows(reference.j).filter(([order, x]) => order <= 150 && x <= 160);
  const table = besselJTable(150, 160);
  for (const [order, x, value] of short) {
    expect(Math.abs(table(order, x) - value), `order ${order}, x = ${x}`).toBeLessThan(2e-15);
  }
  // between the rows of the table, against the recurrence checked above
  for (let x = 0; x < 159; x += 0.777) {
    for (const order of [0, 1, 5, 40, 150]) {
      expect(Math.abs(table(order, x) - besselJ(order, x)), `order ${order}, x = ${x}`).toBeLessThan(2e-15);
    }
  }
});

// Tolerance 1e-15: one rounding of a number known to the last digit.
test('the zeros of J agree with mpmath to the last digit', () => {
  expect(worst(rows(reference.zeros), besselZero, false).worstError).toBeLessThan(1e-15);
});

// Source: Abramowitz & Stegun, tables 9.1, 9.5 and 9.8 (from memory), ten printed digits.
test('J, K, I and a zero as printed in the handbook', () => {
  expect(besselJ0(1)).toBeCloseTo(0.7651976866, 10);
  expect(besselJ1(1)).toBeCloseTo(0.4400505857, 10);
  expect(besselKScaled(0, 1) / Math.E).toBeCloseTo(0.4210244382, 10);
  expect(besselI0Scaled(1) * Math.E).toBeCloseTo(1.2660658778, 10);
  expect(besselZero(0, 1)).toBeCloseTo(2.4048255577, 10);
});

// Source: Wronskian I_n K_{n+1} + I_{n+1} K_n = 1/x, Abramowitz & Stegun 9.6.15 (from memory).
test('I and K keep their Wronskian', () => {
  for (const order of [0, 1, 7, 60]) {
    for (const x of [0.5, 3, 40, 900]) {
      const sum =
        besselIScaled(order, x) * besselKScaled(order + 1, x) +
        besselIScaled(order + 1, x) * besselKScaled(order, x);
      expect(sum * x).toBeCloseTo(1, 12); // two products, each good to 2e-14
    }
  }
});

test('the ratio of neighbouring K stays finite where K itself overflows', () => {
  expect(besselKScaled(200, 1e-3)).toBe(Number.POSITIVE_INFINITY);
  // K_{n+1}/K_n → 2n/x for small x: the leading term of Abramowitz & Stegun 9.6.9; the next is x²/(4n²) ≈ 6e-12 of it
  expect((besselKRatio(200, 1e-3) * 1e-3) / 400).toBeCloseTo(1, 10);
});

test('J of a negative argument has the parity of its order', () => {
  expect(besselJ(3, -4.5)).toBe(-besselJ(3, 4.5));
  expect(besselJ(4, -4.5)).toBe(besselJ(4, 4.5));
  expect(besselJ1(-20)).toBe(-besselJ1(20));
});

test('the zeros below a limit are all of them, rising', () => {
  // Abramowitz & Stegun table 9.5 (from memory): 5.13562, 8.41724, 11.61984, 14.79595
  expect(besselZerosBelow(2, 14.8)).toHaveLength(4);
  expect(besselZerosBelow(2, 14.7)).toHaveLength(3);
});

test('orders that are no orders and arguments outside are refused', () => {
  expect(() => besselJ(1.5, 1)).toThrow(OutOfRange);
  expect(() => besselJ(-1, 1)).toThrow(OutOfRange);
  expect(() => besselJ(1, Number.NaN)).toThrow(OutOfRange);
  expect(() => fillBesselJ(-1, new Float64Array(3))).toThrow(OutOfRange);
  expect(() => besselKScaled(0, 0)).toThrow(OutOfRange);
  expect(() => besselIScaled(0, -1)).toThrow(OutOfRange);
  expect(() => besselZero(0, 0)).toThrow(OutOfRange);
});
