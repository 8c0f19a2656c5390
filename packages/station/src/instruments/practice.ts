import type { InstrumentSetup } from '@coreward/contract';
import { Declined } from '../declined.ts';
import type { Ear, Instrument } from './instrument.ts';

type Setup = Extract<InstrumentSetup, { kind: 'practice' }>;

/** From one reading of a simulated meter to the next, ms. */
const pace = 100;

/** Begins to look at the simulated bench of a launch; what it answers is null while nobody is at it. */
export type WatchPractice = (launch: string, seed: number) => () => number | null;

/** The meter of a simulated bench: the one that is being walked, if there is one, follows its screws. */
export function practice({ launch, seed }: Setup, ear: Ear, watch: WatchPractice): Instrument {
  let timer: NodeJS.Timeout | null = null;
  return {
    start() {
      let look: ReturnType<WatchPractice>;
      try {
        look = watch(launch, seed);
      } catch (error) {
        if (!(error instanceof Declined)) throw error;
        const [parts] = error.answer.refused;
        if (parts !== undefined) ear.silent(parts, true);
        return;
      }
      timer = setInterval(() => {
        const value = look();
        if (value === null) ear.silent(leftAlone, false);
        else ear.heard({ kind: 'value', value });
      }, pace);
    },
    stop() {
      if (timer !== null) clearInterval(timer);
      timer = null;
    },
  };
}

const leftAlone = {
  where: 'practice bench',
  what: 'nothing was done at it for a while',
  mend: 'Turn one of its screws, or go on with the walk.',
};
