import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { facetBeam } from '../beam/facet-beam.ts';
import { beamRadiusAt, fullDivergence, wavefrontRadiusAt } from '../beam/gaussian-beam.ts';
import { gaussianOverlap } from '../beam/gaussian-overlap.ts';
import { glassNamed } from '../glass/glass-named.ts';
import { refractiveIndex } from '../glass/refractive-index.ts';
import { OutOfRange } from '../out-of-range.ts';
import { beamFromFibre } from './collimated-output.ts';
import { focalLengthAt, tipMovement } from './focus-by-wavelength.ts';
import { waistBehindLens } from './waist-behind-lens.ts';

interface RefocusCase {
  readonly id: string;
  readonly kind: string;
  readonly inputs: {
    readonly glass: string;
    readonly focalLengthAtSetup_m: number;
    readonly wavelengthSetup_m: number;
    readonly wavelengthUse_m: number;
    readonly fibreModeRadius_m: number;
  };
  readonly expected: {
    readonly indexSetup: number;
    readonly indexUse: number;
    readonly focalLengthAtUse_m: number;
    readonly tipMovement_m: number;
    readonly outputWaistRadiusUnrefocused_m: number;
    readonly outputWaistDistanceUnrefocused_m: number;
    readonly modeRadiusAtLens_m: number;
    readonly outputWaistRadiusRefocused_m: number;
    readonly wavefrontCurvatureRadiusAtLensUnrefocused_m: number;
    readonly couplingUnrefocusedMatchedCollimatedBeam: number;
  };
}

const file = new URL('../../reference/beampath.json', import.meta.url);
const cases = (JSON.parse(readFileSync(file, 'utf8')) as { cases: RefocusCase[] }).cases.filter(
  (each) => each.kind === 'collimator-refocus',
);

describe('a collimator set for red and used in the green, as reference/beampath.json has it (q-law at 40 digits)', () => {
  test('the file has such cases', () => expect(cases.length).toBe(4));
  test.each(cases)('$id', ({ inputs, expected }) => {
    const glass = glassNamed(inputs.glass.replace('-Malitson-1965', ''));
    const { focalLengthAtSetup_m: set, wavelengthSetup_m: red, wavelengthUse_m: wavelength } = inputs;
    const focalLength = focalLengthAt(glass, set, red, wavelength);
    const fibre = { wavelength, modeRadius: inputs.fibreModeRadius_m, quality: 1, focalLength };
    const unrefocused = beamFromFibre({ ...fibre, tipDistance: set });
    const refocused = beamFromFibre({ ...fibre, tipDistance: focalLength });

    // A beam that would focus to the mode's own size meets a fibre end standing in the focus of the other light.
    const axis = { wavelength, waistRadius: fibre.modeRadius, waistPosition: focalLength - set, quality: 1 };
    const mode = { ...axis, waistPosition: 0 };
    const coupling = gaussianOverlap(wavelength, facetBeam(axis, axis), facetBeam(mode, mode));

    const rows = [
      [refractiveIndex(glass, red), expected.indexSetup],
      [refractiveIndex(glass, wavelength), expected.indexUse],
      [focalLength, expected.focalLengthAtUse_m],
      [tipMovement(glass, set, red, wavelength), expected.tipMovement_m],
      [focalLength - set, expected.tipMovement_m],
      [unrefocused.waistRadius, expected.outputWaistRadiusUnrefocused_m],
      [unrefocused.waistPosition, expected.outputWaistDistanceUnrefocused_m],
      [beamRadiusAt(unrefocused, 0), expected.modeRadiusAtLens_m],
      [refocused.waistRadius, expected.outputWaistRadiusRefocused_m],
      [wavefrontRadiusAt(unrefocused, 0), expected.wavefrontCurvatureRadiusAtLensUnrefocused_m],
      [coupling, expected.couplingUnrefocusedMatchedCollimatedBeam],
    ] as const;
    for (const [actual, wanted] of rows) {
      // the tip stands 1 % of f out of focus: two digits lost before, two behind the lens
      expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(1e-11 * Math.abs(wanted));
    }
  });
});

describe('what leaves a fibre through a lens', () => {
  const fibre = { wavelength: 515e-9, modeRadius: 1.7e-6, quality: 1, focalLength: 4.5e-3 };

  test('a tip in the focus: the waist in the other focus, λf/(πw) wide, and 2w/f of divergence', () => {
    const out = beamFromFibre({ ...fibre, tipDistance: 4.5e-3 });
    expect(out.waistPosition).toBe(4.5e-3);
    expect(out.waistRadius).toBeCloseTo((515e-9 * 4.5e-3) / (Math.PI * 1.7e-6), 15);
    expect(fullDivergence(out)).toBeCloseTo((2 * 1.7e-6) / 4.5e-3, 15);
  });

  test('M² scales the width and leaves the divergence to the core and the lens', () => {
    const clean = beamFromFibre({ ...fibre, tipDistance: 4.5e-3 });
    const many = beamFromFibre({ ...fibre, quality: 7, tipDistance: 4.5e-3 });
    expect(many.waistRadius / clean.waistRadius).toBeCloseTo(7, 12);
    expect(fullDivergence(many)).toBeCloseTo(fullDivergence(clean), 15);
  });

  test('sent back, the beam arrives where it came from', () => {
    const out = beamFromFibre({ ...fibre, tipDistance: 4.52e-3 });
    const back = waistBehindLens({ ...out, waistPosition: -out.waistPosition }, fibre.focalLength);
    // 20 µm out of 4.5 mm: three digits lost each way
    expect(back.waistRadius / fibre.modeRadius).toBeCloseTo(1, 9);
    expect(back.waistPosition / 4.52e-3).toBeCloseTo(1, 9);
  });

  test('too far out the beam converges behind the lens, too near it spreads at once', () => {
    expect(beamFromFibre({ ...fibre, tipDistance: 4.55e-3 }).waistPosition).toBeGreaterThan(0);
    expect(beamFromFibre({ ...fibre, tipDistance: 4.45e-3 }).waistPosition).toBeLessThan(0);
  });

  test('a tip in the lens is refused', () => {
    expect(() => beamFromFibre({ ...fibre, tipDistance: 0 })).toThrow(OutOfRange);
    expect(() => beamFromFibre({ ...fibre, tipDistance: 1e-6 })).not.toThrow();
    expect(() => beamFromFibre({ ...fibre, focalLength: 0, tipDistance: 1e-3 })).toThrow(OutOfRange);
  });
});

describe('the focus of one glass', () => {
  const crown = glassNamed('N-BK7');

  test('bluer light focuses nearer, so the tip moves towards the lens; a diverging lens does the opposite', () => {
    expect(tipMovement(crown, 10e-3, 635e-9, 515e-9)).toBeLessThan(0);
    expect(tipMovement(crown, 10e-3, 515e-9, 635e-9)).toBeGreaterThan(0);
    expect(tipMovement(crown, -10e-3, 635e-9, 515e-9)).toBeGreaterThan(0);
  });

  test('from C to F a thin lens shortens by f/Abbe number (textbook definition, from memory)', () => {
    const f = focalLengthAt(crown, 0.1, 587.5618e-9, 587.5618e-9);
    const red = focalLengthAt(crown, 0.1, 587.5618e-9, 656.2725e-9);
    const blue = focalLengthAt(crown, 0.1, 587.5618e-9, 486.1327e-9);
    expect(f).toBe(0.1);
    // f/V holds to first order in the dispersion, under 1 %
    expect(Math.abs((red - blue) / (0.1 / 64.17) - 1)).toBeLessThan(0.01);
  });

  test('there and back is no change; light the glass does not know is refused', () => {
    const green = focalLengthAt(crown, 8e-3, 635e-9, 515e-9);
    expect(focalLengthAt(crown, green, 515e-9, 635e-9)).toBeCloseTo(8e-3, 16);
    expect(green + tipMovement(crown, green, 515e-9, 635e-9)).toBeCloseTo(8e-3, 16);
    expect(() => focalLengthAt(crown, 8e-3, 635e-9, 3e-6)).toThrow(OutOfRange);
    expect(() => tipMovement(crown, 0, 635e-9, 515e-9)).toThrow(OutOfRange);
  });
});
