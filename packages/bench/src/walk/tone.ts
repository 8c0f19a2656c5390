/** The tone of the best reading so far, Hz. @source our choice: well within what small loudspeakers give */
export const bestTone = 880;

/** From the lowest to the highest tone, Hz. */
const [lowest, highest] = [110, 1760] as const;

/**
 * The tone of a reading, Hz: an octave for each factor of ten in power, so that it is the ear and not the eye that
 * follows the light. Beside the tone of the best so far it beats, the slower the closer.
 *
 * @param light the reading, floor left out
 * @param best the best so far, likewise; null: none yet, and the reading is its own
 */
export function toneOf(light: number, best: number | null): number {
  if (!(light > 0)) return lowest;
  const tone = bestTone * 2 ** Math.log10(light / (best ?? light));
  return Math.min(highest, Math.max(lowest, tone));
}

/** The tone of a reading as it is read, floor and all. @param floor what the meter shows with the beam blocked; null: not known */
export const toneOfReading = (reading: number, best: number | null, floor: number | null): number =>
  toneOf(reading - (floor ?? 0), best === null ? null : best - (floor ?? 0));
