import { expect, test } from 'vitest';
import { fiveLinesLaunch, observingLoftLaunch } from '../example/example-texts.ts';
import type { Launch } from './launch.ts';
import { readLaunch } from './read-launch.ts';
import { writeLaunch } from './write-launch.ts';

const head = `coreward: 1
laser: { wavelength: 520 nm, power: 5 mW, beam: { diameter: 1.1 mm } }
fibre: { type: OM1 }
`;

/** Launches that between them use every kind of part and of quantity. */
const launches: readonly (readonly [name: string, text: string])[] = [
  ['the observing loft', observingLoftLaunch],
  ['five lines', fiveLinesLaunch],
  ['no collimator', `${head}collimator: none`],
  ['a name like nothing', `${head}name: "null"\ncollimator: none`],
  ['a name like YAML', `${head}name: "a: [b] # c"\ncollimator: none`],
  ['an empty misalignment', `${head}collimator: none\nmisalignment: {}`],
  ['a tilt only', `${head}collimator: none\nmisalignment: { tilt x: 0.3 mrad ± 0.1 mrad }`],
  [
    'an unknown reference',
    `${head}collimator: none\nreference: { wavelength: 635 nm, power: -1 dBm ± 0.5 dB }`,
  ],
  [
    'a telescope',
    `${head}collimator: none
path:
  - lens: { focal length: -50 mm, clear aperture: 1/2 in, transmission: 98 % ± 0.5 % }
  - space: 0.1 m within 3 %
  - lens: { name: big, focal length: { value: 200 mm, origin: datasheet } }
  - stop: { diameter: 3 mm }
  - filter: { transmission: 0.1 % ± 0.05 % }
  - mirror: { mount: { pitch: 80 tpi } }`,
  ],
  [
    'an achromat set by its distance',
    `${head}collimator: { focal length: 9.1 mm ± 3 %, focal shift: 0, surfaces: { count: 3, coating: 0.4 % }, focus: { set for: 9.05 mm } }
output: { collimator: { focal length: { value: 12 mm, at: 850 nm }, clear aperture: 5 mm, focus: { set for: 850 nm } } }`,
  ],
  [
    'a beam known apart in x and y',
    `coreward: 1
laser:
  wavelength: 450 nm ± 5 nm
  power: { value: 1.6 W ± 1 dB, origin: measured, note: "calorimeter, 2 runs: yes" }
  beam:
    x: { waist diameter: 20 µm ± 40 %, waist position: -3 mm, quality: 5 within 2 }
    y: { diameter: 2 mm, at: 0.5 m, divergence: 1.2° }
    azimuth: 12.5°
collimator: none
fibre:
  core diameter: 105 µm
  numerical aperture: 0.22
  cladding diameter: 125 µm
  connectors: { in: SC/APC, out: SMA, between: [{ loss: 3 % }, {}] }
  bends: [{ radius: 12 mm within 2 mm, turns: 0.25 }]
  attenuation: 0.2 dB/m ± 20 %
`,
  ],
];

for (const [name, text] of launches) {
  test(`${name}: written and read again it is the same launch, to the last bit`, () => {
    const launch = readLaunch(text, 'first.yaml');
    expect(readLaunch(writeLaunch(launch), 'second.yaml')).toEqual(launch);
  });
}

test('what was filled in is left out again, and what was written stays', () => {
  const written = writeLaunch(readLaunch(fiveLinesLaunch, 'x'));
  expect(written).toContain('type: G.652.D');
  expect(written).toContain('beam: { diameter: 1.1 mm, at: 0.3 m }');
  expect(written).not.toMatch(/core diameter|reflectance|length: 2 m|quality/u);
});

test('a value of our own making is written with every digit', () => {
  const launch = readLaunch(fiveLinesLaunch, 'x');
  const power = {
    ...launch.laser.power,
    value: Math.PI / 1000,
    uncertainty: 1e-5 / 3,
    defaulted: 'nothing',
  } as const;
  const changed: Launch = { ...launch, laser: { ...launch.laser, power } };
  expect(readLaunch(writeLaunch(changed), 'y').laser.power).toEqual(power);
});
