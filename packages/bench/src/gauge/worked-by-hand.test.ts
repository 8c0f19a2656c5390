import { expect, test } from 'vitest';
import type { GaugeAnswer } from './answer.ts';
import { assign } from './assign.ts';
import { gaugeNamed } from './gauge-table.ts';
import { readTable } from './read-table.ts';

/** The answers of a gauge to a table as text. */
function answers(name: string, text: string): (quantity: string) => GaugeAnswer {
  const gauge = gaugeNamed(name)!;
  const found = gauge.measure(assign(gauge, readTable(text, 'readings')).readings).answers;
  return (quantity) => found.find((one) => one.quantity === quantity)!;
}

// signs, factors of two and dark readings, each worked with a pencil from the definition (elementary)

test('a spot of 6 mm at 1 m and of 26 mm at 5 m comes from 0.2 m behind the scale’s zero', () => {
  const found = answers('two-distances', '# wavelength: 635 nm\ndistance (m),diameter (mm)\n1,6\n5,26\n');
  // 5 mm a metre: 6 mm takes 1.2 m
  expect(found('virtualSource_m').value!).toBeCloseTo(-0.2, 9);
});

test('what a ruler shows four times is the length, give or take its division', () => {
  const found = answers('ruler', 'length (mm)\n99.5\n100.5\n100\n100\n')('length_m');
  expect(found.value!).toBeCloseTo(0.1, 12);
  // scatter of 0.41 mm over √4, and a thousandth of 100 mm for the scale
  expect(found.uncertainty!).toBeCloseTo(Math.hypot(0.20412e-3, 0.1e-3), 7);
});

test('100 before and 91 behind is a transmission of 0.91; 100 and then 90 leave a tenth in the cladding', () => {
  expect(answers('before-and-after', 'before,behind\n100,91\n')('transmission').value!).toBeCloseTo(0.91, 9);
  expect(answers('cladding-light', 'before,after\n100,90\n')('claddingShare').value!).toBeCloseTo(0.1, 9);
});

test('a core of 100 pixels in a cladding of 250 pixels and 125 µm is 50 µm wide', () => {
  const text = '# cladding diameter: 125 µm\ncore (px),cladding (px)\n100,250\n';
  expect(answers('core-picture', text)('coreDiameter_m').value!).toBeCloseTo(50e-6, 12);
});

test('a lens of N-BK7 and 20 mm in red wants its tip 0.309 mm nearer in blue-green (n_C 1.51432, n_F 1.52238: data sheet of the glass, from memory)', () => {
  // f ∝ 1/(n − 1): 20 mm·(0.51432/0.52238 − 1) = −0.3086 mm
  const text =
    '# wavelength 1: 656.3 nm\n# wavelength 2: 486.1 nm\n# glass: N-BK7\nfirst (mm),second (mm)\n2,1.69142\n';
  const found = answers('two-colour-focus', text)('focalLength_m');
  // the difference of the two indices is printed to a part in 600
  expect(Math.abs(found.value! / 20e-3 - 1)).toBeLessThan(2e-3);
});

test('a pedestal under a far field does not widen it', () => {
  const rows = Array.from({ length: 41 }, (_, i) => {
    const sine = (i - 20) / 80;
    return `${sine},${20 + 100 * Math.exp(-2 * (sine / 0.1) ** 2)}`;
  });
  const table = `sin theta,intensity\n${rows.join('\n')}\n`;
  // a Gaussian falls to 1/e² at 0.1, whether the dark is told or read from the wings
  expect(answers('far-field-profile', `# background: 20\n${table}`)('sin1e2').value!).toBeCloseTo(0.1, 5);
  expect(answers('far-field-profile', table)('sin1e2').value!).toBeCloseTo(0.1, 3);
});

test('what a diode or a cell reads in the dark is taken off, reading for reading', () => {
  const diode =
    '# load: 220 ohm\n# responsivity: 0.4 A/W\nvoltage (mV),dark voltage (mV)\n90,2\n92,4\n89,1\n91,3\n';
  expect(answers('photodiode', diode)('power_W').value!).toBeCloseTo(1e-3, 9);
  const once = '# load: 220 ohm\n# responsivity: 0.4 A/W\n# dark voltage: 2 mV\nvoltage (mV)\n90\n';
  expect(answers('photodiode', once)('power_W').value!).toBeCloseTo(1e-3, 9);
  const cell =
    '# wavelength: 532 nm\n# quantum efficiency: 85 %\ncurrent (mA),dark current (mA)\n1.9236,0.1\n1.9236,0.1\n';
  // 1.8236 mA is 5 mW: 0.85 electrons for each of hc/λ = 3.734e-19 J
  expect(Math.abs(answers('solar-cell', cell)('power_W').value! / 5e-3 - 1)).toBeLessThan(1e-4);
});

test('a cell under a known power: 2 mA from 5 mW is 0.4 A/W', () => {
  const text = '# wavelength: 635 nm\n# known power: 5 mW ± 1 %\ncurrent (mA)\n2\n';
  expect(answers('solar-cell', text)('responsivity_A_per_W').value!).toBeCloseTo(0.4, 9);
});

test('codes over their dark: 3 and twice 25 above it double with the light', () => {
  const text = '# dark code: 3\nlight,code\n1,28\n2,53\n4,103\n';
  expect(answers('camera-linearity', text)('exponent').value!).toBeCloseTo(1, 9);
});

test('a black that takes half of the light asks for twice the power', () => {
  const rows = Array.from({ length: 61 }, (_, i) => {
    const on = i >= 20 && i < 40 ? 1 : 0;
    return `${10 * i},${(20 + 0.24 * Math.max(0, Math.min(20, i - 20))).toFixed(3)},${on}`;
  });
  const power = (absorptance: string): number =>
    answers(
      'calorimeter',
      `# heat capacity: 1.925\n# absorptance: ${absorptance}\ntime (s),temperature (°C),light\n${rows.join('\n')}`,
    )('power_W').value!;
  expect(power('50 %') / power('100 %')).toBeCloseTo(2, 6);
});

test('a cone read to half millimetres is no surer than a ruler, though its radii lie on a line', () => {
  const text = '# level: 5 %\nz (mm),diameter (mm)\n10,4.5\n20,9\n30,13.5\n40,18\n';
  const found = answers('far-field-cone', text)('na5percent');
  // each radius is good to 0.25 mm/√12; of four, 10 mm apart, the slope to that over 22.4 mm
  const slope = 0.25 / Math.sqrt(12) / Math.sqrt(500);
  expect(found.uncertainty! / (slope / Math.hypot(1, 0.225) ** 3)).toBeCloseTo(1, 6);
});

test('a screw of 0.25 mm pitch and 38 mm lever tilts its mirror by 6.579 mrad a turn, and the spot moves twice that far', () => {
  // 2 · 0.25/38 · 2 m = 26.3158 mm for each turn
  const found = answers('screw-turns', '# distance: 2 m\nturns,spot (mm)\n0,0\n1,26.3158\n2,52.6316\n');
  expect(found('mirror_rad_per_turn').value!).toBeCloseTo(0.25 / 38, 7);
  expect(found('beam_rad_per_turn').value!).toBeCloseTo(0.5 / 38, 7);
  expect(found('lever_m').value!).toBeCloseTo(38e-3, 6);
});

test('near a long lens the light sent backwards is as wide as the lens images it, counted from its focus', () => {
  // 635 nm, a mode of 300 µm, f = 100 mm: in the focus 2λf/(π·300 µm) = 0.26950 mm wide; spread by 300 µm·(d/f − 1)
  const wide = (d: number) => Math.hypot(0.2695, 0.3 * (d / 0.1 - 1));
  const text = `# wavelength: 635 nm\n# mode field diameter: 300 µm\n# diameter uncertainty: 0.01 mm\n# focal length about: 100 mm\ndistance (m),diameter (mm)\n0.3,${wide(0.3)}\n0.4,${wide(0.4)}\n0.6,${wide(0.6)}\n`;
  // the waist is written to four digits
  expect(answers('far-wall-spot', text)('focalLength_m').value! / 0.1).toBeCloseTo(1, 4);
});
