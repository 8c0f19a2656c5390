import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  conductance,
  powerFromRates,
  thermistorResistance,
  thermistorSlope,
  thermistorTemperature,
} from './calorimeter.ts';
import { isUnclipped, lightFromSrgb } from './camera.ts';
import {
  balancedRotationNoise,
  noiseCrossoverVoltage,
  noiseEquivalentPower,
  shotNoise,
  thermalNoise,
} from './noise.ts';
import {
  isLoadSaturated,
  loadVoltage,
  powerFromLoadVoltage,
  quantumEfficiency,
  quantumLimitResponsivity,
  shortCircuitCurrent,
  siliconResponsivityEstimate,
} from './photodiode.ts';

interface Row {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: { readonly rel?: number; readonly abs?: number };
  readonly source: { readonly cite: string };
}
const rows: readonly Row[] = JSON.parse(
  readFileSync(`${import.meta.dirname}/../../reference/detector.json`, 'utf8'),
).rows;

/** Every figure of a row within the row's own tolerance. */
function check(id: string, answer: (inputs: Row['inputs']) => Readonly<Record<string, unknown>>): void {
  const row = rows.find((one) => one.id === id)!;
  test(`${id}: ${row.source.cite}`, () => {
    const found = answer(row.inputs);
    expect(Object.keys(found).sort()).toEqual(Object.keys(row.expected).sort());
    for (const [name, expected] of Object.entries(row.expected) as [string, unknown][]) {
      const [a, b] = [[found[name]].flat(), [expected].flat()];
      for (const [i, value] of b.entries()) {
        if (typeof value !== 'number') expect(a[i]).toBe(value);
        else
          expect(Math.abs((a[i] as number) - value), `${name}: ${a[i]}`).toBeLessThanOrEqual(
            row.tolerance.abs ?? row.tolerance.rel! * Math.abs(value),
          );
      }
    }
  });
}

for (const wavelength of ['405', '632.8', '850'])
  check(`det-quantum-limit-${wavelength}`, ({ wavelength_m }) => ({
    responsivityLimit_A_per_W: quantumLimitResponsivity(wavelength_m!),
  }));

for (const load of ['1000uW-220ohm', '1000uW-10000ohm'])
  check(`det-load-${load}`, ({ power_W, responsivity_A_per_W, load_ohm, bias_V }) => {
    const diode = { responsivity: responsivity_A_per_W!, load: load_ohm!, bias: bias_V! };
    const voltage = loadVoltage(power_W!, diode);
    expect(powerFromLoadVoltage(voltage, diode)).toBeCloseTo(power_W!, 15);
    return {
      photocurrent_A: power_W! * diode.responsivity,
      idealVoltage_V: voltage,
      saturated: isLoadSaturated(voltage, diode.bias),
    };
  });

check('det-noise-wilson-hawkes', (i) => {
  const photocurrent = quantumLimitResponsivity(i.wavelength_m!) * i.quantumEfficiency! * i.power_W!;
  const shot = shotNoise(photocurrent + i.darkCurrent_A!, i.bandwidth_Hz!);
  const thermal = thermalNoise(i.load_ohm!, i.bandwidth_Hz!, i.temperature_K!);
  return {
    photocurrent_A: photocurrent,
    shotNoise_A: shot,
    johnsonNoise_A: thermal,
    snrPower: photocurrent ** 2 / (shot ** 2 + thermal ** 2),
  };
});

check('det-noise-1000nW', (i) => {
  const shot = shotNoise(i.power_W! * i.responsivity_A_per_W!, i.bandwidth_Hz!);
  const thermal = thermalNoise(i.load_ohm!, i.bandwidth_Hz!, i.temperature_K!);
  return {
    shotNoise_A: shot,
    johnsonNoise_A: thermal,
    noiseEquivalentPower_W: noiseEquivalentPower(shot, thermal, i.responsivity_A_per_W!),
    crossoverVoltage_V: noiseCrossoverVoltage(i.temperature_K!),
  };
});

check('det-faraday-shot-limit', (i) => {
  const rotation = balancedRotationNoise(i.totalPhotocurrent_A!, i.bandwidth_Hz!);
  return { rotationNoise_rad: rotation, currentNoise_A: rotation / (i.verdet_rad_per_A! * i.turns!) };
});

check('det-solar-cell', (i) => ({
  shortCircuitCurrent_A: shortCircuitCurrent(i.power_W!, i.wavelength_m!, i.externalQuantumEfficiency!),
}));

check('det-calorimeter-5g', (i) => ({
  power_W: powerFromRates({
    heatCapacity: i.mass_kg! * i.specificHeat_J_per_kg_K!,
    heatingRate: i.heatingRate_K_per_s!,
    coolingRate: i.coolingRate_K_per_s_same_temperature!,
    absorptance: i.absorptance!,
  }),
}));

check('det-calorimeter-steady', (i) => {
  const g = conductance(i.heatCapacity_J_per_K!, i.timeConstant_s!);
  return { conductance_W_per_K: g, absorbedPower_W: g * i.temperatureRise_K! };
});

check('det-thermistor-303.15', (i) => {
  const thermistor = { resistanceAt25: i.r25_ohm!, beta: i.beta_K! };
  const resistance = thermistorResistance(thermistor, i.temperature_K!);
  expect(thermistorTemperature(thermistor, resistance)).toBeCloseTo(i.temperature_K!, 9);
  return { resistance_ohm: resistance, slope_per_K: thermistorSlope(thermistor, i.temperature_K!) };
});

check('cam-srgb-decode', (i) => ({
  linear: (i.codes8bit as unknown as readonly number[]).map((code) => lightFromSrgb(code / 255)),
}));

check('cam-ratio-200-100', (i) => ({
  powerRatio: lightFromSrgb(i.codeA! / 255) / lightFromSrgb(i.codeB! / 255),
  naiveRatio: i.codeA! / i.codeB!,
}));

check('cam-clip', (i) => ({
  usable: isUnclipped(i.codes8bit as unknown as readonly number[], i.clipCode!),
}));

check('det-si-typical', (i) => {
  const at = i.wavelengths_m as unknown as readonly number[];
  const read = [0.28, 0.5]; // the two values of the lecture
  return { responsivity_A_per_W: read, quantumEfficiency: read.map((r, k) => quantumEfficiency(r, at[k]!)) };
});

test('the typical curve goes through its ten points, and holds the two published ones in its interval', () => {
  const curve = rows.find(({ id }) => id === 'det-si-typical-curve')!;
  const [at, value, width] = [
    curve.inputs.wavelengths_m,
    curve.expected.responsivity_A_per_W,
    curve.expected.relativeHalfWidth,
  ] as unknown as readonly (readonly number[])[];
  for (const [k, wavelength] of at!.entries())
    expect(siliconResponsivityEstimate(wavelength)).toEqual({
      value: value![k],
      relativeHalfWidth: width![k],
    });
  // Purdue lecture BMS 631: 0.28 A/W at 500 nm, 0.5 A/W at 900 nm
  for (const [wavelength, published] of [
    [500e-9, 0.28],
    [900e-9, 0.5],
  ] as const) {
    const { value: typical, relativeHalfWidth } = siliconResponsivityEstimate(wavelength);
    expect(Math.abs(published / typical - 1)).toBeLessThanOrEqual(relativeHalfWidth);
  }
});

test('outside 405 to 1064 nm the typical curve is silent, and bias moves the limit of a load', () => {
  expect(() => siliconResponsivityEstimate(404e-9)).toThrow();
  expect(() => siliconResponsivityEstimate(1065e-9)).toThrow();
  expect(isLoadSaturated(0.29, 0)).toBe(false);
  expect(isLoadSaturated(0.31, 0)).toBe(true);
  expect(isLoadSaturated(4, 5)).toBe(false);
});

test('every row about detectors is asked for', () => {
  const text = readFileSync(`${import.meta.dirname}/detector.test.ts`, 'utf8');
  const asked = rows.filter(({ id }) => !text.includes(`'${id}'`) && !/^det-(quantum|load)/u.test(id));
  expect(asked).toEqual([]);
  expect(rows.length).toBe(17);
});
