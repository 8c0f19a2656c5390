import { expect, test } from 'vitest';
import { forecast } from '../forecast/forecast.ts';
import { readLaunch } from '../launch/read-launch.ts';

const seenAt = (at: string) =>
  readLaunch(
    `coreward: 1
laser: { wavelength: 520 nm, power: 5 mW, beam: { diameter: 1.1 mm, at: ${at} } }
collimator: { focal length: 8 mm }
fibre: { type: G.652.D }`,
    'launch.yaml',
  );

test('a beam seen right at the exit of the laser is a launch that forecasts', () => {
  expect(forecast(seenAt('0 mm')).output.power.value).toBeGreaterThan(0);
});

test('a bare zero of what cannot be negative is taken as exact, a bare value near it is not', () => {
  const place = (at: string) => {
    const { beam } = seenAt(at).laser;
    return beam.kind === 'round' && beam.axis.kind === 'diameter' ? beam.axis.at : null;
  };
  expect(place('0 mm')).toMatchObject({
    value: 0,
    uncertainty: 0,
    shape: 'normal',
    defaulted: 'uncertainty',
  });
  // 5 mm of a ruler (docs/launch-document.md) against 1 mm: cannot be a bell that reaches below zero
  expect(place('1 mm')).toMatchObject({ uncertainty: 5e-3, shape: 'positive' });
});
