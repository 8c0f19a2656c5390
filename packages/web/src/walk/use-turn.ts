import { heardInTurn, newTurn, type Turn, type TurnContext, type TurnNow, turnNow } from '@coreward/bench';
import { useState } from 'react';
import type { ReadingsHeld } from '../instrument/use-readings.ts';

/** So far back readings are asked for when a page comes to a step that others are at, ms. */
export const turnReach = 600_000;

interface Followed {
  readonly key: string;
  readonly turn: Turn;
  /** What is older, or as old, was heard already. ms. */
  readonly until: number;
}

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
  const [followed, setFollowed] = useState<Followed>({ key, turn: newTurn, until: since });
  const now = followed.key === key ? followed : { key, turn: newTurn, until: since };
  if (context === null || held.instrument === null) return null;
  const news = held.readings.filter(({ t }) => t > now.until);
  const turn = news.reduce((before, reading) => heardInTurn(before, context, reading), now.turn);
  // what is drawn already counts for the next drawing, too
  if (now !== followed || news.length > 0) setFollowed({ key, turn, until: news.at(-1)?.t ?? now.until });
  return turnNow(turn, context, !held.live || held.instrument.state !== 'reading');
}
