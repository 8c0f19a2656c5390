import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { modeSet } from './mode-set.ts';
import { overlapOf } from './overlap.ts';
import { parabolaGroupPowers } from './parabola-groups.ts';
import { momentsOf, phaseSpaceFraction } from './phase-space.ts';
import type { Pupil } from './pupil.ts';
import { truncatedGaussianCoupling } from './truncated-gaussian.ts';

/*
 * Reference: coupling.json, computed independently with SciPy and mpmath (each case says how and names its source).
 * Wanted there: 1e-6 absolute, "nothing stops 1e-9". The bound here is 2e-9: the tolerance asked of the quadratures is
 * 1e-9 and errors of a few modes add up.
 */
const bound = 2e-9;

interface Case {
  readonly id: string;
  readonly kind: string;
  readonly source: string;
  // biome-ignore lint/suspicious/noExplicitAny: the cases of a published-format file differ by kind
  readonly inputs: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above
  readonly expected: any;
}

const { cases } = JSON.parse(
  readFileSync(new URL('../../reference/coupling.json', import.meta.url), 'utf8'),
) as { cases: Case[] };
const ofKind = (...kinds: string[]) => cases.filter(({ kind }) => kinds.includes(kind));

interface ReferenceBeam {
  readonly [key: string]: number;
}

function beamOf(given: ReferenceBeam) {
  return {
    waistRadiusX: given.waistRadiusX_m!,
    waistRadiusY: given.waistRadiusY_m!,
    waistZX: given.waistZX_m!,
    waistZY: given.waistZY_m!,
    azimuth: given.azimuth_rad!,
    offsetX: given.offsetX_m!,
    offsetY: given.offsetY_m!,
    tiltX: given.tiltX!,
    tiltY: given.tiltY!,
    m2X: given.m2X!,
    m2Y: given.m2Y!,
  };
}

const vOf = (fibre: ReferenceBeam, wavelength: number) =>
  (2 * Math.PI * fibre.coreRadius_m! * fibre.numericalAperture!) / wavelength;

function compareModes(
  got: ReturnType<typeof overlapOf>,
  set: ReturnType<typeof modeSet>,
  expected: Case['expected'],
) {
  expect(Math.abs(got.guided - expected.totalPower)).toBeLessThan(bound);
  expect(Math.abs(got.fundamental - expected.lp01Power)).toBeLessThan(bound);
  expect(set.modes.length).toBe(expected.guidedModeCountLm);
  for (const { l, m, powerCos, power } of expected.modes) {
    const mode = set.modes.findIndex((candidate) => candidate.l === l && candidate.m === m);
    expect(Math.abs(got.powers[mode]! - power), `LP${l}${m}`).toBeLessThan(bound);
    expect(Math.abs(got.cosinePowers![mode]! - powerCos), `LP${l}${m} cos`).toBeLessThan(bound);
  }
}

describe('a Gaussian beam into the modes of a step-index fibre', () => {
  test.each(ofKind('gaussian-to-lp', 'gsm-to-lp').map((c) => [c.id, c] as const))(
    '%s',
    (_, { inputs, expected }) => {
      const { wavelength_m: wavelength, fibre, beam } = inputs;
      const set = modeSet('step', vOf(fibre, wavelength));
      const got = overlapOf(set, fibre.coreRadius_m, wavelength, beamOf(beam), null, {
        tolerance: 1e-10,
        orientations: true,
      });
      compareModes(got, set, expected);
    },
  );
});

describe('a lens that stops or aberrates the beam', () => {
  test.each(ofKind('truncated-lens-to-lp', 'aberrated-lens-to-lp').map((c) => [c.id, c] as const))(
    '%s',
    (_, { inputs, expected }) => {
      const { wavelength_m: wavelength, fibre, lens } = inputs;
      const f = lens.focalLength_m;
      const set = modeSet('step', vOf(fibre, wavelength));
      // a collimated beam of radius w_L on the lens has its waist λf/(πw_L) in the focal plane, seen from the fibre
      const waist = (wavelength * f) / (Math.PI * lens.beamRadiusAtLens_m);
      const defocus = lens.facetDefocus_m;
      const tiltX = -lens.beamDecentreX_m / f;
      const tiltY = -lens.beamDecentreY_m / f;
      const beam = {
        waistRadiusX: waist,
        waistRadiusY: waist,
        waistZX: -defocus,
        waistZY: -defocus,
        azimuth: 0,
        // moving the facet along a slanted axis moves where the axis pierces it
        offsetX: tiltX * defocus - lens.fibreOffsetX_m,
        offsetY: tiltY * defocus - lens.fibreOffsetY_m,
        tiltX: tiltX - lens.fibreTiltX,
        tiltY: tiltY - lens.fibreTiltY,
        m2X: 1,
        m2Y: 1,
      };
      const pupil: Pupil = {
        stop: lens.apertureRadius_m / f,
        sphericalAberration: lens.W040_m / wavelength,
        aberrationAt: lens.W040ReferenceRadius_m / f,
        axisTiltX: -lens.fibreTiltX,
        axisTiltY: -lens.fibreTiltY,
      };
      compareModes(
        overlapOf(set, fibre.coreRadius_m, wavelength, beam, pupil, { orientations: true }),
        set,
        expected,
      );
    },
  );
});

describe('a Gaussian beam into the modes of a truncated parabola', () => {
  test.each(ofKind('gaussian-to-truncated-parabolic').map((c) => [c.id, c] as const))(
    '%s',
    (_, { inputs, expected }) => {
      const { wavelength_m: wavelength, fibre, beam } = inputs;
      const set = modeSet('graded', fibre.V);
      compareModes(
        overlapOf(set, fibre.coreRadius_m, wavelength, beamOf(beam), null, { orientations: true }),
        set,
        expected,
      );
    },
  );
});

describe('a coherent beam into hundreds of modes', () => {
  test.each(ofKind('multimode-modal-sum').map((c) => [c.id, c] as const))('%s', (_, { inputs, expected }) => {
    const { wavelength_m: wavelength, fibre, beam } = inputs;
    const set = modeSet('step', vOf(fibre, wavelength));
    const got = overlapOf(set, fibre.coreRadius_m, wavelength, beamOf(beam), null, {
      tolerance: 1e-10,
      orientations: true,
    });
    expect(set.modes.length).toBe(expected.guidedModeCountLm);
    // 1e-8: the sum over 1518 modes of errors of 1e-11 each
    expect(Math.abs(got.guided - expected.totalPower)).toBeLessThan(1e-8);
    for (const { l, m, power } of expected.strongest) {
      const mode = set.modes.findIndex((candidate) => candidate.l === l && candidate.m === m);
      expect(Math.abs(got.powers[mode]! - power), `LP${l},${m}`).toBeLessThan(bound);
    }
    expected.powerByAzimuthalOrder.forEach((power: number, order: number) => {
      const sum = set.modes.reduce((total, { l }, i) => total + (l === order ? got.powers[i]! : 0), 0);
      expect(Math.abs(sum - power), `order ${order}`).toBeLessThan(bound);
    });
  });
});

describe('a beam into the rays of a highly multimode fibre', () => {
  test.each(ofKind('phase-space-step', 'phase-space-parabolic').map((c) => [c.id, c] as const))(
    '%s',
    (_, { inputs, expected }) => {
      const { wavelength_m: wavelength, fibre, beam } = inputs;
      const got = phaseSpaceFraction(
        momentsOf(beamOf(beam), (2 * Math.PI) / wavelength),
        fibre.coreRadius_m,
        fibre.numericalAperture,
        fibre.profile === 'step' ? 'step' : 'graded',
      );
      expect(Math.abs(got - expected.fraction)).toBeLessThan(1e-9); // quadrature nodes chosen for about 1e-10
    },
  );
});

describe('a coherent beam into the groups of the infinite parabola', () => {
  test.each(ofKind('gaussian-to-parabolic-lg').map((c) => [c.id, c] as const))(
    '%s',
    (_, { inputs, expected }) => {
      const powers = parabolaGroupPowers(
        beamOf(inputs.beam),
        expected.modeRadius_m,
        inputs.wavelength_m,
        expected.groupCount,
      );
      expected.powerByGroup.forEach((power: number, i: number) => {
        expect(Math.abs(powers[i]! - power), `group ${i + 1}`).toBeLessThan(bound);
      });
      const total = powers.reduce((sum, power) => sum + power, 0);
      expect(Math.abs(total - expected.totalPower)).toBeLessThan(bound);
    },
  );
});

describe('a stopped Gaussian into a Gaussian mode', () => {
  test.each(ofKind('truncated-gaussian-to-gaussian').map((c) => [c.id, c] as const))(
    '%s',
    (_, { inputs, expected }) => {
      const { beamRadiusAtLens_m, apertureRadius_m, modeRadiusAtLens_m } = inputs;
      const got = truncatedGaussianCoupling(beamRadiusAtLens_m, modeRadiusAtLens_m, apertureRadius_m);
      // the file's numericalError, absolute: its 1 − exp(−x) has lost digits where x is tiny
      expect(Math.abs(got.coupled - expected.coupling)).toBeLessThan(1e-13);
      expect(Math.abs(got.passed - expected.apertureTransmission)).toBeLessThan(1e-13);
    },
  );
});
