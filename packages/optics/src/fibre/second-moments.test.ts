import { expect, test } from 'vitest';
import { gradedModes } from './graded-modes.ts';
import { spectrum } from './guided-mode.ts';
import { modeFieldRadius } from './mode-field.ts';
import { secondMoments } from './second-moments.ts';
import { stepModes } from './step-modes.ts';

test('the second moments of LP01 are the two definitions of Petermann', () => {
  for (const mode of [stepModes(2.2)[0]!, stepModes(6)[0]!, gradedModes(4.5)[0]!]) {
    const { radiusSquared, spectrumSquared } = secondMoments(mode);
    // the same integrals by other names: rounding
    expect(Math.sqrt(2 * radiusSquared)).toBeCloseTo(modeFieldRadius(mode, 'second-moment'), 10);
    expect(Math.sqrt(2 / spectrumSquared)).toBeCloseTo(modeFieldRadius(mode, 'petermann-2'), 10);
  }
});

test('⟨q²⟩ of higher modes is the second moment of their far field', () => {
  for (const mode of stepModes(6).slice(1, 5)) {
    // trapezoid to Q = 400, where S² Q³ has fallen as Q⁻⁴: the tail beyond is below 1e-5 of the whole
    let sum = 0;
    const step = 0.01;
    for (let q = step; q < 400; q += step) sum += step * q ** 3 * spectrum(mode, q) ** 2;
    expect(sum / secondMoments(mode).spectrumSquared).toBeCloseTo(1, 4);
  }
});
