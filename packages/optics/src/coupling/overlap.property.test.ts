import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FacetBeam } from '../beam/facet-beam.ts';
import { gaussianOverlap } from '../beam/gaussian-overlap.ts';
import { bestGaussian } from '../fibre/mode-field.ts';
import { fieldOf } from './gaussian-field.ts';
import { climbLadder, ladderScratch } from './mode-ladder.ts';
import { modeSet } from './mode-set.ts';
import { overlapOf } from './overlap.ts';
import { facetGrid } from './overlap-grids.ts';
import { momentsOf, phaseSpaceFraction } from './phase-space.ts';
import { modePower, projectPolar } from './polar-overlap.ts';
import { guidedRays, raySample } from './ray-sample.ts';

const wavelength = 515e-9;
const coreRadius = 4.1e-6;
const vOf = (numericalAperture: number) => (2 * Math.PI * coreRadius * numericalAperture) / wavelength;
const telecom = modeSet('step', vOf(0.12));

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** The range for which the fast road is made: waists 1.8 to 4.5 µm, ±60 µm, ±2.5 µm, ±50 mrad. */
const beams = fc.record({
  waistRadiusX: between(1.8e-6, 4.5e-6),
  waistRadiusY: between(1.8e-6, 4.5e-6),
  waistZX: between(-60e-6, 60e-6),
  waistZY: between(-60e-6, 60e-6),
  azimuth: between(-3, 3),
  offsetX: between(-2.5e-6, 2.5e-6),
  offsetY: between(-2.5e-6, 2.5e-6),
  tiltX: between(-0.05, 0.05),
  tiltY: between(-0.05, 0.05),
  m2X: fc.constant(1),
  m2Y: fc.constant(1),
});

const scaledDown = (beam: FacetBeam): FacetBeam => ({
  ...beam,
  waistRadiusX: beam.waistRadiusX / coreRadius,
  waistRadiusY: beam.waistRadiusY / coreRadius,
  waistZX: beam.waistZX / coreRadius,
  waistZY: beam.waistZY / coreRadius,
  offsetX: beam.offsetX / coreRadius,
  offsetY: beam.offsetY / coreRadius,
});

describe('two roads to the same overlap', () => {
  test('ladder and rings agree for every beam of the range, mode by mode', () => {
    const scratch = ladderScratch();
    const count = telecom.modes.length;
    fc.assert(
      fc.property(beams, (beam) => {
        const field = fieldOf(scaledDown(beam), (2 * Math.PI * coreRadius) / wavelength);
        const climbed = new Float64Array(4 * count);
        expect(climbLadder(telecom.ladder(), field, climbed, scratch)).toBe(true);
        const grid = facetGrid(telecom, [field], 1);
        const projected = new Float64Array(4 * count);
        projectPolar(
          { field, grid, table: telecom.fields(grid), modes: telecom.modes, fineness: 1 },
          projected,
        );
        telecom.modes.forEach(({ l }, mode) => {
          // the ladder's own tolerance is 2e-8 an amplitude; wanted is 1e-6 a power
          expect(Math.abs(modePower(climbed, mode, l) - modePower(projected, mode, l))).toBeLessThan(1e-7);
        });
      }),
      { numRuns: 150 },
    );
  });

  test('a matrix of Hermite-Gauss functions is a crowd of Hermite-Gauss modes on rings', () => {
    // two V with the same modes, the one summed over Hermite-Gauss members on rings, the other as matrices
    const beam: FacetBeam = {
      waistRadiusX: 5e-6,
      waistRadiusY: 7e-6,
      waistZX: 30e-6,
      waistZY: -20e-6,
      azimuth: 0.4,
      offsetX: 12e-6,
      offsetY: 3e-6,
      tiltX: 0.05,
      tiltY: -0.03,
      m2X: 1.4,
      m2Y: 1.2,
    };
    const radius = 20e-6;
    const few = modeSet('step', 47.9742);
    const many = modeSet('step', 47.9744);
    expect([few.modes.length, many.modes.length]).toEqual([300, 301]);
    const below = overlapOf(few, radius, wavelength, beam, null, { tolerance: 1e-6 });
    const above = overlapOf(many, radius, wavelength, beam, null, { tolerance: 1e-6 });
    expect(below.method).toBe('hermite');
    expect(above.method).toBe('polar');
    // V changes by 4e-6 of itself, and shares by less; the one mode more is the last to appear, LP13,10
    few.modes.forEach(({ l, m }, i) => {
      const same = many.modes.findIndex((mode) => mode.l === l && mode.m === m);
      expect(Math.abs(below.powers[i]! - above.powers[same]!), `LP${l},${m}`).toBeLessThan(1e-6);
    });
  });
});

describe('what no overlap may do', () => {
  test('no beam gives more than it has, and no mode more than all', () => {
    fc.assert(
      fc.property(beams, fc.tuple(between(1, 2.5), between(1, 2.5)), (coherent, [m2X, m2Y]) => {
        const { guided, fundamental, powers } = overlapOf(
          telecom,
          coreRadius,
          wavelength,
          { ...coherent, m2X, m2Y },
          null,
          {
            tolerance: 1e-5,
          },
        );
        expect(guided).toBeLessThanOrEqual(1 + 1e-9); // rounding
        expect(fundamental).toBeLessThanOrEqual(guided);
        expect(Math.min(...powers)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 60 },
    );
  });

  test('turning beam, offset and tilt together changes nothing', () => {
    fc.assert(
      fc.property(beams, between(-3, 3), (beam, turn) => {
        const c = Math.cos(turn);
        const s = Math.sin(turn);
        const turned: FacetBeam = {
          ...beam,
          azimuth: beam.azimuth + turn,
          offsetX: c * beam.offsetX - s * beam.offsetY,
          offsetY: s * beam.offsetX + c * beam.offsetY,
          tiltX: c * beam.tiltX - s * beam.tiltY,
          tiltY: s * beam.tiltX + c * beam.tiltY,
        };
        const one = overlapOf(telecom, coreRadius, wavelength, beam);
        const other = overlapOf(telecom, coreRadius, wavelength, turned);
        one.powers.forEach((power, mode) => {
          expect(Math.abs(power - other.powers[mode]!)).toBeLessThan(1e-7); // twice the tolerance of either
        });
      }),
      { numRuns: 60 },
    );
  });

  test('light that runs backwards couples alike: conjugate, tilt and defocus turned round', () => {
    fc.assert(
      fc.property(beams, (beam) => {
        const back: FacetBeam = {
          ...beam,
          waistZX: -beam.waistZX,
          waistZY: -beam.waistZY,
          tiltX: -beam.tiltX,
          tiltY: -beam.tiltY,
        };
        const forth = overlapOf(telecom, coreRadius, wavelength, beam).guided;
        expect(Math.abs(forth - overlapOf(telecom, coreRadius, wavelength, back).guided)).toBeLessThan(1e-7);
      }),
      { numRuns: 60 },
    );
  });
});

describe('limits', () => {
  test('into LP01 at V = 2.2 a beam couples as into its best Gaussian, to the half per cent this costs', () => {
    const set = modeSet('step', 2.2);
    const radius = 1.45e-6;
    const mode = bestGaussian(set.modes[0]!);
    const centred: FacetBeam = {
      ...perfect,
      waistRadiusX: mode.radius * radius,
      waistRadiusY: mode.radius * radius,
    };
    for (const offsetX of [0, 0.3e-6, 0.6e-6]) {
      for (const tiltX of [0, 0.02, -0.03]) {
        const beam = { ...centred, offsetX, tiltX, waistZX: 5e-6, waistZY: 5e-6 };
        const gaussian = gaussianOverlap(wavelength, beam, centred);
        expect(Math.abs(overlapOf(set, radius, wavelength, beam).guided - gaussian)).toBeLessThan(0.012);
      }
    }
  });

  test('with V the fibre takes all of a spot well inside its core', () => {
    const missing = [3, 6, 12, 24].map((vNumber) => {
      const beam: FacetBeam = { ...perfect, waistRadiusX: 0.4 * coreRadius, waistRadiusY: 0.4 * coreRadius };
      const light = (2 * Math.PI * coreRadius * 0.12) / vNumber;
      return 1 - overlapOf(modeSet('step', vNumber), coreRadius, light, beam).guided;
    });
    missing.slice(1).forEach((share, i) => {
      expect(share).toBeLessThan(missing[i]!);
    });
    // the cone 2/w of this spot is a fifth of V = 24: nothing comes too steeply, and e⁻¹² lies outside the core
    expect(missing.at(-1)!).toBeLessThan(1e-4);
  });
});

const perfect: FacetBeam = {
  waistRadiusX: 1,
  waistRadiusY: 1,
  waistZX: 0,
  waistZY: 0,
  azimuth: 0,
  offsetX: 0,
  offsetY: 0,
  tiltX: 0,
  tiltY: 0,
  m2X: 1,
  m2Y: 1,
};

describe('rays', () => {
  test('a sample of rays is near the quadrature, whatever the beam', () => {
    const rays = raySample(4096, 3);
    fc.assert(
      fc.property(
        between(5e-6, 30e-6),
        between(5e-6, 30e-6),
        between(-300e-6, 300e-6),
        between(0, 3),
        between(-25e-6, 25e-6),
        between(-0.15, 0.15),
        between(1, 20),
        fc.constantFrom('step' as const, 'graded' as const),
        (waistRadiusX, waistRadiusY, waistZX, azimuth, offsetX, tiltY, m2, profile) => {
          const beam = {
            ...perfect,
            waistRadiusX,
            waistRadiusY,
            waistZX,
            waistZY: 0,
            azimuth,
            offsetX,
            tiltY,
            m2X: m2,
            m2Y: m2,
          };
          const moments = momentsOf(beam, (2 * Math.PI) / 633e-9);
          const exact = phaseSpaceFraction(moments, 25e-6, 0.2, profile);
          const sampled = guidedRays(moments, 25e-6, 0.2, profile, rays).fraction;
          expect(exact).toBeGreaterThanOrEqual(0);
          expect(exact).toBeLessThanOrEqual(1);
          // 4096 even points: a few times 1/√4096 would be plain chance, 0.02; even points do better
          expect(Math.abs(sampled - exact)).toBeLessThan(0.012);
        },
      ),
      { numRuns: 20 },
    );
  });
});
