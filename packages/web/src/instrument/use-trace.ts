import { bucketsOfReadings, endOf, type TimeStretch, type TraceBucket } from '@coreward/bench';
import { routes } from '@coreward/contract';
import { useEffect, useMemo, useState } from 'react';
import { ask } from '../keeping/client.ts';
import { useKeeping } from '../keeping/use-keeping.ts';
import { latest } from './recent-readings.ts';
import type { ReadingsHeld } from './use-readings.ts';

/** Which readings a trace shows: a stretch of time, or what has come last; `length` null: all of it. */
export type TraceView =
  | { readonly kind: 'stretch'; readonly stretch: TimeStretch }
  | { readonly kind: 'latest'; readonly length: number | null };

/** A hand that drags is waited for so long, ms, before the station is asked. */
const settles = 60;
/** What grows at its end is asked for so often, ms. */
const growsEvery = 2_000;

/** What is shown of a view. */
export interface Trace {
  /** What the view asks for. */
  readonly stretch: TimeStretch;
  /** What is there: until an answer comes, that of the view before. */
  readonly buckets: readonly TraceBucket[];
  /** The stretch that `buckets` tell of. */
  readonly told: TimeStretch;
  /** From the first reading there is to the last. */
  readonly most: TimeStretch;
  readonly failed: boolean;
}

interface Answer {
  readonly instrument: string;
  readonly told: TimeStretch;
  readonly buckets: readonly TraceBucket[];
}

/**
 * The readings of a view, in as many buckets as there is room for. The last minute is drawn from what is heard live, all else is
 * asked for; until an answer comes, what was there stays.
 *
 * @param live what `useReadings` holds of this instrument
 * @returns null while nothing is known
 */
export function useTrace(id: string, view: TraceView, live: ReadingsHeld, buckets: number): Trace | null {
  const { world } = useKeeping();
  const [answer, setAnswer] = useState<Answer | null>(null);
  const [begun, setBegun] = useState<{ readonly instrument: string; readonly first: number } | null>(null);
  const [failed, setFailed] = useState(false);
  const [turn, setTurn] = useState(0);
  const { readings } = live;
  const last = readings.at(-1)?.t ?? null;
  const heldSince = readings[0]?.t ?? null;
  const first = begun?.instrument === id ? begun.first : heldSince;

  const most = useMemo((): TimeStretch => ({ from: first ?? 0, to: (last ?? 0) + 1 }), [first, last]);
  const stretch = view.kind === 'stretch' ? view.stretch : endOf(most, view.length ?? most.to - most.from);
  const isHeld = view.kind === 'latest' && view.length !== null && view.length <= heldLength;
  const isLatest = view.kind === 'latest';
  const length = view.kind === 'latest' ? view.length : null;
  const from = view.kind === 'stretch' ? view.stretch.from : null;
  const to = view.kind === 'stretch' ? view.stretch.to : null;
  const lastAsked = isLatest ? last : null;
  const isKnown = last !== null;

  // where all readings begin is asked for once
  useEffect(() => {
    if (!isKnown) return;
    let left = false;
    ask(world, routes.readings, { id }, null, { buckets: '1' }).then(
      ({ from: start }) => {
        if (!left) setBegun({ instrument: id, first: start });
      },
      () => {},
    );
    return () => {
      left = true;
    };
  }, [world, id, isKnown]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew with each turn, and not with each reading
  useEffect(() => {
    if (isHeld || !isKnown || buckets === 0) return;
    let left = false;
    let cancelNext = (): void => {};
    const since = length !== null && lastAsked !== null && lastAsked > length ? lastAsked - length : null;
    const query = {
      ...(from === null ? (since === null ? {} : { from: since.toFixed(0) }) : { from: from.toFixed(0) }),
      ...(to === null ? {} : { to: to.toFixed(0) }),
      buckets: `${buckets}`,
    };
    const cancel = world.after(turn === 0 ? settles : 0, () => {
      ask(world, routes.readings, { id }, null, query).then(
        (found) => {
          if (left) return;
          setFailed(false);
          setAnswer({ instrument: id, told: { from: found.from, to: found.to }, buckets: found.buckets });
          if (isLatest) cancelNext = world.after(growsEvery, () => setTurn((count) => count + 1));
        },
        () => {
          if (!left) setFailed(true);
        },
      );
    });
    return () => {
      left = true;
      cancel();
      cancelNext();
    };
  }, [world, id, isHeld, isKnown, isLatest, length, from, to, buckets, turn, live.live]);

  const held = useMemo(() => bucketsOfReadings(latest(readings, heldLength)), [readings]);
  if (!isKnown) return null;
  const answered = !isHeld && answer?.instrument === id ? answer : null;
  return {
    stretch,
    buckets: answered?.buckets ?? held,
    told: answered?.told ?? endOf(most, heldLength),
    most,
    failed: failed && !isHeld,
  };
}

/** How far back readings are held as they come, ms. */
export const heldLength = 60_000;
