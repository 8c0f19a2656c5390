import { describe, expect, test } from 'vitest';
import type { FacetBeam } from '../beam/facet-beam.ts';
import { gaussianOverlap } from '../beam/gaussian-overlap.ts';
import { convergedHermitePowers, hermitePowers } from './hermite-overlap.ts';
import { modeSet } from './mode-set.ts';
import { overlapOf } from './overlap.ts';
import type { Pupil } from './pupil.ts';
import { inUnitsOf } from './scaled-beam.ts';

/*
 * Reference: the closed form of a Gaussian Schell-model beam on a Gaussian mode (Starikov and Wolf, J. Opt. Soc. Am. 72, 923
 * (1982), from memory; checked numerically against sums of Hermite-Gauss modes): per axis
 * 2/√((w²/w_m² + 1)(M⁴w_m²/w² + 1)) at the waist. Several modes are held to a brute sum of coherent beams over tilts, which
 * takes another road through the modes.
 */
const wavelength = 532e-9;
const coreRadius = 4e-6;
const waveNumber = (2 * Math.PI) / wavelength;

const straight = (waistRadius: number, m2: number): FacetBeam => ({
  waistRadiusX: waistRadius,
  waistRadiusY: waistRadius,
  waistZX: 0,
  waistZY: 0,
  azimuth: 0,
  offsetX: 0,
  offsetY: 0,
  tiltX: 0,
  tiltY: 0,
  m2X: m2,
  m2Y: m2,
});

describe('LP01 of a parabola of V = 20, a Gaussian to 1e-9 of its power', () => {
  const set = modeSet('graded', 20);
  const modeRadius = coreRadius * Math.sqrt(2 / 20);
  const takes = (beam: FacetBeam) => overlapOf(set, coreRadius, lightFor(20), beam).fundamental;

  test.each([1, 1.01, 2, 5.4, 5.6, 10, 20, 100, 1000])('takes what the closed form says of M² = %f', (m2) => {
    for (const size of [0.5, 1, Math.sqrt(m2), m2]) {
      const expected = 4 / ((size ** 2 + 1) * (m2 ** 2 / size ** 2 + 1));
      // relative, for the shares fall to 1e-6; LP01 differs from the Gaussian by an amplitude of 3e-5 at the most
      expect(Math.abs(takes(straight(size * modeRadius, m2)) / expected - 1)).toBeLessThan(1e-4);
    }
  });

  test('goes on as the covariance form when it is astigmatic, turned, off the axis, tilted and out of focus', () => {
    const mode = straight(modeRadius, 1);
    for (const m2 of [1.5, 6, 40]) {
      const beam: FacetBeam = {
        waistRadiusX: 1.1 * Math.sqrt(m2) * modeRadius,
        waistRadiusY: 0.8 * Math.sqrt(m2) * modeRadius,
        waistZX: 6e-6,
        waistZY: -9e-6,
        azimuth: 0.7,
        offsetX: 0.4e-6,
        offsetY: -0.7e-6,
        tiltX: 0.03,
        tiltY: 0.02,
        m2X: m2,
        m2Y: 1.3 * m2,
      };
      // the covariance form belongs to gaussian-overlap.ts and is checked there against quadrature
      const expected = gaussianOverlap(lightFor(20), beam, mode);
      expect(Math.abs(takes(beam) / expected - 1)).toBeLessThan(1e-4);
    }
  });
});

/** Light for which the aperture is 0.12 whatever V is wanted; only ratios of lengths matter. */
const lightFor = (vNumber: number) => (2 * Math.PI * coreRadius * 0.12) / vNumber;

describe('several modes', () => {
  /** The mean of coherent beams of the full waist over normal tilts of rms √(M⁴−1)/(k·w₀), by the trapezoid. */
  function overTilts(
    vNumber: number,
    waist: number,
    m2: number,
    step: number,
    pupil: Pupil | null = null,
    waistZ = 0,
  ): Float64Array {
    const set = modeSet('step', vNumber);
    const light = lightFor(vNumber);
    const rms = (Math.sqrt(m2 ** 2 - 1) * light) / (2 * Math.PI * waist);
    const sum = new Float64Array(set.modes.length);
    let weights = 0;
    // beyond 4.5 standard deviations the normal density is e⁻¹⁰; mirror images couple alike
    const last = Math.ceil(4.5 / step);
    for (let i = 0; i <= last; i += 1) {
      for (let j = 0; j <= last; j += 1) {
        const weight = Math.exp((-(i * i + j * j) * step * step) / 2) * (i > 0 ? 2 : 1) * (j > 0 ? 2 : 1);
        weights += weight;
        const tiltX = i * step * rms;
        const tiltY = j * step * rms;
        const beam = {
          ...straight(waist, 1),
          waistZX: waistZ,
          waistZY: waistZ,
          tiltX,
          tiltY,
          // members are tilted about the waist
          offsetX: -waistZ * tiltX,
          offsetY: -waistZ * tiltY,
        };
        const { powers } = overlapOf(set, coreRadius, light, beam, pupil, { tolerance: 1e-6 });
        powers.forEach((power, mode) => {
          sum[mode] = sum[mode]! + weight * power;
        });
      }
    }
    return sum.map((power) => power / weights);
  }

  test.each([
    [2.2, 1.5, 4],
    [6, 2.2, 7],
    [9, 1.5, 6],
  ])(
    'of V = %f take of a spot of %f core radii and M² = %f what tilted coherent beams give in the mean',
    (v, size, m2) => {
      const waist = size * coreRadius;
      const { powers, method } = overlapOf(modeSet('step', v), coreRadius, lightFor(v), straight(waist, m2));
      expect(method).toBe('hermite');
      // with this step the trapezoid's first alias is below 1e-6: beam and modes meet over 2 core radii at the most
      const tilts = overTilts(v, waist, m2, (2 * Math.PI) / (4.5 * Math.hypot(1, (2 * m2) / size)));
      powers.forEach((power, mode) => {
        expect(Math.abs(power - tilts[mode]!)).toBeLessThan(1e-5);
      });
    },
  );

  test.each([
    ['a stop that cuts the cone', { stop: 0.12, sphericalAberration: 0 }, 2.5],
    ['two waves of aberration', { stop: 0.3, sphericalAberration: 2 }, 2.5],
    ['both', { stop: 0.15, sphericalAberration: -1 }, 2.5],
    ['both, and many members', { stop: 0.15, sphericalAberration: 1 }, 4],
  ])('behind a lens with %s take out of focus what tilted coherent beams give in the mean', (_, lens, m2) => {
    const pupil: Pupil = { ...lens, aberrationAt: lens.stop, axisTiltX: 0, axisTiltY: 0 };
    const size = 0.9;
    const waistZ = 20e-6;
    const beam = { ...straight(size * coreRadius, m2), waistZX: waistZ, waistZY: waistZ };
    const step = (2 * Math.PI) / (4.5 * Math.hypot(1, (2 * m2) / size));
    const tilts = overTilts(4, size * coreRadius, m2, step, pupil, waistZ);
    const set = modeSet('step', 4);
    const asked = overlapOf(set, coreRadius, lightFor(4), beam, pupil, { tolerance: 1e-6 });
    const k = ((2 * Math.PI) / lightFor(4)) * coreRadius;
    const inUnits = inUnitsOf(coreRadius, beam);
    // few columns stand for the beam; with nothing left out, its whole matrices
    const whole = hermitePowers(set.hermiteThroughPupil(96, pupil, k), inUnits, k, 96, set.modes.length, 0);
    tilts.forEach((power, mode) => {
      // the trapezoid's first alias, as above; each coherent member goes through the pupil on rings
      expect(Math.abs(asked.powers[mode]! - power)).toBeLessThan(1e-5);
      // 96 orders leave out 2e-5 of what a sharp stop makes of a mode
      expect(Math.abs(whole.powers[mode]! - power)).toBeLessThan(4e-5);
    });
  });

  test('behind an aberrated lens take of one coherent beam what the pupil integral says', () => {
    const set = modeSet('step', 6);
    const light = lightFor(6) / coreRadius;
    const pupil: Pupil = { stop: 0.2, sphericalAberration: 4, aberrationAt: 0.2, axisTiltX: 0, axisTiltY: 0 };
    const inUnits: FacetBeam = {
      ...straight(0.8, 1),
      waistRadiusX: 0.9,
      azimuth: 0.3,
      offsetX: 0.2,
      waistZX: 3,
      tiltY: 0.02,
    };
    const integral = overlapOf(set, 1, light, inUnits, pupil, { tolerance: 1e-9 });
    const tables = set.hermiteThroughPupil(192, pupil, (2 * Math.PI) / light);
    const { powers } = hermitePowers(tables, inUnits, (2 * Math.PI) / light, 192, set.modes.length);
    powers.forEach((power, mode) => {
      expect(Math.abs(power - integral.powers[mode]!)).toBeLessThan(1e-8); // ten times the tolerance of the integral
    });
  });

  test('no mode takes more than the most coherent part of a beam has, (2/(1+M²))²', () => {
    const set = modeSet('step', 6);
    for (const m2 of [1.2, 3, 30, 300]) {
      for (const size of [0.3, 1, 4, 20]) {
        const { powers } = overlapOf(set, coreRadius, lightFor(6), straight(size * coreRadius, m2));
        set.modes.forEach(({ l }, i) => {
          // both orientations of a mode together
          expect(powers[i]!).toBeLessThanOrEqual((l === 0 ? 1 : 2) * (2 / (1 + m2)) ** 2 * (1 + 1e-9));
        });
      }
    }
  });

  test('a beam that is hardly incoherent couples as a coherent one, and M² makes no jump', () => {
    const set = modeSet('step', 6);
    const at = (m2: number) =>
      overlapOf(set, coreRadius, lightFor(6), {
        ...straight(0.9 * coreRadius, m2),
        offsetX: 1e-6,
        waistZX: 2e-5,
      }).guided;
    expect(Math.abs(at(1) - at(1 + 1e-9))).toBeLessThan(1e-7);
    for (const m2 of [2, 4, 5.5, 30]) {
      const rise = at(m2 * 1.0001) - at(m2);
      // shares change no faster than M² does
      expect(Math.abs(rise)).toBeLessThan(2e-4);
    }
  });

  test('however wide, far or coherent the beam, the answer comes at once', () => {
    const set = modeSet('step', 12);
    for (const m2 of [1.01, 3, 1e3]) {
      for (const far of [0, 1e-3]) {
        const beam = { ...straight(30e-6, m2), offsetX: far, waistZX: far, waistZY: -far, tiltX: 0.4 * far };
        const began = process.cpuUsage();
        const { guided } = overlapOf(set, coreRadius, lightFor(12), beam, null, { tolerance: 1e-7 });
        expect(guided).toBeGreaterThanOrEqual(0);
        // 192 orders of 38 modes are 0.15 s of work, however busy the machine is with other things
        expect(process.cpuUsage(began).user).toBeLessThan(3e6);
      }
    }
  });

  test('a turned beam gives each mode what the modes of a turned fibre would get: nothing changes', () => {
    const set = modeSet('step', 6);
    const beam = { ...straight(0.9 * coreRadius, 2.5), waistRadiusX: 1.4 * coreRadius, offsetX: 1e-6 };
    const turned = { ...beam, azimuth: 0.8, offsetX: 1e-6 * Math.cos(0.8), offsetY: 1e-6 * Math.sin(0.8) };
    const inUnits = (some: FacetBeam): FacetBeam => ({
      ...some,
      waistRadiusX: some.waistRadiusX / coreRadius,
      waistRadiusY: some.waistRadiusY / coreRadius,
      offsetX: some.offsetX / coreRadius,
      offsetY: some.offsetY / coreRadius,
    });
    const one = convergedHermitePowers(set, inUnits(beam), waveNumber * coreRadius, 1e-9);
    const other = convergedHermitePowers(set, inUnits(turned), waveNumber * coreRadius, 1e-9);
    // the same numbers by another cosine: rounding
    one.powers.forEach((power, i) => {
      expect(Math.abs(power - other.powers[i]!)).toBeLessThan(1e-12);
    });
  });
});
