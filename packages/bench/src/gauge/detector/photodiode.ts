import {
  isLoadSaturated,
  OutOfRange,
  siliconResponsivityEstimate,
  unbiasedVoltageLimit,
} from '@coreward/optics';
import { Refusal } from '../../refusal.ts';
import { writeValue } from '../../units/write.ts';
import { undetermined } from '../answer.ts';
import type { Gauge, GaugeResult, Readings, Setting } from '../gauge.ts';
import { column, derived, type Known, meanOf, settingAs } from '../known.ts';
import { setTo, setToWithin } from '../setting-words.ts';
import { knownPower, responsivityAnswer, usualPower } from './known-power.ts';

/** The cause of doubt that is the load's. */
export const loadDoubt = 'load resistor';

/** Standard uncertainty of a resistor nobody said more of, as a share (common practice, no source). */
export const usualLoadDoubt = 0.02;

/** The gauge that is a photodiode, a resistor and a multimeter. */
export const photodiode: Gauge = {
  name: 'photodiode',
  otherNames: [],
  title: 'photodiode with a load',
  answers:
    'power, and watts for each volt of this diode and load; with a known power, the diode’s responsivity',
  needs:
    'a bare photodiode that catches the whole beam, a resistor, a multimeter, and half the resistor for a check',
  takes: 'table',
  columns: [
    {
      name: 'voltage',
      dimension: 'voltage',
      needed: true,
      otherNames: ['v', 'u', 'reading', 'light'],
      what: 'across the load with the light on',
    },
    {
      name: 'dark voltage',
      dimension: 'voltage',
      needed: false,
      otherNames: ['dark'],
      what: 'with the light off, reading for reading',
    },
  ],
  settings: [
    {
      name: 'load',
      dimension: 'resistance',
      needed: true,
      otherNames: ['load resistor', 'resistor', 'r'],
      what: 'the resistor',
    },
    {
      name: 'responsivity',
      dimension: 'responsivity',
      needed: false,
      what: 'of the diode at this light; left out: a typical silicon diode’s',
    },
    {
      name: 'wavelength',
      dimension: 'length',
      needed: false,
      otherNames: ['lambda', 'λ'],
      what: 'of the light, where the responsivity is not known',
    },
    knownPower,
    { name: 'bias', dimension: 'voltage', needed: false, what: 'reverse bias; left out: none' },
    {
      name: 'dark voltage',
      dimension: 'voltage',
      example: '0.2 mV',
      needed: false,
      otherNames: ['dark'],
      what: 'one reading with the light off',
    },
    {
      name: 'half load voltage',
      dimension: 'voltage',
      example: '44 mV',
      needed: false,
      otherNames: ['half load'],
      what: 'reading with half the load, to see whether the diode is saturated',
    },
  ],
  measure: measurePhotodiode,
};

function measurePhotodiode(readings: Readings): GaugeResult {
  const { settings } = readings;
  const volts = column(readings, 'voltage');
  const darkColumn = readings.columns['dark voltage'];
  const dark = settings['dark voltage']?.value ?? 0;
  const net = volts.map((v, i) => Math.abs(v - (darkColumn?.[i] ?? dark)));
  // the last digits of a multimeter: 0.5 % and 0.1 mV (common practice, no source)
  const largest = Math.max(...volts.map(Math.abs));
  const voltage = meanOf('voltages', net, 0.005 * largest + 1e-4);
  const load = settingAs(loadDoubt, settings.load!, usualLoadDoubt * settings.load!.value);
  const lit = settings['known power'];
  if (lit !== undefined) return calibrated(readings, voltage, load, largest, usualPower(lit));
  const responsivity = responsivityOf(settings.responsivity, settings.wavelength);
  const perVolt = derived(
    { quantity: 'wattsPerVolt', shape: 'positive' },
    [load, responsivity],
    (r, s) => 1 / (r! * s!),
  );
  const saturation = saturationOf(
    voltage,
    largest,
    settings['half load voltage'],
    dark,
    settings.bias?.value ?? 0,
  );
  if (saturation !== null) {
    const least = voltage.value / (load.value * responsivity.value);
    return {
      answers: [
        undetermined('power_W', saturation, 'Take a smaller load, or a reverse bias, and read again.'),
        perVolt,
      ],
      remarks: [`The power is at least ${(least * 1e3).toPrecision(2)} mW.`],
      curves: [],
    };
  }
  const checked = settings['half load voltage'] !== undefined;
  return {
    answers: [
      derived(
        {
          quantity: 'power_W',
          shape: 'positive',
          weak:
            settings.responsivity === undefined
              ? {
                  because: 'the diode’s responsivity is a typical one',
                  add: 'Give it from the data sheet, or calibrate it with a known power.',
                }
              : undefined,
        },
        [voltage, load, responsivity, multimeter],
        (v, r, s, m) => (v! * m!) / (r! * s!),
      ),
      perVolt,
    ],
    remarks: checked
      ? []
      : ['Read once more with half the load: the voltage must halve, or the diode was saturated.'],
    curves: [],
  };
}

/** The diode judged by a power that is known, instead of the power by the diode. */
function calibrated(
  { settings }: Readings,
  voltage: Known,
  load: Known,
  largest: number,
  power: Known,
): GaugeResult {
  const saturation = saturationOf(
    voltage,
    largest,
    settings['half load voltage'],
    settings['dark voltage']?.value ?? 0,
    settings.bias?.value ?? 0,
  );
  if (saturation !== null) {
    const add = 'Take a smaller load, or a reverse bias, and read again.';
    return {
      answers: [
        undetermined('responsivity_A_per_W', saturation, add),
        undetermined('wattsPerVolt', saturation, add),
      ],
      remarks: [],
      curves: [],
    };
  }
  return {
    answers: [
      responsivityAnswer([voltage, load, multimeter], (v, r, m) => (v! * m!) / r!, power),
      derived(
        { quantity: 'wattsPerVolt', shape: 'positive' },
        [power, voltage, multimeter],
        (p, v, m) => p! / (v! * m!),
      ),
    ],
    remarks: [],
    curves: [],
  };
}

const multimeter: Known = { from: 'scale of the multimeter', value: 1, uncertainty: 0.005 };

function responsivityOf(given: Setting | undefined, wavelength: Setting | undefined): Known {
  if (given !== undefined) return settingAs('responsivity', given, 0.1 * given.value);
  if (wavelength === undefined) {
    throw new Refusal({
      where: 'photodiode',
      what: 'neither the responsivity nor the wavelength is given',
      mend: `${setTo('responsivity', '0.4 A/W')}, or ${setToWithin('wavelength', '635 nm')} for a typical silicon diode.`,
    });
  }
  const { value, relativeHalfWidth } = typicalSilicon(wavelength.value);
  return {
    from: 'responsivity of a typical silicon diode',
    value,
    uncertainty: (value * relativeHalfWidth) / Math.sqrt(3),
  };
}

function typicalSilicon(wavelength: number): ReturnType<typeof siliconResponsivityEstimate> {
  try {
    return siliconResponsivityEstimate(wavelength);
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    throw new Refusal({
      where: 'photodiode wavelength',
      what: `of ${writeValue(wavelength, 'length', 5)} nothing is known of a typical silicon diode`,
      mend: `${setTo('responsivity', '0.9 A/W')}, as the data sheet of your diode has it for this light.`,
    });
  }
}

/** Why the diode no longer answered in proportion; null where nothing says so. */
function saturationOf(
  voltage: Known,
  largest: number,
  half: Setting | undefined,
  dark: number,
  bias: number,
): string | null {
  if (isLoadSaturated(largest, bias))
    return `the voltage is above the ${(unbiasedVoltageLimit + bias).toPrecision(2)} V up to which a diode answers in proportion`;
  if (half === undefined) return null;
  const share = Math.abs(half.value - dark) / voltage.value;
  // half the load must give half the voltage, to the 8 % that two resistors and two readings allow
  return share > 0.58
    ? `with half the load ${(100 * share).toFixed(0)} % of the voltage were left, not half`
    : null;
}
