import { expect, test } from 'vitest';
import { asWritten, hazardOf, walked } from './invented-benches.ts';

const reflected = (collimator: string): number | null =>
  hazardOf(walked({ collimator }, asWritten('5 mW')), 'lens-reflection').power;

// each surface throws back its share of what meets it; that all of it is added is ours, and never the milder
test('the surfaces of the coupling lens throw back their shares together', () => {
  const coated = (count: number, share: string) =>
    reflected(`{ focal length: 8 mm ± 0 mm, surfaces: { count: ${count}, coating: ${share} within 0 % } }`);
  expect(coated(4, '3 %')).toBeCloseTo(4 * 0.03 * 5e-3, 12);
  expect(coated(2, '3 %')).toBeCloseTo(2 * 0.03 * 5e-3, 12);
  // never less than one face of glass, 4 % (AUVA teaching page on lasers, read), whatever a coating promises
  expect(coated(2, '0.2 %')).toBeCloseTo(0.04 * 5e-3, 12);
  // bare glass of two faces
  expect(reflected('{ focal length: 8 mm ± 0 mm, surfaces: { count: 2, coating: none } }')).toBeCloseTo(
    0.08 * 5e-3,
    12,
  );
});
