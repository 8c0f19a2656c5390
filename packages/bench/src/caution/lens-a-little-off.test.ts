import { expect, test } from 'vitest';
import { asWritten, hazardOf, walked } from './invented-benches.ts';

/**
 * A telescope of −50 mm and 200 mm before a beam of 1 mm, 633 nm, 20 mW. Computed with Python from the complex q of H. Kogelnik
 * and T. Li, Appl. Opt. 5, 1550 (1966), for every spacing in the 90 % range of 145 mm ± 2 %: the farthest place at which the
 * peak irradiance is 10 W/m² is 346.623 m behind the second lens, at the far end of the range. At 145 mm it is 126.240 m;
 * in step, at 150 mm, 353.622 m.
 */
test('a telescope that may stand right is told to reach as far as then, not as far as it was written down', () => {
  const telescope = (spacing: string) =>
    hazardOf(
      walked(
        {
          power: '20 mW ± 0 mW',
          path: `[space: 100 mm ± 0 mm, lens: { focal length: -50 mm ± 0 mm }, space: ${spacing}, lens: { focal length: 200 mm ± 0 mm }, space: 100 mm]`,
        },
        asWritten('20 mW'),
      ),
      'lens-L2',
    );
  expect(telescope('145 mm ± 0 mm').hazardDistance).toBeCloseTo(126.24, 2);
  expect(telescope('150 mm ± 0 mm').hazardDistance).toBeCloseTo(353.622, 3);
  const doubtful = telescope('145 mm ± 2 %');
  // the far end of the range was computed to three digits
  expect(doubtful.hazardDistance).toBeCloseTo(346.623, 2);
  expect(doubtful.asWritten?.hazardDistance).toBeCloseTo(126.24, 2);
});

test('the doubt of a lens on the way counts as that of the coupling lens does', () => {
  const behind = (focalLength: string) =>
    hazardOf(
      walked({ path: `[space: 100 mm, lens: { focal length: ${focalLength} }, space: 100 mm]` }),
      'lens-L1',
    ).hazardDistance;
  // behind a focus the distance goes with the focal length (ANSI Z136.1, appendix B, from memory); 90 % of ± 10 % is 16.4 %
  expect(behind('50 mm ± 10 %')! / behind('50 mm ± 0 mm')!).toBeCloseTo(1.164, 2);
});

/**
 * A core of 50 µm behind 100 mm: collimated it begins 26 mm wide, under the limit with 0.5 mW, and twice that counts for its
 * grains. Turned out of its focus the lens puts a picture of the core anywhere, φ = 50 µm/100 mm times the way wide: by
 * geometry alone 1 mW of it is at 10 W/m² where it is √(4P/(π·10 W/m²)) = 11.28 mm wide, 22.568 m away.
 */
test('a wide beam behind an output lens is under the limit at the lens, and above it where it may narrow', () => {
  const hazard = hazardOf(
    walked(
      {
        power: '0.5 mW ± 0 mW',
        collimator: '{ focal length: 4 mm ± 0 mm }',
        fibre:
          '{ core diameter: 50 µm ± 0 µm, numerical aperture: 0.22 ± 0, cladding diameter: 125 µm, length: 2 m, attenuation: 10 dB/km }',
        beam: '{ waist diameter: 2 mm ± 0 mm, waist position: 0 mm ± 0 mm, quality: 1 within 0 }',
        rest: 'output: { collimator: { focal length: 100 mm ± 0 mm } }',
      },
      asWritten('0.5 mW'),
    ),
    'far-end-collimated',
  );
  expect(hazard.hazardDistance).toBeCloseTo(22.568, 3);
  expect(hazard.what).not.toContain('0 mm');
});

/**
 * One mode behind the same lens: its picture is MFD/f/√2 times the way wide at 1/e. Petermann II's MFD of a core of 4 µm and NA
 * 0.12 at 633 nm, by scipy 1.17 from D. Gloge's equation, Appl. Opt. 10, 2252 (1971): 4.3482 µm; 11.28 mm of it are at 366.995 m.
 */
test('so is the wide beam of one mode', () => {
  const hazard = hazardOf(
    walked(
      { power: '1 mW ± 0 mW', rest: 'output: { collimator: { focal length: 100 mm ± 0 mm } }' },
      asWritten('1 mW'),
    ),
    'far-end-collimated',
  );
  expect(hazard.hazardDistance! / 366.995).toBeCloseTo(1, 4);
});

test('hidden infrared is told behind a telescope, too, and the sum of all light reaches as far as the farthest of it', () => {
  const cautions = walked({
    wavelength: '532 nm ± 0 nm',
    power: '10 mW ± 0 mW',
    path: '[space: 100 mm ± 0 mm, lens: { focal length: -50 mm ± 0 mm }, space: 150 mm ± 0 mm, lens: { focal length: 200 mm ± 0 mm }, space: 100 mm]',
  });
  const reach = (id: string) => hazardOf(cautions, id).hazardDistance!;
  // four times as wide, so it spreads a fourth: far off that is four times the way of light that leaves the exit
  expect(reach('lens-L2-infrared') / reach('laser-exit-infrared')).toBeCloseTo(4, 1);
  expect(reach('together-launch-side')).toBeGreaterThan(reach('lens-L2'));
  expect(hazardOf(cautions, 'together-launch-side').atRisk).toContain('other people');
  // infrared is judged for 100 s, green for 10 s: together for the longer (docs/cautions.md)
  expect(hazardOf(cautions, 'together-launch-side').exposureTime).toBe(100);
});
