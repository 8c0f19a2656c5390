import { OutOfRange } from '../out-of-range.ts';

/*
 * The one place where decibels and nepers meet fractions. Everything else in this room speaks of transmission (a
 * fraction of power) or of nepers. A neper here is one of *power*, −ln(transmission), so 4.343 dB; the neper of
 * field amplitude would be 8.686 dB. Losses are positive. A transmission above 1 (an entry of a ledger may have
 * one) is a negative loss.
 */

const decibelPerNeper = 10 / Math.LN10;

/**
 * Loss in dB of a power transmission: −10·log₁₀. Nothing coming through is an infinite loss.
 *
 * @throws {OutOfRange} if the transmission is negative or not finite
 * @source definition of the decibel of power, ISO 80000-3 (from memory)
 */
export function decibelFromTransmission(transmission: number): number {
  return nepersFromTransmission(transmission) * decibelPerNeper;
}

/** Power transmission of a loss in dB: 10^(−loss/10). A negative loss is a gain. @throws {OutOfRange} if not a number */
export function transmissionFromDecibel(loss: number): number {
  return transmissionFromNepers(nepersFromDecibel(loss));
}

/** −ln(transmission): loss in nepers of power. @throws {OutOfRange} if the transmission is negative or not finite */
export function nepersFromTransmission(transmission: number): number {
  if (!(transmission >= 0 && transmission < Infinity)) {
    throw new OutOfRange({
      where: 'transmission',
      what: `${transmission} is no fraction of power`,
      mend: 'Give a finite fraction of at least 0.',
    });
  }
  return 0 - Math.log(transmission); // not −Math.log, which turns full transmission into a negative zero
}

/** exp(−loss): power transmission of a loss in nepers of power. @throws {OutOfRange} if not a number */
export function transmissionFromNepers(loss: number): number {
  if (Number.isNaN(loss)) {
    throw new OutOfRange({ where: 'loss', what: `${loss} is no loss`, mend: 'Give a number.' });
  }
  return Math.exp(-loss);
}

/** Nepers of power in a loss of so many dB. */
export function nepersFromDecibel(loss: number): number {
  return loss / decibelPerNeper;
}

/** dB in a loss of so many nepers of power. */
export function decibelFromNepers(loss: number): number {
  return loss * decibelPerNeper;
}

/** Attenuation in nepers of power a metre, as in P = P₀·exp(−α·z), from dB/km. */
export function nepersPerMetreFromDecibelPerKilometre(attenuation: number): number {
  return nepersFromDecibel(attenuation) / 1000;
}

/** Attenuation in dB/km from nepers of power a metre. */
export function decibelPerKilometreFromNepersPerMetre(attenuation: number): number {
  return decibelFromNepers(attenuation) * 1000;
}
