/** The cases of safety-*.json and facet.json as the tests of hazard/ read them. */
import type { IrradianceLimit } from '../src/hazard/exposure-limit.ts';
import type { Judged } from '../src/hazard/hazard-distance.ts';
import facet from './facet.json' with { type: 'json' };
import { type Cell, type LossRow, misses } from './loss-rows.ts';
import ael from './safety-ael.json' with { type: 'json' };
import alignment from './safety-alignment.json' with { type: 'json' };
import apertures from './safety-apertures.json' with { type: 'json' };
import diffuse from './safety-diffuse.json' with { type: 'json' };
import eyewear from './safety-eyewear.json' with { type: 'json' };
import factors from './safety-factors.json' with { type: 'json' };
import fibreEnd from './safety-fibre-end.json' with { type: 'json' };
import hazardDistance from './safety-hazard-distance.json' with { type: 'json' };
import mpeEye from './safety-mpe-eye.json' with { type: 'json' };
import mpeSkin from './safety-mpe-skin.json' with { type: 'json' };
import pulses from './safety-pulses.json' with { type: 'json' };

interface StoredCase {
  readonly id: string;
  readonly topic: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, Cell>>;
  readonly tolerance: LossRow['tolerance'];
  readonly source: { readonly cite: string; readonly verified: string | boolean };
}

export interface HazardCase extends StoredCase {
  /** R: number or formula read in the source; M: from memory; G: mathematics. */
  readonly mark: 'R' | 'M' | 'G';
  /** For the test's title: the case, its mark, and who says so. */
  readonly title: string;
}

const files = [
  ael,
  alignment,
  apertures,
  diffuse,
  eyewear,
  factors,
  fibreEnd,
  hazardDistance,
  mpeEye,
  mpeSkin,
  pulses,
  facet,
];

export const hazardCases: readonly HazardCase[] = files
  .flatMap(({ cases }) => cases as unknown as readonly StoredCase[])
  .map((one) => {
    const mark = markOf(one.source.verified);
    return { ...one, mark, title: `${one.id} [${mark}] ${one.source.cite}` };
  });

function markOf(verified: string | boolean): HazardCase['mark'] {
  switch (verified) {
    case 'looked-up-number':
    case 'looked-up-formula':
    case true:
      return 'R';
    case 'derivation':
      return 'G';
    case 'memory':
    case false:
      return 'M';
    default:
      throw new Error(`no mark for ${verified}`);
  }
}

export function hazardCase(id: string): HazardCase {
  const found = hazardCases.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no case ${id}`);
  return found;
}

/** One input of a case, which must be a number. */
export function numberIn({ id, inputs }: HazardCase, name: string): number {
  const value = inputs[name];
  if (typeof value !== 'number') throw new Error(`${id} has no number ${name}`);
  return value;
}

/** What disagrees with a case, in words. */
export function departures(one: HazardCase, actual: Readonly<Record<string, Cell>>): readonly string[] {
  return misses(one, actual);
}

/** Power and limit of a case, for the formulas of distances. */
export const judged = (one: HazardCase): Judged => ({
  power: numberIn(one, 'power_W'),
  limit: statedLimit(numberIn(one, 'mpe_W_m2')),
});

/** A limit as a source states it, W/m², over 7 mm: for cases that give the number and not how it came about. */
export function statedLimit(irradiance: number, changes: Partial<IrradianceLimit> = {}): IrradianceLimit {
  return {
    set: 'icnirp2013',
    tissue: 'eye',
    wavelength: 532e-9,
    exposureTime: 10,
    sourceAngle: 1.5e-3,
    harm: 'heat on the retina',
    averagingDiameter: 7e-3,
    formula: 'as stated',
    basis: [],
    irradiance,
    ...changes,
  };
}
