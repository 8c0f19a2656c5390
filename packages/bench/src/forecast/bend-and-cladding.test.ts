import { expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';

const expected = forecast(
  readLaunch(
    `coreward: 1
laser: { wavelength: 1310 nm, power: 1 mW, beam: { waist diameter: 120 µm, waist position: 0 µm, quality: 1 } }
collimator: none
fibre: { core diameter: 8 µm, numerical aperture: 0.12, cladding diameter: 125 µm, bends: [{ radius: 10 mm, turns: 2 }] }
misalignment: { x: 0 µm }
`,
    'bend.yaml',
  ),
  { draws: 16, seed: 1 },
);

/**
 * Computed with scipy 1.17: V = 2.30224, u and w of D. Gloge, Appl. Opt. 10, 2252 (1971); 1.726 dB/m of D. Marcuse, J. Opt. Soc.
 * Am. 66, 216 (1976, from memory) at 1.14 times the radius, half-way between the two published views, over 4π·10 mm.
 */
test('a bend takes of the fundamental what Marcuse’s formula says over its whole length', () => {
  const bend = expected.ledger.find(({ id }) => id === 'bend-1');
  expect(bend?.transmission).toBeCloseTo(0.951278988, 8);
});

/**
 * Of a beam of w = 60 µm, 1 − exp(−2·62.5²/60²) = 0.8859 falls on the cladding's disc and 2.6384 % is guided (overlap with LP01,
 * scipy 1.17); 3.3345 % of what falls on the disc is thrown back by the facet (A. Fresnel; n of I. H. Malitson, J. Opt. Soc. Am. 55, 1205 (1965)).
 */
test('what misses the core lands on the cladding or beside it', () => {
  const { reflected, cladding, beyondCladding } = expected.notGuided;
  expect(reflected).toBeCloseTo(0.0295386518, 9);
  expect(cladding).toBeCloseTo(0.830795807, 6);
  expect(beyondCladding).toBeCloseTo(0.11416176, 9);
});
