import { setInText } from '../document/set-in-text.ts';
import type { Detector } from '../drawer/drawer.ts';
import { type KeptPart, listOf } from '../drawer/part.ts';
import { drawerOfParts } from '../drawer/part-reading.ts';
import { combine } from '../quantity/combine.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { Refusal } from '../refusal.ts';
import { writeQuantity, writeValue } from '../units/write.ts';
import type { ReadingUnit } from './reading.ts';

/** A reading as a power, or what is missing for it. */
export type DetectorWatts =
  | { readonly ok: true; readonly power: Quantity }
  | { readonly ok: false; readonly what: string; readonly mend: string };

/**
 * The light on a detector whose current, or the voltage that current leaves over a load, an instrument reads: P = I/S and
 * P = V/(R·S). The doubt is that of responsivity, load and reading.
 *
 * Valid where the detector answers in proportion, and for light of the wavelength its responsivity is given for.
 *
 * @param light the reading less what is read in the dark, in the instrument's unit
 * @param noise its standard uncertainty; null: not known, and left out
 * @source definition of responsivity and Ohm's law; JCGM 100:2008 (GUM), 5.1.2 for the doubt (from memory)
 */
export function detectorWatts(
  { responsivity, load }: Pick<Detector, 'responsivity' | 'load'>,
  unit: ReadingUnit,
  light: number,
  noise: number | null,
): DetectorWatts {
  const read: Quantity = { value: light, uncertainty: noise ?? 0, shape: 'normal', origin: 'measured' };
  if (!readsDetector(unit)) {
    return {
      ok: false,
      what: `readings in \`${unit}\` are no voltage and no current`,
      mend: 'Choose the detector of an instrument that reads volts or amperes.',
    };
  }
  if (responsivity === null) {
    return {
      ok: false,
      what: 'the detector’s responsivity is not known',
      mend: 'Write `responsivity: 0.4 A/W` in the drawer, or measure it with a known power.',
    };
  }
  if (unit === 'A') return { ok: true, power: combine([read, responsivity], (i, s) => i! / s!) };
  if (load === null) {
    return {
      ok: false,
      what: 'the resistor over which the voltage is read is not known',
      mend: 'Write `load: 220 Ω` in the drawer.',
    };
  }
  return { ok: true, power: combine([read, responsivity, load], (v, s, r) => v! / (r! * s!)) };
}

/** Whether an instrument of this unit can read a detector that turns light into current. */
export const readsDetector = (unit: ReadingUnit): boolean => unit === 'V' || unit === 'A';

/** The detector of a kept part; null where it is none, or cannot be read. */
export function detectorOf(part: KeptPart): Detector | null {
  if (part.kind !== 'detector') return null;
  try {
    return drawerOfParts([part], null).detectors[0] ?? null;
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** A detector with the instrument that reads it written in, or with none. */
export const readBy = (part: KeptPart, instrument: string | null): KeptPart => ({
  ...part,
  text: setInText(part.text, [listOf.detector, 0, 'read by'], instrument),
});

/** `1.21 mW ± 0.07 mW, for light of 635 nm`. */
export function detectorWords(power: Quantity, at: number | null): string {
  const written = writeQuantity(power, 'power');
  return at === null ? written : `${written}, for light of ${writeValue(at, 'length')}`;
}
