import { median, normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { outTo } from './out-to.ts';

/** Where a Gaussian of 1/e² radius 1 falls to a fortieth, the lowest share that is kept: √(ln 40/2). */
const end = Math.sqrt(Math.log(40) / 2);

const places = Array.from({ length: 401 }, (_, i) => -2.5 + 0.0125 * i);

/** Middle one of 31 ends that are found in such a far field with so much noise, as a share of its peak. */
function foundWith(noise: number): number {
  const random = seededUniform(12);
  return median(
    Array.from({ length: 31 }, () => {
      const light = places.map((x) => Math.exp(-2 * x * x) + noise * normalFrom(random));
      return outTo(places, light, { centre: 0, halfWidth: Math.sqrt(Math.LN2 / 2), peak: 1 }, 0);
    }),
  );
}

test('without noise the readings are kept as far as the light is above a fortieth of its peak, to a few of them', () => {
  // four readings, two on either side, lie within 0.0125 of each other
  expect(Math.abs(foundWith(0) - end)).toBeLessThan(2 * 0.0125);
});

test('readings that noise alone takes below a fortieth do not end the far field', () => {
  // noise of four times the limit, which a stretch of four readings would meet at once where the light is a tenth: 1.07
  expect(foundWith(0.1)).toBeGreaterThan(1.2);
});

test('a stretch is never so long that it takes the light with it into the dark', () => {
  // a quarter of the readings at the most, half of them on either side: 50 steps; so much noise would ask for 576 readings
  expect(foundWith(0.3)).toBeLessThan(end + 50 * 0.0125);
});
