import fc from 'fast-check';
import { expect, test } from 'vitest';
import { netLosses } from './net-losses.ts';

const entry = (id: string, group: 'lens' | 'overlap' | 'path', transmission: number) => ({
  id,
  group,
  label: id,
  transmission,
});

const shown = (ledger: readonly ReturnType<typeof entry>[]) =>
  Object.fromEntries(
    netLosses(ledger).map(({ id, transmission }) => [id, Number(transmission.toPrecision(6))]),
  );

test('what the lens clips and what the clipped beam gains are one matter', () => {
  // 0.2 · 4 = 0.8
  const ledger = [
    entry('lens-clip', 'lens', 0.2),
    entry('spot-size', 'overlap', 0.5),
    entry('aberration', 'overlap', 4),
  ];
  expect(shown(ledger)).toEqual({ 'lens-clip': 0.8, 'spot-size': 0.5, aberration: 1 });
});

test('what is gained beyond the clip goes to the worst cause of the overlap', () => {
  // 0.5 · 2 = 1, and 0.1 · 3 = 0.3
  const ledger = [
    entry('lens-clip', 'lens', 0.5),
    entry('spot-size', 'overlap', 0.1),
    entry('aberration', 'overlap', 6),
  ];
  expect(shown(ledger)).toEqual({ 'lens-clip': 1, 'spot-size': 0.3, aberration: 1 });
});

test('a mode that takes more than counted by causes makes the spot cost less', () => {
  // 0.005 · 4 = 0.02
  const ledger = [
    entry('spot-size', 'overlap', 0.005),
    entry('aim', 'overlap', 0.9),
    entry('mode-shape', 'overlap', 4),
  ];
  expect(shown(ledger)).toEqual({ 'spot-size': 0.02, aim: 0.9, 'mode-shape': 1 });
});

test('the product stays what it is, and no loss is left that is none', () => {
  const ledgers = fc.array(
    fc.record({
      id: fc.constantFrom('lens-clip', 'spot-size', 'aberration', 'aim', 'mode-shape', 'mirror-M1'),
      value: fc.double({ min: 0.001, max: 8, noNaN: true }),
    }),
    { maxLength: 8 },
  );
  fc.assert(
    fc.property(ledgers, (some) => {
      const ledger = some.map(({ id, value }) => {
        const group = id === 'lens-clip' ? 'lens' : id === 'mirror-M1' ? 'path' : 'overlap';
        return entry(id, group, group === 'overlap' ? value : Math.min(1, value));
      });
      const product = (all: readonly { transmission: number }[]) =>
        all.reduce((left, { transmission }) => left * transmission, 1);
      const net = netLosses(ledger);
      // a few roundings
      expect(Math.abs(product(net) / product(ledger) - 1)).toBeLessThan(1e-12);
    }),
    { numRuns: 500 },
  );
});
