/** A step followed by the readings that a page holds, however often they are looked at and whatever becomes of the station's clock. */
import type { Reading } from '../instrument/reading.ts';
import { isSetBack } from '../instrument/reading-window.ts';
import { heardInTurn, newTurn, type Turn, type TurnContext } from './live-turn.ts';

/** A step that is followed. */
export interface FollowedTurn {
  /** Of the step: another one begins another turn. */
  readonly key: string;
  readonly turn: Turn;
  /** The newest reading that was looked at, heard or passed over; null: there was none yet. */
  readonly last: Reading | null;
  /** The station's clock was set back since the step was asked: all that comes counts, whatever its time. */
  readonly wasSet: boolean;
}

/** Nothing looked at yet. */
export const notFollowed: FollowedTurn = { key: '', turn: newTurn, last: null, wasSet: false };

/** The step that is asked, and since when, ms by the station's clock. */
interface AskedSince {
  readonly key: string;
  readonly since: number;
  readonly context: TurnContext;
}

/**
 * With what is held now; the same object if nothing has come. What came before the step was asked is passed over.
 *
 * @param readings in the order in which they came, their times by the station's clock, which may have been set meanwhile
 */
export function withHeld(
  before: FollowedTurn,
  { key, since, context }: AskedSince,
  readings: readonly Reading[],
): FollowedTurn {
  const isNew = before.key !== key;
  const last = readings.at(-1) ?? before.last;
  if (!isNew && last === before.last) return before;
  const isFirst = isNew || before.last === null;
  const { news, wasSet } = isFirst
    ? { news: newestAfter(readings, since), wasSet: false }
    : newsAfter(readings, before, before.last, since);
  const turn = news.reduce(
    (heard, reading) => heardInTurn(heard, context, reading),
    isNew ? newTurn : before.turn,
  );
  return { key, turn, last, wasSet };
}

/** The newest of them, back to the first that is no later than this. */
function newestAfter(readings: readonly Reading[], moment: number): readonly Reading[] {
  return readings.slice(readings.findLastIndex(({ t }) => t <= moment) + 1);
}

/** What has come since the last one, which is told by its place among the others rather than by its time. */
function newsAfter(
  readings: readonly Reading[],
  { wasSet }: FollowedTurn,
  last: Reading,
  since: number,
): { readonly news: readonly Reading[]; readonly wasSet: boolean } {
  const at = readings.lastIndexOf(last);
  if (at === -1) {
    // asked for anew, after the station was away: where its clock was set back meanwhile, nobody knows what was missed
    const newest = readings.slice(-1);
    if (newest.some(({ t }) => isSetBack(last.t, t))) return { news: newest, wasSet: true };
    return { news: newestAfter(readings, last.t).filter(({ t }) => wasSet || t > since), wasSet };
  }
  const came = readings.slice(at + 1);
  // what comes after the step was asked and tells an earlier time tells that the clock was set back
  const first = wasSet
    ? 0
    : came.findIndex(({ t }, i) => isSetBack(since, t) || isSetBack((came[i - 1] ?? last).t, t));
  const isSet = first !== -1;
  return { news: came.filter(({ t }, i) => t > since || (isSet && i >= first)), wasSet: isSet };
}
