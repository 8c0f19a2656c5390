import { normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { assign } from './assign.ts';
import { gaugeNamed } from './gauge-table.ts';
import { readInputs } from './read-inputs.ts';

/** One answer of a gauge to readings as JSON. */
function told(gauge: string, inputs: Readonly<Record<string, unknown>>, quantity: string) {
  const of = gaugeNamed(gauge)!;
  const { readings } = assign(of, readInputs(JSON.stringify(inputs), 'readings.json'));
  return of.measure(readings).answers.find((answer) => answer.quantity === quantity)!;
}

test('a ruler read eight times alike, one end at nought, is off by up to half a division still', () => {
  const random = seededUniform(13);
  let held = 0;
  for (let k = 0; k < 100; k++) {
    const length = 0.1 + 0.2 * random();
    const read = new Array<number>(8).fill(Math.round(length * 1e3) * 1e-3);
    const { low, high } = told('ruler', { length_m: read }, 'length_m');
    if (low! <= length && length <= high!) held += 1;
  }
  // of a hundred intervals that hold the truth with 90 %, fewer than 81 do once in three hundred draws (binomial)
  expect(held).toBeGreaterThan(80);
});

test('a cladding without light is seldom said to have moved its launch, with four pairs as with many', () => {
  const random = seededUniform(14);
  for (const pairs of [4, 8]) {
    let refused = 0;
    for (let k = 0; k < 400; k++) {
      const before = new Array<number>(pairs).fill(1);
      const after = before.map(() => 1 + 0.03 * normalFrom(random));
      const { value } = told('cladding-light', { before_W: before, after_W: after }, 'claddingShare');
      if (value === null) refused += 1;
    }
    // once in forty by chance: of 400 more than 19 are with one in three hundred draws (binomial)
    expect(refused, `${pairs} pairs`).toBeLessThan(20);
  }
});

test('a spot as small as it can be at a wall tells no focal length', () => {
  // λ = 650 nm, mode field diameter 5 µm: at 8 m the smallest spot is 2√(2λz/π) = 3.6 mm across (Gaussian, elementary)
  const inputs = { distance_m: [8], wavelength_m: 650e-9, modeFieldDiameter_m: 5e-6 };
  const smallest = told('far-wall-spot', { ...inputs, diameter_m: [2.4e-3] }, 'focalLength_m');
  expect(smallest.value).toBeNull();
  expect(smallest.because).toMatch(/as small there as it can be/u);
  const wide = { ...inputs, diameter_m: [8e-3], focalLengthAbout_m: 5e-3 };
  // far from there, a lens of f sends 2·w·z/f: 5 µm · 8 m / 8 mm = 5 mm
  expect(told('far-wall-spot', wide, 'focalLength_m').value!).toBeCloseTo(5e-3, 4);
});

test('the two colours of a focus may be named without a space', () => {
  const inputs = { first_m: [3e-3], second_m: [2.8e-3], glass: 'N-BK7' };
  const apart = { ...inputs, 'wavelength 1 (m)': 635e-9, 'wavelength 2 (m)': 515e-9 };
  const together = { ...inputs, wavelength1_m: 635e-9, wavelength2_m: 515e-9 };
  const of = (of: Readonly<Record<string, unknown>>) => told('two-colour-focus', of, 'focalLength_m').value;
  expect(of(together)).toBe(of(apart));
});
