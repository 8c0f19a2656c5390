import { mustBePositive } from '../out-of-range.ts';

/** @source BIPM, The International System of Units, 9th edition (2019), exact constants: from memory */
const electronCharge = 1.602176634e-19;
const boltzmann = 1.380649e-23;

/**
 * Shot noise of a current, rms, A: √(2qIB).
 *
 * @param current A, photocurrent and dark current together
 * @param bandwidth Hz, equivalent noise bandwidth
 * @source W. Schottky, Ann. Phys. 362, 541 (1918) (from memory)
 */
export function shotNoise(current: number, bandwidth: number): number {
  return Math.sqrt(2 * electronCharge * Math.abs(current) * bandwidth);
}

/**
 * Thermal noise of a resistor, rms, as a current beside it, A: √(4kTB/R).
 *
 * @param load Ω
 * @param temperature K
 * @throws {OutOfRange} if the resistance is not above zero
 * @source J. B. Johnson, Phys. Rev. 32, 97 (1928) (from memory)
 */
export function thermalNoise(load: number, bandwidth: number, temperature: number): number {
  mustBePositive(load, 'load', 'a resistance');
  return Math.sqrt((4 * boltzmann * temperature * bandwidth) / load);
}

/**
 * Voltage across the load (V) above which shot noise wins over the resistor's own, 2kT/q: 52 mV at room temperature.
 *
 * @param temperature K
 * @source √(2qIB) = √(4kTB/R), solved for I·R: elementary
 */
export function noiseCrossoverVoltage(temperature: number): number {
  return (2 * boltzmann * temperature) / electronCharge;
}

/**
 * Power that would equal all the noise, W, in the bandwidth the noises were computed for: both in quadrature over the
 * responsivity.
 *
 * @param shot A, rms
 * @param thermal A, rms
 * @param responsivity A/W
 * @throws {OutOfRange} if the responsivity is not above zero
 * @source variances of independent noises add: elementary
 */
export function noiseEquivalentPower(shot: number, thermal: number, responsivity: number): number {
  mustBePositive(responsivity, 'responsivity', 'a responsivity');
  return Math.hypot(shot, thermal) / responsivity;
}

/**
 * The smallest turn of a polarisation (rad) that two balanced detectors behind an analyser at 45° can tell from shot
 * noise: ½√(2qB/I).
 *
 * @param totalCurrent A, of both detectors together
 * @source the balanced signal sin 2θ against the shot noise of the sum: elementary
 */
export function balancedRotationNoise(totalCurrent: number, bandwidth: number): number {
  mustBePositive(totalCurrent, 'totalCurrent', 'a current');
  return Math.sqrt((2 * electronCharge * bandwidth) / totalCurrent) / 2;
}
