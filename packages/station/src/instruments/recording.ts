import {
  type DeviceNumber,
  noFigures,
  noiseOf,
  type Reading,
  Refusal,
  type RefusalParts,
  type RunningFigures,
  rateOf,
  withReading,
} from '@coreward/bench';
import type { InstrumentDescription, InstrumentSetup } from '@coreward/contract';
import type { KeptInstrument } from '../bench-book/readings.ts';
import type { Ear, Instrument } from './instrument.ts';
import { isSteady, makeInstrument, type Surroundings } from './make-instrument.ts';

/** A steady instrument that says nothing for so long, ms, and for ten of its readings, has a gap. */
const silentAfter = 3_000;
/** Readings that wait for a disk that takes nothing. */
const mostWaiting = 1_000_000;

/** One instrument in use: what it reads waits here to be kept and told. */
export class Recording {
  kept: KeptInstrument;
  readonly setup: InstrumentSetup;
  readonly #now: () => Date;
  #instrument: Instrument | null = null;
  #figures: RunningFigures = noFigures;
  #trouble: { readonly parts: RefusalParts; readonly hand: boolean } | null = null;
  /** Why the disk takes nothing; null: it does. */
  #unkept: RefusalParts | null = null;
  #highest: number | null = null;
  #toKeep: Reading[] = [];
  #toTell: Reading[] = [];
  #changed = true;
  #hasCome = false;

  /** @param last what it read before */
  constructor(kept: KeptInstrument, last: Reading | null, { now }: Surroundings) {
    this.kept = kept;
    this.setup = JSON.parse(kept.setup);
    this.#now = now;
    if (last === null) return;
    this.#figures = withReading(noFigures, last);
    // a station that was killed could mark nothing
    this.#markGap(last.t);
  }

  start(surroundings: Surroundings): void {
    this.stop();
    let own = true;
    const ear: Ear = {
      heard: (said, t) => {
        if (own) this.hear(said, t);
      },
      silent: (parts, hand) => {
        if (own) this.#fallSilent({ parts, hand });
      },
    };
    const instrument = makeInstrument(this.setup, ear, surroundings);
    this.#instrument = {
      start: instrument.start,
      stop: () => {
        own = false;
        instrument.stop();
      },
    };
    try {
      this.#instrument.start();
    } catch (error) {
      // a log without readings, a launch that cannot be simulated: no reason for a station not to start
      if (!(error instanceof Refusal)) throw error;
      const [parts] = error.parts;
      if (parts !== undefined) this.#fallSilent({ parts, hand: true });
    }
    this.#changed = true;
  }

  stop(): void {
    if (this.#instrument === null) return;
    this.#instrument.stop();
    this.#instrument = null;
    this.#trouble = null;
    this.#markGap();
    this.#changed = true;
  }

  /** A reading that is to be kept and told. */
  hear(said: DeviceNumber, t = this.#now().getTime()): void {
    const reading = this.readingOf(said, t);
    if (reading === null) return;
    this.note(reading);
    this.#hasCome = true;
    this.#toKeep.push(reading);
    if (this.#toKeep.length > mostWaiting) this.#letGo();
  }

  /** What is said, as a reading; null if it says nothing of the light. */
  readingOf(said: DeviceNumber, t: number): Reading | null {
    if (said.kind === 'nothing') return null;
    const { saturation } = this.kept;
    if (said.kind === 'value') {
      return { t, value: said.value, saturated: saturation !== null && said.value >= saturation };
    }
    // how much too much is not known: it stands at the end of the range, as far as that is known
    const value = saturation ?? this.#highest;
    return value === null ? null : { t, value, saturated: true };
  }

  /** Counts a reading that is kept already. */
  note(reading: Reading): void {
    this.#figures = withReading(this.#figures, reading);
    if (reading.value !== null) {
      this.#highest = Math.max(reading.value, this.#highest ?? reading.value);
      if (this.#trouble !== null) this.#changed = true;
      this.#trouble = null;
    }
    this.#toTell.push(reading);
  }

  get last(): Reading | null {
    return this.#figures.last;
  }

  /** Looks whether it has fallen silent. */
  look(): void {
    // rate and noise are told as often as it is looked
    this.#changed ||= this.#hasCome;
    this.#hasCome = false;
    const { last } = this.#figures;
    if (this.#instrument === null || !isSteady(this.setup) || last === null || last.value === null) return;
    const patience = Math.max(silentAfter, 10_000 / (rateOf(this.#figures) ?? 10));
    const silent = this.#now().getTime() - last.t;
    // a clock that was set back cannot tell for how long: that is a gap, too
    if (silent < patience && silent > -silentAfter) return;
    const parts = {
      where: this.kept.name,
      what: 'no reading has come for a while',
      mend: 'Check that it is switched on and how it is set.',
    };
    this.#fallSilent({ parts, hand: false });
  }

  /** What has not been kept yet; it is forgotten with `wasKept`. */
  get toKeep(): readonly Reading[] {
    return this.#toKeep;
  }

  /** Readings from before that are to be kept first. */
  waitWith(readings: readonly Reading[]): void {
    this.#toKeep = [...readings, ...this.#toKeep];
  }

  wasKept(count: number): void {
    this.#toKeep.splice(0, count);
    if (this.#unkept !== null) this.#changed = true;
    this.#unkept = null;
  }

  /** The disk did not take it: it waits. */
  notKept(parts: RefusalParts): void {
    if (this.#unkept?.what !== parts.what) this.#changed = true;
    this.#unkept = parts;
  }

  /** What is to be told since the last time. */
  takeTold(): readonly Reading[] {
    return this.#toTell.splice(0);
  }

  /** Whether its description has changed otherwise than by readings since the last time. */
  takeChanged(): boolean {
    const changed = this.#changed;
    this.#changed = false;
    return changed;
  }

  describe(): InstrumentDescription {
    const { id, name, kind, unit, floor, saturation } = this.kept;
    return {
      id,
      name,
      kind,
      unit,
      state: this.#state(),
      trouble: this.#unkept ?? this.#trouble?.parts ?? null,
      rate_Hz: rateOf(this.#figures),
      // steps of an eye have no size that could scatter
      noise: unit === 'step' ? null : noiseOf(this.#figures),
      floor,
      saturation,
      lastReading: this.#figures.last,
    };
  }

  #state(): InstrumentDescription['state'] {
    if (this.#unkept !== null) return 'trouble';
    if (this.#instrument === null) return 'off';
    if (this.#trouble !== null) return this.#trouble.hand ? 'trouble' : 'gap';
    const { last } = this.#figures;
    return last === null || last.value === null ? 'gap' : 'reading';
  }

  /** More cannot wait: the oldest tenth goes, and a gap stands where it was. */
  #letGo(): void {
    const gone = this.#toKeep.splice(0, mostWaiting / 10);
    const t = gone[0]?.t;
    if (t !== undefined) this.#toKeep.unshift({ t, value: null, saturated: false });
  }

  #fallSilent(trouble: { readonly parts: RefusalParts; readonly hand: boolean }): void {
    if (this.#trouble?.parts.what !== trouble.parts.what) this.#changed = true;
    this.#trouble = trouble;
    this.#markGap();
  }

  /** One mark is enough, and before the first reading there is nothing to interrupt. */
  #markGap(t = this.#now().getTime()): void {
    const { last } = this.#figures;
    if (!isSteady(this.setup) || last === null || last.value === null) return;
    const gap = { t: Math.max(last.t, t), value: null, saturated: false };
    this.#figures = withReading(this.#figures, gap);
    this.#toKeep.push(gap);
    this.#toTell.push(gap);
  }
}
