import { expect, test } from 'vitest';
import { stepText } from './step-text.ts';

// The expected texts are sums done by hand.
const rows: readonly (readonly [string, number, string | null])[] = [
  ['6.2 mm', 1, '6.3 mm'],
  ['6.2 mm ± 2 %', -3, '5.9 mm ± 2 %'],
  ['9.9 mm', 1, '10.0 mm'],
  ['0.00 mrad', -1, '-0.01 mrad'],
  ['-0.01 mrad', 2, '0.01 mrad'],
  ['−3 dBm', -1, '−4 dBm'],
  ['520 nm', 10, '530 nm'],
  ['1,5 mm', 1, '1,6 mm'],
  ['97 %', 1, '98 %'],
  ['8°', -1, '7°'],
  ['0.3 dB ± 0.2 dB', 1, '0.4 dB ± 0.2 dB'],
  ['1e-3 W', 1, null],
  ['none', 1, null],
  ['', 1, null],
  ['1 550 nm', 1, null],
];

for (const [text, steps, expected] of rows) {
  test(`${JSON.stringify(text)} by ${steps} is ${JSON.stringify(expected)}`, () => {
    expect(stepText(text, steps)).toBe(expected);
  });
}
