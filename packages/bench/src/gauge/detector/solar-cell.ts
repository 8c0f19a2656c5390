import { quantumLimitResponsivity } from '@coreward/optics';
import { undetermined } from '../answer.ts';
import type { Gauge } from '../gauge.ts';
import { column, derived, type Known, meanOf, settingAs } from '../known.ts';
import { knownPower, responsivityAnswer, usualPower } from './known-power.ts';

const multimeter: Known = { from: 'scale of the multimeter', value: 1, uncertainty: 0.01 };

/** The gauge that is a solar cell with its terminals held together. */
export const solarCell: Gauge = {
  name: 'solar-cell',
  otherNames: [],
  title: 'solar cell in short circuit',
  answers:
    'power, from the short-circuit current of a silicon cell; with a known power, the cell’s responsivity',
  needs: 'a crystalline silicon cell larger than the beam, and a multimeter on a current range',
  takes: 'table',
  columns: [
    {
      name: 'current',
      dimension: 'current',
      needed: true,
      otherNames: ['i', 'reading', 'light'],
      what: 'with the light on',
    },
    {
      name: 'dark current',
      dimension: 'current',
      needed: false,
      otherNames: ['dark'],
      what: 'with the light off, reading for reading',
    },
  ],
  settings: [
    {
      name: 'wavelength',
      dimension: 'length',
      needed: true,
      otherNames: ['lambda', 'λ'],
      what: 'of the light',
    },
    {
      name: 'quantum efficiency',
      dimension: 'fraction',
      example: '85 %',
      needed: false,
      what: 'electrons a photon; left out: 85 % ± 8 % (from memory)',
    },
    knownPower,
    {
      name: 'burden',
      dimension: 'voltage',
      example: '12 mV',
      needed: false,
      otherNames: ['burden voltage'],
      what: 'voltage across the meter; must stay below 20 mV',
    },
  ],
  measure: (readings) => {
    const { settings } = readings;
    const [lit, dark] = [column(readings, 'current'), readings.columns['dark current']];
    const net = lit.map((i, k) => Math.abs(i - (dark?.[k] ?? 0)));
    const current = meanOf('currents', net, 0.01 * Math.max(...net) + 1e-7);
    const burden = settings.burden?.value ?? 0;
    if (Math.abs(burden) > 20e-3) {
      return {
        answers: [
          undetermined(
            settings['known power'] === undefined ? 'power_W' : 'responsivity_A_per_W',
            `the meter takes ${(burden * 1e3).toFixed(0)} mV: the cell is not in short circuit`,
            'Choose a higher current range, or measure across 1 Ω.',
          ),
        ],
        remarks: [],
        curves: [],
      };
    }
    const known = settings['known power'];
    const wavelength = settings.wavelength!;
    const efficiency = settingAs(
      'quantum efficiency of the cell',
      settings['quantum efficiency'] ?? { value: 0.85, uncertainty: null },
      0.08,
    );
    return {
      answers: [
        known !== undefined
          ? responsivityAnswer([current, multimeter], (i, m) => i! * m!, usualPower(known))
          : derived(
              { quantity: 'power_W', shape: 'positive' },
              [current, efficiency, settingAs('wavelength', wavelength, 0), multimeter],
              (i, q, lambda, m) => (i! * m!) / (q! * quantumLimitResponsivity(lambda!)),
            ),
      ],
      remarks:
        dark === undefined
          ? ['Nothing was taken off for the room’s light: cover the cell, and read the dark current.']
          : [],
      curves: [],
    };
  },
};
