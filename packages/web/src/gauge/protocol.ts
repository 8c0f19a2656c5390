import type { Measured, Sheet } from '@coreward/bench';

/** What a gauge is asked: the readings as typed, and a picture where it takes one. */
export interface GaugeQuestion {
  readonly gauge: string;
  readonly sheet: Sheet;
  readonly picture: File | null;
  /** Where it takes two, the reverse beam's. */
  readonly reverse: File | null;
  /** What the readings are called in refusals. */
  readonly file: string;
}

/** What the worker does, apart from the page so that no key is held up. */
export interface GaugeWorker {
  readonly measure: (question: GaugeQuestion) => Promise<Measured>;
}
