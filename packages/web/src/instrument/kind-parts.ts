import type { ReadingUnit } from '@coreward/bench';
import type { InstrumentSetup } from '@coreward/contract';
import type { ReadingsHeld } from './use-readings.ts';

/** Asks how an instrument is set up. */
export interface SetupProps {
  /** How it is set up now; null: it is new. */
  readonly initial: InstrumentSetup | null;
  /** Told of every change; null: something is still missing. The same function at every call. */
  readonly onSetup: (setup: InstrumentSetup | null) => void;
}

/** Takes readings on this page and posts them. */
export interface PosterProps {
  readonly unit: ReadingUnit;
  readonly held: ReadingsHeld;
}
