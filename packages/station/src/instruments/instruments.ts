import type { DeviceNumber, Reading } from '@coreward/bench';
import type { InstrumentDescription, LiveMessage, PostReadings, WriteInstrument } from '@coreward/contract';
import type { BenchBook } from '../bench-book/bench-book.ts';
import { DiskTrouble } from '../bench-book/book-trouble.ts';
import type { KeptInstrument } from '../bench-book/readings.ts';
import { Declined } from '../declined.ts';
import { newId } from '../world.ts';
import { isPosted, type Surroundings, unitOf } from './make-instrument.ts';
import type { WatchPractice } from './practice.ts';
import { Recording } from './recording.ts';

/** Pages are told so often, ms. */
const tellEvery = 100;
/** Readings that stream in are on the disk after so long, ms; so often it is also looked who has fallen silent. */
const keepEvery = 1_000;
/** Instruments in use at once. */
const mostInstruments = 64;
/** Readings in one message. */
const mostInMessage = 512;

/** The instruments that are there: those that were on when the station stopped are on again. */
export class Instruments {
  readonly #book: BenchBook;
  readonly #tell: (message: LiveMessage) => void;
  readonly #fault: (error: unknown) => void;
  readonly #surroundings: Surroundings;
  readonly #recordings = new Map<string, Recording>();
  readonly #timers: readonly NodeJS.Timeout[];

  /**
   * @param watchPractice begins to look at a simulated bench
   * @param tell tells every page
   * @param fault hears of faults of ours
   */
  constructor(
    book: BenchBook,
    watchPractice: WatchPractice,
    tell: (message: LiveMessage) => void,
    fault: (error: unknown) => void,
  ) {
    this.#book = book;
    this.#tell = tell;
    this.#fault = fault;
    this.#surroundings = { now: book.world.now, watchPractice };
    for (const kept of book.readings.instruments().filter(({ putAway }) => !putAway)) {
      const recording = new Recording(kept, book.readings.last(kept.id), this.#surroundings);
      this.#recordings.set(kept.id, recording);
      if (kept.on) recording.start(this.#surroundings);
    }
    this.#timers = [
      setInterval(() => this.#guarded(() => this.#tellAll()), tellEvery),
      setInterval(() => this.#guarded(() => this.#keepAll()), keepEvery),
    ];
  }

  /** Those in use, by name. */
  all(): readonly InstrumentDescription[] {
    return [...this.#recordings.values()]
      .map((recording) => recording.describe())
      .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1));
  }

  /** @throws {Declined} if there is none by this id, or it was put away */
  one(id: string): Recording {
    const found = this.#recordings.get(id);
    if (found !== undefined) return found;
    throw new Declined('unknown', {
      where: `instrument ${id.slice(0, 100)}`,
      what: 'there is no such instrument',
      mend: 'Choose one of the list.',
    });
  }

  /** The meter of a launch's practice bench; null if there is none. */
  practiceOf(launch: string): Recording | null {
    return (
      [...this.#recordings.values()].find(
        ({ kept, setup }) =>
          setup.kind === 'practice' && setup.launch === launch && kept.unit === unitOf(setup),
      ) ?? null
    );
  }

  newId(): string {
    return newId(this.#book.world);
  }

  /** A new instrument, which is off; or changes to one, which stays as it is. */
  write(id: string, { name, setup, floor, saturation }: WriteInstrument): Recording {
    const before = this.#book.readings.instrument(id);
    const unit = unitOf(setup);
    if (before !== null && (before.kind !== setup.kind || before.unit !== unit || before.putAway)) {
      throw new Declined('refused', {
        where: `instrument ${before.name}`,
        what: before.putAway
          ? 'it was put away'
          : 'its readings go on, so that its kind and what it counts in stay',
        mend: 'Add a new instrument.',
      });
    }
    if (before === null && this.#recordings.size >= mostInstruments) {
      throw new Declined('refused', {
        where: 'instruments',
        what: `there are ${mostInstruments} of them, which is the most`,
        mend: 'Put one away first.',
      });
    }
    const kept = { id, kind: setup.kind, unit, name, setup: JSON.stringify(setup), floor, saturation };
    return this.#put({ ...kept, on: before?.on ?? false, putAway: false });
  }

  switch(id: string, on: boolean): Recording {
    const { kept } = this.one(id);
    return kept.on === on ? this.one(id) : this.#put({ ...kept, on });
  }

  putAway(id: string): void {
    const recording = this.one(id);
    recording.stop();
    this.#keepAll();
    this.#book.readings.write({ ...recording.kept, on: false, putAway: true });
    this.#recordings.delete(id);
    this.#tell({ type: 'instrument gone', id });
  }

  /**
   * Keeps readings that a page took.
   *
   * @returns them as they stand in the book, once they are on the disk
   */
  post(id: string, { write, readings }: PostReadings): readonly Reading[] {
    const recording = this.one(id);
    mustTakePosts(recording);
    const now = this.#book.world.now().getTime();
    let last = recording.last?.value ?? 0;
    const fresh = readings.map(({ ago, value, saturated }): Reading => {
      const t = now - ago;
      if (value === null) return { t, value, saturated: false };
      // an eye tells steps; what is kept is where they have led
      if (recording.setup.kind === 'by-eye') last += Math.sign(value);
      const said: DeviceNumber = { kind: 'value', value: recording.setup.kind === 'by-eye' ? last : value };
      const heard = recording.readingOf(said, t);
      return heard === null
        ? { t, value: null, saturated }
        : { ...heard, saturated: saturated || heard.saturated };
    });
    const kept = this.#book.readings.post(id, fresh, write);
    if (kept === null) {
      throw new Declined('refused', {
        where: `write ${write}`,
        what: 'this name means something else in the bench book',
        mend: 'Send it under a new name.',
      });
    }
    // what was sent again is not heard again
    if (kept === fresh) for (const reading of kept) recording.note(reading);
    return kept;
  }

  /** Keeps what has come so far, so that whoever asks for readings misses none. */
  keep(): void {
    this.#keepAll();
  }

  /**
   * Keeps what has come and lets go of every device; they are still on when the station starts again.
   *
   * @returns how many readings the disk did not take, and which are lost thereby
   */
  close(): number {
    for (const timer of this.#timers) clearInterval(timer);
    for (const recording of this.#recordings.values()) recording.stop();
    this.#guarded(() => this.#keepAll());
    return [...this.#recordings.values()].reduce((sum, { toKeep }) => sum + toKeep.length, 0);
  }

  #put(kept: KeptInstrument): Recording {
    this.#book.readings.write(kept);
    const before = this.#recordings.get(kept.id);
    const isSame = before !== undefined && before.kept.setup === kept.setup && before.kept.on === kept.on;
    if (isSame) {
      before.kept = kept;
      this.#tell({ type: 'instrument', instrument: before.describe() });
      return before;
    }
    before?.stop();
    this.#keepAll();
    this.#tellAll();
    const last = before?.last ?? this.#book.readings.last(kept.id);
    const recording = new Recording(kept, last, this.#surroundings);
    // what the disk has not taken yet goes on waiting
    if (before !== undefined) recording.waitWith(before.toKeep);
    this.#recordings.set(kept.id, recording);
    if (kept.on) recording.start(this.#surroundings);
    this.#tell({ type: 'instrument', instrument: recording.describe() });
    return recording;
  }

  #keepAll(): void {
    const series = new Map<string, readonly Reading[]>();
    for (const [id, recording] of this.#recordings) {
      recording.look();
      if (recording.toKeep.length > 0) series.set(id, [...recording.toKeep]);
    }
    if (series.size === 0) return;
    try {
      this.#book.readings.keep(series);
    } catch (error) {
      if (!(error instanceof DiskTrouble)) throw error;
      const [parts] = error.parts;
      for (const id of series.keys()) if (parts !== undefined) this.#recordings.get(id)?.notKept(parts);
      return;
    }
    for (const [id, readings] of series) this.#recordings.get(id)?.wasKept(readings.length);
  }

  #tellAll(): void {
    for (const [id, recording] of this.#recordings) {
      const readings = recording.takeTold();
      for (let at = 0; at < readings.length; at += mostInMessage) {
        this.#tell({ type: 'readings', instrument: id, readings: readings.slice(at, at + mostInMessage) });
      }
      if (recording.takeChanged()) this.#tell({ type: 'instrument', instrument: recording.describe() });
    }
  }

  /** A timer's fault would stop the station. */
  #guarded(work: () => void): void {
    try {
      work();
    } catch (error) {
      this.#fault(error);
    }
  }
}

/** @throws {Declined} */
function mustTakePosts({ kept, setup }: Recording): void {
  if (isPosted(setup) && kept.on) return;
  throw new Declined('refused', {
    where: `instrument ${kept.name}`,
    what: isPosted(setup) ? 'it is off' : 'its readings come from the device itself',
    mend: isPosted(setup) ? 'Switch it on.' : 'Add an instrument whose readings are typed.',
  });
}
