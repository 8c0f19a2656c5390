import { mustBePositive } from '../out-of-range.ts';

/** Heating and cooling of a small blackened body, both at the same temperature. */
export interface CalorimeterRates {
  /** K/s with the light on. */
  readonly heatingRate: number;
  /** K/s with the light off, at the temperature of `heatingRate`; negative. */
  readonly coolingRate: number;
  /** J/K, of body, thermistor, glue and the first of the leads together. */
  readonly heatCapacity: number;
  /** Share of the light the black takes up. */
  readonly absorptance: number;
}

/**
 * Power on a calorimeter, W, by the rate method: what heats is the light less the loss to the room, and the loss is what
 * cools at that temperature in the dark.
 *
 * @throws {OutOfRange} if heat capacity or absorptance is not above zero
 * @source E. D. West and others, J. Res. NBS 76A, 13 (1972), the isoperibol principle (read in the source)
 */
export function powerFromRates({
  heatingRate,
  coolingRate,
  heatCapacity,
  absorptance,
}: CalorimeterRates): number {
  mustBePositive(heatCapacity, 'heatCapacity', 'a heat capacity');
  mustBePositive(absorptance, 'absorptance', 'a share of the light');
  return (heatCapacity * (heatingRate - coolingRate)) / absorptance;
}

/**
 * Heat that flows to the room for each kelvin, W/K, of a body that cools with this time constant (s): C/τ.
 *
 * @param heatCapacity J/K
 * @source Newton's law of cooling: elementary; holds while the body is some kelvins above the room
 */
export function conductance(heatCapacity: number, timeConstant: number): number {
  mustBePositive(heatCapacity, 'heatCapacity', 'a heat capacity');
  mustBePositive(timeConstant, 'timeConstant', 'a time');
  return heatCapacity / timeConstant;
}

/** A thermistor: R25·exp[B(1/T − 1/298.15 K)]. */
export interface Thermistor {
  /** Ω at 25 °C. */
  readonly resistanceAt25: number;
  /** K. */
  readonly beta: number;
}

const roomTemperature = 298.15;

/**
 * Resistance (Ω) of a thermistor at a temperature (K).
 *
 * @source the two-constant form of thermistor data sheets (from memory); a few tenths of a kelvin off over 50 K
 */
export function thermistorResistance({ resistanceAt25, beta }: Thermistor, temperature: number): number {
  mustBePositive(temperature, 'temperature', 'a temperature');
  return resistanceAt25 * Math.exp(beta * (1 / temperature - 1 / roomTemperature));
}

/**
 * Temperature (K) of a thermistor of this resistance (Ω).
 *
 * @throws {OutOfRange} if the resistance is not above zero
 * @source as `thermistorResistance`, turned round
 */
export function thermistorTemperature({ resistanceAt25, beta }: Thermistor, resistance: number): number {
  mustBePositive(resistance, 'resistance', 'a resistance');
  return 1 / (1 / roomTemperature + Math.log(resistance / resistanceAt25) / beta);
}

/** Share by which the resistance changes for one kelvin, 1/K: −B/T², T in K. @source as `thermistorResistance`, its slope */
export function thermistorSlope({ beta }: Thermistor, temperature: number): number {
  mustBePositive(temperature, 'temperature', 'a temperature');
  return -beta / temperature ** 2;
}
