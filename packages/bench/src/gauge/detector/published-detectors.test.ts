import { expect, test } from 'vitest';
import type { GaugeAnswer } from '../answer.ts';
import { assign } from '../assign.ts';
import { gaugeNamed } from '../gauge-table.ts';
import { readTable } from '../read-table.ts';

/** The answer of a gauge to a table as text. */
function answerOf(name: string, text: string, quantity: string): GaugeAnswer {
  const gauge = gaugeNamed(name)!;
  const found = gauge.measure(assign(gauge, readTable(text, 'readings')).readings).answers;
  return found.find((one) => one.quantity === quantity)!;
}

test('readings of a detector behind two polarisers follow the light in proportion (students’ table of current against angle, ± 0.1 nA, read in a stored copy; E. L. Malus: the light goes with cos²)', () => {
  // 5° apart from 0° on, nA; the table goes on to 90° with 0.1, 0.1 and noughts, where the last digit is all there is
  const current = [1.3, 1.2, 1.2, 1.2, 1.1, 1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2];
  const rows = current.map((nA, i) => `${Math.cos((5 * i * Math.PI) / 180) ** 2},${10 * nA}`);
  const exponent = answerOf('camera-linearity', `light,code\n${rows.join('\n')}\n`, 'exponent');
  expect(exponent.verdict).toBe('determined');
  expect(exponent.low!).toBeLessThan(1);
  expect(exponent.high!).toBeGreaterThan(1);
  // a code of 2 ± 0.5 in a fit over a factor of six leaves some per cent
  expect(Math.abs(exponent.value! - 1)).toBeLessThan(0.06);
});

test('2.5 µA of 65 electrons for each hundred photons of 1.5e-19 J are 3.6 µW (a textbook example on optical detectors and its answer, read in a stored copy; worked, not measured)', () => {
  // 1.5e-19 J is 1.32 µm: the book prints both
  const text = '# wavelength: 1324.3 nm\n# quantum efficiency: 65 %\ncurrent (µA)\n2.5\n';
  const power = answerOf('solar-cell', text, 'power_W');
  expect(Math.abs(power.value! - 3.6e-6)).toBeLessThan(0.05e-6);
});

test('a photodiode of 0.65 × 1.602e-19 C over 1.5e-19 J, 0.694 A/W, reads the same 3.6 µW over 1 kΩ (the same example)', () => {
  const text = '# load: 1 kohm\n# responsivity: 0.694 A/W\nvoltage (mV)\n2.5\n';
  const power = answerOf('photodiode', text, 'power_W');
  expect(Math.abs(power.value! - 3.6e-6)).toBeLessThan(0.05e-6);
});
