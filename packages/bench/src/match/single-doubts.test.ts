import { expect, test } from 'vitest';
import { assembleLaunch } from '../drawer/assemble-launch.ts';
import { readDrawer } from '../drawer/read-drawer.ts';
import { forecast } from '../forecast/forecast.ts';
import { match } from './match.ts';

/** A bench of which all is known, with a spot larger than the one mode: what is off by a little shows. */
const known = {
  wavelength: '532 nm ± 0 nm',
  waist: '0.7 mm ± 0 mm',
  quality: '1.3 ± 0',
  focal: '5 mm ± 0 mm',
  core: '2.8 µm ± 0 µm',
  aperture: '0.12 ± 0',
  attenuation: '20 dB/km ± 0 dB/km',
};

const drawerOf = (doubtful: Partial<typeof known>) => {
  const bench = { ...known, ...doubtful };
  const text = `coreward: 1
lasers: [{ name: green, wavelength: ${bench.wavelength}, power: 5 mW ± 0 mW, beam: { waist diameter: ${bench.waist}, waist position: 0 mm ± 0 mm, quality: ${bench.quality} } }]
collimators: [{ name: f5, focal length: ${bench.focal}, focal shift: 0, surfaces: { count: 0 }, spherical aberration: 0 ± 0 }]
fibres: [{ name: single, core diameter: ${bench.core}, numerical aperture: ${bench.aperture}, length: 50 m ± 0 m, attenuation: ${bench.attenuation} }]
path: [{ space: 200 mm ± 0 mm }]
`;
  return readDrawer([{ text, file: 'drawer.yaml' }]);
};

test.each([
  ['beam', { waist: '0.7 mm ± 12 %' }],
  ['M²', { quality: '1.3 within 0.25' }],
  ['focal length', { focal: '5 mm within 12 %' }],
  ['core', { core: '2.8 µm ± 8 %' }],
  ['aperture', { aperture: '0.12 ± 0.009' }],
  ['attenuation', { attenuation: '20 dB/km ± 5 dB/km' }],
] as const)('one doubt alone, of the %s, spreads a pair as it spreads the drawn forecast', (_, doubtful) => {
  const drawer = drawerOf(doubtful);
  const { score } = match(drawer, { purpose: 'total', laser: null }).pairs[0]!;
  const launch = assembleLaunch(drawer, { laser: 'green', collimator: 'f5', fibre: 'single' });
  const focused = { ...launch, collimator: { ...launch.collimator!, focus: { kind: 'best' } as const } };
  const drawn = forecast(focused, { draws: 1024, seed: 3 }).output.fractionOfLaser;
  // V is rounded to 4 % of itself, a sixth of what these doubts span; the drawn ends stand to 3 %
  const ratio = (score.high - score.low) / (drawn.high - drawn.low);
  expect(ratio).toBeGreaterThan(0.83);
  expect(ratio).toBeLessThan(1.2);
  for (const end of ['low', 'high'] as const)
    expect(Math.abs(score[end] - drawn[end])).toBeLessThan(0.2 * (drawn.high - drawn.low));
});
