import type { Collimator, Fibre, Laser, PathElement, ReferenceSource } from '../launch/launch.ts';
import type { Entry } from '../quantity/quantity.ts';

/** A part with the name its owner calls it by; unique within its list. */
export type Named<Part> = Omit<Part, 'name'> & { readonly name: string };

/** A mirror, as it stands in a path. */
export type Mirror = Extract<PathElement, { kind: 'mirror' }>;

/** What light can be measured with, as users write it. */
export const detectorKinds = [
  'photodiode',
  'solar cell',
  'calorimeter',
  'camera',
  'power meter',
  'other',
] as const;

/** What light can be measured with, and what is known of its response. */
export interface Detector {
  readonly name: string;
  readonly kind: (typeof detectorKinds)[number];
  /** A/W at `at`; null where it makes no sense or nobody knows. */
  readonly responsivity: Entry | null;
  readonly at: Entry | null;
  /** Ω, over which its voltage is read; null where there is none. */
  readonly load: Entry | null;
  /** The instrument that reads it, by name. */
  readonly readBy: string | null;
}

/** The parts one owns. */
export interface Drawer {
  readonly name: string;
  readonly lasers: readonly Named<Laser>[];
  readonly collimators: readonly Named<Collimator>[];
  readonly fibres: readonly Named<Fibre>[];
  readonly mirrors: readonly Mirror[];
  readonly detectors: readonly Detector[];
  readonly references: readonly Named<ReferenceSource>[];
  /** The way from any laser to any collimator that a match assumes. */
  readonly path: readonly PathElement[];
}
