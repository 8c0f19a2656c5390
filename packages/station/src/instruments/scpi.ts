import {
  type DeviceNumber,
  fromMeter,
  type MeterUnit,
  noLine,
  numberOfAnswer,
  splitLines,
} from '@coreward/bench';
import type { DeviceLink, InstrumentSetup } from '@coreward/contract';
import type { Ear, Instrument } from './instrument.ts';
import { type LastingLink, lastingLink } from './link.ts';
import { saysNothing } from './link-trouble.ts';
import { nameOfTcp } from './tcp-connection.ts';

type Setup = Extract<InstrumentSetup, { kind: 'scpi' }>;

/** A device that takes longer to answer is called anew, ms. */
export const answerWithin = 3_000;

/** Where a device is, in a few words. */
export const nameOfLink = (link: DeviceLink): string => (link.by === 'tcp' ? nameOfTcp(link) : link.path);

/** A device that is asked for each reading, one question at a time. */
export function scpi({ link, query, unit, every }: Setup, ear: Ear): Instrument {
  let line: LastingLink | null = null;
  let timer: NodeJS.Timeout | null = null;
  const stopTimer = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
  };
  return {
    start() {
      let rest = noLine;
      let asked: number | null = null;
      const own = lastingLink(link, {
        opened: () => {
          rest = noLine;
          ask();
        },
        said(text) {
          const split = splitLines(rest, text);
          rest = split.rest;
          // what comes unasked, or after the answer, is no reading
          const [answer] = split.lines;
          if (answer === undefined || asked === null) return;
          const number = numberOfAnswer(answer);
          if (number !== null) ear.heard(counted(number, unit));
          const wait = Math.max(0, every - (performance.now() - asked));
          asked = null;
          stopTimer();
          timer = setTimeout(ask, wait);
        },
        dropped: ({ parts, hand }) => {
          asked = null;
          stopTimer();
          ear.silent(parts, hand);
        },
      });
      line = own;
      function ask(): void {
        stopTimer();
        asked = performance.now();
        own.send(`${query}\n`);
        timer = setTimeout(
          () => own.renew(saysNothing(nameOfLink(link), `\`${query}\` was not answered`)),
          answerWithin,
        );
      }
    },
    stop() {
      stopTimer();
      line?.end();
      line = null;
    },
  };
}

/** What the device counted, SI. */
const counted = (number: DeviceNumber, unit: MeterUnit): DeviceNumber =>
  number.kind === 'value' ? { kind: 'value', value: fromMeter(number.value, unit) } : number;
