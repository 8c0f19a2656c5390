import { beamHowTos } from './beam-how-tos.ts';
import { fibreHowTos } from './fibre-how-tos.ts';
import type { HowTo } from './how-to.ts';

/** One for each gauge, in the order of the table of gauges. */
export const howTos: readonly HowTo[] = [...beamHowTos, ...fibreHowTos];

/** @param gauge a gauge's name */
export function howToFor(gauge: string): HowTo | null {
  return howTos.find((one) => one.gauge === gauge) ?? null;
}
