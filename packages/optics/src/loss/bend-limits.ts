import { nepersFromDecibel } from './decibel.ts';
import type { Provenance } from './evidence.ts';

/*
 * What the ITU-T designations promise of a bent fibre: ceilings, not predictions. Radius, not diameter.
 */

/** Designations for which a standard limits the loss in bends. */
export type BendDesignation = 'G.652.D' | 'G.657.A1' | 'G.657.A2' | 'G.657.B2' | 'G.657.B3';

/** So many turns of this radius (m) lose at most this much: nepers of power, all turns together. */
export interface BendLimit extends Provenance {
  readonly designation: BendDesignation;
  readonly radius: number;
  readonly turns: number;
  /** Vacuum wavelength, m. */
  readonly wavelength: number;
  readonly ceiling: number;
}

const a1a2 = { source: 'ITU-T G.657 (10/2012 or later), Table 1 (A1/A2)', evidence: 'secondary' } as const;
const b3 = { source: 'ITU-T G.657 (2012/2016), Table 2, category B3', evidence: 'from memory' } as const;

/** One printed line: dB at 1550 and 1625 nm. */
const limits = (
  designation: BendDesignation,
  radius: number,
  turns: number,
  [at1550, at1625]: readonly [number, number],
  provenance: Provenance,
): readonly BendLimit[] => [
  { designation, radius, turns, wavelength: 1550e-9, ceiling: nepersFromDecibel(at1550), ...provenance },
  { designation, radius, turns, wavelength: 1625e-9, ceiling: nepersFromDecibel(at1625), ...provenance },
];

/** What standards allow a few turns around a mandrel to lose, at most. */
export const bendLimits: readonly BendLimit[] = [
  {
    designation: 'G.652.D',
    radius: 30e-3,
    turns: 100,
    wavelength: 1625e-9,
    ceiling: nepersFromDecibel(0.1),
    source: 'ITU-T G.652 (11/2016), Table 2 (G.652.D)',
    evidence: 'secondary',
  },
  ...limits('G.657.A1', 15e-3, 10, [0.25, 1], a1a2),
  ...limits('G.657.A1', 10e-3, 1, [0.75, 1.5], a1a2),
  ...limits('G.657.A2', 15e-3, 10, [0.03, 0.1], a1a2),
  ...limits('G.657.A2', 10e-3, 1, [0.1, 0.2], a1a2),
  ...limits('G.657.A2', 7.5e-3, 1, [0.5, 1], a1a2),
  ...limits('G.657.B3', 10e-3, 1, [0.03, 0.1], b3),
  ...limits('G.657.B3', 7.5e-3, 1, [0.08, 0.25], b3),
  ...limits('G.657.B3', 5e-3, 1, [0.15, 0.45], b3),
];

/** The tightest radius, m, at which a designation still promises anything. Optical: strength is another matter. */
export interface SmallestBendRadius extends Provenance {
  readonly designation: BendDesignation;
  readonly radius: number;
}

const summary = {
  source: 'ITU-T G.652 and G.657, as summarised in a telecommunications encyclopaedia',
  evidence: 'secondary',
} as const;

/** The smallest radius each designation is made for, m. */
export const smallestBendRadii: readonly SmallestBendRadius[] = [
  { designation: 'G.652.D', radius: 30e-3, ...summary },
  { designation: 'G.657.A1', radius: 10e-3, ...summary },
  { designation: 'G.657.A2', radius: 7.5e-3, ...summary },
  { designation: 'G.657.B2', radius: 7.5e-3, ...summary },
  { designation: 'G.657.B3', radius: 5e-3, ...summary },
];

/** The row of `smallestBendRadii` for a designation. @source the row's own */
export function smallestBendRadius(designation: BendDesignation): SmallestBendRadius {
  return smallestBendRadii.find((row) => row.designation === designation)!;
}
