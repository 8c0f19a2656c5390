import { expect, test } from 'vitest';
import { beamAlong } from './beam-along.ts';
import { beamRadiusAt, type GaussianBeam, halfDivergence } from './gaussian-beam.ts';

const wavelength = 633e-9;
const x: GaussianBeam = { wavelength, waistRadius: 3e-6, waistPosition: -20e-6, quality: 1 };
const y: GaussianBeam = { wavelength, waistRadius: 5e-6, waistPosition: 40e-6, quality: 1 };

/**
 * Computed with numpy 2.4 from the field itself: second moments of |E|² on a grid of 3001 × 3001 points, 300 µm wide, in
 * three planes 60 µm apart, and the parabola through them. The field is that of H. Kogelnik and T. Li, Appl. Opt. 5, 1550
 * (1966), a product of two axes turned by 30°. The grid is good for 1e-10; nine digits are kept.
 */
const scans = [
  { name: 'x', azimuth: -Math.PI / 6, spot: 7.74670218e-6, waistAt: -13.57142857e-6, waist: 7.564375674e-6 },
  { name: 'y', azimuth: Math.PI / 3, spot: 9.67466995e-6, waistAt: 11.15384615e-6, waist: 9.61415369e-6 },
];

for (const { name, azimuth, spot, waistAt, waist } of scans) {
  test(`an astigmatic beam turned by 30° is seen along ${name} of the lab as its field says`, () => {
    const seen = beamAlong(x, y, azimuth);
    expect((2 * beamRadiusAt(seen, 0)) / spot).toBeCloseTo(1, 8);
    expect(seen.waistPosition / waistAt).toBeCloseTo(1, 8);
    expect((2 * seen.waistRadius) / waist).toBeCloseTo(1, 8);
  });
}

test('along its own axes a beam is what it is', () => {
  for (const [azimuth, axis] of [
    [0, x],
    [Math.PI / 2, y],
  ] as const) {
    const seen = beamAlong(x, y, azimuth);
    expect(seen.waistRadius / axis.waistRadius).toBeCloseTo(1, 12);
    expect(seen.waistPosition / axis.waistPosition).toBeCloseTo(1, 12);
    expect(seen.quality).toBeCloseTo(1, 12);
  }
});

test('squares of width add at every place, and the M² of the scan follows from waist and spread', () => {
  const seen = beamAlong({ ...x, quality: 1.4 }, { ...y, quality: 2.1 }, 0.8);
  for (const z of [-1e-3, -50e-6, 0, 30e-6, 2e-3]) {
    const squares =
      (Math.cos(0.8) * beamRadiusAt({ ...x, quality: 1.4 }, z)) ** 2 +
      (Math.sin(0.8) * beamRadiusAt({ ...y, quality: 2.1 }, z)) ** 2;
    expect(beamRadiusAt(seen, z) ** 2 / squares).toBeCloseTo(1, 12);
  }
  expect(seen.quality).toBeGreaterThan(1.4);
  expect(halfDivergence(seen)).toBeGreaterThan(0);
});
