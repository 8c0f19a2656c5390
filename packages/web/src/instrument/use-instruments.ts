import {
  type InstrumentAnswer,
  type InstrumentDescription,
  type InstrumentsAnswer,
  type PassingMessage,
  routes,
  type WriteInstrument,
} from '@coreward/contract';
import { useEffect, useMemo, useState } from 'react';
import { ask } from '../keeping/client.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { type Done, done } from './done.ts';

/** The list is drawn anew so often, ms, however many readings come. */
const showEvery = 100;

/** The station's instruments, and what can be done with them. */
export interface InstrumentsHeld {
  /** `failed`: the station does not answer, and nothing is known. */
  readonly state: 'waiting' | 'held' | 'failed';
  /** Those in use, by name, each with its latest reading. */
  readonly instruments: readonly InstrumentDescription[];
  /** How one is set up. */
  readonly one: (id: string) => Promise<Done<InstrumentAnswer>>;
  /** A new one, which is off, where `id` is null; otherwise changes to one. */
  readonly write: (id: string | null, instrument: WriteInstrument) => Promise<Done<InstrumentAnswer>>;
  readonly switch: (id: string, on: boolean) => Promise<Done<InstrumentAnswer>>;
  /** Takes it out of the list; its readings stay in the bench book. */
  readonly putAway: (id: string) => Promise<Done<InstrumentsAnswer>>;
}

/** Holds the list of instruments in step with the station, through the live channel. */
export function useInstruments(): InstrumentsHeld {
  const { world, hearPassing } = useKeeping();
  const { loaded, connection } = useKept();
  const [held, setHeld] = useState<readonly InstrumentDescription[] | 'failed' | null>(null);

  useEffect(() => {
    // asked anew whenever the station is back: what it told meanwhile was not heard
    if (!loaded || connection !== 'joined') return;
    let left = false;
    let news: PassingMessage[] = [];
    let cancel = (): void => {};
    let isShowing = false;
    let isAsked = false;
    const show = (): void => {
      isShowing = false;
      const told = news;
      news = [];
      setHeld((before) => (Array.isArray(before) ? told.reduce(withMessage, before) : before));
    };
    const stop = hearPassing((message) => {
      news.push(message);
      if (isShowing || !isAsked) return;
      isShowing = true;
      cancel = world.after(showEvery, show);
    });
    ask(world, routes.instruments, {}, null).then(
      ({ instruments }) => {
        if (left) return;
        isAsked = true;
        setHeld(instruments);
        show();
      },
      () => {
        if (!left) setHeld((before) => before ?? 'failed');
      },
    );
    return () => {
      left = true;
      cancel();
      stop();
    };
  }, [world, hearPassing, loaded, connection]);

  const acts = useMemo(
    () => ({
      one: (id: string) => done(ask(world, routes.instrument, { id }, null)),
      write: (id: string | null, instrument: WriteInstrument) =>
        done(ask(world, routes.writeInstrument, { id: id ?? world.newId() }, instrument)),
      switch: (id: string, on: boolean) => done(ask(world, routes.switchInstrument, { id }, { on })),
      putAway: (id: string) => done(ask(world, routes.putInstrumentAway, { id }, null)),
    }),
    [world],
  );
  return {
    state: held === null ? 'waiting' : held === 'failed' ? 'failed' : 'held',
    instruments: Array.isArray(held) ? held : none,
    ...acts,
  };
}

const none: readonly InstrumentDescription[] = [];

function withMessage(
  held: readonly InstrumentDescription[],
  message: PassingMessage,
): readonly InstrumentDescription[] {
  switch (message.type) {
    case 'instrument': {
      const { instrument } = message;
      return [...held.filter(({ id }) => id !== instrument.id), instrument].sort(byName);
    }
    case 'instrument gone':
      return held.filter(({ id }) => id !== message.id);
    case 'readings':
      return held.map((one) =>
        one.id === message.instrument
          ? { ...one, lastReading: message.readings.at(-1) ?? one.lastReading }
          : one,
      );
    // of a screw no instrument is concerned
    case 'turned':
      return held;
  }
}

const byName = (a: InstrumentDescription, b: InstrumentDescription): number =>
  a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1);
