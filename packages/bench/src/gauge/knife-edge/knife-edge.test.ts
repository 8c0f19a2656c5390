import { erfc, normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import type { GaugeAnswer } from '../answer.ts';
import type { GaugeResult } from '../gauge.ts';
import { knifeEdge } from './knife-edge.ts';

// the integral of a Gaussian (elementary), of 1 mm 1/e² radius about 5 mm
const [radius, centre] = [1e-3, 5e-3];
const light = (at: number): number => 0.5 * erfc((-Math.SQRT2 * (at - centre)) / radius);

const resultOf = (position: readonly number[], power: readonly number[]): GaugeResult =>
  knifeEdge.measure({ columns: { position, power }, settings: {}, words: {}, picture: null });

const holds = ({ low, high }: GaugeAnswer, truth: number): boolean => low! <= truth && truth <= high!;

/** Of a hundred scans of one kind, how many intervals hold radius and centre. */
function heldOf(
  scan: (normal: () => number, uniform: () => number) => readonly (readonly [number, number])[],
): readonly [number, number] {
  const random = seededUniform(11);
  let [radii, centres] = [0, 0];
  for (let i = 0; i < 100; i++) {
    const drawn = scan(() => normalFrom(random), random);
    const { answers } = resultOf(
      drawn.map(([x]) => x),
      drawn.map(([, y]) => y),
    );
    radii += holds(answers.find(({ quantity }) => quantity === 'radius1e2_m')!, radius) ? 1 : 0;
    centres += holds(answers.find(({ quantity }) => quantity === 'centre_m')!, centre) ? 1 : 0;
  }
  return [radii, centres];
}

const evenly = (count: number, step: number, from: number): number[] =>
  Array.from({ length: count }, (_, i) => from + step * i);

// of a hundred intervals that hold the truth with 90 %, fewer than 81 do once in three hundred draws (binomial)

test('positions read to a tenth of a millimetre leave that much open', () => {
  const held = heldOf((normal, uniform) =>
    evenly(13, 0.36e-3, centre - 2.2e-3 + 1e-4 * uniform()).map((x) => [
      Math.round(x / 1e-4) * 1e-4,
      0.02 + light(x) + 3e-4 * normal(),
    ]),
  );
  for (const count of held) expect(count).toBeGreaterThan(80);
});

test('positions read to a tenth of a millimetre leave that open even where readings lie on the curve by chance', () => {
  const x = [2.8, 3.2, 3.5, 3.9, 4.2, 4.6, 5, 5.3, 5.7, 6, 6.4, 6.8].map((mm) => mm * 1e-3);
  const found = resultOf(x, x.map(light)).answers.find(({ quantity }) => quantity === 'centre_m')!;
  // three readings within half a radius, each off by 0.1 mm/√12
  expect(found.uncertainty!).toBeGreaterThan(1e-4 / Math.sqrt(12 * 4));
});

test('a dozen positions, each a hundredth of the radius off, are not taken for exact', () => {
  const held = heldOf((normal, uniform) =>
    evenly(12, 0.36e-3, centre - 2e-3 + 1e-4 * uniform()).map((x) => [
      x + 1e-5 * normal(),
      0.02 + light(x) + 2e-3 * normal(),
    ]),
  );
  for (const count of held) expect(count).toBeGreaterThan(80);
});

test('readings of two digits, alike where nothing changes, do not average to a better level', () => {
  // a dark and a full reading that both lie two fifths of a step above a mark
  const held = heldOf((normal, uniform) =>
    evenly(31, 0.16e-3, centre - 2.4e-3 + 1e-4 * uniform()).map((x) => [
      x,
      Math.round(20 * (0.02 + light(x) + 3e-3 * normal())) / 20,
    ]),
  );
  for (const count of held) expect(count).toBeGreaterThan(80);
});

test('light that grew while a scan was read is noticed, and the centre it moved is in the interval', () => {
  const random = seededUniform(4);
  const x = evenly(31, 0.16e-3, centre - 2.4e-3);
  const scan = (growth: number) =>
    resultOf(
      x,
      x.map((at, i) => 0.02 + light(at) * (1 + growth * (i / 30 - 0.5)) + 1e-3 * normalFrom(random)),
    );
  const drifted = scan(0.04);
  const found = drifted.answers.find(({ quantity }) => quantity === 'centre_m')!;
  // a slope of the light moves the half of it by about a hundredth of the radius
  expect(Math.abs(found.value! - centre)).toBeGreaterThan(5e-6);
  expect(holds(found, centre)).toBe(true);
  expect(found.verdict).toBe('weak');
  // noise of a thousandth leaves the growth itself open to one in a hundred
  expect(drifted.remarks.join()).toMatch(/grown by [345] %/u);
  expect(scan(0).remarks.join()).not.toMatch(/grown|faded/u);
});
