import type { Spot } from '../document/report.ts';
import type { Entry } from '../quantity/quantity.ts';
import type { Fibre } from './launch.ts';

/** What a standard designation says of a fibre, as entries. */
export interface FibreOfType {
  readonly profile: Fibre['profile'];
  readonly material: Fibre['material'];
  readonly coreDiameter: Entry;
  readonly numericalAperture: Entry;
  readonly claddingDiameter: Entry;
  readonly attenuation: Entry | null;
}

/** The designations that may be written. */
export const fibreTypes: readonly string[] = [];

export function fibreOfType(_type: string, _spot: Spot): FibreOfType | null {
  return null;
}
