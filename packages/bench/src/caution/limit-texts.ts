import { type Basis, evidenceMarks, type Harm, weakestEvidence } from '@coreward/optics';
import type { Dimension } from '../units/dimension.ts';
import { writeValue } from '../units/write.ts';

/** What a letter behind a number says about how it came to be known. */
export const markMeanings = {
  R: 'read in a stored copy of the source named',
  M: 'from memory, not verified: have it checked against an official copy',
  G: 'mathematics of Gaussian beams',
  P: 'our proposal or common practice',
} as const;

/** The letter of the weakest thing a number rests on. */
export function weakestMark(basis: readonly Basis[]): keyof typeof markMeanings {
  return evidenceMarks[weakestEvidence(basis)];
}

/** What a limit protects, in the words of a table. */
export const harmTexts: Readonly<Record<Harm, string>> = {
  'heat on the retina': 'the retina, from heat',
  'photochemistry on the retina': 'the retina, from photochemistry',
  'front of the eye, ultraviolet': 'cornea and lens, from ultraviolet',
  'front of the eye, infrared': 'cornea and lens, from infrared',
  skin: 'the skin',
};

/** A time with the prefix people use, down to femtoseconds. */
export function timeText(time: number): string {
  if (time < 1e-12) return writeValue(time, 'time', 3, 'fs');
  if (time < 1e-9) return writeValue(time, 'time', 3, 'ps');
  return time >= 0.1 ? writeValue(time, 'time', 6, 's') : writeValue(time, 'time', 4);
}

/** A limit, never rounded up: so many digits, the rest cut off. */
export function limitText(value: number, dimension: Dimension, digits = 3): string {
  const step = 10 ** (Math.floor(Math.log10(value)) + 1 - digits);
  // a value that is round but for its last bit stays so
  return writeValue(Math.floor((value / step) * (1 + 1e-12)) * step, dimension, digits);
}

/** A wavelength in nanometres as far as people use them. */
export function wavelengthText(wavelength: number): string {
  return wavelength < 3e-6 ? writeValue(wavelength, 'length', 9, 'nm') : writeValue(wavelength, 'length', 7);
}
