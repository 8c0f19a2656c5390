/** Which power to compute a caution for: never the milder of two that are known. */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { mustBePower } from './beam-definition.ts';
import { class1Figure } from './class-figures.ts';
import type { Basis } from './evidence.ts';
import type { LimitSet } from './limit-set.ts';

/** The power a bench is judged by, and how it was come by. */
export interface AssumedPower {
  /** W. */
  readonly power: number;
  /** What was assumed, in words. */
  readonly assumed: string;
  readonly basis: Basis;
}

const worstDriver: Basis = { evidence: 'proposal', source: 'our proposal: the knob at its maximum' };

/**
 * The highest power the driver can give; not known, twice the rating. A low reading does not lower it.
 *
 * @throws {OutOfRange} if neither is known, or one is negative
 * @source our proposal
 */
export function powerToAssume({
  highest,
  rated,
  reading = null,
}: {
  /** Knob at its maximum, warm-up and mode hops included, W; `null`: not known. */
  readonly highest: number | null;
  /** What label or data sheet say, W; `null`: not known. */
  readonly rated: number | null;
  /** What was measured today, W. */
  readonly reading?: number | null;
}): AssumedPower {
  for (const power of [highest, rated, reading]) if (power !== null) mustBePower(power);
  if (highest === null && rated === null) {
    throw new OutOfRange({
      where: 'power',
      what: 'neither the highest nor the rated power is known',
      mend: 'Ask the maker, or have the power measured with the knob at its maximum.',
    });
  }
  const known = highest ?? 2 * (rated ?? 0);
  const power = Math.max(known, rated ?? 0, reading ?? 0);
  const assumed =
    power > known
      ? 'more was rated or read than the driver was said to give: that is assumed'
      : highest === null
        ? 'the highest power is not known: twice the rated power is assumed, and the result may be too mild'
        : 'the highest power the driver can give';
  return { power, assumed, basis: worstDriver };
}

/** Whether the infrared of a doubled laser was looked for. */
export type InfraredKnown =
  | { readonly kind: 'measured'; readonly power: number }
  | { readonly kind: 'blocked by a filter' }
  | { readonly kind: 'not known' };

/** Infrared that a frequency-doubled laser may send along with its visible light. */
export interface HiddenInfrared {
  /** W. */
  readonly power: number;
  /** m. */
  readonly wavelength: number;
  /** Over the class 1 figure. */
  readonly timesClass1: number;
  readonly set: LimitSet;
  /** s; what the class 1 figure stands for. */
  readonly exposureTime: number;
  readonly basis: readonly Basis[];
}

const leakingPointer: Basis = {
  evidence: 'read',
  source:
    'news of NIST Technical Note 1668 (2010): almost 20 mW of infrared from a green pointer of nominally 10 mW',
};
const twiceGreen: Basis = {
  evidence: 'proposal',
  source: 'our proposal: twice the green rating where not known',
};

/**
 * The infrared in a doubled green beam. Not known counts as present, at twice the green rating.
 *
 * @param greenRating W
 * @param wavelength of the infrared, m: 808 nm of the pump or 1064 nm of the fundamental
 * @throws {OutOfRange} if a power is negative or the rating not above zero
 * @source news of NIST Technical Note 1668 (2010): read
 */
export function hiddenInfrared(
  greenRating: number,
  wavelength: number,
  known: InfraredKnown,
): HiddenInfrared {
  mustBePositive(greenRating, 'greenRating', 'a rated power');
  const power = infraredPower(greenRating, known);
  const class1 = class1Figure('eu2006', wavelength);
  return {
    power,
    wavelength,
    timesClass1: power / class1.power,
    set: class1.set,
    exposureTime: class1.timeBase,
    basis: [leakingPointer, ...(known.kind === 'not known' ? [twiceGreen] : []), ...class1.basis],
  };
}

function infraredPower(greenRating: number, known: InfraredKnown): number {
  switch (known.kind) {
    case 'measured':
      mustBePower(known.power);
      return known.power;
    case 'blocked by a filter':
      return 0;
    case 'not known':
      return 2 * greenRating;
  }
}
