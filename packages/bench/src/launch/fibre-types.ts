import { type StandardFibre, standardFibres } from '@coreward/optics';
import { type Spot, under } from '../document/report.ts';
import type { Entry } from '../quantity/quantity.ts';
import type { Fibre } from './launch.ts';

/** The designations that may be written. */
export const fibreTypes: readonly string[] = standardFibres.map(({ designation }) => designation);

/**
 * What a designation says of a fibre, as entries. Its attenuation is not among them: it is a ceiling at the wavelengths
 * of telecommunication and says nothing about a launch's own.
 */
export interface FibreOfType {
  readonly profile: Fibre['profile'];
  readonly material: Fibre['material'];
  readonly coreDiameter: Entry;
  readonly numericalAperture: Entry;
  readonly claddingDiameter: Entry;
}

/** `null` for a designation that is not among `fibreTypes`. */
export function fibreOfType(type: string, spot: Spot): FibreOfType | null {
  const standard = standardFibres.find(({ designation }) => designation === type);
  if (standard === undefined) return null;
  const note = `${type}: ${standard.source} (${standard.evidence})`;
  const entry = (step: string, limits: StandardFibre['coreDiameter']): Entry => ({
    key: under(spot, step).key,
    // the middle, so that the hard limits are the standard's own
    value: (limits.least + limits.most) / 2,
    uncertainty: (limits.most - limits.least) / 2 / Math.sqrt(3),
    shape: 'rectangular',
    origin: 'assumed',
    defaulted: 'value',
    note,
  });
  return {
    profile: standard.profile,
    material: standard.material,
    coreDiameter: entry('core diameter', standard.coreDiameter),
    numericalAperture: entry('numerical aperture', standard.numericalAperture),
    claddingDiameter: entry('cladding diameter', standard.claddingDiameter),
  };
}
