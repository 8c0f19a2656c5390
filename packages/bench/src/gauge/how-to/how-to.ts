import { beamHowTos } from './beam-how-tos.ts';
import { fibreHowTos } from './fibre-how-tos.ts';

/** How one goes about a gauge. */
export interface HowTo {
  /** The gauge's name. */
  readonly gauge: string;
  readonly steps: readonly string[];
  /** What can hurt somebody or spoil a part, and what to do about it. */
  readonly cautions: readonly string[];
  /** A table that is read as it stands, of our own invention; null for a picture. */
  readonly example: string | null;
}

/** One for each gauge, in the order of the table of gauges. */
export const howTos: readonly HowTo[] = [...beamHowTos, ...fibreHowTos];

/** @param gauge a gauge's name */
export function howToFor(gauge: string): HowTo | null {
  return howTos.find((one) => one.gauge === gauge) ?? null;
}
