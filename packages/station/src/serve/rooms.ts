import type { Door } from '../access/door.ts';
import type { Pairing } from '../access/pairing.ts';
import type { BenchBook } from '../bench-book/bench-book.ts';
import type { Instruments } from '../instruments/instruments.ts';
import type { PracticeBenches } from '../practice-benches.ts';
import type { Screens } from './screens.ts';

/** What both doors share. */
export interface Rooms {
  readonly book: BenchBook;
  readonly instruments: Instruments;
  readonly pairing: Pairing;
  /** The simulated benches that are being walked. */
  readonly benches: PracticeBenches;
  readonly screens: Screens;
  /** The door other machines come by; null while it is shut. */
  readonly network: Door | null;
  /** Of the program. */
  readonly version: string;
  /** Hears of faults of ours. */
  readonly fault: (error: unknown) => void;
  /** Is told when a device has been revoked. */
  readonly revoked: () => void;
}
