import { expect, test } from 'vitest';
import { lossRow, lossRows, misses } from '../../reference/loss-rows.ts';
import { glassNamed } from '../glass/glass-named.ts';
import { refractiveIndex } from '../glass/refractive-index.ts';
import { OutOfRange } from '../out-of-range.ts';
import { decibelFromTransmission } from './decibel.ts';
import { normalReflectance, obliqueReflectance, unpolarizedReflectance } from './fresnel.ts';
import { metalIndices } from './mirror.ts';
import { straightTransmission } from './plain-element.ts';

for (const row of lossRows.filter(({ topic }) => topic === 'fresnel-normal')) {
  test(row.title, () => {
    const reflectance = normalReflectance(row.inputs.index!, 1);
    expect(
      misses(row, {
        reflectance,
        transmittance: 1 - reflectance,
        returnLoss_dB: decibelFromTransmission(reflectance),
        insertionLoss_dB: decibelFromTransmission(1 - reflectance),
      }),
    ).toEqual([]);
  });
}

const elements = [
  { id: 'fresnel-fused-silica-632.8', glass: 'fused silica' },
  { id: 'fresnel-N-BK7-532', glass: 'N-BK7' },
  { id: 'fresnel-N-SF11-632.8', glass: 'N-SF11' },
  { id: 'fresnel-polycarbonate-650', glass: 'polycarbonate' },
];
for (const { id, glass } of elements) {
  const row = lossRow(id);
  test(row.title, () => {
    const index = refractiveIndex(glassNamed(glass), row.inputs.wavelength_m!);
    const reflectance = normalReflectance(1, index);
    const uncoatedElementTransmission = straightTransmission(reflectance, 2);
    expect(
      misses(row, {
        index,
        reflectance,
        uncoatedElementTransmission,
        uncoatedElementLoss_dB: decibelFromTransmission(uncoatedElementTransmission),
      }),
    ).toEqual([]);
  });
}

const glass45 = lossRow('fresnel-glass-45deg');
test(glass45.title, () => {
  const { s, p } = obliqueReflectance(glass45.inputs.incidence_rad!, 1, glass45.inputs.index!);
  expect(misses(glass45, { reflectanceS: s, reflectanceP: p })).toEqual([]);
});

const immersed = lossRow('fresnel-immersed');
test(immersed.title, () => {
  const reflectance = normalReflectance(immersed.inputs.index1!, immersed.inputs.index2!);
  expect(misses(immersed, { reflectance, returnLoss_dB: decibelFromTransmission(reflectance) })).toEqual([]);
});

const indices = [1, 1.33, 1.457, 1.52, 1.78, 2.4];
const angles = [0, 0.1, 0.4, Math.PI / 4, 1, 1.3, 1.55];

test('at 45° every interface, metal too, reflects p as the square of s', () => {
  // Born & Wolf, ch. 1 (from memory); an identity of the equations, so only rounding is allowed.
  const partners = [...indices, ...metalIndices.map(({ index }) => index)];
  for (const from of indices) {
    for (const to of partners) {
      const { s, p } = obliqueReflectance(Math.PI / 4, from, to);
      expect(Math.abs(p - s * s)).toBeLessThan(1e-14);
    }
  }
});

test('what is not reflected passes: T from the amplitudes makes T + R = 1', () => {
  for (const n1 of indices) {
    for (const n2 of indices) {
      for (const angle of angles) {
        if ((n1 / n2) * Math.sin(angle) >= 1) continue;
        const refracted = Math.asin((n1 / n2) * Math.sin(angle));
        // Fresnel's transmitted amplitudes in the textbooks' product form, another route than the code's
        const sum = Math.sin(angle + refracted);
        const normal = angle === 0;
        const ts = normal ? (2 * n1) / (n1 + n2) : (2 * Math.sin(refracted) * Math.cos(angle)) / sum;
        const tp = normal ? ts : ts / Math.cos(angle - refracted);
        const beam = (n2 * Math.cos(refracted)) / (n1 * Math.cos(angle));
        const { s, p } = obliqueReflectance(angle, n1, n2);
        expect(s + beam * ts ** 2).toBeCloseTo(1, 12);
        expect(p + beam * tp ** 2).toBeCloseTo(1, 12);
      }
    }
  }
});

test('a surface reflects the same from both sides, along the same ray', () => {
  for (const angle of angles) {
    const refracted = Math.asin(Math.sin(angle) / 1.457);
    const outside = obliqueReflectance(angle, 1, 1.457);
    const inside = obliqueReflectance(refracted, 1.457, 1);
    // Near grazing the refracted angle's own rounding is felt: 1e-10 is far below any bench.
    expect(inside.s).toBeCloseTo(outside.s, 10);
    expect(inside.p).toBeCloseTo(outside.p, 10);
  }
});

test('along the normal s and p are one, and equal to the short formula; metals too', () => {
  for (const n of indices) {
    const { s, p } = obliqueReflectance(0, 1.3, n);
    expect(s).toBeCloseTo(normalReflectance(1.3, n), 15);
    expect(p).toBeCloseTo(s, 15);
  }
  for (const { index } of metalIndices) {
    const { s, p } = obliqueReflectance(0, 1, index);
    const short = ((index.n - 1) ** 2 + index.k ** 2) / ((index.n + 1) ** 2 + index.k ** 2);
    expect(s).toBeCloseTo(short, 14);
    expect(p).toBeCloseTo(short, 14);
  }
});

test('p vanishes at Brewster’s angle, grazing light is reflected, light beyond the critical angle too', () => {
  expect(obliqueReflectance(Math.atan(1.52), 1, 1.52).p).toBeLessThan(1e-30);
  expect(obliqueReflectance(Math.PI / 2, 1, 1.52).s).toBeCloseTo(1, 14);
  expect(obliqueReflectance(Math.PI / 2, 1, 1.52).p).toBeCloseTo(1, 14);
  const critical = Math.asin(1 / 1.457);
  for (const angle of [critical + 1e-9, 1, 1.5]) {
    expect(obliqueReflectance(angle, 1.457, 1).s).toBeCloseTo(1, 14);
    expect(obliqueReflectance(angle, 1.457, 1).p).toBeCloseTo(1, 14);
  }
});

test('a metal without absorption is a dielectric, and reflectance is continuous there', () => {
  const glass = obliqueReflectance(0.7, 1, 1.5);
  expect(obliqueReflectance(0.7, 1, { n: 1.5, k: 0 })).toEqual(glass);
  expect(obliqueReflectance(0.7, 1, { n: 1.5, k: 1e-9 }).s).toBeCloseTo(glass.s, 15);
  expect(unpolarizedReflectance(glass)).toBe((glass.s + glass.p) / 2);
});

test('impossible angles and indices are refused', () => {
  expect(() => obliqueReflectance(-1e-9, 1, 1.5)).toThrow(OutOfRange);
  expect(() => obliqueReflectance(1.5708, 1, 1.5)).toThrow(OutOfRange); // π/2 is 1.57079…
  expect(() => obliqueReflectance(0, 1, { n: 1.5, k: -1e-9 })).toThrow(OutOfRange);
  expect(() => obliqueReflectance(0, 1, { n: 0, k: 1 })).toThrow(OutOfRange);
  expect(() => normalReflectance(1, 0)).toThrow(OutOfRange);
  expect(() => normalReflectance(0, 1)).toThrow(OutOfRange);
});
