import type { RefusalParts } from '@coreward/bench';

/** Why a device is not reached. */
export interface LinkTrouble {
  readonly parts: RefusalParts;
  /** It does not go by itself. */
  readonly hand: boolean;
}

/** What becomes of a connection. After `dropped` nothing else comes. */
export interface LinkEvents {
  readonly opened: () => void;
  /** Text as it comes, cut anywhere; bytes that are no UTF-8 come as U+FFFD. */
  readonly said: (text: string) => void;
  readonly dropped: (trouble: LinkTrouble) => void;
}

/** A connection to a device. */
export interface Connection {
  readonly send: (text: string) => void;
  /** Ends it without a word. */
  readonly end: () => void;
}
