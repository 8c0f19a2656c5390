import fc from 'fast-check';
import { expect, test } from 'vitest';
import { departures, hazardCase, hazardCases, numberIn } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import { classEstimate, classEstimateThroughStops, withLabel } from './class-estimate.ts';
import { type ClassFigures, class1Figure, classFigures } from './class-figures.ts';
import { evidenceMarks, weakestEvidence } from './evidence.ts';
import { classWording, laserClasses, worstClass } from './laser-class.ts';
import type { LimitSet } from './limit-set.ts';
import { pulsedClass1Figure, pulsedClassEstimate } from './pulsed-class.ts';

for (const one of hazardCases.filter(({ topic }) => topic === 'ael')) {
  const set = one.inputs.limits as LimitSet;
  test(one.title, () => {
    const wavelength = numberIn(one, 'wavelength_m');
    if ('class' in one.expected) {
      const estimate = classEstimate({ wavelength, power: numberIn(one, 'power_W') });
      expect(departures(one, { class: estimate.treatedLike })).toEqual([]);
      return;
    }
    if ('Q_J' in one.expected) {
      const { energy, basis } = pulsedClass1Figure(set, wavelength, numberIn(one, 'pulse_s'));
      expect(departures(one, { Q_J: energy })).toEqual([]);
      if (one.mark === 'M') expect(evidenceMarks[weakestEvidence(basis)]).toBe('M');
      return;
    }
    const name = `class${one.inputs.class}` as keyof ClassFigures;
    const figure = classFigures(set, wavelength)[0]![name]!;
    expect(departures(one, { P_W: figure.power })).toEqual([]);
    expect(figure.timeBase).toBe(numberIn(one, 'time_base_s'));
    if (one.mark === 'M') expect(evidenceMarks[weakestEvidence(figure.basis)]).toBe('M');
  });
}

test('red, violet, 1, 5 and 500 mW were read; blue, near infrared and beyond are remembered', () => {
  const mark = (nm: number) => evidenceMarks[weakestEvidence(class1Figure('eu2006', nm * 1e-9).basis)];
  expect([405, 633, 473, 850, 1064, 1550, 375].map(mark)).toEqual(['R', 'R', 'M', 'M', 'M', 'M', 'M']);
});

// by hand from the table of class figures; marks as above
for (const [nm, power, laserClass] of [
  [375, 7.9e-6, '1'],
  [375, 8e-6, '3R'],
  [375, 40e-6, '3B'],
  [405, 0.04e-3, '2'],
  [532, 0.39e-3, '1'],
  [532, 1e-3, '2'],
  [532, 1.01e-3, '3R'],
  [532, 5.01e-3, '3B'],
  [532, 0.5, '3B'],
  [532, 0.501, '4'],
  [808, 0.6e-3, '1'],
  [808, 0.7e-3, '3R'],
  [1064, 1.95e-3, '1'],
  [1064, 9.75e-3, '3R'],
  [1064, 9.9e-3, '3B'], // five times class 1; the table's rounded 10 mW is not used
  [1310, 15.6e-3, '1'],
  [1310, 0.1, '3B'],
  [1550, 10e-3, '1'],
  [1550, 0.6, '4'],
] as const) {
  test(`${power * 1e3} mW at ${nm} nm would be treated like class ${laserClass}`, () => {
    expect(classEstimate({ wavelength: nm * 1e-9, power }).treatedLike).toBe(laserClass);
  });
}

test('on a shared boundary the worse of both neighbours is taken', () => {
  for (const nm of [400, 700, 1050, 1400]) {
    const at = (beside: number, power: number) =>
      laserClasses.indexOf(classEstimate({ wavelength: beside * 1e-9, power }).treatedLike);
    for (const power of [5e-6, 0.3e-3, 0.5e-3, 1e-3, 2.5e-3, 9e-3, 0.02, 0.4, 1]) {
      expect(at(nm, power)).toBeGreaterThanOrEqual(Math.max(at(nm - 1e-4, power), at(nm + 1e-4, power)));
    }
  }
});

test('more power is never treated more mildly, and unknown power as the worst', () => {
  const power = fc.double({ min: -7, max: 1, noNaN: true }).map((exponent) => 10 ** exponent);
  fc.assert(
    fc.property(fc.double({ min: 315, max: 4000, noNaN: true }), power, power, (nm, a, b) => {
      const rank = (watts: number | null) =>
        laserClasses.indexOf(classEstimate({ wavelength: nm * 1e-9, power: watts }).treatedLike);
      expect(rank(Math.max(a, b))).toBeGreaterThanOrEqual(rank(Math.min(a, b)));
      expect(rank(null)).toBeGreaterThanOrEqual(rank(a));
    }),
  );
});

test('the wording never says that a laser is of a class', () => {
  for (const laserClass of laserClasses) {
    expect(classWording(laserClass)).toBe(`would be treated like class ${laserClass} here`);
  }
  expect(classEstimate({ wavelength: 532e-9, power: 0.03 }).wording).toBe(
    'would be treated like class 3B here',
  );
});

test('from 1200 to 1400 nm the stricter factor is used, and this is said', () => {
  const estimate = classEstimate({ wavelength: 1310e-9, power: 0.1 });
  expect(estimate.set).toBe('eu2006');
  expect(estimate.remarks.join()).toContain('C_C = 8');
  expect(classEstimate({ wavelength: 1064e-9, power: 0.1 }).remarks).toEqual([]);
});

test('a label counts only if it is higher', () => {
  const estimate = classEstimate({ wavelength: 532e-9, power: 0.03 });
  for (const label of laserClasses) {
    expect(withLabel(estimate, label).treatedLike).toBe(worstClass('3B', label));
  }
  expect(withLabel(estimate, '2').remarks.join()).toContain('does not lower');
  expect(withLabel(estimate, '4').wording).toBe('would be treated like class 4 here');
  expect(withLabel(estimate, null)).toBe(estimate);
});

// conditions of IEC 60825-1; figures for 532 nm: 0.39 mW, 1 mW, 5 mW, 500 mW
for (const [naked, aided, total, laserClass] of [
  [0.1e-3, 0.3e-3, 0.3e-3, '1'],
  [0.1e-3, 3e-3, 3e-3, '1M'],
  [0.1e-3, 0.5e-3, 0.5e-3, '1M'],
  [0.5e-3, 0.9e-3, 0.9e-3, '2'],
  [0.5e-3, 20e-3, 20e-3, '2M'],
  [2e-3, 4e-3, 4e-3, '3R'],
  [2e-3, 20e-3, 20e-3, '3B'],
  [0.1e-3, 0.6, 0.6, '4'],
  [0.1e-3, null, 0.6, '4'], // what enters a telescope is not known: all of it
  [0.1e-3, null, 3e-3, '1M'],
] as const) {
  test(`${naked} W to the naked eye, ${aided} W to a telescope, of ${total} W: class ${laserClass}`, () => {
    const estimate = classEstimateThroughStops({
      wavelength: 532e-9,
      nakedEyePower: naked,
      aidedPower: aided,
      totalPower: total,
    });
    expect(estimate.treatedLike).toBe(laserClass);
  });
}

test('1M and 2M do not exist where class 2 does not, and no more goes through a stop than there is', () => {
  const infrared = { wavelength: 1064e-9, nakedEyePower: 3e-3, aidedPower: 5e-3, totalPower: 5e-3 };
  expect(classEstimateThroughStops(infrared).treatedLike).toBe('3R');
  expect(() => classEstimateThroughStops({ ...infrared, totalPower: 1e-3 })).toThrow(OutOfRange);
});

test('outside 315 to 4000 nm, or for no power, there is no estimate', () => {
  for (const nm of [314, 4001, Number.NaN]) {
    expect(() => classEstimate({ wavelength: nm * 1e-9, power: 1e-3 })).toThrow(OutOfRange);
  }
  expect(() => classEstimate({ wavelength: 532e-9, power: -1e-3 })).toThrow(OutOfRange);
  expect(() => classEstimate({ wavelength: 532e-9, power: Number.NaN })).toThrow(OutOfRange);
});

const pulse = { wavelength: 532e-9, pulseDuration: 1e-8, pulseEnergy: 1e-8, repetitionRate: null };

test('the printed class 1 energies of pulses are the limits over 7 mm, rounded', () => {
  // IEC 60825-1: 2e-7 J and 2e-6 J (2007), 7.7e-8 J and 7.7e-7·C_C J (2014), from memory; rounded there by up to 4 %
  const energy = (set: LimitSet, nm: number) => pulsedClass1Figure(set, nm * 1e-9, 1e-8).energy;
  expect(energy('eu2006', 532) / 2e-7).toBeCloseTo(0.962, 3);
  expect(energy('eu2006', 1064) / 2e-6).toBeCloseTo(0.962, 3);
  expect(energy('icnirp2013', 532) / 7.7e-8).toBeCloseTo(1, 2);
  expect(energy('icnirp2013', 1310) / (7.7e-7 * 259.19)).toBeCloseTo(1, 2);
});

test('a pulsed laser is judged by its pulse, its train and its average', () => {
  expect(pulsedClassEstimate(pulse).treatedLike).toBe('1');
  expect(pulsedClassEstimate({ ...pulse, pulseEnergy: 3e-7 }).treatedLike).toBe('3R');
  expect(pulsedClassEstimate({ ...pulse, pulseEnergy: 1e-6 }).treatedLike).toBe('3B');
  expect(pulsedClassEstimate({ ...pulse, pulseEnergy: 0.031 }).treatedLike).toBe('4');
  // under the figure one by one, 1 mW together: 100 kHz
  expect(pulsedClassEstimate({ ...pulse, repetitionRate: 1e5 }).treatedLike).not.toBe('1');
  // 0.6 W on average
  expect(pulsedClassEstimate({ ...pulse, pulseEnergy: 6e-6, repetitionRate: 1e5 }).treatedLike).toBe('4');
  expect(pulsedClassEstimate({ ...pulse, pulseEnergy: null }).treatedLike).toBe('4');
});

test('a train counts even where each pulse and the average would be class 1', () => {
  // 1064 nm, 10 ns, 20 Hz: 7.7e-7 J alone (icnirp2013), 5e-2·2000^-0.25 J/m² over 7 mm, 2.9e-7 J, in 100 s of train
  // (eu2006); 0.5 µJ is 10 µW on average
  const one = { wavelength: 1064e-9, pulseDuration: 1e-8, pulseEnergy: 5e-7 };
  expect(pulsedClassEstimate({ ...one, repetitionRate: null }).treatedLike).toBe('1');
  expect(pulsedClassEstimate({ ...one, repetitionRate: 20 })).toMatchObject({
    treatedLike: '3R',
    set: 'eu2006',
  });
  expect(classEstimate({ wavelength: 1064e-9, power: 1e-5 }).treatedLike).toBe('1');
});

test('where no class 1 figure of pulses is known, at least class 3B is assumed', () => {
  const infrared = { ...pulse, wavelength: 1550e-9 };
  expect(pulsedClassEstimate(infrared).treatedLike).toBe('3B');
  expect(pulsedClassEstimate({ ...infrared, pulseEnergy: 0.126 }).treatedLike).toBe('4');
  expect(pulsedClassEstimate({ ...pulse, wavelength: 375e-9 }).treatedLike).toBe('4');
  expect(() => pulsedClass1Figure('eu2006', 1550e-9, 1e-8)).toThrow(OutOfRange);
  expect(() => pulsedClassEstimate({ ...pulse, pulseDuration: 0.3 })).toThrow(OutOfRange);
  expect(() => pulsedClassEstimate({ ...pulse, pulseEnergy: -1 })).toThrow(OutOfRange);
});

test('a repetition never makes a pulsed laser milder', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 400, max: 1400, noNaN: true }),
      fc.double({ min: -12, max: -1, noNaN: true }).map((e) => 10 ** e),
      fc.double({ min: 0, max: 6, noNaN: true }).map((e) => 10 ** e),
      (nm, pulseEnergy, repetitionRate) => {
        const one = { wavelength: nm * 1e-9, pulseDuration: 1e-8, pulseEnergy };
        const rank = (rate: number | null) =>
          laserClasses.indexOf(pulsedClassEstimate({ ...one, repetitionRate: rate }).treatedLike);
        expect(rank(repetitionRate)).toBeGreaterThanOrEqual(rank(null));
      },
    ),
  );
});

test('the mark of a case is kept', () => {
  expect(hazardCase('SAF-AEL1-473').mark).toBe('M');
  expect(hazardCase('SAF-AEL1-633').mark).toBe('R');
});
