import { OutOfRange } from '@coreward/optics';
import { expect, test } from 'vitest';
import { fiveLinesLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';
import { inWords, outOfRangeRefusal } from './out-of-range-refusal.ts';

const launch = readLaunch(fiveLinesLaunch, 'five-lines.launch.yaml');

/** A launch whose numbers are allowed, while some of their doubt lies where a formula ends. */
const atTheEdge: readonly (readonly [name: string, text: string])[] = [
  [
    'a mirror at 89° ± 2°',
    fiveLinesLaunch +
      'path: [ { space: 200 mm }, { mirror: { angle: 89°, clear aperture: 22 mm, mount: {} } }, { space: 100 mm } ]\n',
  ],
  // the catalogue's formula for N-BK7 holds from 0.3 to 2.5 µm
  [
    'light of 301 nm ± 5 nm in a lens of N-BK7',
    fiveLinesLaunch
      .replace('520 nm', '301 nm ± 5 nm')
      .replace('type: G.652.D', 'type: G.652.D, attenuation: 1 dB/m')
      .replace(
        'focal length: 8 mm',
        'focal length: { value: 8 mm, at: 400 nm }, surfaces: { coating: none }',
      ),
  ],
  [
    'light of 3.7 µm ± 100 nm in a silica fibre',
    fiveLinesLaunch
      .replace('520 nm', '3.7 µm ± 100 nm')
      .replace('1.1 mm', '3 mm')
      .replace('type: G.652.D', 'core diameter: 20 µm, numerical aperture: 0.13, attenuation: 1 dB/m')
      .replace('focal length: 8 mm', 'focal length: 8 mm, focal shift: 0, surfaces: { coating: none }'),
  ],
  [
    'an aperture so doubtful that V may be less than the solvers know',
    fiveLinesLaunch.replace('type: G.652.D', 'core diameter: 2 µm, numerical aperture: 0.05 ± 90 %'),
  ],
  [
    'a fibre of very many modes that stands two metres behind its lens',
    fiveLinesLaunch
      .replace('focal length: 8 mm', 'focal length: 8 mm, focus: { set for: 2 m }')
      .replace(
        'type: G.652.D',
        'core diameter: 200 µm, cladding diameter: 220 µm, numerical aperture: 0.22, profile: graded',
      ),
  ],
  [
    'a pinhole of a picometre before a fibre of very many modes, with a lens at its far end',
    `${fiveLinesLaunch.replace('type: G.652.D', 'core diameter: 200 µm, cladding diameter: 220 µm, numerical aperture: 0.22').replace('focal length: 8 mm', 'focal length: 8 mm, clear aperture: 0.001 nm')}output: { collimator: { focal length: 8 mm } }\n`,
  ],
];

for (const [name, text] of atTheEdge) {
  test(`${name} is forecast, all its draws`, () => {
    const { output } = forecast(readLaunch(text, 'edge.yaml'), { draws: 32, seed: 1 });
    expect(output.power.value).toBeGreaterThanOrEqual(0);
    expect(Number.isFinite(output.diameter)).toBe(true);
    expect(Number.isFinite(output.power.high)).toBe(true);
  });
}

// functions of optics as they name themselves in what they throw, and the key their argument follows from
const thrown: readonly (readonly [where: string, key: string])[] = [
  ['refractiveIndex wavelength', 'laser.wavelength'],
  ['numericalAperture', 'fibre.numerical aperture'],
  ['guidedMode vNumber', 'fibre.core diameter'],
  ['waistBehindLens focalLength', 'collimator.focal length'],
  ['powerThroughAperture', 'collimator.clear aperture'],
  ['beamFromSpread fullDivergence', 'laser.beam'],
  ['brentRoot', ''],
];

for (const [where, key] of thrown) {
  test(`what ${where} refuses is refused at ${key || 'the launch'}, without a function's name`, () => {
    const error = new OutOfRange({ where, what: '0.000012 m is outside 2.1e-7 m to 3.71e-6 m', mend: 'x' });
    const [part] = outOfRangeRefusal(launch, error).parts;
    expect(part?.where).toBe(key);
    expect(part?.what).toBe('no formula covers this: 12 µm is outside 210 nm to 3.71 µm');
    expect(part?.mend).toMatch(/^[A-Z].*\.$/u);
  });
}

test('a beam so far off that its phase cannot be summed is refused as such', () => {
  const error = new OutOfRange({ where: 'gaussLegendre count', what: '14924 is too much', mend: 'x' });
  const aimed = readLaunch(`${fiveLinesLaunch}misalignment: { tilt y: 500 mrad }\n`, 'aimed.yaml');
  expect(outOfRangeRefusal(launch, error).parts[0]).toMatchObject({ where: 'collimator.focus' });
  expect(outOfRangeRefusal(aimed, error).parts[0]).toMatchObject({
    where: 'misalignment',
    what: expect.stringContaining('so far out of focus, or so steeply'),
  });
});

test('angles are said in words, attenuations stay what they are', () => {
  expect(inWords('1.6 rad is no angle, 3 m/s no length')).toBe('91.7° is no angle, 3 m/s no length');
});
