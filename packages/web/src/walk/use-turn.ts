import { notFollowed, type TurnContext, type TurnNow, turnNow, withHeld } from '@coreward/bench';
import { useState } from 'react';
import type { ReadingsHeld } from '../instrument/use-readings.ts';

/** So far back readings are asked for when a page comes to a step that others are at, ms. */
export const turnReach = 600_000;

/**
 * Follows the step that is asked by the readings since then: every page hears the same, and stands at the same.
 *
 * @param key another one is another step
 * @param since when the step was asked, ms, by the station's clock
 * @returns null while no instrument reads, or nothing is asked
 */
export function useTurn(
  key: string,
  since: number,
  context: TurnContext | null,
  held: ReadingsHeld,
): TurnNow | null {
  const [followed, setFollowed] = useState(notFollowed);
  if (context === null || held.instrument === null) return null;
  const now = withHeld(followed, { key, since, context }, held.readings);
  // what is drawn already counts for the next drawing, too
  if (now !== followed) setFollowed(now);
  return turnNow(now.turn, context, !held.live || held.instrument.state !== 'reading');
}
