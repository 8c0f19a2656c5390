import { expect, test } from 'vitest';
import { lossRow } from '../../reference/loss-rows.ts';
import { OutOfRange } from '../out-of-range.ts';
import { attenuationEstimate } from './attenuation-estimate.ts';
import {
  decibelFromNepers,
  decibelPerKilometreFromNepersPerMetre as inDecibelPerKilometre,
} from './decibel.ts';

const total = lossRow('att-ge-total-1550');
test(total.title, () => {
  const { loss_dB_per_km_low, loss_dB_per_km_high } = total.expected as Record<string, number>;
  const { expected, low, high } = attenuationEstimate(total.inputs.wavelength_m!, 'silica');
  expect(inDecibelPerKilometre(expected)).toBeGreaterThanOrEqual(loss_dB_per_km_low!);
  expect(inDecibelPerKilometre(expected)).toBeLessThanOrEqual(loss_dB_per_km_high!);
  expect(inDecibelPerKilometre(low)).toBeLessThanOrEqual(loss_dB_per_km_high!);
  expect(inDecibelPerKilometre(high)).toBeGreaterThanOrEqual(loss_dB_per_km_low!);
});

const lowest = lossRow('att-lowest-1978');
test(lowest.title, () => {
  const { expected } = attenuationEstimate(lowest.inputs.wavelength_m!, 'silica');
  const reported = lowest.expected.lowestReportedLoss_dB_per_km as number;
  expect(Math.abs(inDecibelPerKilometre(expected) - reported)).toBeLessThan(0.05 * reported);
});

// From memory, and our own judgement of it: what real fibres of each kind have, in dB/km.
const remembered = [
  { wavelength: 488e-9, material: 'silica', from: 20, to: 50 },
  { wavelength: 633e-9, material: 'silica', from: 7, to: 17 },
  { wavelength: 850e-9, material: 'silica', from: 1.8, to: 4 },
  { wavelength: 1310e-9, material: 'silica', from: 0.32, to: 0.4 },
  { wavelength: 520e-9, material: 'acrylic', from: 70, to: 100 },
  { wavelength: 570e-9, material: 'acrylic', from: 70, to: 100 },
  { wavelength: 650e-9, material: 'acrylic', from: 150, to: 200 },
] as const;
for (const { wavelength, material, from, to } of remembered) {
  test(`${material} fibre at ${wavelength} m is expected between ${from} and ${to} dB/km (from memory)`, () => {
    const { low, expected, high } = attenuationEstimate(wavelength, material);
    expect(inDecibelPerKilometre(expected)).toBeGreaterThan(from);
    expect(inDecibelPerKilometre(expected)).toBeLessThan(to + 1e-9);
    expect(low).toBeLessThan(high);
  });
}

test('floor, low, expected and high stand in this order everywhere, without a jump', () => {
  const sweep = { silica: [380, 1700], acrylic: [440, 660] } as const;
  for (const material of ['silica', 'acrylic'] as const) {
    const [from, to] = sweep[material];
    for (let nanometres = from; nanometres <= to; nanometres += 5) {
      const { floor, low, expected, high } = attenuationEstimate(nanometres * 1e-9, material);
      expect(floor).toBeGreaterThan(0);
      expect(low).toBeGreaterThanOrEqual(floor * (1 - 1e-12)); // at 1550 nm low is the floor, but for rounding
      expect(expected).toBeGreaterThan(low);
      expect(high).toBeGreaterThan(expected);
      const beside = attenuationEstimate(Math.min(nanometres + 1e-4, to) * 1e-9, material);
      // The steepest stretch, acrylic between 600 and 625 nm, rises by a part in 10⁵ over this 0.0001 nm.
      expect(Math.abs(beside.high / high - 1)).toBeLessThan(2e-5);
      expect(Math.abs(beside.low / low - 1)).toBeLessThan(2e-5);
    }
  }
});

test('an acrylic metre costs decimals of a decibel, a silica one thousandths', () => {
  expect(decibelFromNepers(attenuationEstimate(650e-9, 'acrylic').expected)).toBeGreaterThan(0.1);
  expect(decibelFromNepers(attenuationEstimate(650e-9, 'silica').expected)).toBeLessThan(0.02);
});

test('outside the visible nothing is known of acrylic, outside 0.38 to 1.7 µm nothing of silica', () => {
  expect(() => attenuationEstimate(661e-9, 'acrylic')).toThrow(OutOfRange);
  expect(() => attenuationEstimate(439e-9, 'acrylic')).toThrow(OutOfRange);
  expect(() => attenuationEstimate(1.71e-6, 'silica')).toThrow(OutOfRange);
  expect(() => attenuationEstimate(0.379e-6, 'silica')).toThrow(OutOfRange);
  expect(() => attenuationEstimate(Number.NaN, 'silica')).toThrow(OutOfRange);
});

// 1.2 to 3 times the glass's own scattering in the visible, whatever the colour (common practice, no source), and the middle of a
// factor between them
test.each([400e-9, 450e-9, 532e-9, 633e-9, 700e-9])(
  'silica fibre in visible light, %d m, has the same margins',
  (wavelength) => {
    const { floor, low, expected, high } = attenuationEstimate(wavelength, 'silica');
    expect(low / floor).toBeCloseTo(1.2, 9);
    expect(expected / floor).toBeCloseTo(Math.sqrt(1.2 * 3), 9);
    expect(high / floor).toBeCloseTo(3, 9);
  },
);
