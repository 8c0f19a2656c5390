import { expect, test } from 'vitest';
import { fourierTransform } from './fft.ts';

test('the fast transform is the plain sum', () => {
  const length = 32;
  const re = Float64Array.from({ length }, (_, i) => Math.sin(i * i) + 0.3 * i);
  const im = Float64Array.from({ length }, (_, i) => Math.cos(3 * i));
  const plain = Array.from({ length }, (_, k) => {
    let sumRe = 0;
    let sumIm = 0;
    for (let j = 0; j < length; j += 1) {
      const angle = (-2 * Math.PI * j * k) / length;
      sumRe += re[j]! * Math.cos(angle) - im[j]! * Math.sin(angle);
      sumIm += re[j]! * Math.sin(angle) + im[j]! * Math.cos(angle);
    }
    return [sumRe, sumIm] as const;
  });
  fourierTransform(re, im);
  // rounding of a sum of 32 terms of size about 10
  plain.forEach(([wantedRe, wantedIm], k) => {
    expect(Math.abs(re[k]! - wantedRe)).toBeLessThan(1e-12);
    expect(Math.abs(im[k]! - wantedIm)).toBeLessThan(1e-12);
  });
});

test('a single harmonic lands in its own bin and nowhere else', () => {
  const length = 64;
  const re = Float64Array.from({ length }, (_, j) => Math.cos((2 * Math.PI * 5 * j) / length));
  const im = Float64Array.from({ length }, (_, j) => Math.sin((2 * Math.PI * 5 * j) / length));
  fourierTransform(re, im);
  re.forEach((value, k) => {
    expect(Math.abs(value - (k === 5 ? length : 0))).toBeLessThan(1e-12); // rounding
  });
});
