import { mustBePositive, OutOfRange } from '../out-of-range.ts';

/** @source BIPM, The International System of Units, 9th edition (2019), exact constants: from memory */
const electronCharge = 1.602176634e-19;
const planck = 6.62607015e-34;
const lightSpeed = 299792458;

/**
 * The most current a detector without gain can give: one electron a photon, qλ/(hc), in A/W.
 *
 * @param wavelength m, in vacuum
 * @throws {OutOfRange} if the wavelength is not above zero
 * @source M. Johnson, Photodetection and Measurement, McGraw-Hill 2003, ch. 2: 0.807 A/W a micrometre (read in the source)
 */
export function quantumLimitResponsivity(wavelength: number): number {
  mustBePositive(wavelength, 'wavelength', 'a wavelength');
  return (electronCharge * wavelength) / (planck * lightSpeed);
}

/**
 * Electrons a photon, of a detector with this responsivity (A/W).
 *
 * @param wavelength m, in vacuum
 * @throws {OutOfRange} as `quantumLimitResponsivity` does
 * @source as `quantumLimitResponsivity`
 */
export function quantumEfficiency(responsivity: number, wavelength: number): number {
  return responsivity / quantumLimitResponsivity(wavelength);
}

/** What a bare silicon photodiode of unknown make is likely to give. */
export interface SiliconResponsivity {
  /** A/W. */
  readonly value: number;
  /** Half the width of the interval it is believed to lie in, as a share of the value. */
  readonly relativeHalfWidth: number;
}

/** Wavelength (m), A/W, half width as a share. */
const typicalSilicon: readonly (readonly [number, number, number])[] = [
  [405e-9, 0.17, 0.35],
  [450e-9, 0.22, 0.3],
  [520e-9, 0.29, 0.2],
  [532e-9, 0.3, 0.2],
  [633e-9, 0.4, 0.15],
  [650e-9, 0.42, 0.15],
  [780e-9, 0.53, 0.15],
  [850e-9, 0.58, 0.15],
  [980e-9, 0.62, 0.2],
  [1064e-9, 0.25, 0.6],
];

/**
 * A typical silicon photodiode with a plain window, straight lines between ten wavelengths. A surplus diode may hide a
 * filter that takes the visible or the infrared away: then none of this holds, and only a calibration helps.
 *
 * @param wavelength m, from 405 to 1064 nm
 * @throws {OutOfRange} outside that range
 * @source a typical curve from memory; J. P. Robinson, lecture BMS 631, Purdue University: 0.28 A/W at 500 nm and 0.5 A/W
 *   at 900 nm (read in the source), Johnson 2003, ch. 2: good silicon within about 30 % of the quantum limit (read)
 */
export function siliconResponsivityEstimate(wavelength: number): SiliconResponsivity {
  const above = typicalSilicon.findIndex(([at]) => wavelength <= at);
  if (above < 0 || !(wavelength >= typicalSilicon[0]![0])) {
    throw new OutOfRange({
      where: 'wavelength',
      what: `the typical silicon curve says nothing about ${wavelength} m`,
      mend: 'Give the responsivity of your diode in A/W, from its data sheet or from a known power.',
    });
  }
  const [x1, y1, w1] = typicalSilicon[above]!;
  if (above === 0) return { value: y1, relativeHalfWidth: w1 };
  const [x0, y0, w0] = typicalSilicon[above - 1]!;
  const share = (wavelength - x0) / (x1 - x0);
  return { value: y0 + share * (y1 - y0), relativeHalfWidth: w0 + share * (w1 - w0) };
}

/** A photodiode whose current flows through a resistor, the voltage across which is read. */
export interface LoadedPhotodiode {
  /** A/W. */
  readonly responsivity: number;
  /** Ω. */
  readonly load: number;
  /** Reverse bias, V; 0 without a battery. */
  readonly bias: number;
}

/** Forward voltage from which an unbiased silicon diode keeps current to itself, V. @source common practice, no source */
export const unbiasedVoltageLimit = 0.3;

/** What the meter across the load would show if the diode stayed straight, V, with this power (W). @source Ohm's law */
export function loadVoltage(power: number, { responsivity, load }: LoadedPhotodiode): number {
  return power * responsivity * load;
}

/**
 * Power (W) from the voltage (V) across the load, less the voltage in the dark.
 *
 * Holds for voltages that `isLoadSaturated` does not refuse.
 *
 * @source Ohm's law
 */
export function powerFromLoadVoltage(voltage: number, { responsivity, load }: LoadedPhotodiode): number {
  mustBePositive(responsivity, 'responsivity', 'a responsivity');
  mustBePositive(load, 'load', 'a resistance');
  return voltage / (responsivity * load);
}

/**
 * Whether the voltage across the load is where a diode no longer answers in proportion: softly from about 0.3 V above
 * the bias, hard near 0.5 V. A reading there is a lower bound, never a power.
 *
 * @source common practice, no source
 */
export function isLoadSaturated(voltage: number, bias: number): boolean {
  return Math.abs(voltage) > unbiasedVoltageLimit + bias;
}

/** Current (A) of a solar cell whose terminals are held together, its burden below 20 mV: one electron for each photon caught. */
export function shortCircuitCurrent(power: number, wavelength: number, efficiency: number): number {
  return power * efficiency * quantumLimitResponsivity(wavelength);
}
