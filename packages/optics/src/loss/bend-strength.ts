import { mustBePositive } from '../out-of-range.ts';
import type { Provenance } from './evidence.ts';

/*
 * What a bend does to the glass, whatever the light says. The coating does not count: use the cladding's diameter.
 */

/** A property of silica fibre with where it comes from. Pa, or a plain ratio. */
export interface StrengthFigure extends Provenance {
  readonly value: number;
}

/** Pa. */
export const youngsModulus: StrengthFigure = {
  value: 72e9,
  source: 'Young’s modulus of silica',
  evidence: 'from memory',
};

/** Pa: every metre of fibre has borne this once, for a moment. */
export const proofStress: StrengthFigure = {
  value: 0.69e9,
  source: 'ITU-T G.657, Table 1',
  evidence: 'secondary',
};

/** The part of the proof stress a fibre may bear for years: a fifth if careful, a third at most. */
export const longLifeShare: { readonly careful: StrengthFigure; readonly most: StrengthFigure } = {
  careful: { value: 1 / 5, source: 'common practice, no source', evidence: 'common practice' },
  most: { value: 1 / 3, source: 'common practice, no source', evidence: 'common practice' },
};

/**
 * Strain of the glass at the outside of a bend: its radius over that of the bend.
 *
 * @param claddingDiameter m
 * @param bendRadius to the fibre's axis, m
 * @throws {OutOfRange} if one of them is not above zero
 * @source beam theory
 */
export function surfaceStrain(claddingDiameter: number, bendRadius: number): number {
  mustBePositive(claddingDiameter, 'claddingDiameter', 'a cladding diameter');
  mustBePositive(bendRadius, 'bendRadius', 'a bend radius');
  return claddingDiameter / 2 / bendRadius;
}

/** Stress that goes with a strain, Pa. Linear: silica stiffens a little above 1 %. @source Hooke's law, `youngsModulus` */
export function stressOfStrain(strain: number): number {
  return strain * youngsModulus.value;
}

/** Strain of the proof test, about 1 %. @source `proofStress` over `youngsModulus` */
export function proofStrain(): number {
  return proofStress.value / youngsModulus.value;
}

/**
 * Bend radius (m) at which the surface bears a share of the proof stress. With share 1 nothing lasts: never plan it.
 *
 * @param share of `proofStress`, above 0; see `longLifeShare`
 * @throws {OutOfRange} if an argument is not above zero
 * @source beam theory, `proofStrain`
 */
export function radiusAtProofShare(claddingDiameter: number, share: number): number {
  mustBePositive(claddingDiameter, 'claddingDiameter', 'a cladding diameter');
  mustBePositive(share, 'share', 'a share of the proof stress');
  return claddingDiameter / 2 / (share * proofStrain());
}

/** Smallest bend radii of a cable in the hand, m. */
export interface HandlingRadii extends Provenance {
  readonly underTension: number;
  readonly atRest: number;
}

/**
 * Bend radii for handling a cable: 20 diameters while it is pulled, 10 once it lies. Standards for small indoor cable
 * differ.
 *
 * @param outerDiameter of the cable, jacket included, m
 * @throws {OutOfRange} if it is not above zero
 * @source trade association, installers' guideline (read)
 */
export function handlingRadii(outerDiameter: number): HandlingRadii {
  mustBePositive(outerDiameter, 'outerDiameter', 'a cable diameter');
  return {
    underTension: 20 * outerDiameter,
    atRest: 10 * outerDiameter,
    source: 'trade association, installers’ guideline',
    evidence: 'read',
  };
}
