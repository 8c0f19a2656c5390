import { expect, test } from 'vitest';
import { gaugeNamed } from './gauge-table.ts';
import { settingsOfLaunch } from './settings-of-launch.ts';

const launch = (rest: string): string => `coreward: 1
laser: { wavelength: 532.1 nm, power: 5 mW, beam: { diameter: 1.1 mm, at: 300 mm } }
collimator: { focal length: 8 mm }
fibre: { type: G.652.D }
${rest}`;
const of = (gauge: string, text: string) => settingsOfLaunch(gaugeNamed(gauge)!, text);

test('a detector and a beam are asked about in the light of the launch', () => {
  expect(of('photodiode', launch(''))).toEqual({ wavelength: '532.1 nm' });
  expect(of('caustic', launch(''))).toEqual({ wavelength: '532.1 nm' });
});

test('light sent backwards is the reference source’s, and unknown without one', () => {
  const backwards = 'reference: { wavelength: 650 nm, power: 1 mW, tolerates: 1 mW }';
  expect(of('reverse-radius', launch(backwards))).toEqual({ wavelength: '650 nm' });
  expect(of('reverse-radius', launch(''))).toEqual({});
});

test('a gauge without light, and a launch that cannot be read, tell nothing', () => {
  expect(of('cut-back', launch(''))).toEqual({});
  expect(of('photodiode', 'coreward: 1\nlaser: {')).toEqual({});
});
