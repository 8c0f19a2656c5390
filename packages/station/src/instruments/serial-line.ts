import { noLine, readLine, splitLines } from '@coreward/bench';
import type { InstrumentSetup } from '@coreward/contract';
import type { Ear, Instrument } from './instrument.ts';
import { type LastingLink, lastingLink } from './link.ts';

type Setup = Extract<InstrumentSetup, { kind: 'serial-line' }>;

/** A device that says a line for each reading by itself. Lines without one are passed over. */
export function serialLine({ link, format }: Setup, ear: Ear): Instrument {
  let port: LastingLink | null = null;
  return {
    start() {
      let rest = noLine;
      port = lastingLink(link, {
        // it may be in the middle of a line: whatever comes up to the first end is none
        opened: () => {
          rest = { text: '', tooLong: true };
        },
        said(text) {
          const split = splitLines(rest, text);
          rest = split.rest;
          for (const line of split.lines) {
            const number = readLine(line, format);
            if (number !== null) ear.heard(number);
          }
        },
        dropped: ({ parts, hand }) => ear.silent(parts, hand),
      });
    },
    stop() {
      port?.end();
      port = null;
    },
  };
}
