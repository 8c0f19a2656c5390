import { type ReadingUnit, readingUnitOf } from '@coreward/bench';
import type { InstrumentSetup } from '@coreward/contract';
import { type Ear, type Instrument, posted } from './instrument.ts';
import { practice, type WatchPractice } from './practice.ts';
import { replay } from './replay.ts';
import { scpi } from './scpi.ts';
import { serialLine } from './serial-line.ts';

/** What an instrument needs of the station. */
export interface Surroundings {
  readonly now: () => Date;
  readonly watchPractice: WatchPractice;
}

/** The instrument that is set up so. */
export function makeInstrument(
  setup: InstrumentSetup,
  ear: Ear,
  { now, watchPractice }: Surroundings,
): Instrument {
  switch (setup.kind) {
    case 'typed':
    case 'by-eye':
    case 'camera':
      return posted;
    case 'serial-line':
      return serialLine(setup, ear);
    case 'scpi':
      return scpi(setup, ear);
    case 'replay':
      return replay(setup, ear, now);
    case 'practice':
      return practice(setup, ear, watchPractice);
  }
}

/** Whether a page posts its readings. */
export const isPosted = ({ kind }: InstrumentSetup): boolean =>
  kind === 'typed' || kind === 'by-eye' || kind === 'camera';

/** Whether it opens a port of this computer or an address in the network. */
export const opensSomething = ({ kind }: InstrumentSetup): boolean =>
  kind === 'serial-line' || kind === 'scpi';

/** Whether it is silent only when something is amiss. A hand that types comes and goes. */
export const isSteady = ({ kind }: InstrumentSetup): boolean => kind !== 'typed' && kind !== 'by-eye';

/** What an instrument counts in. */
export function unitOf(setup: InstrumentSetup): ReadingUnit {
  switch (setup.kind) {
    case 'typed':
      return setup.unit;
    case 'by-eye':
      return 'step';
    case 'camera':
      return 'relative';
    case 'practice':
      return 'W';
    case 'serial-line':
      return readingUnitOf(setup.format.unit);
    case 'scpi':
    case 'replay':
      return readingUnitOf(setup.unit);
  }
}
