import { readFileSync } from 'node:fs';
import { gaussianOverlap, perfectAim } from '@coreward/optics';
import { expect, test } from 'vitest';
import { axisCoupling } from './axis-coupling.ts';

interface Fixture {
  readonly lam: number;
  readonly wf: number;
  readonly f: number;
  readonly wIn: number;
  readonly dz: number;
  readonly x: number;
  readonly t: number;
  readonly lnEta: number;
}

// reference/walk/README.md: the fields integrated directly over one axis, computed with NumPy
const fixtures: readonly Fixture[] = JSON.parse(
  readFileSync(new URL('../../reference/walk/coupling-fixtures.json', import.meta.url), 'utf8'),
);

const axisOf = (row: Fixture, quality = 1) =>
  axisCoupling({
    wavelength: row.lam,
    modeRadius: row.wf,
    focalLength: row.f,
    radiusAtLens: row.wIn,
    quality,
    defocus: row.dz,
  });
const lnCoupling = ({ lnPeak, xx, xt, tt }: ReturnType<typeof axisCoupling>, { x, t }: Fixture) =>
  lnPeak - (xx * x * x + 2 * xt * x * t + tt * t * t);

test('there are rows to compare with', () => expect(fixtures.length).toBeGreaterThan(10));

fixtures.forEach((row, i) => {
  test(`one axis of two Gaussians, case ${i}: the closed form is the integral`, () => {
    // the integral is good to 5e-15 by its author; the sum of squares here loses a digit or two
    expect(lnCoupling(axisOf(row), row)).toBeCloseTo(row.lnEta, 10);
  });

  test(`two such axes, case ${i}, are the overlap in two dimensions, with M² above 1 too`, () => {
    for (const quality of [1, 1.3]) {
      const waist = (quality * row.lam * row.f) / (Math.PI * row.wIn);
      const beam = {
        ...perfectAim,
        waistRadiusX: waist,
        waistRadiusY: waist,
        waistZX: -row.dz,
        waistZY: -row.dz,
        m2X: quality,
        m2Y: quality,
        offsetX: row.x,
        tiltX: row.t,
      };
      const mode = {
        ...perfectAim,
        waistRadiusX: row.wf,
        waistRadiusY: row.wf,
        waistZX: 0,
        waistZY: 0,
        m2X: 1,
        m2Y: 1,
      };
      const axis = axisOf(row, quality);
      // the other room's four-dimensional formula; both round at 1e-12
      expect(lnCoupling(axis, row) + axis.lnPeak).toBeCloseTo(
        Math.log(gaussianOverlap(row.lam, beam, mode)),
        9,
      );
    }
  });
});
