import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';

/*
 * The reference cases of the coupling, written down as launches and forecast: the whole way from text to number. The
 * cases were computed independently with SciPy and mpmath; each names its source in the file. Wanted: 1e-6 absolute.
 */
const bound = 1e-6;

interface Case {
  readonly id: string;
  readonly kind: string;
  // biome-ignore lint/suspicious/noExplicitAny: the cases of a published-format file differ by kind
  readonly inputs: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above
  readonly expected: any;
}

const { cases } = JSON.parse(
  readFileSync(new URL('../../../optics/reference/coupling.json', import.meta.url), 'utf8'),
) as { cases: Case[] };
const ofKind = (...kinds: string[]) =>
  cases.filter(({ kind }) => kinds.includes(kind)).map((c) => [c.id, c] as const);

/** Without exponents that a reader of lengths would have to take: nanometres with all digits. */
const length = (metres: number) => `${(metres * 1e9).toPrecision(15)} nm`;
const angle = (radians: number) => `${(radians * 1e3).toPrecision(15)} mrad`;
const axis = (waistRadius: number, waistZ: number, m2: number) =>
  `{ waist diameter: ${length(2 * waistRadius)}, waist position: ${length(waistZ)}, quality: ${m2} }`;

// biome-ignore lint/suspicious/noExplicitAny: as above
const fibreText = (fibre: any) => `fibre:
  profile: ${fibre.profile === 'step' ? 'step' : 'graded'}
  core diameter: ${length(2 * fibre.coreRadius_m)}
  numerical aperture: ${fibre.numericalAperture.toPrecision(15)}
  cladding diameter: 250 µm
  length: 1 m
  attenuation: 1 dB/km`;

// biome-ignore lint/suspicious/noExplicitAny: as above
const directLaunch = ({ wavelength_m, fibre, beam }: any) => `coreward: 1
name: a reference case
laser:
  wavelength: ${length(wavelength_m)}
  power: 1 mW
  beam:
    x: ${axis(beam.waistRadiusX_m, beam.waistZX_m, beam.m2X)}
    y: ${axis(beam.waistRadiusY_m, beam.waistZY_m, beam.m2Y)}
    azimuth: ${angle(beam.azimuth_rad)}
path: []
collimator: none
${fibreText(fibre)}
misalignment: { x: ${length(beam.offsetX_m)}, y: ${length(beam.offsetY_m)}, tilt x: ${angle(beam.tiltX)}, tilt y: ${angle(beam.tiltY)}, defocus: 0 µm }
`;

describe('a beam that meets the facet as it is', () => {
  test.each(ofKind('gaussian-to-lp', 'gsm-to-lp', 'gaussian-to-truncated-parabolic'))(
    '%s',
    (_, { inputs, expected }) => {
      const { coupling, fibre, ledger, output } = forecast(
        readLaunch(directLaunch(inputs), 'reference.yaml'),
      );
      expect(Math.abs(coupling.guided - expected.totalPower)).toBeLessThan(bound);
      expect(Math.abs(coupling.fundamental! - expected.lp01Power)).toBeLessThan(bound);
      expect(fibre.lpModes).toBe(expected.guidedModeCountLm);
      expect(fibre.modesWithOrientation).toBe(expected.guidedModeCountWithOrientation);
      expect(coupling.bestGuided).toBeGreaterThan(coupling.guided - bound);
      expect(coupling.bestFundamental!).toBeGreaterThan(coupling.fundamental! - bound);
      const product = ledger.reduce((all, { transmission }) => all * transmission, 1);
      expect(Math.abs(product / output.fractionOfLaser.value - 1)).toBeLessThan(1e-12); // rounding of a product
      const overlap = ledger
        .filter(({ group }) => group === 'overlap')
        .reduce((all, { transmission }) => all * transmission, 1);
      expect(Math.abs(overlap - coupling.guided)).toBeLessThan(1e-12);
    },
  );
});

describe('a coherent beam into hundreds of modes', () => {
  test.each(ofKind('multimode-modal-sum'))('%s', (_, { inputs, expected }) => {
    const { coupling } = forecast(readLaunch(directLaunch(inputs), 'reference.yaml'), { draws: 8, seed: 1 });
    expect(coupling.method).toBe('modes');
    expect(Math.abs(coupling.guided - expected.totalPower)).toBeLessThan(bound);
  });
});

describe('a beam of so poor a quality that rays answer', () => {
  test.each(ofKind('phase-space-step').filter(([, { inputs }]) => inputs.beam.m2X > 8))(
    '%s',
    (_, { inputs, expected }) => {
      const { coupling } = forecast(readLaunch(directLaunch(inputs), 'reference.yaml'), {
        draws: 8,
        seed: 1,
      });
      expect(coupling.method).toBe('rays');
      expect(Math.abs(coupling.guided - expected.fraction)).toBeLessThan(bound);
    },
  );
});

describe('a lens that stops or aberrates the beam', () => {
  // a lens that looks past the fibre's axis has no key in the document: those two cases stay with the overlap itself
  const square = ofKind('truncated-lens-to-lp', 'aberrated-lens-to-lp').filter(
    ([, { inputs }]) => inputs.lens.fibreTiltX === 0,
  );
  test.each(square)('%s', (_, { inputs, expected }) => {
    const { wavelength_m, fibre, lens } = inputs;
    const f = lens.focalLength_m;
    const tiltX = -lens.beamDecentreX_m / f;
    const tiltY = -lens.beamDecentreY_m / f;
    const aberrationAtStop =
      (lens.W040_m / wavelength_m) * (lens.apertureRadius_m / lens.W040ReferenceRadius_m) ** 4;
    // the waist stands in the front focal plane, so that its image stands in the back one
    const text = `coreward: 1
name: a reference case
laser:
  wavelength: ${length(wavelength_m)}
  power: 1 mW
  beam: { waist diameter: ${length(2 * lens.beamRadiusAtLens_m)}, waist position: 0 mm, quality: 1 }
path: [ { space: ${length(f)} } ]
collimator:
  focal length: ${length(f)}
  focal shift: 0
  clear aperture: ${length(2 * lens.apertureRadius_m)}
  spherical aberration: ${aberrationAtStop.toPrecision(15)}
  focus: { set for: ${length(f)} }
${fibreText(fibre)}
misalignment:
  x: ${length(tiltX * lens.facetDefocus_m - lens.fibreOffsetX_m)}
  y: ${length(tiltY * lens.facetDefocus_m - lens.fibreOffsetY_m)}
  tilt x: ${angle(tiltX)}
  tilt y: ${angle(tiltY)}
  defocus: ${length(lens.facetDefocus_m)}
`;
    const { coupling, ledger } = forecast(readLaunch(text, 'reference.yaml'), { draws: 8, seed: 1 });
    const clip = ledger.find(({ id }) => id === 'lens-clip')!.transmission;
    expect(Math.abs(clip - expected.apertureTransmission)).toBeLessThan(bound);
    expect(Math.abs(coupling.guided * clip - expected.totalPower)).toBeLessThan(bound);
    expect(Math.abs(coupling.fundamental! * clip - expected.lp01Power)).toBeLessThan(bound);
  });
});
