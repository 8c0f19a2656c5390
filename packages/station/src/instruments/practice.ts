import { practiceBenchOf, readLaunch } from '@coreward/bench';
import type { InstrumentSetup } from '@coreward/contract';
import type { Ear, Instrument } from './instrument.ts';

type Setup = Extract<InstrumentSetup, { kind: 'practice' }>;

/** From one reading of a simulated meter to the next, ms. */
const pace = 100;

/**
 * The meter of a simulated bench on which nobody turns a screw.
 *
 * @param textOf the text of a launch, by its id; null if there is none
 */
export function practice(
  { launch, seed }: Setup,
  ear: Ear,
  textOf: (launch: string) => string | null,
): Instrument {
  let timer: NodeJS.Timeout | null = null;
  return {
    start() {
      const text = textOf(launch);
      if (text === null) {
        ear.silent(
          { where: 'launch', what: 'the launch that is simulated is not there', mend: 'Choose another.' },
          true,
        );
        return;
      }
      const bench = practiceBenchOf(readLaunch(text, 'launch'), seed, 'steered-by-eye');
      timer = setInterval(() => ear.heard({ kind: 'value', value: bench.standing() }), pace);
    },
    stop() {
      if (timer !== null) clearInterval(timer);
      timer = null;
    },
  };
}
