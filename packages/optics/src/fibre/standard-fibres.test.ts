import { expect, test } from 'vitest';
import reference from '../../reference/modes.json' with { type: 'json' };
import { modeFieldRadius } from './mode-field.ts';
import {
  singleModeRequirement,
  standardDesignations,
  standardFibre,
  standardFibres,
} from './standard-fibres.ts';
import { stepModes } from './step-modes.ts';
import { lp11CutoffWavelength, vNumber } from './v-number.ts';

// Source: packages/optics/reference/modes.json, anchor-standards: ITU-T G.652 and G.651.1, from memory, unverified.
const anchor = reference.cases.find(({ id }) => id === 'anchor-standards')!.expected as unknown as {
  readonly G652: {
    readonly mfd1310_um_nominalRange: readonly [number, number];
    readonly mfdTolerance_um: number;
    readonly claddingDiameter_um: readonly [number, number];
    readonly cableCutoffMax_nm: number;
  };
  readonly G6511: {
    readonly coreDiameter_um: readonly [number, number];
    readonly claddingDiameter_um: readonly [number, number];
    readonly numericalAperture: readonly [number, number];
  };
};

test('what ITU-T asks of single-mode fibre is noted as the reference has it', () => {
  const [least, most] = anchor.G652.mfd1310_um_nominalRange;
  expect(singleModeRequirement.modeFieldDiameter.least * 1e6).toBeCloseTo(least, 9);
  expect(singleModeRequirement.modeFieldDiameter.most * 1e6).toBeCloseTo(most, 9);
  expect(singleModeRequirement.modeFieldTolerance * 1e6).toBeCloseTo(anchor.G652.mfdTolerance_um, 9);
  expect(singleModeRequirement.longestCutoffWavelength * 1e9).toBeCloseTo(anchor.G652.cableCutoffMax_nm, 9);
});

for (const designation of ['G.652.D', 'G.657.A1', 'G.657.A2', 'G.657.B3'] as const) {
  test(`${designation}: a step anywhere within the limits has the mode field and the cut-off of the standard`, () => {
    const { coreDiameter, numericalAperture, claddingDiameter } = standardFibre(designation);
    const { wavelength, modeFieldDiameter, longestCutoffWavelength } = singleModeRequirement;
    const steps = [0, 0.25, 0.5, 0.75, 1];
    for (const along of steps) {
      for (const across of steps) {
        const coreRadius = (coreDiameter.least + along * (coreDiameter.most - coreDiameter.least)) / 2;
        const aperture =
          numericalAperture.least + across * (numericalAperture.most - numericalAperture.least);
        const guide = { coreRadius, numericalAperture: aperture };
        const lp01 = stepModes(vNumber(guide, wavelength))[0]!;
        const diameter = 2 * coreRadius * modeFieldRadius(lp01, 'petermann-2');
        expect(diameter).toBeGreaterThan(modeFieldDiameter.least);
        expect(diameter).toBeLessThan(modeFieldDiameter.most);
        expect(lp11CutoffWavelength(guide, 'step')).toBeLessThan(longestCutoffWavelength);
      }
    }
    const [nominal, by] = anchor.G652.claddingDiameter_um;
    expect(claddingDiameter.nominal * 1e6).toBeCloseTo(nominal, 9);
    expect((claddingDiameter.most - claddingDiameter.nominal) * 1e6).toBeCloseTo(by, 9);
  });
}

test('G.651.1 has the core, cladding and aperture of the reference', () => {
  const fibre = standardFibre('G.651.1');
  for (const [limits, [nominal, by], unit] of [
    [fibre.coreDiameter, anchor.G6511.coreDiameter_um, 1e-6],
    [fibre.claddingDiameter, anchor.G6511.claddingDiameter_um, 1e-6],
    [fibre.numericalAperture, anchor.G6511.numericalAperture, 1],
  ] as const) {
    expect(limits.nominal / unit).toBeCloseTo(nominal, 9);
    expect((limits.nominal - limits.least) / unit).toBeCloseTo(by, 9);
    expect((limits.most - limits.nominal) / unit).toBeCloseTo(by, 9);
  }
});

// Source: IEC 60793-2-10 and ISO/IEC 11801-1 (from memory): OM1 is 62.5/125, NA 0.275; OM2 to OM5 are 50/125, NA 0.20.
test('OM1 is 62.5/125, the others are 50/125', () => {
  expect(standardFibre('OM1').coreDiameter.nominal).toBeCloseTo(62.5e-6, 12);
  expect(standardFibre('OM1').numericalAperture.nominal).toBe(0.275);
  for (const designation of ['OM2', 'OM3', 'OM4', 'OM5'] as const) {
    expect(standardFibre(designation).coreDiameter.nominal).toBeCloseTo(50e-6, 12);
    expect(standardFibre(designation).numericalAperture.nominal).toBe(0.2);
  }
});

test('every designation has one row, whose core fits into its cladding and whose limits enclose the nominal value', () => {
  expect(standardFibres.map(({ designation }) => designation)).toEqual(standardDesignations);
  for (const { designation, coreDiameter, numericalAperture, claddingDiameter, source } of standardFibres) {
    for (const { least, nominal, most } of [coreDiameter, numericalAperture, claddingDiameter]) {
      expect(least, designation).toBeLessThan(nominal);
      expect(nominal, designation).toBeLessThan(most);
    }
    expect(coreDiameter.nominal, designation).toBeLessThan(claddingDiameter.nominal);
    expect(source.length).toBeGreaterThan(0);
  }
});
