import { describe, expect, test } from 'vitest';
import { forecast } from '../forecast/forecast.ts';
import { readLaunch } from './read-launch.ts';

// Rayleigh ranges below are π·w²/(M²λ), worked out here by hand; the share of a quarter is our own (common practice, no source).

const launch = (beam: string, path = '[]', collimator = 'none') =>
  readLaunch(
    `coreward: 1
laser: { wavelength: 633 nm, power: 1 mW, beam: { ${beam} } }
path: ${path}
collimator: ${collimator}
fibre: { core diameter: 4 µm, numerical aperture: 0.11, cladding diameter: 125 µm, length: 1 m }
misalignment: { x: 0 µm, y: 0 µm, tilt x: 0 mrad, tilt y: 0 mrad, defocus: 0 µm }
`,
    'test.yaml',
  );

const axisOf = (text: string) => {
  const { beam } = launch(text).laser;
  if (beam.kind !== 'round' || beam.axis.kind !== 'waist') throw new Error('not a round beam by its waist');
  return beam.axis;
};

describe('the place of a waist', () => {
  test.each([
    // π·(2.25 µm)²/633 nm = 25.13 µm
    ['waist diameter: 4.5 µm, quality: 1, waist position: 0 mm', 25.13e-6 / 4],
    ['waist diameter: 4.5 µm, quality: 1', 25.13e-6 / 4],
    // M² of 2 halves it
    ['waist diameter: 4.5 µm, quality: 2, waist position: 0 mm', 25.13e-6 / 8],
    // π·(0.4 mm)²/633 nm = 0.794 m: a quarter is more than 20 mm
    ['waist diameter: 0.8 mm, quality: 1, waist position: 50 mm', 20e-3],
    ['waist diameter: 4.5 µm, quality: 1, waist position: 0 mm ± 1 mm', 1e-3],
  ])('%s', (text, doubt) => {
    // printed to four digits
    expect(axisOf(text).waistPosition.uncertainty / doubt).toBeCloseTo(1, 3);
  });
});

describe('a beam that is focused on a bare facet', () => {
  test('is forecast with an interval that holds the figure at the stated numbers', () => {
    const { coupling, output } = forecast(launch('waist diameter: 4.5 µm, quality: 1, waist position: 0 mm'));
    expect(coupling.guidedInterval.low).toBeLessThan(coupling.guided);
    expect(coupling.guided).toBeLessThan(coupling.guidedInterval.high);
    expect(output.power.low).toBeLessThan(output.power.value);
    expect(output.power.value).toBeLessThan(output.power.high);
  });

  const spaces = (path: string, collimator?: string) =>
    launch('waist diameter: 0.9 mm ± 1 %, quality: 1', path, collimator).path.flatMap((element) =>
      element.kind === 'space' ? [element.length.uncertainty] : [],
    );

  test('has the spaces behind the last lens known to a quarter of the Rayleigh range there', () => {
    const path = '[ { space: 300 mm }, { lens: { focal length: 5 mm } }, { space: 5 mm } ]';
    const [before, behind] = spaces(path);
    expect(before).toBeCloseTo(6e-3, 9);
    // w = λf/(πw₀) = 2.238 µm for a beam that is nearly collimated (z_R 1.005 m, 0.295 m off the front focus: 4.2 % less
    // area), z_R = 24.86 µm · 0.92
    expect(behind! / ((24.86e-6 * 0.92) / 4)).toBeCloseTo(1, 1);
    expect(spaces(path.replace('space: 5 mm', 'space: 5 mm ± 1 mm'))[1]).toBeCloseTo(1e-3, 9);
  });

  test('but not where a collimator follows', () => {
    expect(spaces('[ { space: 300 mm } ]', '{ focal length: 5 mm }')[0]).toBeCloseTo(6e-3, 9);
  });
});
