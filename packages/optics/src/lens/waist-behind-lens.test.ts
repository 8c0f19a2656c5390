import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { carryBeam } from '../beam/carry-beam.ts';
import { beamRadiusAt, type GaussianBeam, rayleighRange } from '../beam/gaussian-beam.ts';
import { OutOfRange } from '../out-of-range.ts';
import { waistBehindLens } from './waist-behind-lens.ts';

interface LensCase {
  readonly id: string;
  readonly kind: string;
  readonly inputs: {
    readonly wavelength_m: number;
    readonly waistRadius_m: number;
    readonly m2: number;
    readonly waistToLens_m: number;
    readonly focalLength_m: number;
  };
  readonly expected: {
    readonly imageWaistRadius_m: number;
    readonly lensToImageWaist_m: number;
    readonly magnification: number;
    readonly imageRayleighRange_m: number;
    readonly radiusAtLens_m: number;
  };
}

const file = new URL('../../reference/beampath.json', import.meta.url);
const cases = (JSON.parse(readFileSync(file, 'utf8')) as { cases: LensCase[] }).cases.filter(
  (each) => each.kind === 'thin-lens-waist',
);

describe('the waist behind a thin lens, as reference/beampath.json has it (q-law at 40 digits)', () => {
  test('the file has such cases', () => expect(cases.length).toBe(7));
  test.each(cases)('$id', ({ inputs, expected }) => {
    const beam: GaussianBeam = {
      wavelength: inputs.wavelength_m,
      waistRadius: inputs.waistRadius_m,
      waistPosition: -inputs.waistToLens_m,
      quality: inputs.m2,
    };
    const behind = waistBehindLens(beam, inputs.focalLength_m);
    const rows = [
      [behind.waistRadius, expected.imageWaistRadius_m],
      [behind.waistPosition, expected.lensToImageWaist_m],
      [behind.waistRadius / beam.waistRadius, expected.magnification],
      [rayleighRange(behind), expected.imageRayleighRange_m],
      [beamRadiusAt(beam, 0), expected.radiusAtLens_m],
      [beamRadiusAt(behind, 0), expected.radiusAtLens_m],
    ] as const;
    for (const [actual, wanted] of rows) {
      // a tip 10 µm out of a focus of 4.5 mm cancels three digits (numericalError 1.2e-13 there), and the waist seen from
      // the lens another one: 1e-11 is a hundredfold of that, and a hundredth of what the file asks for
      expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(1e-11 * Math.abs(wanted));
    }
  });
});

const anyBeam: fc.Arbitrary<GaussianBeam> = fc.record({
  wavelength: fc.double({ min: 0.4e-6, max: 1.6e-6, noNaN: true }),
  waistRadius: fc.double({ min: 1e-6, max: 2e-3, noNaN: true }),
  waistPosition: fc.double({ min: -1, max: 1, noNaN: true }),
  quality: fc.double({ min: 1, max: 5, noNaN: true }),
});
const anyFocalLength = fc
  .double({ min: 2e-3, max: 0.5, noNaN: true })
  .chain((size) => fc.constantFrom(size, -size));

describe('any beam, any lens', () => {
  test('a waist in one focus lands in the other', () => {
    fc.assert(
      fc.property(anyBeam, anyFocalLength, (beam, focalLength) => {
        const behind = waistBehindLens({ ...beam, waistPosition: -focalLength }, focalLength);
        expect(behind.waistPosition).toBe(focalLength);
        // w₁ w₂ = M² λ f/π
        const product = (beam.quality * beam.wavelength * Math.abs(focalLength)) / Math.PI;
        expect((behind.waistRadius * beam.waistRadius) / product).toBeCloseTo(1, 12);
      }),
    );
  });

  test('there and back restores it', () => {
    fc.assert(
      fc.property(anyBeam, anyFocalLength, (beam, focalLength) => {
        const behind = waistBehindLens(beam, focalLength);
        // the light turned round: positions change sign
        const back = waistBehindLens({ ...behind, waistPosition: -behind.waistPosition }, focalLength);
        expect(Math.abs(back.waistRadius / beam.waistRadius - 1)).toBeLessThan(1e-6);
        // the far side may be demagnified a millionfold; what comes back is good to rounding times that
        const scale = Math.abs(beam.waistPosition) + Math.abs(focalLength) + rayleighRange(beam);
        expect(Math.abs(-back.waistPosition - beam.waistPosition)).toBeLessThan(1e-6 * scale);
      }),
    );
  });

  test('a Rayleigh range of nearly zero images like rays: 1/f = 1/before + 1/behind', () => {
    const point: GaussianBeam = { wavelength: 500e-9, waistRadius: 1e-9, waistPosition: -0.3, quality: 1 };
    expect(waistBehindLens(point, 0.1).waistPosition).toBeCloseTo(0.15, 12);
    expect(waistBehindLens(point, -0.1).waistPosition).toBeCloseTo(-0.075, 12);
  });

  test('the ray matrix of the same lens agrees', () => {
    fc.assert(
      fc.property(anyBeam, anyFocalLength, (beam, focalLength) => {
        const byNewton = waistBehindLens(beam, focalLength);
        const byMatrix = carryBeam(beam, [{ kind: 'thin lens', focalLength }]);
        expect(byMatrix.waistRadius / byNewton.waistRadius).toBeCloseTo(1, 9);
        // the matrix subtracts z and f only after multiplying them: it loses what the two have in common
        const scale = Math.abs(byNewton.waistPosition) + Math.abs(focalLength);
        expect(Math.abs(byMatrix.waistPosition - byNewton.waistPosition)).toBeLessThan(1e-9 * scale);
      }),
    );
  });

  test('behind a diverging lens a parallel beam comes from before it', () => {
    const beam: GaussianBeam = { wavelength: 633e-9, waistRadius: 1e-3, waistPosition: 0, quality: 1 };
    expect(waistBehindLens(beam, -0.05).waistPosition).toBeLessThan(0);
  });
});

test('a lens of no focal length, or of an infinite one, is refused', () => {
  const beam: GaussianBeam = { wavelength: 633e-9, waistRadius: 1e-3, waistPosition: 0, quality: 1 };
  for (const focalLength of [0, Infinity, Number.NaN]) {
    expect(() => waistBehindLens(beam, focalLength)).toThrow(OutOfRange);
  }
  expect(() => waistBehindLens({ ...beam, mediumIndex: 1.5 }, 0.1)).toThrow(OutOfRange);
});
