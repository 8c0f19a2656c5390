import type { Gauge } from '../gauge.ts';
import { type Sheet, sheetOf } from '../sheet.ts';
import { beamHowTos } from './beam-how-tos.ts';
import { fibreHowTos } from './fibre-how-tos.ts';
import type { HowTo } from './how-to.ts';

/** One for each gauge, in the order of the table of gauges. */
export const howTos: readonly HowTo[] = [...beamHowTos, ...fibreHowTos];

/** @param gauge a gauge's name */
export function howToFor(gauge: string): HowTo | null {
  return howTos.find((one) => one.gauge === gauge) ?? null;
}

/** Whether these are the readings of our own example, which nobody has measured. */
export function isExample(gauge: Gauge, { text, settings }: Sheet): boolean {
  const example = howToFor(gauge.name)?.example ?? null;
  if (example === null) return false;
  const ours = sheetOf(gauge, example);
  if (text.trim() !== ours.text.trim()) return false;
  // without a table the settings are the readings
  return text.trim() !== '' || Object.entries(ours.settings).every(([name, one]) => settings[name] === one);
}
