import { OutOfRange } from '../out-of-range.ts';
import { holdsTime, nanometres } from './closed-range.ts';
import type { Tissue } from './limit-set.ts';

/** What meets an eye or a skin: one wavelength, for one time. */
export interface Exposure {
  readonly tissue: Tissue;
  /** Vacuum wavelength, m; 315 nm to 1 mm. */
  readonly wavelength: number;
  /** s; of a pulse: its length. 100 fs to 30 000 s. */
  readonly exposureTime: number;
  /**
   * Full angle under which the source is seen by the eye, rad (α of the standards; not a divergence). `null`: not
   * known, so the smallest, which has the lowest limits. Plays no part for the skin.
   */
  readonly sourceAngle: number | null;
}

/** Equal pulses at equal distances; `exposureTime` is that of the whole train, s. */
export interface PulseTrain extends Exposure {
  /** Of one pulse, s. */
  readonly pulseDuration: number;
  /** Hz. */
  readonly repetitionRate: number;
}

/** 1.5 mrad, α_min: below it a source counts as a point. @source Directive 2006/25/EC, Annex II, table 2.5: read */
export const smallestCountedAngle = 1.5e-3;

/** What the tables cover at all: nm and s. */
const wavelengths = { from: 315, to: 1e6 } as const;
const times = { from: 100e-15, to: 3e4 } as const;

/** @throws {OutOfRange} outside 315 nm to 1 mm, 100 fs to 30 000 s, 0 to π rad */
export function mustBeExposure({ wavelength, exposureTime, sourceAngle }: Exposure): void {
  mustBeCoveredWavelength(wavelength);
  if (!holdsTime(times, exposureTime)) {
    throw new OutOfRange({
      where: 'exposureTime',
      what: `${exposureTime} s is outside what this tool covers, 100 fs to 30 000 s`,
      mend: 'Ask for a time between these, and ask your laser safety officer about any other.',
    });
  }
  mustBeSourceAngle(sourceAngle);
}

/** @throws {OutOfRange} outside 315 nm to 1 mm */
export function mustBeCoveredWavelength(wavelength: number): void {
  const nm = nanometres(wavelength);
  if (!(nm >= wavelengths.from && nm <= wavelengths.to)) {
    throw new OutOfRange({
      where: 'wavelength',
      what: `${Number.isFinite(nm) ? `${nm} nm` : `${wavelength} m`} is outside what this tool covers, 315 nm to 1 mm`,
      mend: 'Ask for a wavelength between these, and ask your laser safety officer about any other.',
    });
  }
}

/** @throws {OutOfRange} unless it is unknown or an angle between 0 and π rad */
export function mustBeSourceAngle(sourceAngle: number | null): void {
  if (sourceAngle === null || (sourceAngle >= 0 && sourceAngle <= Math.PI)) return;
  throw new OutOfRange({
    where: 'sourceAngle',
    what: `${sourceAngle} rad is no angle under which a source is seen`,
    mend: 'Give the full angle, 0 to π rad, or leave it out: then the smallest source is assumed.',
  });
}

/** The angle a limit is computed for, rad: an unknown or tiny source counts as 1.5 mrad. */
export function countedAngle(sourceAngle: number | null): number {
  return sourceAngle === null ? smallestCountedAngle : Math.max(sourceAngle, smallestCountedAngle);
}
