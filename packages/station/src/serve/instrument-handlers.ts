import { mostBuckets, type ReadingsAnswer } from '@coreward/contract';
import type { Who } from '../access/session.ts';
import type { BenchBook } from '../bench-book/bench-book.ts';
import { Declined } from '../declined.ts';
import type { Instruments } from '../instruments/instruments.ts';
import { opensSomething } from '../instruments/make-instrument.ts';
import type { Recording } from '../instruments/recording.ts';
import { serialPorts } from '../instruments/serial-ports.ts';
import { tryDevice } from '../instruments/try-device.ts';
import type { SomeHandlers } from './call.ts';
import { mustBeHere } from './must-be-here.ts';

/** Buckets if nobody says otherwise. */
const usualBuckets = 1_000;

type InstrumentRoute =
  | 'instruments'
  | 'instrument'
  | 'writeInstrument'
  | 'putInstrumentAway'
  | 'switchInstrument'
  | 'postReadings'
  | 'readings'
  | 'ports'
  | 'tryDevice';

/** Instruments and what they read. */
export function instrumentHandlers(book: BenchBook, instruments: Instruments): SomeHandlers<InstrumentRoute> {
  const answer = (recording: Recording) => ({ instrument: recording.describe(), setup: recording.setup });
  return {
    instruments: () => ({ instruments: [...instruments.all()] }),
    instrument: ({ parameters: { id } }) => answer(instruments.one(id)),
    writeInstrument({ parameters: { id }, request, who }) {
      if (opensSomething(request.setup)) mustOpenHere(who);
      return answer(instruments.write(id, request));
    },
    putInstrumentAway({ parameters: { id } }) {
      instruments.putAway(id);
      return { instruments: [...instruments.all()] };
    },
    switchInstrument({ parameters: { id }, request: { on }, who }) {
      if (on && opensSomething(instruments.one(id).setup)) mustOpenHere(who);
      return answer(instruments.switch(id, on));
    },
    postReadings: ({ parameters: { id }, request }) => ({ readings: [...instruments.post(id, request)] }),
    readings({ parameters: { id }, query }) {
      // what comes from now on is told by the live channel: nothing may fall between the two
      instruments.keep();
      return readingsOf(book, id, query);
    },
    async ports({ who }) {
      mustBeHere(who, 'see the ports of the station’s computer');
      return { ports: [...(await serialPorts(process.platform))] };
    },
    tryDevice({ request, who }) {
      mustOpenHere(who);
      return tryDevice(request);
    },
  };
}

/** What opens a port or an address reaches beyond the bench book: only the owner may, not whoever holds a paired phone. */
const mustOpenHere = (who: Who): void => mustBeHere(who, 'open a port or an address');

function readingsOf(
  book: BenchBook,
  id: string,
  asked: {
    readonly from?: string | undefined;
    readonly to?: string | undefined;
    readonly buckets?: string | undefined;
  },
): ReadingsAnswer {
  const instrument = book.readings.instrument(id);
  if (instrument === null) {
    throw new Declined('unknown', {
      where: `instrument ${id.slice(0, 100)}`,
      what: 'there is no such instrument',
      mend: 'Choose one of the list.',
    });
  }
  const { first, last } = book.readings.extent(id);
  const from = asked.from === undefined ? (first ?? 0) : Number(asked.from);
  // the last reading is in it
  const to = asked.to === undefined ? Math.max(from, last ?? 0) + 1 : Number(asked.to);
  const buckets = Math.min(mostBuckets, Number(asked.buckets ?? usualBuckets));
  if (!(to > from) || buckets < 1) {
    throw new Declined('refused', {
      where: 'query',
      what: 'there is no time between `from` and `to`, or no bucket to put it in',
      mend: 'Ask for a later `to` and at least one bucket.',
    });
  }
  const found = book.readings.buckets(id, { from, to, buckets });
  return { instrument: id, unit: instrument.unit, from, to, buckets: found };
}
