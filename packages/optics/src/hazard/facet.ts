/** What a fibre's end face has to stand. Tripwires for a caution about dirt and aim, never a verdict. */
import type { Provenance } from '../loss/evidence.ts';
import { mustBePositive } from '../out-of-range.ts';
import { type BeamDefinition, mustBePower } from './beam-definition.ts';

/** Both are reported: limits in the literature mix them. W/m². */
export interface FacetIrradiance {
  /** On the axis. */
  readonly peakIrradiance: number;
  /** Power over the area of the spot. */
  readonly meanIrradiance: number;
  readonly beamDefinition: BeamDefinition | 'share of the core';
}

/**
 * A Gaussian spot on a facet: peak 2P/(πw²), mean over the mode P/(πw²).
 *
 * @param power W
 * @param modeFieldDiameter1e2 1/e² diameter of intensity, m
 * @throws {OutOfRange} if the power is negative or the diameter not above zero
 * @source integral of a Gaussian
 */
export function facetIrradianceFrom1e2(power: number, modeFieldDiameter1e2: number): FacetIrradiance {
  mustBePower(power);
  mustBePositive(modeFieldDiameter1e2, 'modeFieldDiameter1e2', 'a mode-field diameter');
  const meanIrradiance = power / (Math.PI * (modeFieldDiameter1e2 / 2) ** 2);
  return { peakIrradiance: 2 * meanIrradiance, meanIrradiance, beamDefinition: '1/e²' };
}

/** Share of the core's diameter that a careful multimode launch fills. @source common practice, no source */
export const multimodeFillFraction = 0.8;

/**
 * An even spot over 80 % of a multimode core's diameter.
 *
 * @param coreDiameter m
 * @throws {OutOfRange} if the power is negative or the diameter not above zero
 * @source common practice, no source
 */
export function multimodeFacetIrradiance(power: number, coreDiameter: number): FacetIrradiance {
  mustBePower(power);
  mustBePositive(coreDiameter, 'coreDiameter', 'a core diameter');
  const irradiance = power / (Math.PI * ((multimodeFillFraction * coreDiameter) / 2) ** 2);
  return { peakIrradiance: irradiance, meanIrradiance: irradiance, beamDefinition: 'share of the core' };
}

/** Irradiances of continuous light on a bare, clean facet of silica, W/m². Well-kept facets carry many times as much. */
export const facetTripwires = {
  practicalCaution: 2.5e9,
  quotedLimit: 1e10,
  source: 'common practice, no independent source found: 0.25 and 1 MW/cm²',
  evidence: 'common practice',
} as const satisfies Provenance & Readonly<Record<'practicalCaution' | 'quotedLimit', number>>;

/** How the spot on a facet compares with what careful practice puts there. */
export type FacetLevel = 'below the tripwire' | 'above careful practice' | 'above the quoted limit';

/** Where a spot stands against the tripwires, by its peak. @source common practice, no source */
export function facetLevel({ peakIrradiance }: FacetIrradiance): FacetLevel {
  if (peakIrradiance > facetTripwires.quotedLimit) return 'above the quoted limit';
  return peakIrradiance > facetTripwires.practicalCaution ? 'above careful practice' : 'below the tripwire';
}

/** What was published about facets and damage. Data for people: none of it is a working value. */
export interface FacetFinding extends Provenance {
  readonly finding: string;
  /** In the unit the name says; two where it is a range. */
  readonly values: readonly [number] | readonly [number, number];
  readonly unit: 'W/m²' | 'J/m²' | 'W' | 'm/s';
}

/** Published findings about facets, each with its source and whether that was opened. */
export const facetFindings = {
  cleanConnector: {
    finding: '1550 nm through mated, clean, angled single-mode pairs: no damage while clean',
    values: [0.16],
    unit: 'W',
    source: 'NFOEC 2006, paper NTuA5 (abstract)',
    evidence: 'read',
  },
  bulkSilicaPulsed: {
    finding: 'damage of bulk fused silica, 7.5 ns at 1064 nm, ± 7 %',
    values: [4.75e15],
    unit: 'W/m²',
    source: 'A. V. Smith and B. T. Do, Appl. Opt. 47, 4812 (2008), as summarised in the trade press',
    evidence: 'secondary',
  },
  preformPulsed: {
    finding: 'damage of polished fibre preforms, 15 ns at 1064 nm and 10 Hz; falls with shots and polish',
    values: [1.5e6, 3.5e6],
    unit: 'J/m²',
    source: 'Applied Surface Science 254 (2007), abstract',
    evidence: 'read',
  },
  fuseStart: {
    finding: 'order of the power at which a fibre fuse starts, single mode near 1.5 µm',
    values: [1, 5],
    unit: 'W',
    source: 'S. Todoroki, Fiber fuse behavior veiled in its strong light emission (NIMS)',
    evidence: 'read',
  },
  fuseSpeed: {
    finding: 'speed of a fibre fuse towards the source',
    values: [1],
    unit: 'm/s',
    source: 'S. Todoroki, Fiber fuse behavior veiled in its strong light emission (NIMS)',
    evidence: 'read',
  },
} as const satisfies Readonly<Record<string, FacetFinding>>;
