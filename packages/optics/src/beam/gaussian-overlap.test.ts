import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { type FacetBeam, facetBeam, perfectAim } from './facet-beam.ts';
import type { GaussianBeam } from './gaussian-beam.ts';
import { gaussianOverlap } from './gaussian-overlap.ts';

interface BeamRow {
  readonly waistRadiusX_m: number;
  readonly waistRadiusY_m: number;
  readonly waistZX_m: number;
  readonly waistZY_m: number;
  readonly azimuth_rad: number;
  readonly offsetX_m: number;
  readonly offsetY_m: number;
  readonly tiltX: number;
  readonly tiltY: number;
  readonly m2X: number;
  readonly m2Y: number;
}

interface OverlapCase {
  readonly id: string;
  readonly kind: string;
  readonly inputs: { readonly wavelength_m: number; readonly beam: BeamRow; readonly modeGaussian: BeamRow };
  readonly expected: { readonly coupling: number };
}

const file = new URL('../../reference/coupling.json', import.meta.url);
const cases = (JSON.parse(readFileSync(file, 'utf8')) as { cases: OverlapCase[] }).cases.filter(
  (each) => each.kind === 'gaussian-to-gaussian',
);

function fromRow(row: BeamRow): FacetBeam {
  return {
    waistRadiusX: row.waistRadiusX_m,
    waistRadiusY: row.waistRadiusY_m,
    waistZX: row.waistZX_m,
    waistZY: row.waistZY_m,
    m2X: row.m2X,
    m2Y: row.m2Y,
    azimuth: row.azimuth_rad,
    offsetX: row.offsetX_m,
    offsetY: row.offsetY_m,
    tiltX: row.tiltX,
    tiltY: row.tiltY,
  };
}

describe('one Gaussian into another, as reference/coupling.json has it (2-D quadrature of the fields)', () => {
  test('the file has such cases', () => expect(cases.length).toBe(12));

  test.each(cases)('$id', ({ inputs, expected }) => {
    const { wavelength_m, beam, modeGaussian } = inputs;
    const coupling = gaussianOverlap(wavelength_m, fromRow(beam), fromRow(modeGaussian));
    // the file knows its numbers to 1e-13; ten times that for our own rounding
    expect(Math.abs(coupling - expected.coupling)).toBeLessThan(1e-12);
  });
});

const wavelength = 633e-9;
const round = (waistRadius: number, waistZ = 0, quality = 1): FacetBeam => {
  const axis: GaussianBeam = { wavelength, waistRadius, waistPosition: waistZ, quality };
  return facetBeam(axis, axis);
};

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyBeam: fc.Arbitrary<FacetBeam> = fc.record({
  waistRadiusX: number(1e-6, 6e-6),
  waistRadiusY: number(1e-6, 6e-6),
  waistZX: number(-60e-6, 60e-6),
  waistZY: number(-60e-6, 60e-6),
  m2X: fc.constant(1),
  m2Y: fc.constant(1),
  azimuth: number(-Math.PI, Math.PI),
  offsetX: number(-3e-6, 3e-6),
  offsetY: number(-3e-6, 3e-6),
  tiltX: number(-0.06, 0.06),
  tiltY: number(-0.06, 0.06),
});
const anyDirtyBeam = anyBeam.chain((beam) =>
  fc.record({ m2X: number(1, 4), m2Y: number(1, 4) }).map((quality) => ({ ...beam, ...quality })),
);

describe('closed forms it contains', () => {
  test('W. B. Joyce and B. C. DeLoach, Appl. Opt. 23, 4187 (1984), from memory: offset, tilt and defocus at once', () => {
    fc.assert(
      fc.property(
        fc.record({ w1: number(1e-6, 6e-6), w2: number(1e-6, 6e-6), z: number(-80e-6, 80e-6) }),
        number(-3e-6, 3e-6),
        number(-0.05, 0.05),
        ({ w1, w2, z }, offset, tilt) => {
          // z: from the waist of beam 1 to that of the mode, where offset and tilt are taken
          const kappa = 4 / ((w1 / w2 + w2 / w1) ** 2 + ((wavelength * z) / (Math.PI * w1 * w2)) ** 2);
          const w1z = w1 ** 2 + ((wavelength * z) / (Math.PI * w1)) ** 2;
          const exponent =
            (offset ** 2 / 2) * (1 / w1 ** 2 + 1 / w2 ** 2) +
            (Math.PI ** 2 * tilt ** 2 * (w1z + w2 ** 2)) / (2 * wavelength ** 2) -
            (offset * tilt * z) / w1 ** 2;
          const joyceDeLoach = kappa * Math.exp(-kappa * exponent);
          const beam = { ...round(w1, -z), offsetX: offset, tiltX: tilt };
          expect(Math.abs(gaussianOverlap(wavelength, beam, round(w2)) - joyceDeLoach)).toBeLessThan(1e-12);
        },
      ),
    );
  });

  test('M² > 1: (2/(1 + M²))² at the best waist, √M² wider; 2/(1 + (M²)²) at equal waists (Gaussian Schell model)', () => {
    for (const quality of [1, 1.3, 2, 5]) {
      const best = gaussianOverlap(wavelength, round(3e-6 * Math.sqrt(quality), 0, quality), round(3e-6));
      expect(best).toBeCloseTo((2 / (1 + quality)) ** 2, 13);
      const equal = gaussianOverlap(wavelength, round(3e-6, 0, quality), round(3e-6));
      expect(equal).toBeCloseTo(2 / (1 + quality ** 2), 13);
    }
  });

  test('M² 1.8 out of focus is clean Gaussians of the full waist, tilted at random (A. Starikov and E. Wolf 1982, from memory)', () => {
    // A sum of coherent members: Gaussians of the full waist, tilted at random by rms √((M²)²−1)·λ/(2πw₀) on each axis,
    // averaged by the trapezoid rule, which for a Gaussian weight is exact to rounding at this step.
    const quality = 1.8;
    const beam = { ...round(3e-6, 20e-6, quality), m2Y: 1, offsetX: 1e-6, tiltX: 0.02 };
    const spread = (Math.sqrt(quality ** 2 - 1) * wavelength) / (2 * Math.PI * 3e-6);
    let power = 0;
    let weight = 0;
    for (let step = -400; step <= 400; step++) {
      const u = step / 50;
      const p = Math.exp((-u * u) / 2);
      // the tilt is given where the members share a waist; at the facet it has become a shift too
      const tilt = u * spread;
      const member = { ...beam, m2X: 1, tiltX: beam.tiltX + tilt, offsetX: beam.offsetX - 20e-6 * tilt };
      power += p * gaussianOverlap(wavelength, member, round(2.2e-6));
      weight += p;
    }
    expect(gaussianOverlap(wavelength, beam, round(2.2e-6))).toBeCloseTo(power / weight, 12);
  });
});

describe('what any overlap must do', () => {
  test('no more comes out than goes in, and the same the other way round', () => {
    fc.assert(
      fc.property(anyDirtyBeam, anyBeam, (beam, mode) => {
        const there = gaussianOverlap(wavelength, beam, mode);
        expect(there).toBeLessThanOrEqual(1 + 1e-12);
        expect(there).toBeGreaterThanOrEqual(0);
        expect(Math.abs(gaussianOverlap(wavelength, mode, beam) - there)).toBeLessThan(1e-12);
      }),
    );
  });

  test('a beam couples wholly into itself', () => {
    fc.assert(
      fc.property(anyBeam, (beam) => {
        expect(Math.abs(gaussianOverlap(wavelength, beam, beam) - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  test('turning both, or moving both down the path, changes nothing', () => {
    fc.assert(
      fc.property(anyBeam, anyBeam, number(-3, 3), number(-1e-4, 1e-4), (beam, mode, turn, along) => {
        const moved = (each: FacetBeam): FacetBeam => {
          const c = Math.cos(turn);
          const s = Math.sin(turn);
          const x = each.offsetX + along * each.tiltX;
          const y = each.offsetY + along * each.tiltY;
          return {
            ...each,
            waistZX: each.waistZX - along,
            waistZY: each.waistZY - along,
            azimuth: each.azimuth + turn,
            offsetX: c * x - s * y,
            offsetY: s * x + c * y,
            tiltX: c * each.tiltX - s * each.tiltY,
            tiltY: s * each.tiltX + c * each.tiltY,
          };
        };
        const here = gaussianOverlap(wavelength, beam, mode);
        expect(Math.abs(gaussianOverlap(wavelength, moved(beam), moved(mode)) - here)).toBeLessThan(1e-11);
      }),
    );
  });

  test('far out of focus together: a thousand Rayleigh ranges cost no digits', () => {
    const far = 1000 * ((Math.PI * 2e-6 ** 2) / wavelength);
    expect(gaussianOverlap(wavelength, round(2e-6, far), round(2e-6, far))).toBeCloseTo(1, 12);
  });

  test('a millimetre beam and a micrometre mode, both in focus: (2w₁w₂/(w₁²+w₂²))² to 1e-12 of itself', () => {
    const ratio = ((2 * 1e-3 * 2e-6) / (1e-3 ** 2 + 2e-6 ** 2)) ** 2;
    expect(gaussianOverlap(wavelength, round(1e-3), round(2e-6)) / ratio).toBeCloseTo(1, 12);
  });
});

test('two beams of M² > 1 are refused; one on either side is not', () => {
  const dirty = { ...round(2e-6), m2X: 1.1 };
  const clean = round(2e-6);
  expect(() => gaussianOverlap(wavelength, dirty, { ...clean, m2Y: 1.1 })).toThrow(OutOfRange);
  expect(() => gaussianOverlap(wavelength, dirty, clean)).not.toThrow();
  expect(() => gaussianOverlap(wavelength, clean, dirty)).not.toThrow();
  expect(() => gaussianOverlap(wavelength, { ...clean, m2X: 0.99 }, clean)).toThrow(OutOfRange);
  expect(() => gaussianOverlap(wavelength, { ...clean, tiltX: Number.NaN }, clean)).toThrow(OutOfRange);
});

test('perfect aim is none at all', () => {
  const axis: GaussianBeam = { wavelength, waistRadius: 2e-6, waistPosition: 1e-5, quality: 1.2 };
  expect(facetBeam(axis, axis)).toEqual({ ...round(2e-6, 1e-5, 1.2), ...perfectAim });
});
