import { expect, test } from 'vitest';
import type { Entry } from '../quantity/quantity.ts';
import { readLaunch } from './read-launch.ts';

/** The whole launch of docs/launch-document.md, in its first form: every key of the format once. */
const whole = `coreward: 1
name: green guide light to the observing loft
laser:
  wavelength: 520 nm
  power: 12 mW ± 10 %
  polarization: linear
  beam:
    waist diameter: 0.82 mm
    waist position: 0 mm
    quality: 1.15
path:
  - space: 220 mm
  - mirror: { name: M1, angle: 45°, reflectance: 97 %, clear aperture: 22 mm, mount: { lever: 38 mm, pitch: 0.25 mm } }
  - space: 160 mm
  - mirror: { angle: 45°, reflectance: 97 % }
  - lens: { focal length: -50 mm }
  - stop: { diameter: 4 mm }
  - filter: { name: grey, transmission: 10 % }
collimator:
  focal length: { value: 6.2 mm, at: 635 nm }
  clear aperture: 5 mm
  glass: N-BK7
  surfaces: { count: 2, coating: none }
  spherical aberration: 0
  focus: { set for: best, thread: 0.5 mm }
  connector: SC
fibre:
  profile: step
  core diameter: 8.2 µm
  numerical aperture: 0.13
  cladding diameter: 125 µm
  length: 18 m
  attenuation: 15 dB/km
  ends: { in: flat, out: flat }
  connectors: { in: SC, out: LC, between: [ { loss: 0.3 dB ± 0.2 dB } ] }
  bends: [ { radius: 30 mm, turns: 2 } ]
reference: { wavelength: 635 nm, power: 0.8 mW, tolerates: 1 mW }
output: { collimator: { focal length: 8 mm } }
misalignment: { x: 0 µm, y: 0 µm, tilt x: 0 mrad, tilt y: 0 mrad, defocus: 0 µm }
`;

const launch = readLaunch(whole, 'launch.yaml');

/** The unit prefixes undone by hand; a decibel is ln(10)/10 nepers of power. */
const neper = Math.LN10 / 10;
const values: readonly (readonly [key: string, entry: Entry | null | undefined, value: number])[] = [
  ['laser.wavelength', launch.laser.wavelength, 520e-9],
  ['laser.power', launch.laser.power, 12e-3],
  ['path.1.space', launch.path[0]?.kind === 'space' ? launch.path[0].length : null, 0.22],
  ['path.2.mirror.angle', launch.path[1]?.kind === 'mirror' ? launch.path[1].angle : null, Math.PI / 4],
  ['path.2.mirror.reflectance', launch.path[1]?.kind === 'mirror' ? launch.path[1].reflectance : null, 0.97],
  [
    'path.2.mirror.mount.pitch',
    launch.path[1]?.kind === 'mirror' ? launch.path[1].mount?.pitch : null,
    0.25e-3,
  ],
  ['path.5.lens.focal length', launch.path[4]?.kind === 'lens' ? launch.path[4].focalLength : null, -0.05],
  ['path.6.stop.diameter', launch.path[5]?.kind === 'stop' ? launch.path[5].diameter : null, 4e-3],
  ['path.7.filter.transmission', launch.path[6]?.kind === 'filter' ? launch.path[6].transmission : null, 0.1],
  ['collimator.focal length', launch.collimator?.focalLength, 6.2e-3],
  ['collimator.focal length.at', launch.collimator?.designWavelength, 635e-9],
  ['collimator.focus.thread', launch.collimator?.focusThread, 0.5e-3],
  ['fibre.core diameter', launch.fibre.coreDiameter, 8.2e-6],
  ['fibre.numerical aperture', launch.fibre.numericalAperture, 0.13],
  ['fibre.attenuation', launch.fibre.attenuation, 0.015 * neper],
  ['fibre.connectors.between.1.loss', launch.fibre.connectors.between[0]?.loss, 0.3 * neper],
  ['fibre.bends.1.radius', launch.fibre.bends[0]?.radius, 30e-3],
  ['fibre.bends.1.turns', launch.fibre.bends[0]?.turns, 2],
  ['reference.tolerates', launch.reference?.tolerates, 1e-3],
  ['output.collimator.focal length', launch.output?.collimator.focalLength, 8e-3],
  ['misalignment.tilt x', launch.misalignment?.tiltX, 0],
];

for (const [key, entry, value] of values) {
  test(`\`${key}\` is ${value} in SI, and keeps its key`, () => {
    expect(entry?.key).toBe(key);
    // a product of two doubles may differ from the one double in the last place
    expect(Math.abs((entry?.value ?? Number.NaN) - value)).toBeLessThanOrEqual(Math.abs(value) * 4e-16);
  });
}

test('what has no name on the path is numbered among its kind', () => {
  expect(launch.path.map((element) => ('name' in element ? element.name : ''))).toEqual([
    '',
    'M1',
    '',
    'M2',
    'L1',
    'S1',
    'grey',
  ]);
});

test('a written ± is one standard uncertainty, and says that nothing was filled in', () => {
  expect(launch.laser.power).toMatchObject({
    uncertainty: 0.1 * 12e-3,
    defaulted: 'nothing',
    origin: 'assumed',
  });
});

test('a bare value gets the uncertainty of its kind, and says so', () => {
  expect(launch.fibre.numericalAperture).toMatchObject({ uncertainty: 0.01, defaulted: 'uncertainty' });
  expect(launch.fibre.coreDiameter.uncertainty).toBeCloseTo(0.05 * 8.2e-6, 12);
});

test('a focal length is within 2 %: rectangular, standard uncertainty limit/√3 (JCGM 100, 4.3.7, from memory)', () => {
  const { uncertainty, shape, value } = launch.collimator!.focalLength;
  expect(shape).toBe('rectangular');
  expect(uncertainty / value).toBeCloseTo(0.02 / Math.sqrt(3), 12);
});

test('M² is never below 1, however little is known', () => {
  const at = (quality: string) => {
    const { beam } = readLaunch(whole.replace('quality: 1.15', `quality: ${quality}`), 'x').laser;
    const entry = beam.kind === 'round' ? beam.axis.quality : null;
    return entry!.value - Math.sqrt(3) * entry!.uncertainty;
  };
  // 1.05 less 10 % would be 0.945
  expect(at('1.05')).toBeCloseTo(1, 12);
  expect(at('1.5')).toBeCloseTo(1.35, 12);
});

test('a written zero of the misalignment is exact', () => {
  for (const entry of Object.values(launch.misalignment!))
    expect(entry).toMatchObject({ value: 0, uncertainty: 0 });
});

test('a misalignment with one key has zeros for the rest', () => {
  const { misalignment } = readLaunch(whole.replace(/misalignment: .*/u, 'misalignment: { x: 1.5 µm }'), 'x');
  expect(misalignment?.offsetX).toMatchObject({ value: 1.5e-6, uncertainty: 0, defaulted: 'uncertainty' });
  expect(misalignment?.tiltY).toMatchObject({ value: 0, uncertainty: 0, defaulted: 'value' });
});

/** The keys that any launch needs, with a fibre by its numbers. */
const least = `coreward: 1
laser: { wavelength: 520 nm, power: 5 mW, beam: { diameter: 1.1 mm, at: 300 mm } }
collimator: { focal length: 8 mm }
fibre: { core diameter: 8.2 µm, numerical aperture: 0.13 }
`;

test('left out means: nothing between, walked by hand, no reference source, a bare end', () => {
  expect(readLaunch(least, 'x')).toMatchObject({
    path: [],
    misalignment: null,
    reference: null,
    output: null,
    laser: { polarization: 'random', name: null },
    collimator: { focus: { kind: 'best' }, focalShift: { kind: 'glass', glass: 'N-BK7' }, connector: null },
    fibre: { profile: 'step', material: 'silica', attenuation: null, bends: [], coating: 'unknown' },
  });
});

test('an entry that was filled in says so, and why', () => {
  const { claddingDiameter } = readLaunch(least, 'x').fibre;
  expect(claddingDiameter).toMatchObject({ value: 125e-6, defaulted: 'value', origin: 'assumed' });
  expect(claddingDiameter.note).toMatch(/silica/);
});

test('without a collimator the beam meets the facet as it is', () => {
  expect(readLaunch(least.replace(/collimator: .*/u, 'collimator: none'), 'x').collimator).toBeNull();
});

test('x and y of a beam may be described in different ways', () => {
  const beam =
    'beam: { x: { waist diameter: 1 mm }, y: { diameter: 2 mm, divergence: 1 mrad }, azimuth: 90° }';
  const { laser } = readLaunch(least.replace(/beam: \{.*?\}/u, beam), 'x');
  expect(laser.beam).toMatchObject({
    kind: 'elliptic',
    x: { kind: 'waist', waistDiameter: { key: 'laser.beam.x.waist diameter', value: 1e-3 } },
    y: { kind: 'spread', fullDivergence: { key: 'laser.beam.y.divergence', value: 1e-3 } },
    azimuth: { value: Math.PI / 2 },
  });
});

const settings: readonly (readonly [written: string, kind: string])[] = [
  ['best', 'best'],
  ['635 nm', 'wavelength'],
  ['1.55 µm', 'wavelength'],
  ['10.6 µm', 'wavelength'],
  ['6.1 mm', 'distance'],
  ['150 µm', 'distance'],
];

for (const [written, kind] of settings) {
  test(`a focus set for ${written} is a ${kind}`, () => {
    const text = least.replace(
      'focal length: 8 mm',
      `focal length: 8 mm, focal shift: 0, focus: { set for: ${written} }`,
    );
    expect(readLaunch(text, 'x').collimator?.focus.kind).toBe(kind);
  });
}

test('FC is FC/PC, and an APC connector has an angled end', () => {
  const fibre =
    'fibre: { core diameter: 8 µm, numerical aperture: 0.1, connectors: { in: FC, out: SC/APC } }';
  expect(readLaunch(least.replace(/fibre: .*/u, fibre), 'x').fibre).toMatchObject({
    connectors: { in: 'FC/PC', out: 'SC/APC' },
    ends: { in: 'flat', out: 'angled 8°' },
  });
});

test('a product of diameter and divergence just below diffraction is put down to rounding, and M² taken as 1', () => {
  // 632.8 nm: 4λ/π is 0.806 mm mrad, and such lasers are sold as 0.8 mm, 1 mrad.
  const text = least
    .replace('520 nm', '632.8 nm')
    .replace(/beam: \{.*?\}/u, 'beam: { diameter: 0.8 mm, divergence: 1 mrad }');
  const { beam } = readLaunch(text, 'x').laser;
  expect(beam.kind === 'round' && beam.axis.quality).toMatchObject({ value: 1, uncertainty: 0 });
});

test('JSON is a launch, too, with numbers where there is no unit', () => {
  const json = JSON.stringify({
    coreward: 1,
    laser: { wavelength: '520 nm', power: '5 mW', beam: { 'waist diameter': '1 mm', quality: 1.2 } },
    collimator: { 'focal length': '8 mm', surfaces: { count: 2, coating: 'none' } },
    fibre: { 'core diameter': '50 µm', 'numerical aperture': 0.2, profile: 'graded' },
  });
  expect(readLaunch(json, 'x.json').fibre).toMatchObject({
    profile: 'graded',
    numericalAperture: { value: 0.2 },
  });
});

test('a type fills in the limits of its standard, and what is written beside it takes precedence', () => {
  const typed = least.replace(/fibre: .*/u, 'fibre: { type: OM1, numerical aperture: 0.27 ± 0.005 }');
  const { fibre } = readLaunch(typed, 'x');
  // OM1: graded, 62.5 µm ± 2.5 µm (ISO/IEC 11801-1 and IEC 60793-2-10, from memory)
  expect(fibre).toMatchObject({
    type: 'OM1',
    profile: 'graded',
    coreDiameter: { defaulted: 'value', origin: 'assumed' },
  });
  expect(fibre.coreDiameter.value).toBeCloseTo(62.5e-6, 12);
  expect(fibre.coreDiameter.uncertainty * Math.sqrt(3)).toBeCloseTo(2.5e-6, 12);
  expect(fibre.coreDiameter.note).toMatch(/OM1: .*ISO\/IEC 11801-1.*from memory/u);
  expect(fibre.numericalAperture).toMatchObject({ value: 0.27, uncertainty: 0.005, defaulted: 'nothing' });
});
