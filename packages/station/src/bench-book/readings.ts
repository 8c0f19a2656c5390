import type { Reading, ReadingUnit } from '@coreward/bench';
import type { InstrumentKind, ReadingsBucket } from '@coreward/contract';
import type { Database } from 'better-sqlite3';
import { type Block, bucketsOf, type Stretch } from './buckets.ts';
import { blockFacts, mostInBlock, packed, unpacked } from './packed-block.ts';

/** An instrument as it is kept. */
export interface KeptInstrument {
  readonly id: string;
  readonly kind: InstrumentKind;
  readonly unit: ReadingUnit;
  readonly name: string;
  /** JSON. */
  readonly setup: string;
  readonly floor: number | null;
  readonly saturation: number | null;
  readonly on: boolean;
  readonly putAway: boolean;
}

interface InstrumentRow extends Omit<KeptInstrument, 'on' | 'putAway'> {
  readonly on: number;
  readonly putAway: number;
}

/** When a series begins and ends, ms, and how many readings it has, gaps included. */
export interface SeriesExtent {
  readonly first: number | null;
  readonly last: number | null;
  readonly count: number;
}

/**
 * Instruments and their readings on disk. Readings are added to and never changed.
 *
 * @param telling runs what touches the disk
 */
export function readingsIn(db: Database, telling: <T>(work: () => T) => T) {
  const columns = 'id, kind, unit, name, setup, floor, saturation, is_on AS "on", put_away AS putAway';
  const byId = db.prepare<[string], InstrumentRow>(`SELECT ${columns} FROM instruments WHERE id = ?`);
  const inOrder = db.prepare<[], InstrumentRow>(`SELECT ${columns} FROM instruments ORDER BY name, id`);
  const put = db.prepare<InstrumentRow>(
    `INSERT INTO instruments (id, kind, unit, name, setup, floor, saturation, is_on, put_away)
     VALUES (@id, @kind, @unit, @name, @setup, @floor, @saturation, @on, @putAway)
     ON CONFLICT (id) DO UPDATE SET name = @name, setup = @setup, floor = @floor, saturation = @saturation,
       is_on = @on, put_away = @putAway`,
  );
  const facts = 'rank, first, last, count, gaps, saturated, min, max, mean';
  const add = db.prepare(
    `INSERT INTO reading_blocks (instrument, "write", first, last, count, gaps, saturated, min, max, mean, packed)
     VALUES (@instrument, @write, @first, @last, @count, @gaps, @saturated, @min, @max, @mean, @packed)`,
  );
  const between = db.prepare<[string, number, number], Block>(
    `SELECT ${facts} FROM reading_blocks WHERE instrument = ? AND first < ? AND last >= ? ORDER BY first, rank`,
  );
  const byRank = db.prepare<[number], Buffer>('SELECT packed FROM reading_blocks WHERE rank = ?').pluck();
  const byWrite = db.prepare<[string], { readonly instrument: string; readonly packed: Buffer }>(
    'SELECT instrument, packed FROM reading_blocks WHERE "write" = ?',
  );
  const extent = db.prepare<[string], SeriesExtent>(
    'SELECT MIN(first) AS first, MAX(last) AS last, COALESCE(SUM(count), 0) AS count FROM reading_blocks WHERE instrument = ?',
  );
  const all = db
    .prepare<[string], Buffer>('SELECT packed FROM reading_blocks WHERE instrument = ? ORDER BY rank')
    .pluck();

  const last = db
    .prepare<[string], Buffer>(
      'SELECT packed FROM reading_blocks WHERE instrument = ? ORDER BY rank DESC LIMIT 1',
    )
    .pluck();

  /** Adds readings of one instrument in their order; the caller has seen to a transaction. */
  function putReadings(instrument: string, readings: readonly Reading[], write: string | null): void {
    for (let at = 0; at < readings.length; at += mostInBlock) {
      const block = readings.slice(at, at + mostInBlock);
      add.run({
        instrument,
        write: at === 0 ? write : null,
        ...blockFacts(block),
        packed: packed(block),
      });
    }
  }

  /** Keeps readings that a page posted, once for each write. Null if the write means something else. */
  const post = db.transaction(
    (instrument: string, readings: readonly Reading[], write: string): readonly Reading[] | null => {
      const before = byWrite.get(write);
      if (before !== undefined) return before.instrument === instrument ? unpacked(before.packed) : null;
      putReadings(instrument, readings, write);
      return readings;
    },
  ).immediate;

  const keep = db.transaction((series: ReadonlyMap<string, readonly Reading[]>): void => {
    for (const [instrument, readings] of series) putReadings(instrument, readings, null);
  }).immediate;

  const putInstrument = ({ on, putAway, ...rest }: KeptInstrument): void => {
    put.run({ ...rest, on: on ? 1 : 0, putAway: putAway ? 1 : 0 });
  };

  return {
    instrument(id: string): KeptInstrument | null {
      const row = byId.get(id);
      return row === undefined ? null : keptOf(row);
    },
    /** By name; also those that were put away. */
    instruments: (): readonly KeptInstrument[] => inOrder.all().map(keptOf),
    /** A new one, or what has changed of it. */
    write: (instrument: KeptInstrument): void => telling(() => putInstrument(instrument)),
    /** On the disk when it returns. */
    post: (instrument: string, readings: readonly Reading[], write: string) =>
      telling(() => post(instrument, readings, write)),
    /** Of several instruments at once: all of it, or nothing. */
    keep: (series: ReadonlyMap<string, readonly Reading[]>): void => telling(() => keep(series)),
    extent: (instrument: string): SeriesExtent =>
      extent.get(instrument) ?? { first: null, last: null, count: 0 },
    buckets: (instrument: string, stretch: Stretch): ReadingsBucket[] =>
      bucketsOf(between.all(instrument, stretch.to, stretch.from), stretch, (rank) => byRank.get(rank)!),
    /** The last that was kept; null if there is none. */
    last(instrument: string): Reading | null {
      const bytes = last.get(instrument);
      return bytes === undefined ? null : (unpacked(bytes).at(-1) ?? null);
    },
    /** Every reading in the order in which it was kept. */
    all: (instrument: string): readonly Reading[] => all.all(instrument).flatMap(unpacked),
    /** For an import, which sees to a transaction. */
    putInstrument,
    putReadings,
  };
}

const keptOf = ({ on, putAway, ...rest }: InstrumentRow): KeptInstrument => ({
  ...rest,
  on: on === 1,
  putAway: putAway === 1,
});
