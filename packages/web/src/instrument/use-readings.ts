import { isSetBack, type Reading } from '@coreward/bench';
import {
  type InstrumentDescription,
  mostBuckets,
  type PostedReadings,
  type PostReadings,
  routes,
} from '@coreward/contract';
import { useCallback, useEffect, useState } from 'react';
import { ask } from '../keeping/client.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { type Done, done } from './done.ts';
import { readingsOfBuckets, withRecent } from './recent-readings.ts';

/** Live readings of one instrument. */
export interface ReadingsHeld {
  /** `failed`: the station does not answer, or knows no such instrument. */
  readonly state: 'waiting' | 'held' | 'failed';
  /** Whether readings are heard as they come; false while the station is away. */
  readonly live: boolean;
  /** The instrument itself: its unit, state, floor, saturation; null until it is known. */
  readonly instrument: InstrumentDescription | null;
  /**
   * The window's readings, oldest first; a `value` of null marks a gap from there on. From before this page listened, several
   * readings of a fast instrument may be one: their mean. What is heard live is every reading.
   */
  readonly readings: readonly Reading[];
  /**
   * Sends readings that this page took (typed, by eye, camera). They are on the disk when it is done.
   *
   * @param write the same name for a second try, so that they are kept once; left out: a new one
   */
  readonly post: (readings: PostReadings['readings'], write?: string) => Promise<Done<PostedReadings>>;
}

/** What is held of one instrument; of another nothing of it counts. */
interface Held {
  readonly id: string;
  readonly instrument: InstrumentDescription;
  readonly readings: readonly Reading[];
}

/**
 * Follows the readings of an instrument: the last `length` ms are asked for once, then they come by the live channel; after
 * the station was away the window is asked for again.
 *
 * @param id null: none is chosen yet, and nothing is asked
 */
export function useReadings(id: string | null, length = 60_000): ReadingsHeld {
  const { world, hearPassing } = useKeeping();
  const { loaded, connection } = useKept();
  const [held, setHeld] = useState<Held | null>(null);
  const [failed, setFailed] = useState<string | null>(null);
  const isJoined = loaded && connection === 'joined';

  useEffect(() => {
    if (id === null || !isJoined) return;
    let left = false;
    /** What comes while the window is being asked for; null: it is here. */
    let early: Reading[] | null = [];
    /** Where the window ended; what is told of it once more is passed over. */
    let known: number | null = null;
    const fresh = (told: readonly Reading[], isSince: boolean): readonly Reading[] => {
      const end = known;
      // of what is told later, an earlier time tells that the station's clock was set back
      const found = end === null ? told : told.filter(({ t }) => t > end || (isSince && isSetBack(end, t)));
      if (found.length > 0) known = null;
      return found;
    };
    const stop = hearPassing((message) => {
      if (message.type === 'readings' && message.instrument === id) {
        if (early !== null) {
          early.push(...message.readings);
          return;
        }
        const news = fresh(message.readings, true);
        setHeld((before) =>
          before?.id === id ? { ...before, readings: withRecent(before.readings, news, length) } : before,
        );
      } else if (message.type === 'instrument' && message.instrument.id === id) {
        setHeld((before) => (before?.id === id ? { ...before, instrument: message.instrument } : before));
      }
    });
    async function askFor(of: string): Promise<void> {
      const { instrument } = await ask(world, routes.instrument, { id: of }, null);
      // by the station's clock, which need not be this page's
      const newest = instrument.lastReading?.t ?? 0;
      const from = newest > length ? (newest - length).toFixed(0) : '0';
      // what bears a later time is from before that clock was set back
      const to = (newest + 1).toFixed(0);
      const query = { from, to, buckets: `${mostBuckets}` };
      const { buckets } = await ask(world, routes.readings, { id: of }, null, query);
      if (left) return;
      const before = readingsOfBuckets(buckets);
      known = before.at(-1)?.t ?? null;
      const since = fresh(early ?? [], false);
      early = null;
      setFailed(null);
      setHeld({ id: of, instrument, readings: withRecent(before, since, length) });
    }
    askFor(id).catch(() => {
      if (!left) setFailed(id);
    });
    return () => {
      left = true;
      stop();
    };
  }, [world, hearPassing, id, length, isJoined]);

  const post = useCallback<ReadingsHeld['post']>(
    async (readings, write = world.newId()) => {
      if (id === null) throw new Error('no instrument is chosen');
      return done(ask(world, routes.postReadings, { id }, { write, readings }));
    },
    [world, id],
  );
  const own = held?.id === id ? held : null;
  return {
    state: own !== null ? 'held' : failed !== null && failed === id ? 'failed' : 'waiting',
    live: isJoined && own !== null,
    instrument: own?.instrument ?? null,
    readings: own?.readings ?? none,
    post,
  };
}

const none: readonly Reading[] = [];
