import { readLog } from '@coreward/bench';
import type { InstrumentSetup } from '@coreward/contract';
import type { Ear, Instrument } from './instrument.ts';

type Setup = Extract<InstrumentSetup, { kind: 'replay' }>;

/** How often a replay looks whether readings are due, ms; those that are come with their own times. */
const turn = 20;

/** A log from before, with its own timing or faster; when it has ended it is silent. */
export function replay({ log, unit, speed }: Setup, ear: Ear, now: () => Date): Instrument {
  let timer: NodeJS.Timeout | null = null;
  const stop = () => {
    if (timer !== null) clearInterval(timer);
    timer = null;
  };
  return {
    start() {
      const readings = readLog(log, unit);
      let time = now().getTime();
      let begun = time;
      let next = 0;
      timer = setInterval(() => {
        const before = time;
        time = now().getTime();
        // a clock that was set back takes the beginning along: the log goes on
        if (time < before) begun -= before - time;
        const elapsed = time - begun;
        for (let due = readings[next]; due !== undefined; due = readings[next]) {
          const at = (due.after * 1000) / speed;
          if (at > elapsed) return;
          next += 1;
          ear.heard(due.value === null ? { kind: 'over' } : { kind: 'value', value: due.value }, begun + at);
        }
        stop();
        ear.silent(
          { where: 'log', what: 'the log has come to its end', mend: 'Switch it off and on to begin again.' },
          true,
        );
      }, turn);
    },
    stop,
  };
}
