/** Light scattered by a matt surface into an eye. Glossy surfaces have a mirror part: treat that as a beam. */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { mustBePower } from './beam-definition.ts';
import type { Basis } from './evidence.ts';
import { distanceIn, type HazardDistance, type Judged } from './hazard-distance.ts';

/** A matt spot and the direction it is seen from. */
export interface DiffuseSpot {
  /** W, on the surface. */
  readonly power: number;
  /** Fraction that is scattered, 0 to 1; `null`: not known, so 1. */
  readonly reflectance: number | null;
  /** Between the surface's normal and the eye, rad, 0 to π/2; `null`: not known, so 0. */
  readonly viewingAngle: number | null;
}

const lambert: Basis = {
  evidence: 'read',
  source: 'a laser course’s module: E = ρP·cos θ/(π r²), a Lambert surface',
};

/** Glossy paper, anodising, tape, blackened metal, a cleaved or polished ferrule: at least this much goes on as a beam. */
export const leastMirrorPart: { readonly value: number; readonly basis: Basis } = {
  value: 0.04,
  basis: { evidence: 'proposal', source: 'our proposal: what one face of glass reflects' },
};
/** What glass reflects, a face and a plate. */
export const glassReflection: {
  readonly face: number;
  readonly plate: number;
  readonly basis: Basis;
} = {
  face: 0.04,
  plate: 0.08,
  basis: { evidence: 'read', source: 'AUVA teaching page on lasers: reflection from glass' },
};

/** Where diffuse light is looked at, m: the closest, and across a bench. @source 0.1 m: BGV B2, read; 0.3 m: our proposal */
export const diffuseViewingDistances = [0.1, 0.3] as const;

/**
 * Irradiance at the eye, W/m²: ρP·cos θ/(π r²).
 *
 * @param distance from the spot, m
 * @throws {OutOfRange} if a value leaves its range
 * @source a laser course's module, as quoted: read
 */
export function diffuseIrradiance(spot: DiffuseSpot, distance: number): number {
  mustBePositive(distance, 'distance', 'a distance');
  return scattered(spot) / (Math.PI * distance ** 2);
}

/**
 * Up to where a matt spot is above the limit: r = √(ρP·cos θ/(π·limit)), from the spot.
 *
 * @throws {OutOfRange} if a value leaves its range
 * @source a laser course's module, as quoted: read
 */
export function diffuseDistance(spot: DiffuseSpot, limit: Judged['limit']): HazardDistance {
  return distanceIn(
    { power: scattered(spot), limit },
    {
      from: 'the spot',
      beamDefinition: 'none: a diffuse surface',
      isPoint: false,
      form: 'peak irradiance',
      basis: [lambert],
      // √(4P/(π·limit)) is twice √(P/(π·limit))
      distanceAt: (diameter) => diameter / 2,
    },
  );
}

/** The power that counts: ρP·cos θ, W. */
function scattered({ power, reflectance, viewingAngle }: DiffuseSpot): number {
  mustBePower(power);
  const fraction = reflectance ?? 1;
  const angle = viewingAngle ?? 0;
  if (!(fraction >= 0 && fraction <= 1)) {
    throw new OutOfRange({
      where: 'reflectance',
      what: `${fraction} is no fraction`,
      mend: 'Give 0 to 1, or null if it is not known.',
    });
  }
  if (!(angle >= 0 && angle <= Math.PI / 2)) {
    throw new OutOfRange({
      where: 'viewingAngle',
      what: `${angle} rad is not seen from in front`,
      mend: 'Give 0 to π/2 rad, or null if it is not known.',
    });
  }
  return fraction * power * Math.cos(angle);
}
