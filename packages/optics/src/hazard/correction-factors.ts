/*
 * The factors by which the tables of limits vary with wavelength and with the size of the source, in the trade's own
 * symbols. Each comes with what it rests on. At a shared boundary the smaller value is taken: it gives the lower limit.
 */
import { OutOfRange } from '../out-of-range.ts';
import { type ClosedRange, holds, nanometres } from './closed-range.ts';
import type { Basis } from './evidence.ts';
import { countedAngle, mustBeSourceAngle, smallestCountedAngle } from './exposure.ts';
import { directiveTable, icnirp2013, type LimitSet } from './limit-set.ts';

/** A number of a table and where it was found. */
export interface Factor {
  readonly value: number;
  readonly basis: Basis;
}

interface FactorRow {
  /** nm. */
  readonly band: ClosedRange;
  readonly value: (nm: number) => number;
  readonly basis: Basis;
}

const factors = directiveTable('2.5');
const row = (from: number, to: number, value: (nm: number) => number, basis: Basis = factors): FactorRow => ({
  band: { from, to },
  value,
  basis,
});

const rowsOfA = [
  row(400, 700, () => 1),
  row(700, 1050, (nm) => 10 ** (0.002 * (nm - 700))),
  row(1050, 1400, () => 5),
];
const rowsOfB = [row(400, 450, () => 1), row(450, 700, (nm) => 10 ** (0.02 * (nm - 450)))];
const rowsOfC = {
  eu2006: [
    row(400, 1150, () => 1),
    row(1150, 1200, (nm) => 10 ** (0.018 * (nm - 1150))),
    row(1200, 1400, () => 8),
  ],
  icnirp2013: [
    row(400, 1150, () => 1),
    row(1150, 1200, (nm) => 10 ** (0.018 * (nm - 1150))),
    row(1200, 1400, (nm) => 8 + 10 ** (0.04 * (nm - 1250)), icnirp2013),
  ],
} as const;

/**
 * C_A (C4 of IEC 60825-1): how much less near-infrared light the retina's pigment takes.
 *
 * @param wavelength m, 400 to 1400 nm
 * @throws {OutOfRange} outside that band
 * @source Directive 2006/25/EC, Annex II, table 2.5: read; the same in the Norwegian regulations on limit values, table 4.5
 */
export function correctionA(wavelength: number): Factor {
  return smallest(rowsOfA, wavelength, 'C_A, 400 to 1400 nm');
}

/**
 * C_B (C3): how the photochemical hazard falls beyond the blue. Photochemical limits use it to 600 nm only.
 *
 * @param wavelength m, 400 to 700 nm
 * @throws {OutOfRange} outside that band
 * @source Directive 2006/25/EC, Annex II, table 2.5: read
 */
export function correctionB(wavelength: number): Factor {
  return smallest(rowsOfB, wavelength, 'C_B, 400 to 700 nm');
}

/**
 * C_C (C7): how much light the eye takes up before the retina. From 1200 nm on the sets part: 8 against up to 10⁶.
 *
 * @param wavelength m, 400 to 1400 nm; 1 below 1150 nm
 * @throws {OutOfRange} outside that band
 * @source Directive 2006/25/EC, Annex II, table 2.5: read; 1200 to 1400 nm of `icnirp2013`: ICNIRP 2013, from memory
 */
export function correctionC(set: LimitSet, wavelength: number): Factor {
  return smallest(rowsOfC[set], wavelength, 'C_C, 400 to 1400 nm');
}

function smallest(rows: readonly FactorRow[], wavelength: number, covers: string): Factor {
  const nm = nanometres(wavelength);
  const matches = rows
    .filter(({ band }) => holds(band, nm))
    .map(({ value, basis }) => ({ value: value(nm), basis }));
  const [first, ...others] = matches;
  if (first === undefined) {
    throw new OutOfRange({
      where: 'wavelength',
      what: `${nm} nm is outside the range of ${covers}`,
      mend: 'Ask within that band.',
    });
  }
  return others.reduce((least, factor) => (factor.value < least.value ? factor : least), first);
}

/**
 * α_max, rad: the largest angle that still raises a limit.
 *
 * @param exposureTime s
 * @source `eu2006`: Directive 2006/25/EC, Annex II, table 2.5, read; `icnirp2013`: ICNIRP 2013, from memory
 */
export function largestCountedAngle(set: LimitSet, exposureTime: number): Factor {
  switch (set) {
    case 'eu2006':
      return { value: 100e-3, basis: factors };
    case 'icnirp2013':
      // 5 mrad at 625 µs and 100 mrad at 0.25 s: the three rows meet
      return {
        value: Math.min(100e-3, Math.max(5e-3, 200e-3 * Math.sqrt(exposureTime))),
        basis: icnirp2013,
      };
  }
}

/**
 * C_E (C6): by how much a limit rises for a source that is seen under an angle. In the capped form: the Directive writes
 * α²/(α_min·α_max) above 100 mrad for the whole source, which is never stricter.
 *
 * @param sourceAngle full angle, rad; `null`: unknown, which gives 1
 * @param exposureTime s
 * @throws {OutOfRange} if the angle is none
 * @source BGI 832, A 2.2: read; α_max as `largestCountedAngle`
 */
export function correctionE(set: LimitSet, sourceAngle: number | null, exposureTime: number): Factor {
  mustBeSourceAngle(sourceAngle);
  const counted = countedAngle(sourceAngle);
  const largest = largestCountedAngle(set, exposureTime);
  return counted < largest.value
    ? { value: counted / smallestCountedAngle, basis: sourceSize }
    : { value: largest.value / smallestCountedAngle, basis: largest.basis };
}

const sourceSize: Basis = {
  evidence: 'read',
  source: 'BGI 832 (explanations to the German regulation on laser radiation), A 2.2: C6',
};

/**
 * T_1, s: where the photochemical limit overtakes the thermal one, 10 to 100 s.
 *
 * @param wavelength m
 * @source Directive 2006/25/EC, Annex II, table 2.5: read
 */
export function breakpointT1(wavelength: number): Factor {
  const nm = Math.min(500, Math.max(450, nanometres(wavelength)));
  return { value: 10 * 10 ** (0.02 * (nm - 450)), basis: factors };
}

/**
 * T_2, s: from here on the thermal limit of an extended source does not fall any further, 10 to 100 s.
 *
 * @param sourceAngle full angle, rad; `null`: unknown, which gives 10 s
 * @source Directive 2006/25/EC, Annex II, table 2.5: read
 */
export function breakpointT2(sourceAngle: number | null): Factor {
  mustBeSourceAngle(sourceAngle);
  const milliradians = Math.min(100, countedAngle(sourceAngle) * 1e3);
  return { value: 10 * 10 ** ((milliradians - 1.5) / 98.5), basis: factors };
}

/**
 * γ, rad: the full field of view over which a photochemical exposure may be averaged. The limits of this folder do not
 * use it: they count the whole source, which is never milder.
 *
 * @param exposureTime s
 * @source Directive 2006/25/EC, Annex II, table 2.5: read
 */
export function photochemicalFieldOfView(exposureTime: number): Factor {
  return { value: Math.min(110e-3, Math.max(11e-3, 1.1e-3 * Math.sqrt(exposureTime))), basis: factors };
}
