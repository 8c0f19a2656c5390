import type { Reading } from '@coreward/bench';
import { type InstrumentDescription, routes } from '@coreward/contract';
import { type StationBeside, stationBeside } from '../access/beside.ts';
import type { BenchBook } from '../bench-book/bench-book.ts';

/** An instrument as a shell sees it; what only a running station knows is null without one. */
export interface SeenInstrument extends Omit<InstrumentDescription, 'state'> {
  readonly state: InstrumentDescription['state'] | null;
  /** Whether it reads whenever the station runs. */
  readonly on: boolean;
}

/** Those in use, by name: as the station tells it, or without one as the book does. */
export async function seenInstruments(
  book: BenchBook,
): Promise<{ readonly station: StationBeside | null; readonly instruments: readonly SeenInstrument[] }> {
  const station = stationBeside(book);
  const kept = book.readings.instruments().filter(({ putAway }) => !putAway);
  if (station === null) {
    const instruments = kept.map(({ setup: _, putAway: __, ...facts }) => ({
      ...facts,
      state: null,
      trouble: null,
      rate_Hz: null,
      noise: null,
      lastReading: book.readings.last(facts.id),
    }));
    return { station, instruments };
  }
  const { instruments } = await station.ask(routes.instruments, {});
  return { station, instruments: instruments.map((one) => ({ ...one, on: one.state !== 'off' })) };
}

/** Hears every reading of one instrument as it comes, until the station stops or it is left. */
export const hearReadings = (station: StationBeside, id: string, heard: (reading: Reading) => void) =>
  station.listen((message) => {
    if (message.type !== 'readings' || message.instrument !== id) return;
    for (const reading of message.readings) heard(reading);
  });
