import { expect, test } from 'vitest';
import { departures, hazardCase, hazardCases, numberIn } from '../../reference/hazard-cases.ts';
import { OutOfRange } from '../out-of-range.ts';
import {
  facetFindings,
  facetIrradianceFrom1e2,
  facetLevel,
  facetTripwires,
  multimodeFacetIrradiance,
  multimodeFillFraction,
} from './facet.ts';

for (const id of ['facet-irradiance-100mW-mfd4.3', 'facet-irradiance-160mW-mfd10.4']) {
  const one = hazardCase(id);
  test(one.title, () => {
    const { peakIrradiance, meanIrradiance } = facetIrradianceFrom1e2(
      numberIn(one, 'power_W'),
      numberIn(one, 'modeFieldDiameter_m'),
    );
    expect(
      departures(one, { peakIrradiance_W_per_m2: peakIrradiance, meanIrradiance_W_per_m2: meanIrradiance }),
    ).toEqual([]);
  });
}

// What is shown to people is what the sources say; ours is compared with the rows, nothing is computed.
const shown: Readonly<Record<string, Readonly<Record<string, number | readonly number[]>>>> = {
  'facet-cw-clean-connector': { powerWithoutDamage_W: facetFindings.cleanConnector.values[0] },
  'facet-bulk-pulsed': { damageIrradiance_W_per_m2: facetFindings.bulkSilicaPulsed.values[0] },
  'facet-preform-pulsed': {
    damageFluence_J_per_m2_low: facetFindings.preformPulsed.values[0],
    damageFluence_J_per_m2_high: facetFindings.preformPulsed.values[1],
  },
  'facet-practice': {
    theoreticalLimit_W_per_m2: facetTripwires.quotedLimit,
    practicalCaution_W_per_m2: facetTripwires.practicalCaution,
    multimodeFillFraction,
  },
  'facet-fuse': {
    frontSpeed_m_per_s: facetFindings.fuseSpeed.values[0],
    initiatingPowerOrder_W: facetFindings.fuseStart.values,
  },
};
for (const [id, values] of Object.entries(shown)) {
  const one = hazardCase(id);
  test(one.title, () => expect(departures(one, values)).toEqual([]));
}

test('every case about facets is asked for', () => {
  const asked = [...Object.keys(shown), 'facet-irradiance-100mW-mfd4.3', 'facet-irradiance-160mW-mfd10.4'];
  const cases = hazardCases.filter(({ topic }) => topic === 'hazard/facet').map(({ id }) => id);
  expect(cases.toSorted()).toEqual(asked.toSorted());
});

test('a tripwire is common practice, and no finding claims more than was seen', () => {
  expect(facetTripwires.evidence).toBe('common practice');
  expect(hazardCase('facet-practice').mark).toBe('M');
  expect(facetFindings.bulkSilicaPulsed.evidence).toBe('secondary');
});

test('the tripwires are asked by the peak: 100 mW in 4.3 µm trips both, 1 mW none', () => {
  // 0.25 and 1 MW/cm² are 2.5e9 and 1e10 W/m²
  const at = (power: number) => facetLevel(facetIrradianceFrom1e2(power, 4.3e-6));
  expect(at(0.1)).toBe('above the quoted limit');
  expect(at(0.03)).toBe('above careful practice');
  expect(at(1e-3)).toBe('below the tripwire');
});

test('an even spot fills 80 % of a multimode core', () => {
  expect(multimodeFacetIrradiance(1, 50e-6).peakIrradiance).toBeCloseTo(1 / (Math.PI * 20e-6 ** 2), 0);
  expect(() => multimodeFacetIrradiance(1, 0)).toThrow(OutOfRange);
  expect(() => facetIrradianceFrom1e2(-1, 4e-6)).toThrow(OutOfRange);
  expect(() => facetIrradianceFrom1e2(1, Number.NaN)).toThrow(OutOfRange);
});
