import { expect, test } from 'vitest';
import reference from '../../reference/modes.json' with { type: 'json' };
import { besselJ0, besselJ1 } from '../numerics/bessel-j.ts';
import { OutOfRange } from '../out-of-range.ts';
import {
  estimateValidity,
  glogeUEstimate,
  husseyMartinezRadiusEstimate,
  marcuseRadiusEstimate,
  rudolphNeumannWEstimate,
} from './estimates.ts';
import { farFieldQ, farFieldSine } from './far-field.ts';
import { gradedModes } from './graded-modes.ts';
import { bestGaussian, modeFieldRadius } from './mode-field.ts';
import { stepModes } from './step-modes.ts';
import { vNumber } from './v-number.ts';

interface StepCase {
  readonly id: string;
  readonly inputs: {
    readonly coreRadius_m: number;
    readonly numericalAperture: number;
    readonly wavelength_m: number;
  };
  readonly expected: {
    readonly lp01: Readonly<
      Record<
        | 'mfdGaussianOverlap_m'
        | 'gaussianOverlapMax'
        | 'mfdPetermann2_m'
        | 'mfdPetermann1SecondMoment_m'
        | 'mfdNearField1e2_m'
        | 'mfdFromFarField1e2_m'
        | 'farField1e2_sinTheta'
        | 'farField5percent_sinTheta'
        | 'mfdMarcuseFit_m'
        | 'mfdPetermann2Fit_m'
        | 'gloge1971_uApprox'
        | 'rudolphNeumann_wApprox',
        number
      >
    >;
  };
}

const of = <Case>(kind: string) =>
  reference.cases.filter((one) => one.kind === kind) as unknown as readonly Case[];
// The file's own error at V = 0.8 is 1e-9, elsewhere 2e-14 in u; widths follow from u through quadratures: 1e-9 is asked.
const close = (value: number, expected: number, tolerance = 1e-9) =>
  expect(Math.abs(value / expected - 1)).toBeLessThan(tolerance);

// Source of every row: packages/optics/reference/modes.json.
for (const { id, inputs, expected } of of<StepCase>('step-lp')) {
  test(`${id}: LP01 has each width and angle by its name`, () => {
    const { coreRadius_m: a, wavelength_m: wavelength } = inputs;
    const lp01 = stepModes(
      vNumber({ coreRadius: a, numericalAperture: inputs.numericalAperture }, wavelength),
    )[0]!;
    const e = expected.lp01;
    // a maximum is flat: its place is known to √ε only, on both sides of the comparison
    close(2 * a * modeFieldRadius(lp01, 'best-gaussian'), e.mfdGaussianOverlap_m, 1e-6);
    close(bestGaussian(lp01).overlap, e.gaussianOverlapMax);
    close(2 * a * modeFieldRadius(lp01, 'petermann-2'), e.mfdPetermann2_m);
    close(2 * a * modeFieldRadius(lp01, 'second-moment'), e.mfdPetermann1SecondMoment_m);
    close(2 * a * modeFieldRadius(lp01, 'near-field'), e.mfdNearField1e2_m);
    close(2 * a * modeFieldRadius(lp01, 'far-field'), e.mfdFromFarField1e2_m);
    close(farFieldSine(lp01, Math.exp(-2), a, wavelength), e.farField1e2_sinTheta);
    close(farFieldSine(lp01, 0.05, a, wavelength), e.farField5percent_sinTheta);
  });

  test(`${id}: the fits give what they should where they hold, and refuse elsewhere`, () => {
    const { coreRadius_m: a, wavelength_m: wavelength } = inputs;
    const v = vNumber({ coreRadius: a, numericalAperture: inputs.numericalAperture }, wavelength);
    const e = expected.lp01;
    for (const [fit, range, value] of [
      [(x: number) => 2 * a * marcuseRadiusEstimate(x), estimateValidity.marcuseRadius, e.mfdMarcuseFit_m],
      [
        (x: number) => 2 * a * husseyMartinezRadiusEstimate(x),
        estimateValidity.husseyMartinezRadius,
        e.mfdPetermann2Fit_m,
      ],
      [glogeUEstimate, estimateValidity.glogeU, e.gloge1971_uApprox],
      [rudolphNeumannWEstimate, estimateValidity.rudolphNeumannW, e.rudolphNeumann_wApprox],
    ] as const) {
      if (v > range.leastV - 1e-9 && v < range.mostV) close(fit(v), value, 1e-12);
      else expect(() => fit(v)).toThrow(OutOfRange);
    }
  });
}

test('fits are refused just outside the range in which they were checked, and answer at its ends', () => {
  for (const [fit, least, most] of [
    [marcuseRadiusEstimate, 1.2, 2.5],
    [husseyMartinezRadiusEstimate, 1.5, 2.5],
    [glogeUEstimate, 1.2, 12],
    [rudolphNeumannWEstimate, 1.5, 2.5],
  ] as const) {
    expect(() => fit(least - 0.01)).toThrow(OutOfRange);
    expect(fit(least)).toBeGreaterThan(0);
    expect(fit(most)).toBeGreaterThan(0);
    expect(() => fit(most + 0.01)).toThrow(OutOfRange);
  }
});

test('each fit errs by no more than it says, over the whole range it claims', () => {
  const worst = { marcuse: 0, hussey: 0, gloge: 0, rudolph: 0 };
  const { marcuseRadius, husseyMartinezRadius, glogeU, rudolphNeumannW } = estimateValidity;
  for (let v = glogeU.leastV; v <= glogeU.mostV; v += 0.05) {
    const lp01 = stepModes(v)[0]!;
    worst.gloge = Math.max(worst.gloge, Math.abs(glogeUEstimate(v) / lp01.u - 1));
    if (v > marcuseRadius.mostV) continue;
    worst.marcuse = Math.max(
      worst.marcuse,
      Math.abs(marcuseRadiusEstimate(v) / modeFieldRadius(lp01, 'best-gaussian') - 1),
    );
    if (v < rudolphNeumannW.leastV) continue;
    worst.rudolph = Math.max(worst.rudolph, Math.abs(rudolphNeumannWEstimate(v) / lp01.w - 1));
    worst.hussey = Math.max(
      worst.hussey,
      Math.abs(husseyMartinezRadiusEstimate(v) / modeFieldRadius(lp01, 'petermann-2') - 1),
    );
  }
  for (const [found, claimed] of [
    [worst.marcuse, marcuseRadius.relativeError],
    [worst.hussey, husseyMartinezRadius.relativeError],
    [worst.gloge, glogeU.relativeError],
    [worst.rudolph, rudolphNeumannW.relativeError],
  ] as const) {
    expect(found).toBeLessThan(claimed);
    expect(found).toBeGreaterThan(0.8 * claimed); // nor does it say too much
  }
});

interface TruncatedCase {
  readonly id: string;
  readonly inputs: { readonly V: number };
  readonly expected: {
    readonly lp01: {
      readonly radiusGaussianOverlap_overCoreRadius: number;
      readonly gaussianOverlapMax: number;
      readonly radiusPetermann2_overCoreRadius: number;
      readonly radiusPetermann1_overCoreRadius: number;
    };
  };
}

for (const { id, inputs, expected } of of<TruncatedCase>('parabolic-truncated')) {
  test(`${id}: LP01 of the graded core has each width by its name`, () => {
    const lp01 = gradedModes(inputs.V)[0]!;
    close(modeFieldRadius(lp01, 'best-gaussian'), expected.lp01.radiusGaussianOverlap_overCoreRadius, 1e-6);
    close(bestGaussian(lp01).overlap, expected.lp01.gaussianOverlapMax);
    close(modeFieldRadius(lp01, 'petermann-2'), expected.lp01.radiusPetermann2_overCoreRadius);
    close(modeFieldRadius(lp01, 'second-moment'), expected.lp01.radiusPetermann1_overCoreRadius);
  });
}

// Source: closed form for the step index, K. Petermann, Electron. Lett. 19, 712 (1983) (from memory).
test('Petermann II of a step is √2 J₁(u)/(w J₀(u)), from faint guidance to large V', () => {
  for (const v of [0.3, 0.8, 2.4, 11, 100]) {
    const lp01 = stepModes(v)[0]!;
    const closed = (Math.SQRT2 * besselJ1(lp01.u)) / (lp01.w * besselJ0(lp01.u));
    close(modeFieldRadius(lp01, 'petermann-2'), closed, 1e-12 * (1 + v));
  }
});

test('deep in a large parabola all widths agree: LP01 is a Gaussian', () => {
  const lp01 = gradedModes(120)[0]!;
  for (const definition of [
    'best-gaussian',
    'petermann-2',
    'second-moment',
    'near-field',
    'far-field',
  ] as const) {
    close(
      modeFieldRadius(lp01, definition),
      Math.sqrt(2 / 120),
      definition === 'best-gaussian' ? 1e-6 : 1e-11,
    );
  }
  expect(bestGaussian(lp01).overlap).toBeCloseTo(1, 12);
  // a Gaussian falls to 5 % at √(ln 20 / 2) of its 1/e² angle
  close(farFieldQ(lp01, 0.05) / farFieldQ(lp01, Math.exp(-2)), Math.sqrt(Math.log(20) / 2), 1e-10);
});

test('only LP01 has a mode-field radius, and side lobes are no far-field width', () => {
  const [lp01, lp11] = stepModes(3);
  expect(() => modeFieldRadius(lp11!, 'petermann-2')).toThrow(OutOfRange);
  expect(() => bestGaussian(lp11!)).toThrow(OutOfRange);
  expect(() => farFieldQ(lp01!, 0.019)).toThrow(OutOfRange);
  expect(() => farFieldQ(lp01!, 1)).toThrow(OutOfRange);
  expect(farFieldQ(lp01!, 0.02)).toBeGreaterThan(farFieldQ(lp01!, 0.05));
});
