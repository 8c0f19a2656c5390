import type { PartNames } from '../drawer/assemble-launch.ts';
import type { Launch } from '../launch/launch.ts';

/** What a match is for: the most guided light, or the most power in LP01, other modes or not. */
export const matchPurposes = ['total', 'lp01'] as const;
export type MatchPurpose = (typeof matchPurposes)[number];

/** A value at the stated quantities, and about where 90 % of its doubt lies. */
export interface MatchedInterval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** How a plug and a barrel get on. */
export type PlugInBarrel = 'fits' | 'needs an adapter' | 'must not meet' | 'unknown';

/** One laser, one collimator (or none) and one fibre, refocused, and walked by hand. */
export interface MatchedPair extends PartNames {
  /** What the ranking goes by: fraction of the laser's power that leaves the far end, all guided or in LP01. */
  readonly score: MatchedInterval;
  /** The same in W. */
  readonly power: MatchedInterval;
  /** Overlap at the facet, in all guided modes and in LP01; fractions of what arrives there, after the hand. */
  readonly guided: number;
  readonly fundamental: number;
  readonly vNumber: number;
  readonly reason: MatchReason;
  readonly connector: PlugInBarrel;
  /** In words, where the plug needs attention. */
  readonly connectorNote: string | null;
}

/** The one thing that keeps this pair from being better: its largest loss or, behind the best, what differs most from it. */
export interface MatchReason {
  readonly id:
    | 'spot-too-small'
    | 'spot-too-large'
    | 'beam-quality'
    | 'ellipticity'
    | 'aberration'
    | 'focus'
    | 'aim'
    | 'clipped'
    | 'surfaces'
    | 'path'
    | 'attenuation'
    | 'bends'
    | 'joints'
    | 'mode-shape'
    | 'end-facets'
    /** None of which is worth a word. */
    | 'small-losses';
  /** What it costs, as a transmission. */
  readonly transmission: number;
  /** That over what the best pair of the same laser has of it; `null` for the best itself. */
  readonly againstBest: number | null;
  /** 1/e² diameter of the spot's waist, and the one that would suit, m. */
  readonly spotDiameter: number;
  readonly suitedDiameter: number;
  /** m. */
  readonly fibreLength: number;
}

/** A drawer's pairs, ranked. */
export interface Match {
  readonly purpose: MatchPurpose;
  /** From any laser to any collimator; empty: the drawer tells none. */
  readonly path: Launch['path'];
  /** Best first. */
  readonly pairs: readonly MatchedPair[];
  /** Combinations that no formula covers, with the reason: an unknown glass range, a wavelength without attenuation. */
  readonly leftOut: readonly LeftOut[];
}

/** A pair that was not ranked, and why. */
export interface LeftOut extends PartNames {
  readonly why: string;
}

/** How far a match has come. */
export interface MatchProgress {
  readonly done: number;
  readonly total: number;
  /** The best pair so far. */
  readonly best: MatchedPair | null;
}
