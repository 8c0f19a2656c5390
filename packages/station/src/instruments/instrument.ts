import type { DeviceNumber, RefusalParts } from '@coreward/bench';

/** Whoever hears what an instrument tells. */
export interface Ear {
  /** A reading, SI, at `t` (ms since 1970) or now. */
  readonly heard: (said: DeviceNumber, t?: number) => void;
  /**
   * Nothing comes from now on, and why; the instrument goes on trying.
   *
   * @param hand somebody must do something first
   */
  readonly silent: (why: RefusalParts, hand: boolean) => void;
}

/** Where readings come from. It tells its ear until it is stopped. */
export interface Instrument {
  readonly start: () => void;
  /** Lets go of ports, addresses and timers; nothing is told afterwards. */
  readonly stop: () => void;
}

/** Of an instrument whose readings a page posts: there is nothing to open. */
export const posted: Instrument = { start: () => {}, stop: () => {} };
