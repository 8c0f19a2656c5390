import { useRef, useState } from 'react';
import type { ReadingsHeld } from '../instrument/use-readings.ts';
import { useKeeping } from '../keeping/use-keeping.ts';

/** A reading as it was taken here; `at` by the page's own clock, ms. */
export interface TakenReading {
  readonly at: number;
  readonly value: number | null;
  readonly saturated: boolean;
}

/** Readings go to the station in batches, so often, ms: a hand on a screw feels no longer delay. */
const sendEvery = 200;
/** Most in one batch, as the station takes them. */
const mostAtOnce = 512;
/** Most that are held back while the station is away: older ones are let go. */
const mostHeldBack = 20_000;

/** Sends readings as they come: one batch at a time, each kept once however often it is tried. */
export function usePosting(post: ReadingsHeld['post']) {
  const { world } = useKeeping();
  const waiting = useRef<TakenReading[]>([]);
  const batch = useRef<{ readonly write: string; readonly readings: readonly TakenReading[] } | null>(null);
  const last = useRef<number | null>(null);
  const isBusy = useRef(false);
  const isEnding = useRef(false);
  const [trouble, setTrouble] = useState<string | null>(null);

  const send = async (now: number): Promise<void> => {
    batch.current ??= { write: world.newId(), readings: waiting.current.splice(0, mostAtOnce) };
    const { write, readings } = batch.current;
    const newest = readings.at(-1);
    if (newest === undefined) {
      batch.current = null;
      return;
    }
    // the last ones may have come while the batch before was on its way
    const isOver = newest.at > now;
    const since = isOver ? newest.at : now;
    isBusy.current = true;
    last.current = now;
    const sent = await post(
      readings.map(({ at, value, saturated }) => ({ ago: since - at, value, saturated })),
      write,
    );
    isBusy.current = false;
    if (sent.ok) batch.current = null;
    setTrouble(sent.ok ? null : sent.said);
    if (isEnding.current && sent.ok) void send(now);
  };

  /** One more reading; sent with the others when it is time. */
  const push = (reading: TakenReading): void => {
    isEnding.current = false;
    waiting.current.push(reading);
    if (waiting.current.length > mostHeldBack) waiting.current.splice(0, mostAtOnce);
    const isTime = last.current === null || reading.at - last.current >= sendEvery;
    if (isTime && !isBusy.current) void send(reading.at);
  };

  /** Nothing more comes: what waits is sent, and behind it a gap, so that whoever listens hears it at once. */
  const end = (at: number): void => {
    waiting.current.push({ at, value: null, saturated: false });
    isEnding.current = true;
    if (!isBusy.current) void send(at);
  };
  return { push, end, trouble };
}
