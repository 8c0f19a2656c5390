import { levenbergMarquardt, thermistorTemperature, usualFitLimits } from '@coreward/optics';
import { Refusal } from '../../refusal.ts';
import { undetermined } from '../answer.ts';
import type { Gauge, GaugeResult, Readings } from '../gauge.ts';
import { column, derived, type Known, settingAs } from '../known.ts';
import { setToWithin } from '../setting-words.ts';

/** The gauge that is a blackened piece of metal with a thermistor. */
export const calorimeter: Gauge = {
  name: 'calorimeter',
  otherNames: [],
  title: 'blackened calorimeter',
  answers: 'power, from how fast a small body warms with the light on and cools with it off',
  needs:
    'a few grams of blackened metal on threads, a thermistor, a clock; ten minutes with and without the light',
  takes: 'table',
  columns: [
    { name: 'time', dimension: 'time', needed: true, otherNames: ['t'], what: 'from any start' },
    {
      name: 'temperature',
      dimension: 'temperature',
      needed: false,
      otherNames: ['temp'],
      what: 'of the body',
    },
    {
      name: 'resistance',
      dimension: 'resistance',
      needed: false,
      otherNames: ['r', 'thermistor'],
      what: 'of its thermistor, instead',
    },
    {
      name: 'light',
      dimension: 'number',
      needed: true,
      otherNames: ['on', 'lit'],
      what: '1 where the light was on from here to the next reading, 0 where it was off',
    },
  ],
  settings: [
    {
      name: 'heat capacity',
      dimension: 'number',
      example: '2.05',
      needed: true,
      otherNames: ['heat capacity j/k'],
      what: 'of body, thermistor and glue together, J/K: mass times specific heat',
    },
    {
      name: 'absorptance',
      dimension: 'fraction',
      example: '95 %',
      needed: false,
      what: 'of the black; left out: 95 % ± 2 %',
    },
    {
      name: 'r25',
      dimension: 'resistance',
      example: '10 kohm',
      needed: false,
      what: 'of the thermistor at 25 °C',
    },
    { name: 'beta', dimension: 'number', example: '3950', needed: false, what: 'of the thermistor, K' },
  ],
  measure: measureCalorimeter,
};

function measureCalorimeter(readings: Readings): GaugeResult {
  const { settings } = readings;
  const time = column(readings, 'time');
  const temperature = temperaturesOf(readings);
  const light = column(readings, 'light');
  if (time.length < 12 || !light.some((on) => on > 0.5) || !light.some((on) => on < 0.5)) {
    throw new Refusal({
      where: 'calorimeter readings',
      what: 'there are fewer than twelve readings, or none with the light on, or none with it off',
      mend: 'Read every ten seconds: a few minutes dark, a few with the light, a few dark again.',
    });
  }
  const fit = fitWarming(time, temperature, light);
  if (fit === null || !(fit.rate.uncertainty < 0.3 * fit.rate.value)) {
    return {
      answers: [
        undetermined(
          'power_W',
          'the body does not warm clearly when the light comes on',
          'Take a lighter body, more light, or more readings.',
        ),
      ],
      remarks: [],
      curves: [],
    };
  }
  const capacity = settingAs(
    'heat capacity',
    settings['heat capacity']!,
    0.07 * settings['heat capacity']!.value,
  );
  const black = settingAs(
    'absorptance of the black',
    settings.absorptance ?? { value: 0.95, uncertainty: null },
    0.02,
  );
  return {
    answers: [
      derived(
        { quantity: 'power_W', shape: 'positive' },
        [fit.rate, capacity, black],
        (rate, c, a) => (rate! * c!) / a!,
      ),
      derived({ quantity: 'timeConstant_s', shape: 'positive' }, [fit.timeConstant], (tau) => tau!),
    ],
    remarks: [],
    curves: [
      {
        title: 'temperature of the body',
        across: 'time (s)',
        up: 'temperature (K)',
        x: time,
        readings: temperature,
        fit: fit.curve,
      },
    ],
  };
}

function temperaturesOf(readings: Readings): readonly number[] {
  const { temperature, resistance } = readings.columns;
  if (temperature !== undefined) return temperature;
  const { r25, beta } = readings.settings;
  if (resistance === undefined || r25 === undefined || beta === undefined) {
    throw new Refusal({
      where: 'calorimeter readings',
      what: 'there is neither a temperature nor a resistance with the thermistor’s constants',
      mend: `Head a column \`temperature (°C)\`; or \`resistance (ohm)\`, and ${setToWithin('r25', '10 kΩ')} and ${setToWithin('beta', '3950')}.`,
    });
  }
  return resistance.map((r) => thermistorTemperature({ resistanceAt25: r25.value, beta: beta.value }, r));
}

interface Warming {
  /** What the light alone adds, K/s: heating less cooling at the same temperature. */
  readonly rate: Known;
  readonly timeConstant: Known;
  readonly curve: readonly number[];
}

/**
 * Light on and off over the whole record: dT/dt = rate·light − (T − room)/τ, solved from reading to reading.
 *
 * @source Newton's law of cooling; the rate is that of E. D. West and others, J. Res. NBS 76A, 13 (1972), isoperibol
 */
function fitWarming(
  time: readonly number[],
  temperature: readonly number[],
  light: readonly number[],
): Warming | null {
  const span = time.at(-1)! - time[0]!;
  const rise = Math.max(...temperature) - Math.min(...temperature);
  if (!(span > 0 && rise > 0)) return null;
  const model = (p: readonly number[]): Course => courseOf(p, time, light);
  const residuals = (p: readonly number[]): readonly number[] =>
    model(p).temperature.map((value, i) => value - temperature[i]!);
  const lit = light.filter((on) => on > 0.5).length / light.length;
  const guess = [rise / (span * lit), Math.log(span / 3), temperature[0]!, temperature[0]!];
  const scales = [guess[0]!, 0.5, rise / 3, rise / 10];
  const fit = levenbergMarquardt(residuals, guess, scales, usualFitLimits, (p) => model(p).slopes);
  const freedom = time.length - 4;
  if (fit.inverse === null) return null;
  const variance = fit.squares / freedom;
  const from = 'scatter of the temperatures';
  const tau = Math.exp(fit.parameters[1]!);
  return {
    rate: {
      from,
      value: fit.parameters[0]!,
      uncertainty: Math.sqrt(variance * fit.inverse[0]![0]!),
      freedom,
    },
    timeConstant: { from, value: tau, uncertainty: tau * Math.sqrt(variance * fit.inverse[1]![1]!), freedom },
    curve: model(fit.parameters).temperature,
  };
}

interface Course {
  readonly temperature: readonly number[];
  /** Columns of ∂temperature/∂(rate, logarithm of τ, room, start). */
  readonly slopes: readonly (readonly number[])[];
}

/** Temperatures from reading to reading, and how they move with each parameter: the solution above, differentiated. */
function courseOf(
  [rate, logTau, room, start]: readonly number[],
  time: readonly number[],
  light: readonly number[],
): Course {
  const tau = Math.exp(logTau!);
  const temperature = [start!];
  const slopes: readonly number[][] = [[0], [0], [0], [1]];
  for (let i = 1; i < time.length; i++) {
    const on = light[i - 1]! > 0.5 ? 1 : 0;
    const end = room! + rate! * tau * on;
    const step = (time[i]! - time[i - 1]!) / tau;
    const kept = Math.exp(-step);
    const before = temperature[i - 1]!;
    temperature.push(end + (before - end) * kept);
    const risesOfEnd = [tau * on, rate! * tau * on, 1, 0];
    for (const [j, column] of slopes.entries()) {
      // a longer τ also keeps more of what was
      const byKept = j === 1 ? (before - end) * kept * step : 0;
      column.push(risesOfEnd[j]! * (1 - kept) + column[i - 1]! * kept + byKept);
    }
  }
  return { temperature, slopes };
}
