import { expect, test } from 'vitest';
import { bestGaussian } from '../fibre/mode-field.ts';
import { brentMinimum } from '../numerics/brent.ts';
import { aberratedGaussianEstimate } from './aberrated-gaussian.ts';
import { modeSet } from './mode-set.ts';
import { overlapOf } from './overlap.ts';
import { truncatedGaussianCoupling } from './truncated-gaussian.ts';

const wavelength = 515e-9;

/** The pupil integral with the true LP01 at its best focus, over the same without stop and aberration. */
function exactly(vNumber: number, stop: number, waves: number, aberrationAt: number): number {
  const coreRadius = 1.5e-6;
  const set = modeSet('step', vNumber);
  const waist = bestGaussian(set.modes[0]!).radius * coreRadius;
  const beam = (z: number) => ({
    waistRadiusX: waist,
    waistRadiusY: waist,
    waistZX: z,
    waistZY: z,
    azimuth: 0,
    offsetX: 0,
    offsetY: 0,
    tiltX: 0,
    tiltY: 0,
    m2X: 1,
    m2Y: 1,
  });
  const pupil = { stop, sphericalAberration: waves, aberrationAt, axisTiltX: 0, axisTiltY: 0 };
  const share = (z: number) =>
    overlapOf(set, coreRadius, wavelength, beam(z), pupil, { tolerance: 1e-6 }).fundamental;
  const marginal = (4 * Math.abs(waves) * wavelength) / aberrationAt ** 2;
  const best = brentMinimum((z) => -share(z), -0.2 * marginal, 1.2 * marginal + 1e-9, 1e-9);
  return -best.value / overlapOf(set, coreRadius, wavelength, beam(0)).fundamental;
}

test.each([
  [2.2, 0.3, 0],
  [2.2, 0.12, 0],
  [2.2, 0.3, 0.25],
  [2.4, 0.3, 1],
  [2.4, 0.3, -1],
  [2.9, 0.2, 0.5],
])(
  'at V = %f, stop %f and %f waves at the beam’s edge the estimate is within 0.02 of the pupil integral',
  (v, stop, waves) => {
    const radius = bestGaussian(modeSet('step', v).modes[0]!).radius * 1.5e-6;
    const angle = wavelength / (Math.PI * radius);
    const estimate = aberratedGaussianEstimate({
      beamAngle: angle,
      modeAngle: angle,
      stop,
      sphericalAberration: waves,
      aberrationAt: angle,
    });
    expect(Math.abs(estimate - exactly(v, stop, Math.abs(waves), angle))).toBeLessThan(0.02);
  },
);

test('without aberration it is the closed form of the stopped Gaussian', () => {
  const closed = truncatedGaussianCoupling(0.1, 0.13, 0.12);
  const open = truncatedGaussianCoupling(0.1, 0.13, 10);
  const estimate = aberratedGaussianEstimate({
    beamAngle: 0.1,
    modeAngle: 0.13,
    stop: 0.12,
    sphericalAberration: 0,
    aberrationAt: 0.12,
  });
  expect(estimate).toBeCloseTo(closed.coupled / open.coupled, 10); // quadrature of e^{−t} with 16 nodes
});
