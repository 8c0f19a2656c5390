import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import {
  beamRadiusAt,
  fullDivergence,
  type GaussianBeam,
  gouyPhaseAt,
  halfDivergence,
  mustBeBeam,
  rayleighRange,
  wavefrontRadiusAt,
} from './gaussian-beam.ts';
import { fwhmFromRadius, powerInsideCircle, radiusFromFwhm } from './intensity-profile.ts';

interface FreeSpaceCase {
  readonly id: string;
  readonly kind: string;
  readonly inputs: {
    readonly wavelength_m: number;
    readonly waistRadius_m: number;
    readonly m2: number;
    readonly distance_m: number;
  };
  readonly expected: {
    readonly rayleighRange_m: number;
    readonly radius_m: number;
    /** null is a plane wave */
    readonly curvatureRadius_m: number | null;
    readonly gouyPhase_rad: number;
    readonly halfDivergence_rad: number;
    readonly fwhm_m: number;
    readonly fractionWithin1e2Radius: number;
    readonly fractionWithinFwhmRadius: number;
  };
}

const file = new URL('../../reference/beampath.json', import.meta.url);
const cases = (JSON.parse(readFileSync(file, 'utf8')) as { cases: FreeSpaceCase[] }).cases.filter(
  (each) => each.kind === 'free-space',
);

/** Closed forms on both sides: a few roundings of 1e-16 each, with room. */
function expectClose(actual: number, expected: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
}

describe('a beam in free space, as reference/beampath.json has it (Kogelnik & Li 1966)', () => {
  test('the file has such cases', () => expect(cases.length).toBe(4));

  test.each(cases)('$id', ({ inputs, expected }) => {
    const beam: GaussianBeam = {
      wavelength: inputs.wavelength_m,
      waistRadius: inputs.waistRadius_m,
      waistPosition: 0,
      quality: inputs.m2,
    };
    const position = inputs.distance_m;
    expectClose(rayleighRange(beam), expected.rayleighRange_m);
    expectClose(beamRadiusAt(beam, position), expected.radius_m);
    if (expected.curvatureRadius_m === null) expect(wavefrontRadiusAt(beam, position)).toBe(Infinity);
    else expectClose(wavefrontRadiusAt(beam, position), expected.curvatureRadius_m);
    expectClose(gouyPhaseAt(beam, position), expected.gouyPhase_rad);
    expectClose(halfDivergence(beam), expected.halfDivergence_rad);
    expectClose(fullDivergence(beam), 2 * expected.halfDivergence_rad);
    expectClose(fwhmFromRadius(beamRadiusAt(beam, position)), expected.fwhm_m);
    expectClose(powerInsideCircle(expected.radius_m, expected.radius_m), expected.fractionWithin1e2Radius);
    expectClose(powerInsideCircle(expected.radius_m, expected.fwhm_m / 2), expected.fractionWithinFwhmRadius);
  });
});

describe('a beam about its waist', () => {
  const anyBeam = fc.record({
    wavelength: fc.double({ min: 0.2e-6, max: 2e-6, noNaN: true }),
    waistRadius: fc.double({ min: 1e-6, max: 5e-3, noNaN: true }),
    waistPosition: fc.double({ min: -2, max: 2, noNaN: true }),
    quality: fc.double({ min: 1, max: 30, noNaN: true }),
  });

  test('spreads alike on both sides, and curves the other way', () => {
    fc.assert(
      fc.property(anyBeam, fc.double({ min: 0.01, max: 50, noNaN: true }), (beam, ranges) => {
        const away = ranges * rayleighRange(beam);
        const centred = { ...beam, waistPosition: 0 };
        expect(beamRadiusAt(centred, -away)).toBe(beamRadiusAt(centred, away));
        expect(wavefrontRadiusAt(centred, -away)).toBe(-wavefrontRadiusAt(centred, away));
        expect(wavefrontRadiusAt(centred, away)).toBeGreaterThan(0);
      }),
    );
  });

  test('a waist ahead means a wavefront that still converges here', () => {
    expect(
      wavefrontRadiusAt({ wavelength: 633e-9, waistRadius: 1e-4, waistPosition: 0.3, quality: 1 }, 0),
    ).toBeLessThan(0);
  });

  test('radius at the waist times half divergence is M² λ/π (ISO 11146-1, from memory)', () => {
    fc.assert(
      fc.property(anyBeam, (beam) => {
        expectClose(beam.waistRadius * halfDivergence(beam), (beam.quality * beam.wavelength) / Math.PI);
      }),
    );
  });

  test('in glass it spreads slower by the index and keeps its waist', () => {
    const beam: GaussianBeam = { wavelength: 633e-9, waistRadius: 2e-6, waistPosition: 0, quality: 1 };
    expectClose(halfDivergence({ ...beam, mediumIndex: 1.457 }), halfDivergence(beam) / 1.457);
  });
});

describe('beams that cannot be', () => {
  const beam: GaussianBeam = { wavelength: 633e-9, waistRadius: 1e-3, waistPosition: 0, quality: 1 };
  test('M² of exactly 1 is a beam; a little less is refused', () => {
    expect(() => mustBeBeam(beam, 'test')).not.toThrow();
    expect(() => mustBeBeam({ ...beam, quality: 1 - 1e-12 }, 'test')).toThrow(OutOfRange);
  });
  test.each([
    { ...beam, waistRadius: 0 },
    { ...beam, wavelength: -633e-9 },
    { ...beam, waistPosition: Number.NaN },
    { ...beam, quality: Infinity },
    { ...beam, mediumIndex: 0 },
  ])('refused: %o', (impossible) => expect(() => mustBeBeam(impossible, 'test')).toThrow(OutOfRange));
});

describe('widths of one profile', () => {
  test('there and back', () => expectClose(radiusFromFwhm(fwhmFromRadius(0.4e-3)), 0.4e-3));
  test('the 1/e² circle holds 86.5 % (any laser handbook, from memory)', () =>
    expect(powerInsideCircle(1e-3, 1e-3)).toBeCloseTo(0.865, 3));
  test('a circle of no radius lets nothing through; one below none is refused', () => {
    expect(powerInsideCircle(1e-3, 0)).toBe(0);
    expect(() => powerInsideCircle(1e-3, -1e-9)).toThrow(OutOfRange);
    expect(() => powerInsideCircle(0, 1e-3)).toThrow(OutOfRange);
  });
});
