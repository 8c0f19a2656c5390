import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { GaugeAnswer } from './answer.ts';
import { assign } from './assign.ts';
import { fitCaustic } from './caustic/fit-caustic.ts';
import { gaugeNamed } from './gauge-table.ts';
import { fitEdge } from './knife-edge/fit-edge.ts';
import { readInputs } from './read-inputs.ts';

type Figures = Readonly<Record<string, number>>;
interface Case {
  readonly id: string;
  readonly kind: string;
  readonly inputs: Readonly<Record<string, readonly number[]>>;
  readonly expected: Readonly<Record<string, Figures>>;
  readonly numericalError: number;
  readonly source: string;
}
const reference = `${import.meta.dirname}/../../reference/gauges/gauges.json`;
const cases: readonly Case[] = JSON.parse(readFileSync(reference, 'utf8')).cases;
const ofKind = (kind: string): readonly Case[] => cases.filter((one) => one.kind === kind);

/** The answers of a gauge to the inputs of a case, read as the command line reads them. */
function answersTo(one: Case): (quantity: string) => GaugeAnswer {
  const gauge = gaugeNamed(one.kind)!;
  const { answers } = gauge.measure(assign(gauge, readInputs(JSON.stringify(one), one.id)).readings);
  return (name) => answers.find(({ quantity }) => quantity === name)!;
}

/** A determined answer within three standard uncertainties, or the rounding of noiseless readings. */
function expectTruth(answer: GaugeAnswer, truth: number, rounding: number): void {
  expect(answer.verdict, answer.because ?? '').not.toBe('undetermined');
  const allowed = 3 * answer.uncertainty! + rounding * Math.abs(truth);
  expect(
    Math.abs(answer.value! - truth),
    `${answer.quantity}: ${answer.value} against ${truth}`,
  ).toBeLessThanOrEqual(allowed);
}

/** Equal to the fit of a general-purpose library to a millionth: both stop their search near there. */
function expectFit(found: number, fitted: number, floor = 0): void {
  expect(Math.abs(found - fitted), `${found} against ${fitted}`).toBeLessThanOrEqual(
    1e-6 * Math.abs(fitted) + floor,
  );
}

describe('knife edge', () => {
  test.each(ofKind('knife-edge').map((one) => [one.id, one] as const))(
    '%s: the fit of SciPy and the truth',
    (_, one) => {
      const { truth, leastSquaresFit, standardError } = one.expected as {
        truth: Figures;
        leastSquaresFit: Figures;
        standardError: Figures | null;
      };
      const answer = answersTo(one);
      for (const name of ['radius1e2_m', 'centre_m']) {
        expectTruth(answer(name), truth[name]!, one.numericalError);
        expectFit(answer(name).value!, leastSquaresFit[name]!, 1e-6 * truth.radius1e2_m!);
        // theirs from a Jacobian by differences, and ours for scatter that may grow with the reading
        if (standardError !== null)
          expect(answer(name).uncertainty! / standardError[name]!).toBeCloseTo(1, 0);
      }
      const fit = fitEdge(one.inputs.positions_m!, one.inputs.power!)!;
      expectFit(fit.power, leastSquaresFit.power!);
      expectFit(fit.background, leastSquaresFit.background!, 1e-6 * Math.abs(truth.power!));
      expectFit(answer('d4sigma_m').value!, 2 * leastSquaresFit.radius1e2_m!);
    },
  );
});

describe('caustic', () => {
  const sure = ofKind('iso-caustic').filter(({ id }) => !/far-only|near-only/u.test(id));
  test.each(sure.map((one) => [one.id, one] as const))(
    '%s: the weighted fit of SciPy and the truth',
    (_, one) => {
      const { truth, fitWeighted } = one.expected as { truth: Figures; fitWeighted: Figures };
      const answer = answersTo(one);
      for (const name of [
        'waistDiameter_m',
        'waistPosition_m',
        'fullDivergence_rad',
        'rayleighLength_m',
        'm2',
      ]) {
        expectTruth(answer(name), truth[name]!, 1e-6);
        // M² is never given below 1
        if (name !== 'm2') expectFit(answer(name).value!, fitWeighted[name]!);
        else expectFit(answer(name).value!, Math.max(1, fitWeighted[name]!));
      }
    },
  );
  test('ca-005: far from the waist alone, there is divergence but neither waist nor M²', () => {
    const one = cases.find(({ id }) => id === 'ca-005-far-only')!;
    const answer = answersTo(one);
    for (const name of ['waistDiameter_m', 'rayleighLength_m', 'm2']) {
      expect(answer(name).verdict).toBe('undetermined');
      expect(answer(name).value).toBeNull();
      expect(answer(name).add).toMatch(/Read five more within/u);
    }
    expectTruth(answer('fullDivergence_rad'), one.expected.truth!.fullDivergence_rad!, 0);
    expect(answer('fullDivergence_rad').verdict).toBe('weak');
  });
  test('ca-006: near the waist alone, there is a waist but neither divergence nor M²', () => {
    const one = cases.find(({ id }) => id === 'ca-006-near-only')!;
    const answer = answersTo(one);
    for (const name of ['fullDivergence_rad', 'rayleighLength_m', 'm2'])
      expect(answer(name).verdict).toBe('undetermined');
    expect(answer('m2').add).toMatch(/beyond/u);
    for (const name of ['waistDiameter_m', 'waistPosition_m'])
      expectTruth(answer(name), one.expected.truth![name]!, 0);
    // the fit itself is that of SciPy, whatever is made of it
    const fit = fitCaustic(one.inputs.z_m!, one.inputs.diameter_m!, 0.03)!;
    expectFit(fit.waist!.fullDivergence, one.expected.fitWeighted!.fullDivergence_rad!);
  });
  test('ca-007: three planes are weak, and their doubt is the stated one', () => {
    const answer = answersTo(cases.find(({ id }) => id === 'ca-007-minimum-points')!);
    expect(answer('m2').verdict).toBe('weak');
    expect(answer('m2').contributions[0]!.from).toMatch(/stated or assumed/u);
  });
  test('without a wavelength all but M² is answered', () => {
    const one = cases.find(({ id }) => id === 'ca-003-noise1pc')!;
    const answer = answersTo({
      ...one,
      inputs: { z_m: one.inputs.z_m!, diameter_m: one.inputs.diameter_m! },
    });
    expect(answer('m2').verdict).toBe('undetermined');
    expect(answer('m2').add).toMatch(/wavelength/u);
    expectTruth(answer('waistDiameter_m'), one.expected.truth!.waistDiameter_m!, 0);
  });
});

describe('far field', () => {
  test.each(ofKind('far-field-cone').map((one) => [one.id, one] as const))(
    '%s: the straight line and the truth',
    (_, one) => {
      const { truth, fit } = one.expected as { truth: Figures; fit: Figures };
      const answer = answersTo(one);
      for (const name of ['na1e2', 'na5percent', 'endFaceAtReadingZ_m']) {
        expectTruth(answer(name), truth[name]!, one.numericalError);
        // where the end stands at nought, to a micrometre
        expectFit(answer(name).value!, fit[name]!, 1e-12);
      }
      const converted = (one.inputs.level as unknown as string) === '5%' ? 'na1e2' : 'na5percent';
      expect(answer(converted).because).toMatch(/converted/u);
    },
  );
  test.each(ofKind('far-field-profile').map((one) => [one.id, one] as const))(
    '%s: the closed form of LP01',
    (_, one) => {
      const expected = one.expected as unknown as Figures;
      const answer = answersTo(one);
      for (const name of ['sin1e2', 'sin5percent', 'sinHalf', 'equivalentMfdFrom1e2_m']) {
        expectTruth(answer(name), expected[name]!, 0);
        // five terms of an even curve follow a mode to two parts in ten thousand; noise of 0.5 % of the peak to one in a hundred
        expect(Math.abs(answer(name).value! / expected[name]! - 1)).toBeLessThan(
          one.id.includes('noise') ? 0.01 : 2.5e-4,
        );
      }
    },
  );
});

test('every case that is no picture is asked', () => {
  const counts = ['knife-edge', 'iso-caustic', 'far-field-cone', 'far-field-profile'].map(
    (kind) => ofKind(kind).length,
  );
  expect(counts).toEqual([6, 7, 4, 3]);
  expect(cases.length).toBe(30);
});
